// SPDX-License-Identifier: MIT
#include "table.hpp"
#include "spelling.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <lodebook/orientation/quadrant.hpp>
#include <utility>

namespace lodebook::fair_copy {

namespace {

/// `N62E` is no figure; `approx. 40` may be one.
constexpr std::size_t longest_point = 6;
bool begins_with_unit(std::string_view text, const Words& words) {
  const Tokens tokens = tokens_of(text, words, false);
  return !tokens.empty() && (tokens.front().is(Meaning::metres) ||
                             tokens.front().is(Meaning::feet) || tokens.front().is(Meaning::unit));
}

/// What a value of the column may look like; a word such as `vert.` is one, too.
bool is_like(Column column, std::string_view text, const Words& words) {
  if (is_unread(text) || is_ditto(text, words)) return true;
  const Tokens tokens = tokens_of(text, words, false);
  const bool bearing = is_bearing(column) || column == Column::back;
  if (std::ranges::any_of(tokens,
                          [](const Token& token) { return token.is('>') || token.is('/'); }))
    return false;
  // Such words belong to a sentence.
  const bool strange = std::ranges::any_of(tokens, [&](const Token& token) {
    const bool inside = &token != &tokens.front();
    return (token.is(Meaning::unknown) && token.text.size() > 1) || token.is(Meaning::back) ||
           token.is(Meaning::from) || token.is(Meaning::station) ||
           (inside && token.is(Meaning::toward));
  });
  if (has_digit(text) && strange) return false;
  if (has_digit(text)) return bearing || !is_letter(text.front()) || text.size() > longest_point;
  if (bearing)
    return !tokens.empty() && tokens.size() <= 2 && tokens.back().type == Token::Type::point;
  const std::string lower = folded(text);
  const auto word = words.find(lower);
  const bool level =
      word && (word->meaning == Meaning::level || word->meaning == Meaning::vertical ||
               word->meaning == Meaning::horizontal);
  return level || lower.find("vert") != std::string::npos ||
         lower.find("horiz") != std::string::npos || lower.find("flat") != std::string::npos;
}

}  // namespace

/// The column that a cell is aligned with, at its start or at its end, by the last row that had
/// all columns or by the headings; the last for none.
std::size_t Table::aligned_with(const Span& span) const {
  const auto apart = [](std::size_t a, std::size_t b) { return a < b ? b - a : a - b; };
  std::size_t best = headings_.size();
  // Nobody hits the same column every time.
  std::size_t least = 2;
  for (std::size_t i = 0; i < headings_.size(); ++i) {
    const Span& own = spans_.empty() ? headings_[i].span : spans_[i];
    const std::size_t off = std::min(apart(own.begin, span.begin), apart(own.end, span.end));
    if (off >= least) continue;
    least = off;
    best = i;
  }
  return best;
}

/// Under blanks a row with fewer cells than headings, each aligned with its own; empty for a row
/// that is not aligned. One cell may reach under two headings.
std::vector<std::string> Table::by_position(std::string_view line,
                                            const std::vector<Cell>& cells) const {
  std::vector<std::string> texts(headings_.size());
  const auto put = [&](std::size_t column, std::string_view text) {
    const bool fits = column < texts.size() && texts[column].empty();
    if (fits) texts[column] = text;
    return fits;
  };
  bool is_parted = false;
  for (const Cell& cell : cells) {
    const Span span = in_letters(line, cell.span);
    const auto under = std::ranges::count_if(headings_, [&](const Heading& heading) {
      return span.begin < heading.span.end && heading.span.begin < span.end;
    });
    const std::size_t blank = cell.text.rfind(' ');
    if (under == 2 && blank != std::string::npos && !std::exchange(is_parted, true)) {
      const Span second = {cell.span.begin + blank + 1, cell.span.end};
      if (!put(aligned_with({span.begin, 0}), cell.text.substr(0, blank)) ||
          !put(aligned_with(in_letters(line, second)), cell.text.substr(blank + 1)))
        return {};
    } else if (!put(aligned_with(span), cell.text)) {
      return {};
    }
  }
  return texts;
}

std::vector<std::string> Table::texts_of(std::string_view line, Separator separator, bool strict,
                                         const Words& words) const {
  std::vector<Cell> cells = cells_in(line, separator);
  const bool by_blanks = separator == Separator::blanks || separator == Separator::blank;
  std::vector<std::string> texts;
  if (by_blanks && !strict && separator_ == separator && cells.size() < headings_.size())
    texts = by_position(line, cells);
  for (std::size_t i = 0; texts.size() < cells.size() && i < cells.size(); ++i) {
    const bool joins = i >= headings_.size() && headings_.back().column == Column::remark &&
                       (separator == Separator::comma || by_blanks);
    if (!joins) {
      texts.push_back(cells[i].text);
      continue;
    }
    // The rest of the line is its last remark.
    texts.back() = line.substr(cells[headings_.size() - 1].span.begin);
    break;
  }
  for (std::size_t i = 0; i < texts.size(); ++i) {
    if (i < above_.size() && is_ditto(texts[i], words)) texts[i] = above_[i];
  }
  return texts;
}

bool Table::is_row(const std::vector<std::string>& texts, Separator separator, bool strict,
                   const Words& words) const {
  const bool by_blanks = separator == Separator::blanks || separator == Separator::blank;
  std::size_t needed = 2;
  std::size_t read = 0;
  for (std::size_t i = 0; i < headings_.size(); ++i) {
    const Heading& heading = headings_[i];
    const std::string_view text = i < texts.size() ? std::string_view(texts[i]) : "";
    // In a sentence any word may stand there.
    if (heading.column == Column::side && by_blanks && !is_unread(text) && !is_ditto(text, words) &&
        !point_named(text))
      return false;
    const bool counts = is_angle(heading.column) || is_bearing(heading.column) ||
                        (is_leg_ && heading.column == Column::distance);
    if (!counts) continue;
    // `15 m long`, parted like columns.
    if (separator == Separator::blank && has_digit(text) && i + 1 < texts.size() &&
        begins_with_unit(texts[i + 1], words))
      return false;
    const bool in_plane =
        has(Column::dip) && (heading.column == Column::rake || heading.column == Column::trend ||
                             heading.column == Column::plunge);
    if (!in_plane) needed = by_blanks || strict ? std::max(needed, i + 1) : needed;
    if (heading.second) {
      read += has_digit(text) ? 2U : 0U;
    } else if (!is_like(heading.column, text, words)) {
      return false;
    } else if (!is_unread(text)) {
      ++read;
    }
  }
  if (texts.size() < needed || (strict && texts.size() > headings_.size() + 1)) return false;
  if (is_leg_) return read >= (has(Column::distance) ? 2 : 1);
  if (by_blanks) return read >= 2;
  return !strict || read > 0;
}

/// The cells of a row as the heading, or the rows above, part them.
std::vector<std::string> Table::row_like_above(std::string_view line, const Words& words) const {
  const Separator own = separator_ == Separator::stroke ? Separator::blanks : separator_;
  const bool strict = may_be_over_ && has_rows_;
  auto texts = texts_of(line, own, strict, words);
  return is_row(texts, own, strict, words) ? texts : std::vector<std::string>();
}

/// The cells of a row; nothing for a line that is none. The first row shows what parts them.
std::vector<std::string> Table::row_of(std::string_view line, const Words& words) {
  if (auto texts = row_like_above(line, words); !texts.empty() || has_rows_) return texts;
  for (const Separator other : {Separator::tab, Separator::bar, Separator::semicolon,
                                Separator::blanks, Separator::comma, Separator::blank}) {
    auto texts = texts_of(line, other, true, words);
    if (texts.size() < 3 || !is_row(texts, other, true, words)) continue;
    separator_ = other;
    return texts;
  }
  return {};
}

void Table::pass(std::string_view line, const Page& page) {
  if (stripped(line).empty()) {
    may_be_over_ = true;
    return;
  }
  above_ = row_like_above(line, page.words);
  has_rows_ = has_rows_ || above_.size() > 1;
}

void Table::add_pair(const Heading& heading, std::size_t column, const std::string& text,
                     const Words& words, std::vector<Field>& fields) const {
  const bool is_leg = heading.second == Column::to;
  Halves halves = is_leg ? ends_of(text) : halves_of(text);
  const Halves above = column < above_.size()
                           ? (is_leg ? ends_of(above_[column]) : halves_of(above_[column]))
                           : Halves();
  if (is_ditto(halves.first, words)) halves.first = above.first;
  if (is_ditto(halves.second, words)) halves.second = above.second;
  // `vert.` alone is an angle, whatever stands first.
  if (halves.second.empty() && !has_digit(halves.first) && is_angle(*heading.second))
    std::swap(halves.first, halves.second);
  fields.push_back({&heading, heading.column, with_point(halves.first)});
  fields.push_back({&heading, *heading.second, with_point(halves.second)});
}

Row Table::fields_of(const std::vector<std::string>& texts, const Words& words) const {
  std::vector<Field> fields;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const Heading* const heading = i < headings_.size() ? &headings_[i] : nullptr;
    const std::string text = is_unread(texts[i]) ? std::string() : texts[i];
    if (heading && heading->second) {
      add_pair(*heading, i, text, words, fields);
    } else {
      fields.push_back({heading, heading ? heading->column : Column::remark, with_point(text)});
    }
  }
  return Row(std::move(fields));
}

std::optional<Lines> Table::row(std::string_view line, Page& page) {
  if (auto units = units_row(line)) return units;
  std::vector<std::string> texts = row_of(line, page.words);
  if (texts.empty()) {
    // A sentence has commas and blanks, too.
    const bool may_be_prose = separator_ == Separator::comma || separator_ == Separator::blank ||
                              cells_in(line, separator_).size() < 2;
    may_be_over_ = may_be_over_ || may_be_prose;
    // Below a row that is not understood a ditto mark repeats no older one.
    if (has_digit(line)) above_.clear();
    return std::nullopt;
  }
  Row row = fields_of(texts, page.words);
  std::optional<Lines> lines;
  if (is_leg_) {
    lines = leg_of(row, page);
  } else {
    lines = attitudes_of(row, state_, page);
  }
  if (!lines) return std::nullopt;
  above_ = std::move(texts);
  has_rows_ = true;
  may_be_over_ = false;
  keep_spans(line);
  return lines;
}

/// Where the cells of a row with all columns stand.
void Table::keep_spans(std::string_view line) {
  const std::vector<Cell> cells = cells_in(line, separator_);
  if (separator_ != Separator::blanks || cells.size() != headings_.size()) return;
  spans_.clear();
  for (const Cell& cell : cells)
    spans_.push_back(in_letters(line, cell.span));
}

}  // namespace lodebook::fair_copy
