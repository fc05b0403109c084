// SPDX-License-Identifier: MIT
// Maps of much in one place, and of odd places: nothing is dropped, nothing leaves the paper.
#include <lodebook/drawing/map.hpp>

#include <algorithm>
#include <drawing/mapped.hpp>
#include <small_log.hpp>

namespace drawing = lodebook::drawing;
using namespace lodebook::test;

namespace {

std::string many(int count) {
  std::string log = "station Q1 at 44.6891S 169.0144E\n";
  for (int i = 0; i < count; ++i)
    log += "bedding " + std::to_string(100 + i % 250) + '/' + std::to_string(10 + i % 75) + '\n';
  return log;
}

}  // namespace

TEST_CASE("crowded symbols are moved aside, each with a leader from its station") {
  const Picture picture = mapped(many(300)).picture;
  check_on_paper(picture);
  const std::vector<Point> symbols = middles(picture);
  CHECK(symbols.size() == 300);
  const Frame frame = frame_of(picture);
  double nearest = 1e9;
  for (std::size_t i = 0; i < symbols.size(); ++i) {
    CHECK(frame.holds(symbols[i]));
    for (std::size_t j = 0; j < i; ++j)
      nearest = std::min(nearest, distance(symbols[i], symbols[j]));
  }
  // Symbols with figures reach 4.5 mm or more.
  CHECK(nearest >= 9);
  const std::vector<Point> station = dots(picture);
  REQUIRE(station.size() == 1);
  std::vector<Point> ends;
  for (const Shape& shape : shapes_of(picture, Role::leader)) {
    const auto& line = std::get<Path>(shape.form).parts.front();
    if (line[0] == station.front()) ends.push_back(line[1]);
  }
  std::size_t moved = 0;
  std::size_t led = 0;
  for (const Point& symbol : symbols) {
    if (symbol == station.front()) continue;
    ++moved;
    led +=
        std::ranges::any_of(ends, [&](Point end) { return distance(end, symbol) < 5.6; }) ? 1U : 0U;
  }
  CHECK(moved == 299);
  CHECK(led == moved);
  CHECK(ends.size() >= moved);
}

TEST_CASE("a station's name stands free of all symbols") {
  const Picture picture = mapped(many(40)).picture;
  const Frame frame = frame_of(picture);
  std::optional<Point> name;
  for (const Words& words : words_of(picture, Role::label)) {
    if (words.text == "Q1" && frame.holds(words.at)) name = words.at;
  }
  REQUIRE(name);
  for (const Point& symbol : middles(picture))
    CHECK(distance(symbol, *name) > 3.3);
}

TEST_CASE("the legend explains leaders where only a name has one") {
  // Many names at one place: some have no room beside it.
  const std::string station = "station Long-Name-Of-A-Station at 44.6891S 169.0144E\n";
  const Picture alone = mapped(station).picture;
  CHECK(shapes_of(alone, Role::leader).empty());
  CHECK_FALSE(says(text_of(alone), "line to its place"));
  std::string landmarks;
  for (int i = 0; i < 8; ++i)
    landmarks += "landmark Cairn-" + std::to_string(i) + " 44.6891S 169.0144E\n";
  const Picture crowded = mapped(landmarks + station).picture;
  // One more is in the legend.
  CHECK(shapes_of(crowded, Role::leader).size() > 1);
  CHECK(says(text_of(crowded), "line to its place"));
}

TEST_CASE("a station without a place leaves no trace within the frame") {
  // Q3 is near the middle of the frame.
  const std::string placed =
      "station Q1 at 44.6891S 169.0144E\nstation Q2 at 44.6991S 169.0344E\n"
      "station Q3 at 44.6940S 169.0240E\nbedding 078/41\n";
  const Picture picture = mapped(placed + "station Q4\nbedding 078/41\n").picture;
  CHECK(dots(picture).size() == 3);
  CHECK(shapes_of(picture, Role::leader).empty());
}

TEST_CASE("many readings need larger paper, and none is dropped") {
  const Picture picture = mapped(many(2000)).picture;
  CHECK(drawn(picture).size() == 2000);
  CHECK(picture.width() > 400);
  check_on_paper(picture);
}

TEST_CASE("odd places give finite maps on their paper") {
  const std::vector<std::string> logs = {
      "station A at 16.85S 179.98E\nbedding 078/41\nstation B at 16.86S 179.985W\nbedding 078/41\n",
      "station A at 89.99N 10E\nbedding 078/41\nstation B at 89.98N 170W\nbedding horizontal\n",
      "station A at 90N 0E\nbedding 078/41\nlineation 010/20\n",
      "station A at 90S 0E\nbedding 078/41\n",
      "landmark L 10N 10E\nstation A at 44.7S 169E\nbedding 078/41\nsight L 010\n"
      "station B at 55.6N 62.4W\nlineation 040/10\n",
      "station A at 44.7S 169E\nstation B at 44.7N 11W\nbedding 078/41\n",
      "station A at 44.7S 169E\n",
      "landmark L 44.7S 169E\nstation A\nbedding 078/41\n",
      "station A\nbedding 078/41\n",
      "",
      "station " + std::string(3000, 'A') + " at 44.7S 169E\nbedding 078/41\n",
      "landmark <script>&\" 44.7S 169E\nstation <i/ at 44.7S 169E\nsight Nowhere 010\n"};
  for (const std::string& log : logs) {
    INFO(log.substr(0, 200));
    const Mapped map = mapped(log);
    check_on_paper(map.picture);
    std::string svg;
    drawing::append_svg_file(svg, map.picture);
    CHECK_FALSE(says(svg, "nan"));
    CHECK_FALSE(says(svg, "inf\""));
    CHECK_FALSE(says(svg, "<script"));
    CHECK_FALSE(says(svg, "<i/"));
  }
}

TEST_CASE("stations on both sides of the antimeridian lie side by side") {
  const std::vector<Point> found =
      dots(mapped("station A at 16.85S 179.99E\nstation B at 16.85S 179.99W\n").picture);
  REQUIRE(found.size() == 2);
  CHECK(found[1].x > found[0].x);
  CHECK(std::abs(found[0].y - found[1].y) < 2);
}

TEST_CASE("the same logs give the same bytes") {
  const std::vector<std::string> logs = {small_log, on_the_map + many(50)};
  std::string first;
  std::string second;
  drawing::append_svg_file(first, mapped(logs).picture);
  drawing::append_svg_file(second, mapped(logs).picture);
  CHECK(first == second);
}
