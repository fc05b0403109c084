// SPDX-License-Identifier: MIT
// A point, a traverse or a leg on a line.
#include <array>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/fix_json.hpp>
#include <lodebook/output/fix_report.hpp>
#include <lodebook/output/table.hpp>

#include "fix_pieces.hpp"
#include "json_pieces.hpp"

namespace lodebook::output {
namespace {

using reduction::Fixes;
using reduction::FixLeg;
using reduction::SightFix;
using reduction::Traverse;

constexpr int version = 1;

std::string_view word_of(reduction::SightFault fault) {
  using reduction::SightFault;
  switch (fault) {
    case SightFault::too_few:
      return "too-few";
    case SightFault::parallel:
      return "parallel";
    case SightFault::behind:
      return "behind";
    case SightFault::at_known_point:
      return "at-known-point";
    case SightFault::too_far:
      return "too-far";
    case SightFault::undetermined:
      break;
  }
  return "undetermined";
}

/// Why sights give no position; null where they do, and where there are none.
Json fault_of(const SightFix* fix) {
  if (fix == nullptr) return {};
  if (fix->without_declination) return "without-declination";
  return fix->fault ? Json(word_of(*fix->fault)) : Json();
}

Json name_of(const SightFix& fix, std::size_t sight) {
  return text_or_null(fix.sights[sight].name);
}

Json sights_of(const SightFix* fix) {
  Json array = Json::array();
  if (fix == nullptr) return array;
  for (const reduction::FixedSight& sight : fix->sights) {
    array.push_back({{fix->is_landmark ? "station" : "landmark", text_or_null(sight.name)},
                     {"line", sight.line},
                     {"bearing", azimuth_figure(sight.bearing)},
                     {"residual", figure(sight.residual, 2)},
                     {"offset_m", figure(sight.offset_m, 2)},
                     {"distance_m", figure(sight.distance_m, 2)},
                     {"suspicion", text_or_null(sight.suspicion)}});
  }
  return array;
}

Json cuts_of(const SightFix* fix) {
  Json array = Json::array();
  if (fix == nullptr) return array;
  for (const reduction::Cut& cut : fix->cuts) {
    array.push_back({{"first", name_of(*fix, cut.first)},
                     {"second", name_of(*fix, cut.second)},
                     {"degrees", figure(cut.degrees, 2)}});
  }
  return array;
}

Json slips_of(const SightFix* fix) {
  Json array = Json::array();
  if (fix == nullptr) return array;
  for (const reduction::SightSlip& slip : fix->slips) {
    array.push_back({{"sight", slip.sight ? name_of(*fix, *slip.sight) : Json()},
                     {"slip", notebook::valid_utf8(slip.words)},
                     {"chi_square", figure(slip.chi_square, 2)}});
  }
  return array;
}

Json triangle_of(const SightFix* fix) {
  if (fix == nullptr || !fix->triangle) return {};
  Json corners = Json::array();
  for (const earth::Position& corner : fix->triangle->corners)
    corners.push_back(Json::array({figure(corner.longitude, 7), figure(corner.latitude, 7)}));
  return {{"corners", corners},
          {"area_m2", figure(fix->triangle->area_m2, 2)},
          {"longest_side_m", figure(fix->triangle->longest_side_m, 2)}};
}

Json implied_of(const SightFix* fix) {
  if (fix == nullptr || !fix->implied) return {};
  return {{"declination", figure(fix->implied->degrees_east, 2)},
          {"uncertainty", figure(fix->implied->sigma, 2)},
          {"differs", fix->implied->verdict == reduction::ImpliedDeclination::Verdict::differs}};
}

Json json_of(const FoundPoint& point) {
  Json grid;
  if (point.position) {
    std::string shown;
    append_grid(shown, *point.position, 2);
    grid = shown;
  }
  const auto degrees = [&](double earth::Position::*member) {
    return point.position ? figure((*point.position).*member, 7) : Json();
  };
  const auto& ellipse = point.ellipse;
  const SightFix* const fix = point.fix;
  const bool is_fixed = fix != nullptr && fix->position;
  return {{"name", text_or_null(point.name)},
          {"line", point.line ? Json(*point.line) : Json()},
          {"latitude", degrees(&earth::Position::latitude)},
          {"longitude", degrees(&earth::Position::longitude)},
          {"grid", grid},
          {"position_from", text_or_null(point.position_from())},
          {"accuracy_m", figure(point.accuracy_m(), 2)},
          {"semi_major_m", ellipse ? figure(ellipse->semi_major_m, 2) : Json()},
          {"semi_minor_m", ellipse ? figure(ellipse->semi_minor_m, 2) : Json()},
          {"major_azimuth", ellipse ? axis_figure(ellipse->major_azimuth) : Json()},
          {"elevation_m", figure(point.elevation_m(), 2)},
          {"elevation_sigma_m", figure(point.elevation_sigma_m(), 2)},
          {"sights", sights_of(fix)},
          {"cuts", cuts_of(fix)},
          {"chi_square", is_fixed ? figure(fix->chi_square, 2) : Json()},
          {"freedom", is_fixed ? Json(fix->freedom) : Json()},
          {"chance", is_fixed ? figure(fix->chance, 4) : Json()},
          {"agrees", point.is_checked() ? Json(fix->agrees) : Json()},
          {"fault", fault_of(fix)},
          {"slips", slips_of(fix)},
          {"triangle", triangle_of(fix)},
          {"implied_declination", implied_of(fix)},
          {"danger_circle", fix != nullptr ? Json(fix->danger_circle) : Json()}};
}

Json station_name(const Fixes& fixes, std::size_t station) {
  return text_or_null(fixes.stations[station].name);
}

Json json_of(const Fixes& fixes, const reduction::TraversedLeg& traversed) {
  const FixLeg& leg = fixes.legs[traversed.leg];
  return {{"line", leg.line},
          {"from", station_name(fixes, leg.from)},
          {"to", station_name(fixes, leg.to)},
          {"reversed", traversed.reversed},
          {"azimuth", azimuth_figure(leg.azimuth)},
          {"measured_m", figure(leg.measured_m, 2)},
          {"vertical_angle", figure(leg.vertical_angle, 2)},
          {"distance_m", figure(leg.distance_m, 2)},
          {"departure_m", figure(traversed.departure_m, 2)},
          {"latitude_m", figure(traversed.latitude_m, 2)},
          {"departure_correction_m", figure(traversed.departure_correction_m, 2)},
          {"latitude_correction_m", figure(traversed.latitude_correction_m, 2)}};
}

Json json_of(const Fixes& fixes, const Traverse& traverse) {
  constexpr std::array<const char*, 3> kinds = {"loop", "between", "open"};
  Json stations = Json::array();
  for (const std::size_t station : traverse.stations)
    stations.push_back(station_name(fixes, station));
  Json legs = Json::array();
  for (const reduction::TraversedLeg& leg : traverse.legs)
    legs.push_back(json_of(fixes, leg));
  return {{"kind", kinds[static_cast<std::size_t>(traverse.kind)]},
          {"stations", stations},
          {"length_m", figure(traverse.length_m, 2)},
          {"misclosure_m", figure(traverse.misclosure_m, 2)},
          {"departure_misclosure_m", figure(traverse.departure_misclosure_m, 2)},
          {"latitude_misclosure_m", figure(traverse.latitude_misclosure_m, 2)},
          {"precision", figure(traverse.precision, 0)},
          {"contradicts", traverse.contradicts},
          {"legs", legs}};
}

std::string_view word_of(reduction::LeftOut why) {
  constexpr std::array<std::string_view, 4> words = {"own-station", "doubtful",
                                                     "percent-or-degrees", "other-north"};
  return words[static_cast<std::size_t>(why)];
}

Json left_out_json(const Fixes& fixes, const FixLeg& leg) {
  return {{"line", leg.line},
          {"from", station_name(fixes, leg.from)},
          {"to", station_name(fixes, leg.to)},
          {"reason", word_of(*leg.left_out)}};
}

Json json_of(const Fixes& fixes, const reduction::StationAttraction& attraction) {
  return {{"station", station_name(fixes, attraction.station)},
          {"free", attraction.is_free},
          {"correction", figure(attraction.correction, 2)}};
}

Json back_bearing_json(const Fixes& fixes, const FixLeg& leg) {
  const auto& freed = leg.corrected;
  return {{"line", leg.line},
          {"from", station_name(fixes, leg.from)},
          {"to", station_name(fixes, leg.to)},
          {"fore", azimuth_figure(leg.fore)},
          {"back", azimuth_figure(*leg.back)},
          {"disagreement", figure(leg.disagreement, 2)},
          {"corrected_fore", freed ? azimuth_figure(freed->fore) : Json()},
          {"corrected_back", freed ? azimuth_figure(freed->back) : Json()}};
}

/// An array with one element per line, and a comma after it.
class Lines {
 public:
  Lines(std::string& out, std::string_view name) : out_(out) {
    out_ += "\n\"";
    out_ += name;
    out_ += "\":[";
  }
  void add(const Json& element) {
    begin_element();
    append_json(out_, element);
  }
  void add(const notebook::Source& source, const notebook::Diagnostic& diagnostic) {
    begin_element();
    Pen pen(out_);
    append_object(pen, source, diagnostic);
  }
  void end() { out_ += "],"; }

 private:
  void begin_element() {
    out_ += first_ ? "\n" : ",\n";
    first_ = false;
  }

  std::string& out_;
  bool first_ = true;
};

}  // namespace

void FixJson::begin(std::string& out) {
  out += "{\"format\":\"lodebook-fix\",";
  append_member(out, "version", version);
  out += "\n\"logs\":[";
}

void FixJson::log(std::string& out, const notebook::Source& source, const Fixes& fixes) {
  out += "\n{";
  append_member(out, "file", notebook::valid_utf8(shown_name(source)));

  Lines stations(out, "stations");
  for (const FoundPoint& station : stations_of(fixes))
    stations.add(json_of(station));
  stations.end();
  Lines landmarks(out, "landmarks");
  for (const FoundPoint& landmark : landmarks_of(fixes))
    landmarks.add(json_of(landmark));
  landmarks.end();
  Lines traverses(out, "traverses");
  for (const Traverse& traverse : fixes.traverses)
    traverses.add(json_of(fixes, traverse));
  traverses.end();
  Lines left_out(out, "legs_left_out");
  for (const FixLeg& leg : fixes.legs) {
    if (leg.left_out) left_out.add(left_out_json(fixes, leg));
  }
  left_out.end();

  Lines attraction(out, "attraction");
  if (fixes.attraction) {
    for (const reduction::StationAttraction& station : fixes.attraction->stations)
      attraction.add(json_of(fixes, station));
  }
  attraction.end();
  Lines legs(out, "attraction_legs");
  for (const FixLeg& leg : fixes.legs) {
    if (leg.back) legs.add(back_bearing_json(fixes, leg));
  }
  legs.end();
  out.push_back('\n');
  append_member(out, "attraction_applied", fixes.attraction_applied);

  Lines diagnostics(out, "diagnostics");
  for (const notebook::Diagnostic& diagnostic : fixes.diagnostics)
    diagnostics.add(source, diagnostic);
  diagnostics.end();
  out.back() = '}';
}

void FixJson::end(std::string& out) {
  out += "],\n";
  append_member(out, "caution", fix_caution());
  out.back() = '}';
  out.push_back('\n');
}

}  // namespace lodebook::output
