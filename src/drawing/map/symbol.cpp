// SPDX-License-Identifier: MIT
// Forms, figures and words. Which forms are those of FGDC-STD-013-2006 (FGDC Digital Cartographic
// Standard for Geologic Map Symbolization, 2006, sections 4 to 9) is from memory: they were drawn
// from knowledge of the standard, not traced from its sheets.
#include "symbol.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/decimal.hpp>

#include "../paragraph.hpp"
#include "mark.hpp"

namespace lodebook::drawing {
namespace {

using notebook::Facing;
using notebook::Sense;

/// Half a strike line's length, and how far a symbol's lines reach.
constexpr double half_strike = 3;
constexpr double reach = 3.3;
/// From the place to where the figure begins, down dip or beyond an arrow's head; and where the
/// symbol reaches to all sides.
constexpr double figure_gap = 1.9;
constexpr double figure_gap_all_around = 3;

bool has_sides(Form form) {
  return form == Form::inclined || form == Form::overturned;
}

/// Where the figure's middle stands, so that its box clears the symbol: to the right of a strike,
/// ahead of an arrow.
Point figure_offset(const MapSymbol& symbol, const std::string& figure) {
  const double width = room_for(Role::figure, figure);
  const double height = 0.75 * height_of(Role::figure);
  const double azimuth =
      symbol.azimuth.value_or(symbol.is_plane ? 0 : 90) + (symbol.is_plane ? 90 : 0);
  const Point unit = towards({0, 0}, azimuth, 1);
  const double half = std::min(width / 2 / std::max(std::abs(unit.x), 1e-9),
                               height / 2 / std::max(std::abs(unit.y), 1e-9));
  const bool all_around =
      !symbol.azimuth || (symbol.is_plane && form_of(symbol) == Form::horizontal);
  const double gap = all_around ? figure_gap_all_around : figure_gap;
  return (gap + half) * unit;
}

void draw_figure(Picture& picture, Point at, const MapSymbol& symbol) {
  const std::string figure = figure_of(symbol);
  if (figure.empty()) return;
  const Point middle = at + figure_offset(symbol, figure);
  const double half_width = room_for(Role::figure, figure) / 2;
  const double half_height = 0.4 * height_of(Role::figure);
  picture.area(Role::halo,
               {middle + Point{-half_width, -half_height}, middle + Point{half_width, -half_height},
                middle + Point{half_width, half_height}, middle + Point{-half_width, half_height}});
  // Digits stand on their base line and are about 0.73 of their face high.
  const Point down = {0, 0.365 * height_of(Role::figure)};
  picture.words(Role::figure, middle + down, figure, Words::Anchor::middle);
}

/// The block on the dip side is the hanging wall, which goes down on a normal fault. The ball lies
/// on the side that went down.
void draw_sense(const Turned& on, Sense sense) {
  if (sense == Sense::normal || sense == Sense::reverse) {
    const double side = sense == Sense::normal ? 1 : -1;
    on.line({{-1.9, 0}, {-1.9, 0.8 * side}});
    on.disc({-1.9, 1.2 * side}, 0.5);
    return;
  }
  // The far side moves to the right on a dextral fault: seen across it, from either side.
  const double ahead = sense == Sense::dextral ? -1 : 1;
  for (const double side : {1.0, -1.0}) {
    const double way = ahead * side;
    on.line({{0.8 * way, 0.8 * side}, {2.8 * way, 0.8 * side}, {2.1 * way, 1.4 * side}});
  }
}

void draw_plane(Picture& picture, Point at, const MapSymbol& symbol) {
  const Form form = form_of(symbol);
  const PlaneMark mark = mark_of_plane(symbol.kind);
  const Turned on(picture, at, symbol.azimuth.value_or(90));
  if (form == Form::horizontal && mark == PlaneMark::tick) {
    picture.line(Role::symbol, {at - Point{2, 0}, at + Point{2, 0}});
    picture.line(Role::symbol, {at - Point{0, 2}, at + Point{0, 2}});
    picture.circle(Role::symbol, at, 2);
    if (symbol.facing == Facing::overturned) picture.circle(Role::symbol, at, 2.6);
    return;
  }
  on.line({{-half_strike, 0}, {half_strike, 0}});
  draw_bar(on, mark);
  if (form == Form::unmeasured) return;
  if (form == Form::overturned) {
    on.hook();
    if (mark != PlaneMark::tick) draw_mark(on, mark);
  } else {
    draw_mark(on, mark);
    if (!has_sides(form)) draw_mark(on.mirrored(), mark);
  }
  if (form == Form::horizontal) on.line({{0, -2.6}, {0, 2.6}});
  if (symbol.facing == Facing::upright && form == Form::inclined) on.disc({1.5, 0.75}, 0.35);
  if (shows_sense(symbol)) draw_sense(on, symbol.sense);
}

void draw_line(Picture& picture, Point at, const MapSymbol& symbol) {
  const LineMark mark = mark_of_line(symbol.kind);
  if (form_of(symbol) == Form::vertical) {
    picture.circle(Role::hollow, at, 2.2);
    // An arrow that goes down.
    const Turned on(picture, at + Point{0, 1.4}, 180);
    on.line({{-half_strike, 0}, {0, 0}});
    draw_tail(on, mark);
    draw_head(on, mark);
    return;
  }
  const Turned on(picture, at, symbol.azimuth.value_or(0));
  on.line({{-half_strike, 0}, {1.4, 0}});
  draw_tail(on, mark);
  draw_head(on.ahead(1.4), mark);
  const bool is_level = form_of(symbol) == Form::horizontal && !symbol.is_arrow;
  if (is_level || symbol.two_ended) draw_head(on.ahead(-half_strike).reversed(), mark);
}

}  // namespace

bool shows_sense(const MapSymbol& symbol) {
  if (!symbol.is_plane || symbol.sense == Sense::unstated) return false;
  const Form form = form_of(symbol);
  const bool along_strike = symbol.sense == Sense::dextral || symbol.sense == Sense::sinistral;
  return along_strike ? form != Form::horizontal : has_sides(form);
}

std::string_view letter_of(Sense sense) {
  switch (sense) {
    case Sense::normal:
      return "n";
    case Sense::reverse:
      return "r";
    case Sense::dextral:
      return "d";
    case Sense::sinistral:
      return "s";
    case Sense::unstated:
      break;
  }
  return "";
}

Form form_of(const MapSymbol& symbol) {
  if (!symbol.slope) return Form::unmeasured;
  const std::int64_t printed = rounded(*symbol.slope, 0);
  if (printed == 0 || (symbol.is_plane && !symbol.azimuth)) return Form::horizontal;
  if (std::abs(printed) == 90 || !symbol.azimuth) return Form::vertical;
  return symbol.is_plane && symbol.facing == Facing::overturned ? Form::overturned : Form::inclined;
}

std::string figure_of(const MapSymbol& symbol) {
  const Form form = form_of(symbol);
  std::string figure;
  if (symbol.slope && (has_sides(form) || symbol.suspect))
    append_figure(figure, rounded(*symbol.slope, 0), 0);
  if (!shows_sense(symbol)) figure += letter_of(symbol.sense);
  if (symbol.facing == Facing::unknown || symbol.facing_doubtful) figure += '?';
  return symbol.suspect ? '(' + figure + ')' : figure;
}

double radius_of(const MapSymbol& symbol) {
  const std::string figure = figure_of(symbol);
  if (figure.empty()) return reach;
  const Point middle = figure_offset(symbol, figure);
  return std::max(reach, std::hypot(std::abs(middle.x) + room_for(Role::figure, figure) / 2,
                                    std::abs(middle.y) + 0.375 * height_of(Role::figure)));
}

double clearance(const MapSymbol& symbol, double azimuth) {
  constexpr double beside = 2;
  constexpr double on_figures_side = 65;
  constexpr double along_line = 30;
  const double own = symbol.azimuth.value_or(symbol.is_plane ? 0 : 90);
  const auto apart = [&](double direction) {
    return std::abs(std::remainder(azimuth - direction, 360.0));
  };
  if (!figure_of(symbol).empty() && apart(own + (symbol.is_plane ? 90 : 0)) < on_figures_side)
    return radius_of(symbol);
  const bool is_round = !symbol.azimuth;
  return is_round || std::min(apart(own), apart(own + 180)) < along_line ? reach : beside;
}

void draw_symbol(Picture& picture, Point at, const MapSymbol& symbol) {
  if (symbol.is_plane) {
    draw_plane(picture, at, symbol);
  } else {
    draw_line(picture, at, symbol);
  }
  draw_figure(picture, at, symbol);
}

SymbolMeaning meaning_of(const MapSymbol& symbol) {
  const Form form = form_of(symbol);
  SymbolMeaning meaning;
  meaning.example.kind = symbol.kind;
  meaning.example.is_plane = symbol.is_plane;
  meaning.example.is_arrow = symbol.is_arrow;
  meaning.example.two_ended = symbol.two_ended;
  if (form != Form::horizontal || !symbol.is_plane) meaning.example.azimuth = 90;
  meaning.words = symbol.kind;
  switch (form) {
    case Form::inclined:
      meaning.example.slope = 30;
      break;
    case Form::overturned:
      meaning.example.slope = 30;
      meaning.example.facing = Facing::overturned;
      meaning.words += ", overturned";
      break;
    case Form::vertical:
      meaning.example.slope = 90;
      meaning.words += ", vertical";
      break;
    case Form::horizontal:
      meaning.words += ", horizontal";
      if (symbol.is_plane && symbol.facing == Facing::overturned) {
        meaning.example.facing = Facing::overturned;
        meaning.words += ", overturned";
      }
      break;
    case Form::unmeasured:
      meaning.example.slope.reset();
      meaning.words += symbol.is_plane ? ", dip not read" : ", plunge not read";
      break;
  }
  meaning.is_standard = symbol.is_plane
                            ? is_standard(mark_of_plane(symbol.kind), form, meaning.example.facing)
                            : is_standard(mark_of_line(symbol.kind), form);
  return meaning;
}

}  // namespace lodebook::drawing
