// SPDX-License-Identifier: MIT
// Positions made by hand: figures that no log needs to reach.
#pragma once

#include <lodebook/reduction/fixes.hpp>

#include "joined.hpp"

namespace lodebook::test {

/// A log of which only its name and lines count.
inline notebook::Source fix_source(std::string name = "day3.txt") {
  std::string text;
  for (int i = 0; i < 60; ++i)
    text += "  sight Cairn N17W\n";
  return {std::move(name), std::move(text)};
}

inline constexpr earth::Position cairn{-44.6502, 169.0314};
inline constexpr earth::Position dome{-44.6711, 168.992};
inline constexpr earth::Position saddle{-44.7033, 169.0467};
inline constexpr earth::Position q2{-44.6891, 169.0144};

inline reduction::FixedSight a_sight(std::string_view name, std::uint32_t line,
                                     const earth::Position& known, double bearing) {
  reduction::FixedSight sight;
  sight.name = name;
  sight.line = line;
  sight.known = known;
  sight.bearing = bearing;
  sight.sigma = 0.5;
  return sight;
}

inline reduction::LocatedStation a_station(std::string_view name, std::uint32_t line) {
  reduction::LocatedStation station;
  station.name = name;
  station.line = line;
  return station;
}

/// Q2 from three sights that agree.
inline reduction::SightFix good_fix() {
  reduction::SightFix fix;
  fix.name = "Q2";
  fix.line = 30;
  fix.position = q2;
  fix.covariance = {9, 0, 25};
  fix.ellipse = {12.04, 8, 40.4};
  fix.sights = {a_sight("Cairn", 31, cairn, 17.26), a_sight("Trig-Dome", 32, dome, 318.34),
                a_sight("Saddle", 33, saddle, 121.64)};
  for (reduction::FixedSight& sight : fix.sights) {
    sight.residual = -0.26;
    sight.offset_m = -11.24;
    sight.distance_m = 2140.06;
  }
  fix.cuts = {{0, 1, 58.92}, {0, 2, 75.62}, {1, 2, 16.7}};
  fix.triangle = reduction::ErrorTriangle{{cairn, dome, saddle}, 312.04, 24.16};
  fix.implied = reduction::ImpliedDeclination{24.14, 0.84};
  fix.chi_square = 1.34;
  fix.best_cut = 75.62;
  fix.points = 3;
  fix.freedom = 1;
  fix.chance = 0.247;
  return fix;
}

/// The same after someone read the other end of the needle.
inline reduction::SightFix bad_fix() {
  reduction::SightFix fix = good_fix();
  fix.chi_square = 310.44;
  fix.chance = 1e-9;
  fix.agrees = false;
  fix.sights[0].suspicion = "the other end of the needle";
  fix.slips = {{0, "the other end of the needle", 1.24}, {std::nullopt, "set taken twice", 2}};
  return fix;
}

inline void take_position(reduction::LocatedStation& station, const reduction::SightFix& fix) {
  station.position = fix.position;
  station.from = reduction::PositionFrom::sights;
  station.covariance = fix.covariance;
  station.ellipse = fix.ellipse;
}

/// A bit of all: a stated station, one from sights, one from legs, one without a position, a
/// landmark, a loop and an open leg, local attraction, a warning.
inline reduction::Fixes some_fixes() {
  reduction::Fixes fixes;
  fixes.stations = {a_station("Q1", 20), a_station("Q2", 30), a_station("Q3", 40),
                    a_station("Q4", 50)};
  fixes.stations[0].position = earth::Position{-44.69, 169.02};
  fixes.stations[0].covariance = reduction::Covariance::round(8);
  fixes.stations[0].ellipse = reduction::ErrorEllipse{19.58, 19.58, 0};
  fixes.stations[0].stated_elevation_m = 812;
  take_position(fixes.stations[1], good_fix());
  fixes.stations[1].elevation = reduction::FoundElevation{815.34, 2.06, 2};
  fixes.stations[2].position = earth::Position{-44.6892, 169.0152};
  fixes.stations[2].from = reduction::PositionFrom::legs;
  fixes.stations[2].covariance = reduction::Covariance{16, 2, 9};

  reduction::SightFix nothing;
  nothing.name = "Q4";
  nothing.line = 50;
  nothing.fault = reduction::SightFault::too_few;
  nothing.sights = {a_sight("Cairn", 51, cairn, 359.996)};

  reduction::SightFix peak;
  peak.name = "Peak";
  peak.is_landmark = true;
  peak.line = 5;
  peak.position = earth::Position{-44.66, 169.05};
  peak.covariance = {100, 0, 100};
  peak.ellipse = {30, 20, 179.999};
  peak.sights = {a_sight("Q1", 22, {-44.69, 169.02}, 35.5), a_sight("Q2", 34, q2, 41)};
  peak.cuts = {{0, 1, 5.5}};
  peak.best_cut = 5.5;
  peak.weak_cut = true;
  fixes.sight_fixes = {good_fix(), nothing, peak};

  reduction::LocatedLandmark known;
  known.name = "Cairn";
  known.position = cairn;
  known.stated_elevation_m = 1412;
  reduction::LocatedLandmark found;
  found.name = "Peak";
  found.position = peak.position;
  found.is_found = true;
  fixes.landmarks = {known, found};

  reduction::FixLeg leg;
  leg.line = 23;
  leg.from = 0;
  leg.to = 1;
  leg.azimuth = leg.fore = 282.64;
  leg.measured_m = 457.5;
  leg.vertical_angle = 5.9;
  leg.distance_m = 455.06;
  leg.back = 102;
  leg.disagreement = 0.64;
  leg.corrected = reduction::CorrectedBearings{282.64, 102.64};
  fixes.legs.push_back(leg);
  leg = {};
  leg.line = 35;
  leg.from = 2;
  leg.to = 1;
  leg.azimuth = leg.fore = 279;
  leg.measured_m = leg.distance_m = 64.24;
  fixes.legs.push_back(leg);

  reduction::Traverse loop;
  loop.kind = reduction::Traverse::Kind::loop;
  loop.stations = {0, 1, 0};
  loop.legs = {{0, false, -444.04, 99.54, 0.46, -0.34}, {0, true, 443.06, -99, 0.5, -0.2}};
  loop.length_m = 910.12;
  loop.departure_misclosure_m = -0.98;
  loop.latitude_misclosure_m = 0.54;
  loop.misclosure_m = 1.12;
  loop.precision = 812.4;
  reduction::Traverse open;
  open.stations = {1, 2};
  open.legs = {{1, true, 63.44, -10.06, 0, 0}};
  open.length_m = 64.24;
  fixes.traverses = {loop, open};

  fixes.attraction = reduction::Attraction{{{0, true, 0}, {1, false, 0.64}}, {}};
  notebook::Diagnostic diagnostic;
  diagnostic.code = notebook::Code::back_bearing;
  diagnostic.severity = notebook::Severity::warning;
  diagnostic.place = {23, 3, 8};
  diagnostic.message = "fore and back disagree";
  const std::uint32_t line_23 = 22 * 19;
  diagnostic.fixes = {{{line_23 + 14, 4}, "S17E"}, {{line_23, 0}, "rule right\n"}};
  fixes.diagnostics = {diagnostic};
  return fixes;
}

/// Names that every format has its own trouble with, and a station fixed across the antimeridian.
inline reduction::Fixes awkward_fixes() {
  reduction::Fixes fixes;
  fixes.stations = {a_station("=1+1", 20), a_station("Q \"two\", \x1b[31m\xFF", 30)};
  reduction::SightFix fix;
  fix.name = fixes.stations[0].name;
  fix.line = 20;
  fix.position = earth::Position{-17.0, 179.99999};
  fix.covariance = {4, 0, 4};
  fix.ellipse = {6, 4, 90};
  fix.sights = {a_sight("@Peak\"\x07", 21, {-17.001, -179.99}, 96),
                a_sight("East", 22, {-17.002, 179.98}, 258)};
  fix.sights[0].suspicion = "read \"backwards\", at 180\x07";
  fixes.sight_fixes = {fix};
  take_position(fixes.stations[0], fix);
  return fixes;
}

/// Writes a document the way the program does.
template <class Writer>
std::string fix_text(Writer writer, const std::vector<reduction::Fixes>& logs,
                     std::string name = "day3.txt") {
  const notebook::Source source = fix_source(std::move(name));
  return joined(writer, logs, [&](Writer& one, std::string& out, const reduction::Fixes& fixes) {
    one.log(out, source, fixes);
  });
}

}  // namespace lodebook::test
