// SPDX-License-Identifier: MIT
#include "markdown.hpp"

#include <algorithm>
#include <cctype>
#include <stdexcept>
#include <vector>

#include "roff.hpp"
#include "tables.hpp"

namespace lodebook::install {
namespace {

using Lines = std::vector<std::string_view>;

std::string_view trimmed(std::string_view text) {
  while (text.starts_with(' '))
    text.remove_prefix(1);
  while (text.ends_with(' '))
    text.remove_suffix(1);
  return text;
}

/// The cells of a table's row, `| a | b |`.
Lines cells_of(std::string_view row) {
  row = trimmed(row);
  Lines cells = split(row.substr(1, row.size() - 2), "|");
  std::ranges::transform(cells, cells.begin(), trimmed);
  return cells;
}

/// Goes through the lines, block by block.
class Conversion {
 public:
  explicit Conversion(std::string_view page) : lines_(split(page, "\n")) {}

  std::string run() {
    while (at_ < lines_.size()) {
      const std::string_view line = lines_[at_];
      if (line.empty() || line.starts_with("# ")) {
        ++at_;
      } else if (line.starts_with("## ")) {
        blocks_.section(line.substr(3));
        ++at_;
      } else if (line.starts_with("```")) {
        code();
      } else if (line.starts_with("| ")) {
        table();
      } else if (line.starts_with("- ")) {
        bullets();
      } else if (std::isalnum(static_cast<unsigned char>(line.front())) != 0 ||
                 line.starts_with("**") || line.starts_with('`')) {
        blocks_.paragraph(line);
        ++at_;
      } else {
        throw std::runtime_error("not understood: " + std::string(line));
      }
    }
    return blocks_.text();
  }

 private:
  /// The lines from here on that begin so.
  Lines take_while(std::string_view start) {
    Lines taken;
    for (; at_ < lines_.size() && lines_[at_].starts_with(start); ++at_)
      taken.push_back(lines_[at_]);
    return taken;
  }

  void code() {
    Lines taken;
    for (++at_; at_ < lines_.size() && lines_[at_] != "```"; ++at_)
      taken.push_back(lines_[at_]);
    if (at_ == lines_.size()) throw std::runtime_error("code without an end");
    ++at_;
    blocks_.literal(taken);
  }

  /// A table becomes a list: the first cell is the tag, the others a line each, which from the
  /// third on say what their column is.
  void table() {
    const Lines rows = take_while("|");
    const Lines head = cells_of(rows.front());
    blocks_.begin_list(Blocks::List::tagged);
    for (std::size_t i = 2; i < rows.size(); ++i) {
      const Lines cells = cells_of(rows[i]);
      if (cells.size() != head.size())
        throw std::runtime_error("a row with too few cells, or too many: " + std::string(rows[i]));
      blocks_.item(argument(cells.front()));
      for (std::size_t j = 1; j < cells.size(); ++j) {
        if (cells[j].empty()) continue;
        blocks_.next_line(j == 1 ? std::string(cells[j])
                                 : std::string(head[j]) + ": " + std::string(cells[j]));
      }
    }
    blocks_.end_list();
  }

  /// The list of contents has no place in a manual page.
  void bullets() {
    const Lines items = take_while("- ");
    if (std::ranges::all_of(items, [](std::string_view item) {
          return item.starts_with("- [") && item.find("](#") != std::string_view::npos &&
                 item.ends_with(')');
        }))
      return;
    blocks_.begin_list(Blocks::List::bullets);
    for (const std::string_view item : items) {
      blocks_.item();
      blocks_.paragraph(item.substr(2));
    }
    blocks_.end_list();
  }

  Lines lines_;
  std::size_t at_ = 0;
  Blocks blocks_;
};

}  // namespace

std::string manual_of(std::string_view page) {
  return Conversion(page).run();
}

std::string_view section_of(std::string_view page, std::string_view title) {
  const std::string heading = "\n## " + std::string(title) + '\n';
  const std::size_t begin = page.find(heading);
  if (begin == std::string_view::npos)
    throw std::runtime_error("no section '" + std::string(title) + '\'');
  page.remove_prefix(begin + heading.size());
  return page.substr(0, page.find("\n## "));
}

}  // namespace lodebook::install
