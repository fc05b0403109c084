// SPDX-License-Identifier: MIT
#include "cells.hpp"
#include "spelling.hpp"

#include <algorithm>

namespace lodebook::fair_copy {

namespace {

constexpr std::string_view digits = "0123456789";

/// Splits one line.
class Splitter {
 public:
  Splitter(std::string_view line, Separator separator) : line_(line), separator_(separator) {}

  std::vector<Cell> cells() {
    std::size_t at = 0;
    std::size_t last = line_.find_last_not_of(" \t");
    last = last == std::string_view::npos ? 0 : last + 1;
    if (by_blanks()) at = std::min(line_.find_first_not_of(" \t"), line_.size());
    while (true) {
      const std::size_t end = end_of_cell(at);
      add(at, end);
      if (end >= line_.size() || (by_blanks() && end >= last)) break;
      at = end + length_of_mark(end);
    }
    if (separator_ == Separator::bar) drop_outer();
    return std::move(cells_);
  }

 private:
  bool by_blanks() const {
    return separator_ == Separator::blanks || separator_ == Separator::blank;
  }
  bool may_quote() const {
    return separator_ == Separator::comma || separator_ == Separator::semicolon;
  }

  bool ends_at(std::size_t at) const {
    switch (separator_) {
      case Separator::tab:
        return line_[at] == '\t';
      case Separator::semicolon:
        return line_[at] == ';';
      case Separator::bar:
        return line_[at] == '|';
      case Separator::comma:
        return line_[at] == ',';
      case Separator::stroke:
        return line_[at] == '/';
      case Separator::blanks:
        return (line_.substr(at, 2) == "  " || line_[at] == '\t') && !joins_at(at);
      case Separator::blank:
        return line_[at] == ' ' || line_[at] == '\t';
    }
    return false;
  }

  /// Blanks before the stroke of a pair: `"  / 241`.
  bool joins_at(std::size_t at) const {
    const std::size_t next = line_.find_first_not_of(" \t", at);
    return next != std::string_view::npos && next > 0 && line_[next] == '/' &&
           line_.find_first_not_of(" \t", next + 1) <= next + 2;
  }

  std::size_t length_of_mark(std::size_t at) const {
    if (!by_blanks()) return 1;
    return std::min(line_.find_first_not_of(" \t", at), line_.size()) - at;
  }

  std::size_t end_of_cell(std::size_t at) const {
    if (const std::size_t end = end_of_quoted(at); end > at) return end;
    while (at < line_.size() && !ends_at(at))
      ++at;
    return at;
  }

  /// Behind a cell in quotes; `at` for another. A quote alone in its cell is a ditto mark.
  std::size_t end_of_quoted(std::size_t at) const {
    std::size_t open = std::min(line_.find_first_not_of(' ', at), line_.size());
    if (!may_quote() || open >= line_.size() || line_[open] != '"') return at;
    if (open + 1 < line_.size() && ends_at(open + 1)) return at;
    for (std::size_t k = open + 1; k < line_.size(); ++k) {
      if (line_[k] != '"') continue;
      if (k + 1 < line_.size() && line_[k + 1] == '"') {
        ++k;
        continue;
      }
      const std::size_t behind = std::min(line_.find_first_not_of(' ', k + 1), line_.size());
      if (behind == line_.size() || ends_at(behind)) return behind;
      return at;
    }
    return at;
  }

  void add(std::size_t begin, std::size_t end) {
    while (begin < end && (line_[begin] == ' ' || line_[begin] == '\t'))
      ++begin;
    while (end > begin && (line_[end - 1] == ' ' || line_[end - 1] == '\t'))
      --end;
    std::string_view text = line_.substr(begin, end - begin);
    Cell& cell = cells_.emplace_back();
    cell.span = {begin, end};
    const bool quoted =
        may_quote() && text.size() >= 2 && text.starts_with('"') && text.ends_with('"');
    if (quoted && text != "\"\"") {
      text = text.substr(1, text.size() - 2);
      for (std::size_t i = 0; i < text.size(); ++i) {
        cell.text.push_back(text[i]);
        if (text.substr(i, 2) == "\"\"") ++i;
      }
    } else if (!quoted) {
      cell.text = text;
    }
  }

  void drop_outer() {
    if (cells_.size() > 1 && cells_.front().text.empty()) cells_.erase(cells_.begin());
    const std::size_t last = line_.find_last_not_of(" \t");
    if (cells_.size() > 1 && last != std::string_view::npos && line_[last] == '|')
      cells_.pop_back();
  }

  std::string_view line_;
  Separator separator_;
  std::vector<Cell> cells_;
};

}  // namespace

std::vector<Cell> cells_in(std::string_view line, Separator separator) {
  return Splitter(line, separator).cells();
}

Span in_letters(std::string_view line, const Span& span) {
  const auto letters = [&](std::size_t bytes) {
    return static_cast<std::size_t>(std::ranges::count_if(line.substr(0, bytes), [](char c) {
      return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    }));
  };
  return {letters(span.begin), letters(span.end)};
}

bool has_digit(std::string_view text) {
  return text.find_first_of(digits) != std::string_view::npos;
}

bool is_ditto(std::string_view cell, const Words& words) {
  if (cell == "″" || cell == "”" || cell == "〃" || cell == "“") return true;
  const auto word = words.find(folded(cell));
  return word && word->meaning == Meaning::ditto;
}

bool is_unread(std::string_view cell) {
  constexpr std::string_view words[] = {"",    "-",   "–",   "—",  "--",       "none",
                                        "nil", "n/a", "n a", "na", "not read", "no read",
                                        "no",  "nr",  "/",   ".",  "unread"};
  if (cell == "-" || cell == "--" || cell == ".") return true;
  return std::ranges::find(words, folded(cell)) != std::end(words);
}

std::string with_point(std::string_view cell) {
  std::string text(cell);
  const std::size_t comma = cell.find(',');
  if (comma == std::string_view::npos || cell.find(',', comma + 1) != std::string_view::npos)
    return text;
  const bool between = comma > 0 && comma + 1 < cell.size() && is_digit(cell[comma - 1]) &&
                       is_digit(cell[comma + 1]);
  // `1,200` may be thousands.
  const std::size_t behind = cell.find_first_not_of(digits, comma + 1) - (comma + 1);
  const bool thousands =
      std::min(behind, cell.size() - comma - 1) == 3 && !cell.substr(0, comma).ends_with('0');
  if (between && !thousands) text[comma] = '.';
  return text;
}

namespace {

std::string trimmed(std::string_view text) {
  while (text.starts_with(' '))
    text.remove_prefix(1);
  while (text.ends_with(' '))
    text.remove_suffix(1);
  return std::string(text);
}

Halves parted(std::string_view cell, std::size_t at, std::size_t length) {
  return {trimmed(cell.substr(0, at)), trimmed(cell.substr(at + length))};
}

}  // namespace

Halves ends_of(std::string_view cell) {
  for (const std::string_view mark : {" to ", "->", "→", ">", " - ", " – ", "/", "–", "-"}) {
    const std::size_t at = cell.find(mark);
    // A hyphen more belongs to a name.
    if (at != std::string_view::npos && cell.find(mark, at + mark.size()) == std::string_view::npos)
      return parted(cell, at, mark.size());
  }
  return {std::string(cell), {}};
}

Halves halves_of(std::string_view cell) {
  if (const std::size_t mark = cell.find_first_of("/>@"); mark != std::string_view::npos)
    return parted(cell, mark, 1);
  for (std::size_t i = 1; i + 1 < cell.size(); ++i) {
    if (cell[i] == '-' && is_digit(cell[i - 1]) && is_digit(cell[i + 1])) return parted(cell, i, 1);
  }
  const std::size_t blank = cell.find(' ');
  const bool two = blank != std::string_view::npos &&
                   cell.substr(0, blank).find_first_of(digits) != std::string_view::npos &&
                   cell.substr(blank).find_first_of(digits) != std::string_view::npos;
  if (two) return parted(cell, blank, 1);
  return {std::string(cell), {}};
}

}  // namespace lodebook::fair_copy
