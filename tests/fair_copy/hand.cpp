// SPDX-License-Identifier: MIT
#include "fair_copy/hand.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>

namespace lodebook::test {
namespace {

template <class T>
T one_of(Draw& draw, std::initializer_list<T> of) {
  return of.begin()[draw.below(of.size())];
}

PlaneHabit drawn_planes(Draw& draw, bool quadrant) {
  using enum PlaneHabit;
  if (quadrant)
    return one_of(draw, {strike_dip_side, strike_dip_side, strike_dip_by_rule, words, dip_towards});
  return one_of(draw, {strike_dip_side, strike_dip_by_rule, words, dip_towards, dip_direction_pair,
                       direction_dip_pair});
}

LineHabit drawn_lines(Draw& draw, bool quadrant) {
  using enum LineHabit;
  if (quadrant) return one_of(draw, {trend_plunge, plunge_towards, plunges_to, trends_plunges});
  return one_of(draw, {trend_plunge, plunge_trend, plunge_towards, plunges_to, trends_plunges});
}

bool is_pair(PlaneHabit planes) {
  return planes == PlaneHabit::dip_direction_pair || planes == PlaneHabit::direction_dip_pair;
}

std::string_view drawn_inner(Draw& draw, bool quadrant, bool pairs) {
  if (pairs) return one_of<std::string_view>(draw, {"/", " / "});
  if (!quadrant) return one_of<std::string_view>(draw, {"/", " / ", " "});
  return one_of<std::string_view>(draw, {" ", "/", "/", ", ", " / ", "  "});
}

std::string_view drawn_between(Draw& draw, std::string_view inner) {
  if (inner.find(',') != std::string_view::npos)
    return one_of<std::string_view>(draw, {"; ", " and ", " & "});
  return one_of<std::string_view>(draw, {", ", "; ", " and ", " & ", ";  "});
}

}  // namespace

Hand::Hand(Draw& draw)
    : quadrant(draw.one_in(2)),
      planes(drawn_planes(draw, quadrant)),
      lines(drawn_lines(draw, quadrant)),
      left_hand(draw.one_in(4)),
      layout(one_of(
          draw, {Layout::kind_first, Layout::kind_first, Layout::kind_as_heading, Layout::table})),
      side(one_of(draw, {SideHabit::glued, SideHabit::spaced, SideHabit::to, SideHabit::to_the})),
      letters(draw.one_in(5) ? Letters::small : Letters::capitals),
      degree_signs(draw.one_in(4)),
      spaced_quadrants(draw.one_in(4)),
      drops_noughts(draw.one_in(4)),
      halves_as_fractions(draw.one_in(3)),
      has_halves(draw.one_in(3)),
      upper_case_kinds(draw.one_in(6)),
      inner(drawn_inner(draw, quadrant, is_pair(planes))),
      between(drawn_between(draw, inner)),
      behind_kind(one_of<std::string_view>(draw, {" ", "  ", ": ", "\t"})),
      arrow(one_of<std::string_view>(draw, {" > ", ">", " -> ", "->", " → ", "→"})),
      ditto(one_of<std::string_view>(draw, {"\"", "''", "do.", "ditto", "–", " \" "})),
      bullet(one_of<std::string_view>(draw, {"  ", "- ", "  - ", "\t"})),
      before_remark(one_of<std::string_view>(draw, {", ", "  ", " - ", "; ", " ("})),
      doubt(one_of<std::string_view>(draw, {"?", " ?", "??", " (?)"})),
      cell(one_of<std::string_view>(draw, {"\t", "   ", "    "})),
      station_word(draw.below(64)) {
  // Spaces alone keep neither an empty cell nor a figure apart from the one beside it.
  if (layout == Layout::table) spaced_quadrants = false;
  // With `to` between them, figures apart from each other by a comma read as two readings.
  if (planes == PlaneHabit::words && side == SideHabit::glued) side = SideHabit::to;
}

std::string plain_figure(double degrees) {
  const auto halves = static_cast<int>(std::lround(degrees * 2));
  return std::to_string(halves / 2) + (halves % 2 ? ".5" : "");
}

double turned(double azimuth) {
  const double rest = std::fmod(azimuth, 360.0);
  return rest < 0 ? rest + 360 : rest;
}

std::string_view nearest_point(double azimuth) {
  static constexpr std::string_view rose[] = {"N", "NE", "E", "SE", "S", "SW", "W", "NW"};
  return rose[static_cast<std::size_t>(std::lround(turned(azimuth) / 45)) % 8];
}

std::string Pen::figure(double degrees, bool three_digits) const {
  const auto halves = static_cast<int>(std::lround(degrees * 2));
  std::string whole = std::to_string(halves / 2);
  if (three_digits && !hand_.drops_noughts) whole.insert(0, 3 - whole.size(), '0');
  if (halves % 2) whole += hand_.halves_as_fractions ? "½" : ".5";
  return hand_.degree_signs ? whole + "°" : whole;
}

std::string Pen::slope(double degrees) const {
  return figure(degrees, false);
}

std::string Pen::point(double azimuth) const {
  std::string letters(nearest_point(azimuth));
  if (hand_.letters == Letters::small)
    std::ranges::transform(letters, letters.begin(),
                           [](char c) { return static_cast<char>(std::tolower(c)); });
  return letters;
}

std::string Pen::bearing(double azimuth) const {
  azimuth = turned(azimuth);
  if (!hand_.quadrant) return figure(azimuth, true);
  const bool north = azimuth < 90 || azimuth > 270;
  const bool east = azimuth <= 180;
  const double angle =
      north ? (east ? azimuth : 360 - azimuth) : (east ? 180 - azimuth : azimuth - 180);
  const std::string gap = hand_.spaced_quadrants ? " " : "";
  std::string text = (north ? "N" : "S") + gap + figure(angle, false) + gap + (east ? "E" : "W");
  if (hand_.letters == Letters::small)
    std::ranges::transform(text, text.begin(), [](char c) {
      return c == 'N' || c == 'E' || c == 'S' || c == 'W' ? static_cast<char>(c - 'A' + 'a') : c;
    });
  return text;
}

std::string Pen::with_side(std::string dip, double azimuth) const {
  switch (hand_.side) {
    case SideHabit::glued:
      return dip + point(azimuth);
    case SideHabit::spaced:
      return dip + " " + point(azimuth);
    case SideHabit::to:
      return dip + " to " + point(azimuth);
    case SideHabit::to_the:
      break;
  }
  return dip + " to the " + point(azimuth);
}

std::string Pen::strike_dip(double strike, double dip) const {
  return bearing(strike) + std::string(hand_.inner) + slope(dip);
}

std::string Pen::by_rule(Surface surface) const {
  const double strike = hand_.left_hand ? turned(surface.strike + 180) : surface.strike;
  return strike_dip(strike, surface.dip);
}

std::string Pen::in_words(Surface surface) {
  const std::string strike = bearing(either_end(surface.strike));
  const std::string dip = with_side(slope(surface.dip), surface.strike + 90);
  switch (draw_.below(4)) {
    case 0:
      return "strike " + strike + " dip " + dip;
    case 1:
      return "strike " + strike + ", dips " + dip;
    case 2:
      return "strikes " + strike + " dips " + dip;
    default:
      return strike + " dipping " + dip;
  }
}

std::string Pen::plane(Surface surface) {
  const double direction = turned(surface.strike + 90);
  switch (hand_.planes) {
    case PlaneHabit::strike_dip_side:
      return with_side(strike_dip(either_end(surface.strike), surface.dip), direction);
    case PlaneHabit::strike_dip_by_rule:
      return by_rule(surface);
    case PlaneHabit::words:
      return in_words(surface);
    case PlaneHabit::dip_towards:
      return slope(surface.dip) + std::string(hand_.arrow) + bearing(direction);
    case PlaneHabit::dip_direction_pair:
      return slope(surface.dip) + std::string(hand_.inner) + bearing(direction);
    case PlaneHabit::direction_dip_pair:
      break;
  }
  return bearing(direction) + std::string(hand_.inner) + slope(surface.dip);
}

std::string Pen::impossible_plane(Surface surface) {
  return with_side(strike_dip(surface.strike, surface.dip), surface.strike);
}

std::string Pen::line(Axis axis) const {
  const std::string trend = bearing(axis.trend);
  const std::string plunge = slope(axis.plunge);
  switch (hand_.lines) {
    case LineHabit::trend_plunge:
      return trend + std::string(hand_.inner) + plunge;
    case LineHabit::plunge_trend:
      return plunge + std::string(hand_.inner) + trend;
    case LineHabit::plunge_towards:
      return plunge + std::string(hand_.arrow) + trend;
    case LineHabit::plunges_to:
      return "plunges " + plunge + " to " + trend;
    case LineHabit::trends_plunges:
      break;
  }
  return "trends " + trend + " plunges " + plunge;
}

}  // namespace lodebook::test
