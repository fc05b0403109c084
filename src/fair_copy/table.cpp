// SPDX-License-Identifier: MIT
#include "table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace lodebook::fair_copy {

namespace {

/// A longer one is a sentence.
constexpr std::size_t longest_heading = 24;

bool has_digit(std::string_view text) {
  return text.find_first_of("0123456789") != std::string_view::npos;
}

bool is_of_attitude(Column column) {
  return is_angle(column) || is_bearing(column) || column == Column::side;
}

/// `N62E` is no figure; `approx. 40` may be one.
constexpr std::size_t longest_point = 6;
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// Bytes as letters, so that columns stand below each other.
Span in_letters(std::string_view line, const Span& span) {
  const auto letters = [&](std::size_t bytes) {
    return static_cast<std::size_t>(std::ranges::count_if(line.substr(0, bytes), [](char c) {
      return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
  };
  return {letters(span.begin), letters(span.end)};
}

/// What a value of the column may look like; a word such as `vert.` is one, too.
bool is_like(Column column, std::string_view text, const Words& words) {
  if (is_unread(text) || is_ditto(text, words)) return true;
  const Tokens tokens = tokens_of(text, words, false);
  const bool bearing = is_bearing(column) || column == Column::back;
  if (std::ranges::any_of(tokens,
                          [](const Token& token) { return token.is('>') || token.is('/'); }))
    return false;
  if (has_digit(text)) return bearing || !is_letter(text.front()) || text.size() > longest_point;
  if (bearing) return tokens.size() == 1 && tokens.front().type == Token::Type::point;
  const std::string lower = folded(text);
  const auto word = words.find(lower);
  const bool level =
      word && (word->meaning == Meaning::level || word->meaning == Meaning::vertical ||
               word->meaning == Meaning::horizontal);
  return level || lower.find("vert") != std::string::npos ||
         lower.find("horiz") != std::string::npos || lower.find("flat") != std::string::npos;
}

}  // namespace

bool Table::has(Column column) const {
  return std::ranges::any_of(headings_, [&](const Heading& heading) {
    return heading.column == column || heading.second == column;
  });
}

/// Of several columns of that name the first.
void Table::turn(Column from, Column to) {
  if (has(to)) return;
  const auto found = std::ranges::find(headings_, from, &Heading::column);
  if (found != headings_.end()) found->column = to;
}

/// What stands in a second column of a name goes into the remark.
void Table::drop_repeats() {
  for (auto later = headings_.begin(); later != headings_.end(); ++later) {
    const bool repeats =
        std::find_if(headings_.begin(), later, [&](const Heading& earlier) {
          return earlier.column == later->column || earlier.second == later->column;
        }) != later;
    if (repeats && later->column != Column::remark) later->column = Column::other;
  }
}

bool Table::take_as_leg() {
  const bool ends =
      has(Column::to) || (has(Column::station) && (has(Column::back) || has(Column::slope)));
  if (!has(Column::distance) || !ends) return false;
  for (const Column column : {Column::strike, Column::direction, Column::trend})
    turn(column, Column::bearing);
  for (const Column column : {Column::dip, Column::plunge})
    turn(column, Column::slope);
  if (!has(Column::bearing)) return false;
  drop_repeats();
  return is_leg_ = true;
}

bool Table::take_as_attitude() {
  if (has(Column::rake)) {
    for (Heading& heading : headings_) {
      if (heading.column == Column::station && folded(heading.name) == "from" && !has(Column::end))
        heading.column = Column::end;
    }
  }
  turn(Column::to, Column::side);
  if (!has(Column::set)) turn(Column::surface, Column::kind);
  if (has(Column::plunge)) turn(Column::bearing, Column::trend);
  drop_repeats();
  const bool named = has(Column::strike) || has(Column::direction) || has(Column::trend);
  int parts = 0;
  bool angle = false;
  for (Heading& heading : headings_) {
    const bool needless = heading.column == Column::bearing && named && !heading.second;
    const bool of_leg = heading.column == Column::back || heading.column == Column::distance ||
                        heading.column == Column::slope || heading.column == Column::to;
    const bool endless = heading.column == Column::end && !has(Column::rake);
    const bool looks = heading.column == Column::surface;
    if (needless || of_leg || endless || looks) heading.column = Column::other;
    parts += (is_of_attitude(heading.column) ? 1 : 0) + (heading.second ? 1 : 0);
    angle = angle || is_angle(heading.column) || (heading.second && is_angle(*heading.second));
  }
  return parts >= 2 && angle;
}

/// Else it is prose, or the order of pairs.
bool Table::is_heading() const {
  std::size_t known = 0;
  std::size_t pairs = 0;
  bool is_prose = false;
  for (const Heading& heading : headings_) {
    known += heading.column == Column::other ? 0 : 1;
    pairs += heading.second ? 1 : 0;
    is_prose = is_prose || heading.name.size() > longest_heading;
    const bool strange = heading.column == Column::other &&
                         (heading.name.size() > 2 || !is_letter(heading.name.front()));
    is_prose = is_prose || (separator_ == Separator::blank && strange);
  }
  const bool tight = separator_ == Separator::tab || separator_ == Separator::bar;
  const bool has_more = has(Column::kind) || has(Column::index) || has(Column::set) ||
                        has(Column::station) || has(Column::remark) || tight;
  const std::size_t least =
      separator_ == Separator::stroke || separator_ == Separator::blank ? 3 : 2;
  return !is_prose && headings_.size() >= least &&
         (pairs == 0 || (has_more && known > pairs) || (tight && headings_.size() > pairs));
}

/// `fault tables: no | strike | ...`, `Joints | strike | dip`, `rake of striae`
void Table::name_kinds(std::string_view line, const Words& words) {
  const auto kind_in_words = [&](std::string_view text) {
    for (const Token& token : tokens_of(text, words, false)) {
      if (token.is(Meaning::kind)) return std::string(token.says);
    }
    return std::string();
  };
  state_.kind = kind_in_words(line.substr(0, line.find(headings_.front().name)));
  for (const Heading& heading : headings_) {
    const bool may_name = heading.column == Column::other || heading.column == Column::remark;
    if (may_name && state_.kind.empty()) state_.kind = kind_in_words(heading.name);
    const bool of_line = heading.column == Column::rake || heading.column == Column::trend ||
                         heading.column == Column::plunge;
    if (of_line && state_.rake_kind.empty()) state_.rake_kind = kind_in_words(heading.name);
  }
  if (state_.rake_kind == "striation") state_.rake_kind = "slickenline";
}

std::optional<Table> Table::headed_by(std::string_view line, const Page& page) {
  if (has_digit(line) || line.find('=') != std::string_view::npos) return std::nullopt;
  for (const Separator separator :
       {Separator::tab, Separator::semicolon, Separator::bar, Separator::comma, Separator::stroke,
        Separator::blanks, Separator::blank}) {
    Table table(headings_in(line, separator, page.words), separator);
    for (Heading& heading : table.headings_)
      heading.span = in_letters(line, heading.span);
    if (!table.is_heading()) continue;
    if (!table.take_as_leg() && !table.take_as_attitude()) continue;
    table.name_kinds(line, page.words);
    return table;
  }
  return std::nullopt;
}

/// The heading that a cell is aligned with, at its start or at its end; the last for none.
std::size_t Table::aligned_with(const Span& span) const {
  const auto found = std::ranges::find_if(headings_, [&](const Heading& heading) {
    return heading.span.begin == span.begin || heading.span.end == span.end;
  });
  return static_cast<std::size_t>(found - headings_.begin());
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
    const bool counts = is_angle(heading.column) || is_bearing(heading.column) ||
                        (is_leg_ && heading.column == Column::distance);
    if (!counts) continue;
    needed = by_blanks || strict ? std::max(needed, i + 1) : needed;
    if (heading.second) {
      read += has_digit(text) ? 2 : 0;
    } else if (!is_like(heading.column, text, words)) {
      return false;
    } else if (!is_unread(text)) {
      ++read;
    }
  }
  if (texts.size() < needed || (strict && texts.size() > headings_.size() + 1)) return false;
  if (is_leg_ || by_blanks) return read >= 2;
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
  auto texts = row_like_above(line, page.words);
  if (!texts.empty()) above_ = std::move(texts);
}

void Table::add_pair(const Heading& heading, std::size_t column, const std::string& text,
                     const Words& words, std::vector<Field>& fields) const {
  Halves halves = halves_of(text);
  const Halves above = column < above_.size() ? halves_of(above_[column]) : Halves();
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
  std::vector<std::string> texts = row_of(line, page.words);
  if (texts.empty()) {
    may_be_over_ = true;
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
  return lines;
}

}  // namespace lodebook::fair_copy
