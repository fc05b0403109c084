// SPDX-License-Identifier: MIT
#include <lodebook/drawing/panels.hpp>

#include <algorithm>
#include <utility>

#include "paragraph.hpp"

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

Picture arranged(std::string name, const std::string& title, std::string description,
                 const std::vector<Picture>& panels, const std::vector<std::string>& footer) {
  Picture paper(std::move(name), title, std::move(description), paper_width, 0);
  double y = margin;
  for (const std::string& line : heading_of(title, Role::title, paper_width - 2 * margin)) {
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
    for (const std::string& line : lines_of(entry, Role::figure, paper_width - 2 * margin)) {
      paper.words(Role::figure, {margin, y}, line);
      y += footer_spacing;
    }
  }
  paper.resize(paper_width, y + margin - footer_spacing);
  return paper;
}

}  // namespace lodebook::drawing
