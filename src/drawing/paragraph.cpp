// SPDX-License-Identifier: MIT
#include "paragraph.hpp"

#include <algorithm>
#include <lodebook/notebook/source.hpp>
#include <lodebook/output/text.hpp>

namespace lodebook::drawing {
namespace {

constexpr double line_spacing = 1.4;

/// The longest beginning of `text`, in bytes, that is not wider; at least one code point.
std::size_t fitting(std::string_view text, Role role, double width) {
  std::size_t end = 0;
  while (end < text.size()) {
    const std::size_t next =
        end + std::max<std::size_t>(1, notebook::utf8_length(text.substr(end)));
    if (end != 0 && width_of(role, text.substr(0, next)) > width) break;
    end = next;
  }
  return end;
}

}  // namespace

std::vector<std::string> lines_of(std::string_view text, Role role, double width) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    std::size_t end = fitting(text, role, width);
    if (end < text.size()) {
      const std::size_t space = text.substr(0, end + 1).rfind(' ');
      if (space != std::string_view::npos && space != 0) end = space;
    }
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(end);
    while (text.starts_with(' '))
      text.remove_prefix(1);
  }
  return lines;
}

std::vector<std::string> heading_of(std::string_view text, Role role, double width) {
  constexpr std::size_t most = 3;
  std::vector<std::string> lines = lines_of(text, role, width);
  if (lines.size() > most) {
    lines.resize(most);
    const double room = width - width_of(role, "…");
    lines.back().resize(fitting(lines.back(), role, room));
    lines.back() += "…";
  }
  return lines;
}

std::string shortened(std::string_view text, Role role, double width) {
  // What is shown, so that no byte that is not UTF-8 is cut in two.
  std::string shown = output::printable(text);
  if (width_of(role, shown) <= width) return shown;
  return shown.substr(0, fitting(shown, role, width - width_of(role, "…"))) + "…";
}

double draw_paragraph(Picture& picture, Role role, Point corner, std::string_view text,
                      double width) {
  const double step = line_spacing * height_of(role);
  double y = 0;
  for (std::string& line : lines_of(output::printable(text), role, width)) {
    y += step;
    picture.words(role, corner + Point{0, y - 0.3 * step}, std::move(line));
  }
  return y;
}

}  // namespace lodebook::drawing
