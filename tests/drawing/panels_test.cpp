// SPDX-License-Identifier: MIT
// Drawings side by side, and words that fit their lines.
#include <lodebook/drawing/panels.hpp>

#include "../../src/drawing/paragraph.hpp"
#include "drawn.hpp"

using namespace lodebook::drawing;
using namespace lodebook::test;

namespace {

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines)
    text += (text.empty() ? "" : " ") + line;
  return text;
}

/// Panels of the width that so many have, with a frame as high as its number.
std::vector<Picture> panels(std::size_t count) {
  std::vector<Picture> panels;
  const double width = panel_width(count);
  for (std::size_t i = 0; i < count; ++i) {
    const double height = 20 + static_cast<double>(i);
    Picture& panel = panels.emplace_back("panel", "", "", width, height);
    panel.area(Role::frame, {{0, 0}, {width, 0}, {width, height}, {0, height}});
  }
  return panels;
}

struct Box {
  double left = 0;
  double right = 0;
  double top = 0;
  double bottom = 0;
};

std::vector<Box> boxes_of(const Picture& picture) {
  std::vector<Box> boxes;
  for (const Path& path : drawn<Path>(picture, Role::frame)) {
    const auto& ring = path.parts.at(0);
    boxes.push_back({ring[0].x, ring[1].x, ring[0].y, ring[2].y});
  }
  return boxes;
}

}  // namespace

TEST_CASE("lines are broken at spaces, lose nothing and fit") {
  const std::string text = "the quick brown fox jumps over the lazy dog and is not seen again";
  for (const double width : {12.0, 20.0, 60.0, 500.0}) {
    const auto lines = lines_of(text, Role::figure, width);
    CHECK(joined(lines) == text);
    for (const std::string& line : lines)
      CHECK(width_of(Role::figure, line) <= width);
  }
  CHECK(lines_of(text, Role::figure, 500).size() == 1);
  CHECK(lines_of("", Role::figure, 20).empty());
}

TEST_CASE("a word longer than a line is broken between its letters, not within one") {
  std::string word;
  for (int i = 0; i < 500; ++i)
    word += "\u00d1";
  const auto lines = lines_of("so " + word, Role::label, 30);
  REQUIRE(lines.size() > 10);
  CHECK(lines[0] == "so");
  std::string again;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    CHECK(width_of(Role::label, lines[i]) <= 30);
    CHECK(lines[i].size() % 2 == 0);
    again += lines[i];
  }
  CHECK(again == word);
  // Even where not one letter fits, there is an end.
  CHECK(lines_of("abc", Role::label, 0.1) == std::vector<std::string>{"a", "b", "c"});
}

TEST_CASE("a long name takes three lines, and says that it is longer") {
  std::string name;
  for (int i = 0; i < 100; ++i)
    name += "wide ";
  const auto lines = heading_of(name, Role::label, 50);
  REQUIRE(lines.size() == 3);
  CHECK(lines[2].ends_with("\u2026"));
  for (const std::string& line : lines)
    CHECK(width_of(Role::label, line) <= 50);
  CHECK(heading_of("grey schist", Role::label, 50) == std::vector<std::string>{"grey schist"});
}

TEST_CASE("a name is cut off at a letter") {
  CHECK(shortened("H1", Role::figure, 20) == "H1");
  const std::string cut = shortened("\u00d1\u00d1\u00d1\u00d1\u00d1\u00d1\u00d1", Role::figure, 5);
  CHECK(cut.ends_with("\u2026"));
  CHECK(width_of(Role::figure, cut) <= 5);
  CHECK(cut.starts_with("\u00d1"));
}

TEST_CASE("panels stand in rows without touching, whatever their number") {
  for (const std::size_t count : {1U, 2U, 3U, 4U, 5U, 7U, 12U}) {
    const Picture paper = arranged("p", "Title", "", panels(count), {"footer"});
    const auto boxes = boxes_of(paper);
    REQUIRE(boxes.size() == count);
    CHECK(is_on_paper(paper));
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        const bool apart = boxes[i].left > boxes[k].right || boxes[k].left > boxes[i].right ||
                           boxes[i].top > boxes[k].bottom || boxes[k].top > boxes[i].bottom;
        CHECK(apart);
      }
      if (i == 0) continue;
      // Read as a page: to the right, or lower.
      CHECK((boxes[i].left > boxes[i - 1].right || boxes[i].top > boxes[i - 1].bottom));
    }
  }
}

TEST_CASE("the footer stands below every panel, and long lines of it are broken") {
  std::string words;
  for (int i = 0; i < 60; ++i)
    words += "magnetic ";
  const Picture paper = arranged("p", "Title", "", panels(5), {words, "last"});
  double lowest = 0;
  for (const Box& box : boxes_of(paper))
    lowest = std::max(lowest, box.bottom);
  const auto lines = drawn<Words>(paper, Role::figure);
  REQUIRE(lines.size() > 3);
  for (const Words& line : lines)
    CHECK(line.at.y - height_of(Role::figure) > lowest);
  CHECK(lines.back().text == "last");
  CHECK(is_on_paper(paper));
}

TEST_CASE("no panels leave a paper with its title and footer") {
  const Picture paper = arranged("p", "Title", "", {}, {"none"});
  CHECK(words_of(paper) == "Title\nnone\n");
  CHECK(is_on_paper(paper));
  CHECK(paper.height() > 20);
}
