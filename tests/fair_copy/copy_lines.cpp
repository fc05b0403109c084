// SPDX-License-Identifier: MIT
#include "fair_copy/copy_lines.hpp"

#include <charconv>

namespace lodebook::test {
namespace {

struct Origin {
  std::uint32_t page_line = 0;
  std::string_view text;
};

/// `# page N: text`.
std::optional<Origin> read_origin(std::string_view line) {
  constexpr std::string_view mark = "# page ";
  const std::size_t start = line.find_first_not_of(" \t");
  if (start == std::string_view::npos || !line.substr(start).starts_with(mark)) return {};
  line.remove_prefix(start + mark.size());
  Origin origin;
  const char* const end = line.data() + line.size();
  const auto [stop, fault] = std::from_chars(line.data(), end, origin.page_line);
  if (fault != std::errc() || stop == end || *stop != ':') return {};
  line.remove_prefix(static_cast<std::size_t>(stop - line.data()) + 1);
  if (line.starts_with(' ')) line.remove_prefix(1);
  origin.text = line;
  return origin;
}

/// Gives the last lines before `end` of the copy to those of the page before `page_end` as long as
/// both are alike, but none up to `page_start`; returns the first line of the page so given.
std::uint32_t give_back(const std::vector<std::string_view>& page, std::uint32_t page_start,
                        std::uint32_t page_end, const std::vector<std::string_view>& copy,
                        std::size_t start, std::size_t end, std::vector<std::uint32_t>& made) {
  while (page_end > page_start + 1 && end > start && copy[end - 1] == page[page_end - 1])
    made[--end] = --page_end;
  return page_end;
}

}  // namespace

std::vector<std::string_view> numbered_lines(std::string_view text) {
  std::vector<std::string_view> lines{{}};
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    lines.push_back(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return lines;
}

std::optional<std::vector<std::uint32_t>> copy_lines(std::string_view page_text,
                                                     std::string_view copy_text) {
  const auto page = numbered_lines(page_text);
  const auto copy = numbered_lines(copy_text);
  std::vector<std::uint32_t> made(copy.size(), 0);
  // From the end: between one mark and the next stand first the statements of its line, then the
  // lines of the page that stand as typed.
  auto page_end = static_cast<std::uint32_t>(page.size());
  std::size_t end = copy.size();
  for (std::size_t at = copy.size(); at-- > 1;) {
    const auto origin = read_origin(copy[at]);
    if (!origin) continue;
    if (origin->page_line >= page_end) return {};
    const bool is_heading = origin->page_line == 0;
    page_end = give_back(page, origin->page_line, page_end, copy, at + 1, end, made);
    for (std::size_t statement = at; statement < end; ++statement) {
      if (made[statement] == 0) made[statement] = origin->page_line;
    }
    end = at;
    if (is_heading) continue;
    if (page_end != origin->page_line + 1 || page[origin->page_line] != origin->text) return {};
    page_end = origin->page_line;
  }
  if (give_back(page, 0, page_end, copy, 1, end, made) != 1) return {};
  return made;
}

}  // namespace lodebook::test
