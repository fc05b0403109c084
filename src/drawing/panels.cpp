// SPDX-License-Identifier: MIT
#include <lodebook/drawing/panels.hpp>

#include <algorithm>
#include <utility>

namespace lodebook::drawing {
namespace {

constexpr double margin = 8;
constexpr double gap = 6;
constexpr double paper_width = 180;  // A4 and Letter with their usual margins
constexpr double footer_spacing = 3.4;

constexpr std::size_t most_heading_lines = 3;
constexpr std::string_view ellipsis = "\u2026";

double space_of(Role role) {
  return width_of(role, " ");
}

/// How many bytes of a word are no wider than `width`: whole code points, at least one of them.
std::size_t fitting(Role role, std::string_view word, double width) {
  if (width_of(role, word) <= width) return word.size();
  std::size_t fits = 0;
  for (std::size_t at = 0; at < word.size();) {
    std::size_t next = at + 1;
    while (next < word.size() && (static_cast<unsigned char>(word[next]) & 0xC0) == 0x80)
      ++next;
    if (fits > 0 && width_of(role, word.substr(0, next)) > width) break;
    fits = next;
    at = next;
  }
  return fits;
}

std::size_t columns_for(std::size_t panels) {
  return panels > 4 ? 3 : panels > 1 ? 2 : 1;
}

}  // namespace

double panel_width(std::size_t panels) {
  const auto columns = static_cast<double>(columns_for(panels));
  return (paper_width - 2 * margin - (columns - 1) * gap) / columns;
}

std::vector<std::string> broken(Role role, std::string_view text, double width) {
  std::vector<std::string> lines;
  std::string line;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (!line.empty() && width_of(role, line) + width_of(role, word) + space_of(role) > width)
      lines.push_back(std::exchange(line, {}));
    if (!line.empty()) line.push_back(' ');
    for (std::size_t fits = fitting(role, word, width); fits < word.size();
         fits = fitting(role, word, width)) {
      lines.emplace_back(word.substr(0, fits));
      word.remove_prefix(fits);
    }
    line += word;
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

std::vector<std::string> heading(Role role, std::string_view text, double width) {
  std::vector<std::string> lines = broken(role, text, width);
  if (lines.size() > most_heading_lines) {
    lines.resize(most_heading_lines);
    lines.back() = shortened(role, lines.back() + ' ' + std::string(ellipsis), width);
  }
  return lines;
}

std::string shortened(Role role, std::string_view text, double width) {
  if (width_of(role, text) <= width) return std::string(text);
  const double room = width - width_of(role, ellipsis);
  return std::string(text.substr(0, fitting(role, text, room))) + std::string(ellipsis);
}

Picture arranged(std::string name, std::string title, std::string description,
                 const std::vector<Picture>& panels, const std::vector<std::string>& footer) {
  Picture paper(std::move(name), title, std::move(description), paper_width, 0);
  double y = margin;
  for (const std::string& line : heading(Role::title, title, paper_width - 2 * margin)) {
    y += height_of(Role::title);
    paper.words(Role::title, {margin, y}, line);
    y += 2;
  }
  const std::size_t columns = columns_for(panels.size());
  for (std::size_t first = 0; first < panels.size(); first += columns) {
    y += gap / 2;
    double x = margin;
    double height = 0;
    for (std::size_t i = first; i < std::min(first + columns, panels.size()); ++i) {
      paper.place(panels[i], {x, y});
      x += panels[i].width() + gap;
      height = std::max(height, panels[i].height());
    }
    y += height;
  }
  y += gap;
  for (const std::string& entry : footer) {
    for (const std::string& line : broken(Role::figure, entry, paper_width - 2 * margin)) {
      paper.words(Role::figure, {margin, y}, line);
      y += footer_spacing;
    }
  }
  paper.resize(paper_width, y + margin - footer_spacing);
  return paper;
}

}  // namespace lodebook::drawing
