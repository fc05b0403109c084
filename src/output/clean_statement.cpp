// SPDX-License-Identifier: MIT
#include "clean_statement.hpp"

#include <array>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/notation.hpp>

#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using namespace notebook;

/// `24.6E`, `0`.
void append_declination(std::string& out, Declination declination) {
  const double east = declination.degrees_east();
  append_shortest(out, std::abs(east));
  if (east != 0) out.push_back(east > 0 ? 'E' : 'W');
}

/// A height or a pace: metres need no unit.
void append_height(std::string& out, const Length& height) {
  if (height.own.rough) out.push_back('~');
  append_shortest(out, height.value);
  if (height.unit == LengthUnit::feet) out += " ft";
  if (height.own.sigma == 0) return;
  out += " ±";
  append_shortest(out, height.own.sigma);
}

/// Behind a position or height.
void append_origin(std::string& out, std::string_view origin) {
  if (origin.empty()) return;
  out += " from ";
  out += origin;
}

/// `44.6891S 169.0144E ±8 from map`
void append_position(std::string& out, const Notebook& notebook, const GivenPosition& given) {
  const auto& [latitude, longitude] = given.position;
  append_shortest(out, std::abs(latitude));
  out += latitude < 0 ? "S " : "N ";
  append_shortest(out, std::abs(longitude));
  out += longitude < 0 ? "W" : "E";
  if (given.accuracy_m) {
    out += " ±";
    append_shortest(out, *given.accuracy_m);
  }
  append_origin(out, notebook.source.text(given.origin));
}

class StatementWriter {
 public:
  StatementWriter(std::string& out, const Notebook& notebook) : out_(out), notebook_(notebook) {}

  void operator()(const Reading& reading) {
    if (reading.times == 0) return;
    if (reading.first) {
      out_ += notebook_.kinds[reading.kind].name;
      out_.push_back(' ');
    } else {
      out_ += ", ";
    }
    if (const auto* sight = std::get_if<Sight>(&reading.what); sight && reading.first) {
      append_name(sight->target);
      append_from(sight->from);
      out_.push_back(' ');
    }
    std::visit([this](const auto& what) { append(what); }, reading.what);
    if (reading.doubtful) out_ += " doubtful";
    if (!reading.by.empty()) append_text(" by", reading.by);
    if (reading.times > 1) {
      out_ += " x";
      append_figure(out_, reading.times, 0);
    }
  }
  void operator()(const StationHeading& heading) {
    out_ += "station ";
    append_name(heading.name);
    if (!heading.position) return;
    out_ += " at ";
    append_position(out_, notebook_, *heading.position);
  }
  void operator()(const At& at) {
    out_ += "at ";
    append_position(out_, notebook_, at.position);
  }
  void operator()(const Elevation& elevation) {
    out_ += "elevation ";
    append_height(out_, elevation.height);
    append_origin(out_, notebook_.source.text(elevation.origin));
  }
  void operator()(const Clock& clock) {
    out_ += "time ";
    append_figure(out_, clock.time.hour, 0, 2);
    out_.push_back(':');
    append_figure(out_, clock.time.minute, 0, 2);
  }
  void operator()(const Unit& unit) { append_text("unit", unit.text); }
  void operator()(const Sample& sample) {
    out_ += "sample ";
    out_ += typed_name(notebook_.source.text(sample.name));
    if (!sample.text.empty()) append_text("", sample.text);
  }
  void operator()(const Photo& photo) { append_text("photo", photo.text); }
  void operator()(const Note& note) { append_text("note", note.text); }
  void operator()(const Landmark& landmark) {
    out_ += "landmark ";
    append_name(landmark.name);
    if (landmark.position) {
      out_.push_back(' ');
      append_position(out_, notebook_, *landmark.position);
    }
    if (landmark.elevation) {
      out_ += " elevation ";
      append_height(out_, *landmark.elevation);
      append_origin(out_, notebook_.source.text(landmark.elevation_origin));
    }
  }
  void operator()(const Tally& tally) {
    out_ += "tally";
    append_count(tally.stations, "stations");
    append_count(tally.readings, "readings");
  }
  void operator()(const HeadingText& heading) {
    constexpr std::array<std::string_view, 3> words = {"area", "observer", "instrument"};
    append_text(words[static_cast<std::size_t>(heading.which)], heading.text);
  }
  void operator()(const DateSetting& setting) {
    out_ += "date ";
    append_figure(out_, setting.date.year, 0, 4);
    out_.push_back('-');
    append_figure(out_, setting.date.month, 0, 2);
    out_.push_back('-');
    append_figure(out_, setting.date.day, 0, 2);
  }
  void operator()(const DialSetting& setting) {
    out_ += setting.notation == Notation::quadrant ? "dial quadrant" : "dial azimuth";
  }
  void operator()(const SetSetting& setting) { append_set_statement(out_, setting.set); }
  void operator()(const DeclinationSetting& setting) {
    append_declination_statement(out_, setting);
  }
  void operator()(const RuleSetting& setting) { append_rule_statement(out_, setting.rule); }
  void operator()(const OrderSetting& setting) {
    constexpr std::array<std::string_view, 5> planes = {"", " strike/dip", " direction/dip",
                                                        " dip/direction", " dip/strike"};
    constexpr std::array<std::string_view, 3> lines = {"", " trend/plunge", " plunge/trend"};
    out_ += "order";
    out_ += planes[static_cast<std::size_t>(setting.planes)];
    out_ += lines[static_cast<std::size_t>(setting.lines)];
  }
  void operator()(const PaceSetting& setting) {
    out_ += "pace ";
    append_length(out_, setting.pace);
  }
  void operator()(const DatumSetting& setting) { append_text("datum", setting.text); }
  void operator()(const AccuracySetting& setting) {
    out_ += "accuracy";
    append_error(" bearing ", setting.bearing);
    append_error(" dip ", setting.dip);
    append_error(" distance ", setting.distance_percent);
    if (setting.distance_percent) out_.push_back('%');
  }
  void operator()(const AttractionSetting&) { out_ += "attraction correct"; }
  void operator()(const KindDeclaration& declaration) {
    const Kind& kind = notebook_.kinds[declaration.kind];
    out_ += "kind ";
    out_ += kind.name;
    out_ += kind.type == Kind::Type::plane ? " plane" : kind.two_ended ? " axis" : " line";
  }
  void operator()(const ShortDeclaration& declaration) {
    append_text("short", declaration.word);
    append_text("", declaration.meaning);
  }
  /// Its lines come out in its place.
  void operator()(const HeadingUse&) {}
  // These come out verbatim, whatever stands beside them.
  void operator()(const Bare&) {}
  void operator()(const Unread&) {}

 private:
  void append(const PlaneAttitude& plane) { append_plane(out_, plane); }
  void append(const LineAttitude& line) { append_line(out_, line, notebook_.kinds); }
  void append(const Sight& sight) {
    if (sight.is_back) out_ += "back ";
    append_bearing(out_, sight.bearing);
    if (sight.south_end) out_ += " south-end";
    if (sight.back) {
      out_ += " back ";
      append_bearing(out_, *sight.back);
    }
    if (!sight.vertical) return;
    out_ += " vertical ";
    append_slope(out_, *sight.vertical);
  }
  void append(const Leg& leg) {
    if (leg.from != no_name) {
      out_ += "from ";
      append_name(leg.from);
      out_.push_back(' ');
    }
    append_bearing(out_, leg.bearing);
    out_.push_back(' ');
    append_length(out_, leg.distance);
    if (leg.south_end) out_ += " south-end";
    if (leg.slope) {
      out_ += " slope ";
      append_slope(out_, *leg.slope);
    }
    if (leg.back) {
      out_ += " back ";
      append_bearing(out_, *leg.back);
    }
    if (leg.to == no_name) return;
    out_ += " to ";
    append_name(leg.to);
  }

  /// Behind a name.
  void append_from(NameId name) {
    if (name == no_name) return;
    out_ += " from ";
    append_name(name);
  }
  void append_name(NameId name) { out_ += typed_name(notebook_.names.shown(name)); }
  void append_text(std::string_view word, Span text) {
    out_ += word;
    if (text.empty()) return;
    out_.push_back(' ');
    out_ += notebook_.source.text(text);
  }
  void append_count(const std::optional<std::uint32_t>& count, std::string_view word) {
    if (!count) return;
    out_.push_back(' ');
    append_figure(out_, *count, 0);
    out_.push_back(' ');
    out_ += word;
  }
  void append_error(std::string_view word, const std::optional<double>& value) {
    if (!value) return;
    out_ += word;
    append_shortest(out_, *value);
  }

  std::string& out_;
  const Notebook& notebook_;
};

}  // namespace

void append_statement(std::string& out, const Notebook& notebook, std::span<const Entry> entries) {
  StatementWriter writer(out, notebook);
  for (const Entry& entry : entries)
    std::visit(writer, entry.what);
}

void append_set_statement(std::string& out, Declination set) {
  out += "set ";
  append_declination(out, set);
}

void append_declination_statement(std::string& out, const DeclinationSetting& setting) {
  out += "declination ";
  switch (setting.from) {
    case DeclinationSetting::From::as_set:
      out += "as-set";
      break;
    case DeclinationSetting::From::model:
      out += "model";
      break;
    case DeclinationSetting::From::stated:
      append_declination(out, setting.declination);
      break;
  }
  if (setting.sigma > 0) {
    out += " ±";
    append_shortest(out, setting.sigma);
  }
}

void append_rule_statement(std::string& out, HandRule rule) {
  out += rule == HandRule::right ? "rule right" : "rule left";
}

}  // namespace lodebook::output
