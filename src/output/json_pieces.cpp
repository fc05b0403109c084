// SPDX-License-Identifier: MIT
#include "json_pieces.hpp"

#include <array>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>

#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using notebook::LineOrder;
using notebook::Notation;
using notebook::PlaneOrder;
using reduction::Check;
using reduction::From;
using reduction::Settings;

std::string_view name_of(From from) {
  constexpr std::array<std::string_view, 3> names = {"", "log", "option"};
  return names[static_cast<std::size_t>(from)];
}

std::string_view name_of(PlaneOrder order) {
  switch (order) {
    case PlaneOrder::unstated:
      break;
    case PlaneOrder::strike_dip:
      return "strike/dip";
    case PlaneOrder::direction_dip:
      return "direction/dip";
    case PlaneOrder::dip_direction:
      return "dip/direction";
    case PlaneOrder::dip_strike:
      return "dip/strike";
  }
  return {};
}

std::string_view name_of(LineOrder order) {
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

std::string_view name_of(const std::optional<Notation>& dial) {
  if (!dial) return {};
  return *dial == Notation::quadrant ? "quadrant" : "azimuth";
}

std::string_view name_of(const std::optional<HandRule>& rule) {
  if (!rule) return {};
  return *rule == HandRule::right ? "right" : "left";
}

/// The members between are an object.
void begin_object(Pen& out, std::string_view name) {
  append_name(out, name);
  out.push_back('{');
}

void end_object(Pen& out) {
  out.back() = '}';
  out.push_back(',');
}

/// What follows from place and date.
void append_site(Pen& out, std::string_view name, const Settings& settings) {
  const reduction::Site& site = settings.site;
  const bool by_model = settings.from_model() && settings.declination_known();
  begin_object(out, name);
  append_flag(out, "position_borrowed", site.borrowed);
  append_text(out, "declination_model",
              by_model ? earth::name_of(site.field->model()) : std::string_view());
  append_text(out, "grid", site.grid ? site.grid->designation() : std::string());
  append_number(out, "convergence",
                site.grid ? std::optional(site.grid->convergence.degrees_east()) : std::nullopt, 2);
  append_number(out, "grid_magnetic_angle", settings.grid_magnetic_angle(), 2);
  end_object(out);
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

Json json_of(const Check& check) {
  constexpr std::array<const char*, 3> names = {"repeats", "line-in-plane", "fore-and-back"};
  const bool repeats = check.what == Check::What::repeats;
  const bool plane = check.kind != nullptr && check.kind->type == notebook::Kind::Type::plane;
  Json mean;
  const bool sight = check.kind != nullptr && check.kind->type == notebook::Kind::Type::sight;
  if (repeats && sight) {
    if (check.mean_azimuth)
      mean["bearing"] = static_cast<double>(rounded_azimuth(*check.mean_azimuth, 1)) / 10;
  } else if (repeats && (check.mean_slope || check.mean_azimuth)) {
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

void append_string(Pen& out, std::string_view text) {
  if (!is_plain_json(text)) {
    out += json_string(text);
    return;
  }
  out.push_back('"');
  out += text;
  out.push_back('"');
}

void append_text(Pen& out, std::string_view name, std::string_view text) {
  append_name(out, name);
  if (text.empty()) {
    out += "null";
  } else {
    append_string(out, text);
  }
  out.push_back(',');
}

void append_number(Pen& out, std::string_view name, const std::optional<double>& value,
                   int decimals) {
  append_name(out, name);
  // So far the digits that Json writes are those of the figure; beyond, it may write more.
  constexpr std::int64_t most = 300'000;
  const std::int64_t units = value ? rounded(*value, decimals) : 0;
  if (!value) {
    out += "null";
  } else if (decimals < 1 || decimals > 3 || units < -most || units > most) {
    out += figure(value, decimals).dump();
  } else {
    const Figure number(units, decimals);
    std::string_view digits = number.text();
    while (digits.back() == '0' && digits[digits.size() - 2] != '.')
      digits.remove_suffix(1);
    out += digits;
  }
  out.push_back(',');
}

void append_flag(Pen& out, std::string_view name, bool flag) {
  append_name(out, name);
  out += flag ? "true," : "false,";
}

void append_count(Pen& out, std::string_view name, std::size_t count) {
  append_name(out, name);
  append_figure(out, static_cast<std::int64_t>(count), 0);
  out.push_back(',');
}

void append_time(Pen& out, std::string_view name, const std::optional<notebook::Time>& time) {
  append_text(out, name, time ? clock_text(*time) : std::string());
}

void append_position(Pen& out, std::string_view name,
                     const std::optional<notebook::GivenPosition>& position,
                     std::string_view origin) {
  if (!position) {
    append_text(out, name, {});
    return;
  }
  begin_object(out, name);
  append_number(out, "latitude", position->position.latitude, 7);
  append_number(out, "longitude", position->position.longitude, 7);
  append_number(out, "accuracy_m", position->accuracy_m, 1);
  append_text(out, "origin", origin);
  end_object(out);
}

void append_settings(Pen& out, std::string_view name, const Settings& settings,
                     reduction::North wanted) {
  const reduction::Correction correction = reduction::correction(settings, wanted);
  const auto where = [](bool known, double degrees) {
    return known ? std::optional(degrees) : std::nullopt;
  };
  const bool known = settings.has_figure();
  begin_object(out, name);
  append_text(out, "dial", name_of(settings.dial));
  append_number(out, "set", where(settings.set_from != From::nowhere, settings.set.degrees_east()),
                2);
  append_text(out, "set_from", name_of(settings.set_from));
  append_number(out, "declination", where(known, settings.declination.degrees_east()), 2);
  append_number(out, "declination_sigma", where(known, settings.declination_sigma), 2);
  append_text(out, "declination_from", name_of(settings.declination_from));
  append_flag(out, "as_set", settings.as_set());
  append_site(out, "site", settings);
  append_number(out, "correction", correction.angle.degrees(), 2);
  append_text(out, "north", reduction::name_of(correction.north));
  append_text(out, "rule", name_of(settings.rule));
  append_text(out, "rule_from", name_of(settings.rule_from));
  append_text(out, "plane_order", name_of(settings.plane_order));
  append_text(out, "line_order", name_of(settings.line_order));
  begin_object(out, "accuracy");
  append_number(out, "bearing", settings.accuracy.bearing, 2);
  append_number(out, "dip", settings.accuracy.dip, 2);
  append_number(out, "distance_percent", settings.accuracy.distance_percent, 2);
  end_object(out);
  append_flag(out, "attraction_correct", settings.attraction_correct);
  append_text(out, "date", settings.date ? notebook::iso_date(*settings.date) : std::string());
  append_text(out, "observer", settings.observer);
  append_text(out, "area", settings.area);
  append_text(out, "instrument", settings.instrument);
  append_text(out, "datum", settings.datum);
  append_number(out, "pace_m", settings.pace_m, 3);
  end_object(out);
}

void append_counts(Pen& out, std::string_view name, const reduction::Counts& counts) {
  begin_object(out, name);
  append_count(out, "readings", counts.readings);
  append_count(out, "ok", counts.ok);
  append_count(out, "suspect", counts.suspect);
  append_count(out, "rejected", counts.rejected);
  append_count(out, "stations", counts.stations);
  append_count(out, "not_understood", counts.not_understood);
  append_count(out, "errors", counts.errors);
  append_count(out, "warnings", counts.warnings);
  append_count(out, "notes", counts.notes);
  end_object(out);
}

void append_object(Pen& out, const notebook::Source& source,
                   const notebook::Diagnostic& diagnostic) {
  const auto append_message = [](Pen& to, std::string_view message) {
    append_name(to, "message");
    append_string(to, message);
    to.push_back(',');
  };
  const auto append_place = [&source](Pen& to, const notebook::Place& place) {
    append_text(to, "file", shown_name(source.name_of(place)));
    append_count(to, "line", place.shown_line());
    append_count(to, "column", place.column);
    append_count(to, "end_column", place.end_column);
  };
  out.push_back('{');
  append_text(out, "code", notebook::name_of(diagnostic.code));
  append_text(out, "severity", notebook::name_of(diagnostic.severity));
  append_message(out, diagnostic.message);
  append_text(out, "help", diagnostic.help);
  append_place(out, diagnostic.place);
  append_array(out, "related", diagnostic.related, [&](Pen& to, const notebook::Related& other) {
    to.push_back('{');
    append_message(to, other.message);
    append_place(to, other.place);
    end_object(to);
  });
  append_array(out, "fixes", diagnostic.fixes, [&](Pen& to, const notebook::Fix& fix) {
    const notebook::Extent extent = source.extent(fix.span);
    to.push_back('{');
    append_count(to, "line", extent.line);
    append_count(to, "column", extent.column);
    append_count(to, "end_line", extent.end_line);
    append_count(to, "end_column", extent.end_column);
    append_name(to, "text");
    append_string(to, fix.text);
    to.push_back(',');
    end_object(to);
  });
  out.back() = '}';
}

void append_checks(Pen& out, std::string_view name, const std::vector<Check>& checks) {
  append_array(out, name, checks, [](Pen& to, const Check& check) {
    append_json(to, json_of(check));
    to.push_back(',');
  });
}

}  // namespace lodebook::output
