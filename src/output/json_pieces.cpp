// SPDX-License-Identifier: MIT
#include "json_pieces.hpp"

#include <array>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using notebook::LineOrder;
using notebook::Notation;
using notebook::PlaneOrder;
using reduction::Check;
using reduction::From;
using reduction::Settings;

Json name_or_null(From from) {
  constexpr std::array<const char*, 3> names = {nullptr, "log", "option"};
  const char* const name = names[static_cast<std::size_t>(from)];
  return name == nullptr ? Json() : Json(name);
}

Json name_or_null(PlaneOrder order) {
  switch (order) {
    case PlaneOrder::unstated:
      break;
    case PlaneOrder::strike_dip:
      return "strike/dip";
    case PlaneOrder::direction_dip:
      return "direction/dip";
    case PlaneOrder::dip_direction:
      return "dip/direction";
  }
  return {};
}

Json name_or_null(LineOrder order) {
  switch (order) {
    case LineOrder::unstated:
      break;
    case LineOrder::trend_plunge:
      return "trend/plunge";
    case LineOrder::plunge_trend:
      return "plunge/trend";
  }
  return {};
}

/// What follows from place and date.
Json json_of_site(const Settings& settings) {
  const reduction::Site& site = settings.site;
  Json model;
  if (settings.from_model() && settings.declination_known())
    model = std::string(earth::name_of(site.field->model()));
  std::optional<double> convergence;
  if (site.grid) convergence = site.grid->convergence.degrees_east();
  return {{"position_borrowed", site.borrowed},
          {"declination_model", model},
          {"grid", site.grid ? Json(site.grid->designation()) : Json()},
          {"convergence", figure(convergence, 2)},
          {"grid_magnetic_angle", figure(settings.grid_magnetic_angle(), 2)}};
}

Json json_of(const Check& check) {
  constexpr std::array<const char*, 3> names = {"repeats", "line-in-plane", "fore-and-back"};
  const bool repeats = check.what == Check::What::repeats;
  const bool plane = check.kind != nullptr && check.kind->type == notebook::Kind::Type::plane;
  Json mean;
  if (repeats && check.mean_slope) {
    mean[plane ? "strike" : "trend"] =
        check.mean_azimuth ? Json(static_cast<double>(rounded_azimuth(*check.mean_azimuth, 1)) / 10)
                           : Json();
    mean[plane ? "dip" : "plunge"] = figure(check.mean_slope, 1);
  }
  return {
      {"check", names[static_cast<std::size_t>(check.what)]},
      {"line", check.line},
      {"kind", check.kind == nullptr ? Json() : text_or_null(check.kind->name)},
      {"plane_kind", check.plane_kind == nullptr ? Json() : text_or_null(check.plane_kind->name)},
      {"surface", check.surface == 0 ? Json() : Json(check.surface)},
      {"figure", figure(check.figure, 2)},
      {"limit", figure(check.limit, 2)},
      {"passed", check.passed},
      {"count", repeats ? Json(check.count) : Json()},
      {"mean", mean},
      {"precision", figure(check.precision, 1)},
      {"cone95", figure(check.cone95, 1)},
  };
}

}  // namespace

Json figure(const std::optional<double>& value, int decimals) {
  if (!value) return {};
  return static_cast<double>(rounded(*value, decimals)) / std::pow(10.0, decimals);
}

Json azimuth_figure(double degrees) {
  return static_cast<double>(rounded_azimuth(degrees, 2)) / 100;
}

Json axis_figure(double degrees) {
  return static_cast<double>(rounded_axis(degrees, 2)) / 100;
}

Json text_or_null(std::string_view text) {
  return text.empty() ? Json() : Json(notebook::valid_utf8(text));
}

Json texts(const std::vector<std::string_view>& values) {
  Json array = Json::array();
  for (const std::string_view value : values)
    array.push_back(notebook::valid_utf8(value));
  return array;
}

Json json_of(const Settings& settings, reduction::North wanted) {
  const reduction::Correction correction = reduction::correction(settings, wanted);
  const bool known = settings.has_figure();
  Json date;
  if (settings.date) date = notebook::iso_date(*settings.date);
  return {
      {"dial", !settings.dial                         ? Json()
               : *settings.dial == Notation::quadrant ? Json("quadrant")
                                                      : Json("azimuth")},
      {"set", settings.set_from == From::nowhere ? Json() : figure(settings.set.degrees_east(), 2)},
      {"set_from", name_or_null(settings.set_from)},
      {"declination", known ? figure(settings.declination.degrees_east(), 2) : Json()},
      {"declination_sigma", known ? figure(settings.declination_sigma, 2) : Json()},
      {"declination_from", name_or_null(settings.declination_from)},
      {"as_set", settings.as_set()},
      {"site", json_of_site(settings)},
      {"correction", figure(correction.angle.degrees(), 2)},
      {"north", std::string(reduction::name_of(correction.north))},
      {"rule", !settings.rule                       ? Json()
               : *settings.rule == ThumbRule::right ? Json("right")
                                                    : Json("left")},
      {"rule_from", name_or_null(settings.rule_from)},
      {"plane_order", name_or_null(settings.plane_order)},
      {"line_order", name_or_null(settings.line_order)},
      {"accuracy",
       {{"bearing", figure(settings.accuracy.bearing, 2)},
        {"dip", figure(settings.accuracy.dip, 2)},
        {"distance_percent", figure(settings.accuracy.distance_percent, 2)}}},
      {"attraction_correct", settings.attraction_correct},
      {"date", date},
      {"observer", text_or_null(settings.observer)},
      {"area", text_or_null(settings.area)},
      {"instrument", text_or_null(settings.instrument)},
      {"datum", text_or_null(settings.datum)},
      {"pace_m", figure(settings.pace_m, 3)},
  };
}

Json json_of(const std::optional<notebook::GivenPosition>& position) {
  if (!position) return {};
  return {{"latitude", figure(position->position.latitude, 7)},
          {"longitude", figure(position->position.longitude, 7)},
          {"accuracy_m", figure(position->accuracy_m, 1)}};
}

Json json_of(const std::optional<notebook::Time>& time) {
  return time ? Json(clock_text(*time)) : Json();
}

Json json_of(const std::vector<Check>& checks) {
  Json array = Json::array();
  for (const Check& check : checks)
    array.push_back(json_of(check));
  return array;
}

Json json_of(const notebook::Diagnostic& diagnostic) {
  Json related = Json::array();
  for (const notebook::Related& other : diagnostic.related) {
    related.push_back({{"message", notebook::valid_utf8(other.message)},
                       {"line", other.place.line},
                       {"column", other.place.column},
                       {"end_column", other.place.end_column}});
  }
  return {{"code", std::string(notebook::name_of(diagnostic.code))},
          {"severity", std::string(notebook::name_of(diagnostic.severity))},
          {"message", notebook::valid_utf8(diagnostic.message)},
          {"help", text_or_null(diagnostic.help)},
          {"line", diagnostic.place.line},
          {"column", diagnostic.place.column},
          {"end_column", diagnostic.place.end_column},
          {"related", std::move(related)}};
}

Json json_of(const reduction::Counts& counts) {
  return {{"readings", counts.readings}, {"ok", counts.ok},
          {"suspect", counts.suspect},   {"rejected", counts.rejected},
          {"stations", counts.stations}, {"not_understood", counts.not_understood},
          {"errors", counts.errors},     {"warnings", counts.warnings},
          {"notes", counts.notes}};
}

void append_json(std::string& out, const Json& value) {
  append_json_text(out, value.dump());
}

void append_member(std::string& out, std::string_view name, const Json& value) {
  append_json_string(out, name);
  out.push_back(':');
  append_json(out, value);
  out += ',';
}

}  // namespace lodebook::output
