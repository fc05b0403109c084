// SPDX-License-Identifier: MIT
// Roses: areas by counts, both ends of axes, means that mean something.
#include <lodebook/drawing/rose.hpp>

#include "drawn.hpp"
#include "summed_up.hpp"

namespace lodebook::drawing {

using namespace lodebook::test;

namespace {

const std::string heading_lines = "set 0\ndeclination 0\nrule right\nstation Q1\n";

Picture rose_of(const std::string& readings, int bin_degrees = 10) {
  const SummedUp sum(heading_lines + readings);
  return rose_picture(sum.document(), bin_degrees);
}

Circle rim_of(const Picture& picture) {
  return drawn<Circle>(picture, Role::frame).at(0);
}

double azimuth_of(const Circle& rim, Point point) {
  const double degrees =
      std::atan2(point.x - rim.center.x, rim.center.y - point.y) * 180 / std::numbers::pi;
  return degrees < 0 ? degrees + 360 : degrees;
}

/// Area over that of the largest, by the number of the bin.
std::vector<double> shares(const Picture& picture, int bin_degrees) {
  std::vector<double> areas(static_cast<std::size_t>(360 / bin_degrees));
  const Circle rim = rim_of(picture);
  double largest = 0;
  for (const Path& petal : drawn<Path>(picture, Role::petal)) {
    const auto& ring = petal.parts.at(0);
    const double middle = azimuth_of(rim, middle_of(ring));
    const double area = std::abs(area_of(ring));
    areas[static_cast<std::size_t>(middle / bin_degrees)] = area;
    largest = std::max(largest, area);
    for (const Point& point : ring)
      CHECK(distance(point, rim.center) < rim.radius + 1e-9);
  }
  for (double& area : areas)
    area /= largest;
  return areas;
}

}  // namespace

TEST_CASE("petals have areas by their counts, of axes at both ends") {
  const Picture picture = rose_of(
      "joint 012 80\njoint 018 80\njoint 193 80\njoint 195 80\njoint 047 80\njoint 230 70\n"
      "joint 095 80\n");
  const auto areas = shares(picture, 10);
  CHECK(drawn<Path>(picture, Role::petal).size() == 8);
  for (std::size_t bin = 0; bin < areas.size(); ++bin) {
    const std::size_t half = bin % 18;
    const double count = half == 1 ? 4 : half == 4 || half == 5 || half == 9 ? 1 : 0;
    INFO(bin);
    CHECK(std::abs(areas[bin] - count / 4) < 1e-9);
  }
}

TEST_CASE("repeats of one surface make one petal's count, and a tick each") {
  const Picture picture = rose_of("joint 012 80, 014 80, 016 80\njoint 047 80\n");
  const auto areas = shares(picture, 10);
  CHECK(std::abs(areas[1] - 1) < 1e-9);
  CHECK(std::abs(areas[4] - 1) < 1e-9);
  CHECK(drawn<Path>(picture, Role::tick).size() == 8);
  CHECK(contains(words_of(picture), "2 strikes"));
  CHECK(contains(words_of(picture), "Repeats of one surface count once, as their mean."));
}

TEST_CASE("trends are arrows and count once") {
  const auto areas = shares(rose_of("current 012/10\ncurrent 015/10\ncurrent 195/05\n"), 10);
  CHECK(std::abs(areas[1] - 1) < 1e-9);
  CHECK(std::abs(areas[19] - 0.5) < 1e-9);
  CHECK(std::ranges::count_if(areas, [](double area) { return area > 0; }) == 2);
}

TEST_CASE("a figure on the edge of two bins belongs to the one that it begins") {
  for (const int width : {2, 5, 10, 15, 20, 30, 45}) {
    const auto areas = shares(rose_of("joint 090 80\njoint 180 80\njoint 000 80\n", width), width);
    INFO(width);
    const auto bins = static_cast<std::size_t>(360 / width);
    const auto ninety = static_cast<std::size_t>(90 / width);
    CHECK(std::abs(areas[0] - 1) < 1e-9);
    CHECK(std::abs(areas[bins / 2] - 1) < 1e-9);
    CHECK(areas[ninety] > 0.49);
    CHECK(areas[bins / 2 + ninety] > 0.49);
    CHECK(areas.size() == bins);
  }
}

TEST_CASE("just under north is the last bin") {
  const auto areas = shares(rose_of("lineation 359.9/10\nlineation 360/10\n", 30), 30);
  CHECK(std::abs(areas[11] - 1) < 1e-9);
  CHECK(std::abs(areas[0] - 1) < 1e-9);
}

TEST_CASE("every reading has a tick on the rim, an axis one at either end") {
  const Picture picture = rose_of("joint 033 80\nlineation 200/20\n");
  const auto ticks = drawn<Path>(picture, Role::tick);
  const auto rims = drawn<Circle>(picture, Role::frame);
  REQUIRE(ticks.size() == 3);
  REQUIRE(rims.size() == 2);
  const std::array<std::pair<std::size_t, double>, 3> expected = {{{0, 33}, {0, 213}, {1, 200}}};
  for (std::size_t i = 0; i < 3; ++i) {
    const auto& [rim, azimuth] = expected[i];
    const auto& line = ticks[i].parts.at(0);
    CHECK(std::abs(azimuth_of(rims[rim], line[0]) - azimuth) < 1e-9);
    CHECK(std::abs(azimuth_of(rims[rim], line[1]) - azimuth) < 1e-9);
    CHECK(std::abs(distance(line[0], rims[rim].center) - rims[rim].radius) < 1e-9);
  }
}

TEST_CASE("the mean has a line and a sector within the rim, of axes at both ends") {
  const SummedUp sum(heading_lines +
                     "joint 028 80\njoint 030 80\njoint 212 80\njoint 214 70\njoint 035 80\n");
  const CircularMean& mean = sum.summaries.at(0).azimuths;
  REQUIRE(mean.is_meaningful());
  const Picture picture = rose_picture(sum.document(), 10);
  const Circle rim = rim_of(picture);
  const auto lines = drawn<Path>(picture, Role::mean);
  const auto sectors = drawn<Path>(picture, Role::sector);
  REQUIRE(lines.size() == 2);
  REQUIRE(sectors.size() == 2);
  for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
    const double azimuth = *mean.azimuth + 180 * static_cast<double>(end);
    CHECK(std::abs(azimuth_of(rim, lines[end].parts[0][1]) - azimuth) < 1e-9);
    const auto& sector = sectors[end].parts[0];
    CHECK(std::abs(azimuth_of(rim, sector.front()) - (azimuth - *mean.arc95)) < 1e-9);
    CHECK(std::abs(azimuth_of(rim, sector.end()[-2]) - (azimuth + *mean.arc95)) < 1e-9);
    CHECK(distance(sector.back(), rim.center) < 1e-9);
    for (const Point& point : sector)
      CHECK(distance(point, rim.center) < rim.radius + 1e-9);
    CHECK(distance(lines[end].parts[0][1], rim.center) < rim.radius + 1e-9);
  }
}

TEST_CASE("no mean is drawn where it would mean nothing, and the words say so") {
  const Picture two = rose_of("joint 028 80\njoint 030 80\n");
  CHECK(drawn<Path>(two, Role::mean).empty());
  CHECK(contains(words_of(two), "no mean: resultant 1.00"));
  const Picture all_round = rose_of(
      "lineation 000/10\nlineation 080/10\nlineation 160/10\nlineation 240/10\nlineation 320/10\n");
  CHECK(drawn<Path>(all_round, Role::mean).empty());
  CHECK(drawn<Path>(all_round, Role::sector).empty());
  CHECK(contains(words_of(all_round), "5 trends; no single mean: too scattered"));
  const Picture sets = rose_of(
      "joint 020 80\njoint 022 80\njoint 018 80\njoint 021 80\njoint 019 80\njoint 080 80\n"
      "joint 082 80\njoint 078 80\njoint 081 80\njoint 079 80\n");
  CHECK(drawn<Path>(sets, Role::mean).empty());
  CHECK(contains(words_of(sets), "no single mean: two clear sets"));
}

TEST_CASE("what has no direction is counted in words") {
  const Picture picture = rose_of("bedding horizontal\nbedding 070 30\n");
  CHECK(contains(words_of(picture), "1 strike, 1 more without a direction"));
  const Picture none = rose_of("bedding horizontal\n");
  CHECK(drawn<Path>(none, Role::petal).empty());
  CHECK(contains(words_of(none), "0 strikes, 1 more without a direction"));
  CHECK(is_on_paper(none));
}

TEST_CASE("a trend without its plunge is in the rose") {
  const Picture picture = rose_of("current 118\ncurrent 120\ncurrent from 302\n");
  CHECK(drawn<Path>(picture, Role::petal).size() == 2);
  CHECK(drawn<Path>(picture, Role::mean).size() == 1);
  CHECK(contains(words_of(picture), "3 trends; mean 120.0"));
}

TEST_CASE("a strike alone and a two-ended line count at both ends") {
  const Picture strikes = rose_of("joint strike 012\njoint dip 13\n");
  CHECK(drawn<Path>(strikes, Role::petal).size() == 2);
  CHECK(drawn<Path>(strikes, Role::tick).size() == 2);
  CHECK(contains(words_of(strikes), "1 strike, 1 more without a direction"));
  const Picture grooves = rose_of("groove 012\ngroove 013/20\n");
  CHECK(drawn<Path>(grooves, Role::petal).size() == 2);
  CHECK(drawn<Path>(grooves, Role::tick).size() == 4);
}

TEST_CASE("rings of the scale are by the square root of their counts") {
  std::string readings;
  for (int i = 0; i < 8; ++i)
    readings += "lineation 01" + std::to_string(i) + "/10\n";
  const Picture picture = rose_of(readings);
  const Circle rim = rim_of(picture);
  std::vector<double> radii;
  for (const Circle& ring : drawn<Circle>(picture, Role::grid))
    radii.push_back(ring.radius / rim.radius);
  REQUIRE(radii.size() == 2);
  CHECK(std::abs(radii[0] - std::sqrt(4.0 / 8)) < 1e-12);
  CHECK(std::abs(radii[1] - std::sqrt(2.0 / 8)) < 1e-12);
}

TEST_CASE("figures of the scale stand away from petals where there is room") {
  const Picture picture = rose_of("lineation 045/10\nlineation 044/10\nlineation 046/20\n");
  const Circle rim = rim_of(picture);
  std::size_t figures = 0;
  for (const Words& words : drawn<Words>(picture, Role::figure)) {
    if (words.text != "3" && words.text != "1") continue;
    ++figures;
    CHECK(std::abs(std::remainder(azimuth_of(rim, words.at) - 45, 360)) > 20);
  }
  CHECK(figures == 2);
}

TEST_CASE("width and origin of bins are stated") {
  CHECK(contains(words_of(rose_of("joint 028 80\n", 15)),
                 "Bins of 15 degrees, the first from 000 to 015"));
}

TEST_CASE("roses of two norths say theirs") {
  const SummedUp sum(std::vector<NamedLog>{
      {"one.txt", "set 0\ndeclination 5E\nrule right\nstation Q1\njoint 090 30\n"},
      {"two.txt", "set 0\nrule right\nstation Q1\njoint 090 30\n"}});
  const std::string words = words_of(rose_picture(sum.document(), 10));
  CHECK(contains(words, "joint, from true north\n"));
  CHECK(contains(words, "joint, from magnetic north\n"));
}

TEST_CASE("nothing to draw and names of any length leave a paper in order") {
  CHECK(contains(words_of(rose_of("")), "No planes and no lines."));
  CHECK(is_on_paper(rose_of("")));
  const SummedUp sum({{std::string(2000, 'x'), "set 0\ndeclination 0\nrule right\nstation " +
                                                   std::string(2000, 'y') + "\nunit " +
                                                   std::string(2000, 'z') + "\njoint 090 30\n"}},
                     {true, true});
  const Picture picture = rose_picture(sum.document(), 10);
  CHECK(is_on_paper(picture));
  CHECK(is_balanced(picture));
  CHECK(picture.height() < 300);
}

}  // namespace lodebook::drawing
