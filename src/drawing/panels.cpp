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
    const std::string_view word = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::string longer = line.empty() ? std::string(word) : line + ' ' + std::string(word);
    if (!line.empty() && width_of(role, longer) > width) {
      lines.push_back(std::exchange(line, std::string(word)));
    } else {
      line = longer;
    }
  }
  if (!line.empty()) lines.push_back(std::move(line));
  return lines;
}

Picture arranged(std::string name, std::string title, std::string description,
                 const std::vector<Picture>& panels, const std::vector<std::string>& footer) {
  Picture paper(std::move(name), title, std::move(description), paper_width, 0);
  double y = margin;
  for (const std::string& line : broken(Role::title, title, paper_width - 2 * margin)) {
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
