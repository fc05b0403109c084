// SPDX-License-Identifier: MIT
#include <lodebook/output/fix_rays.hpp>
#include <lodebook/output/table.hpp>

#include "drawn.hpp"
#include "fix_pieces.hpp"
#include "json_pieces.hpp"

namespace lodebook::output {
namespace {

using reduction::FixedSight;
using reduction::FixLeg;

std::string source_of(const notebook::Source& source, std::uint32_t line) {
  return notebook::valid_utf8(shown_name(source)) + ":" + std::to_string(line);
}

/// All features have the same keys; missing is null.
Json properties(std::string_view what, std::string_view name) {
  return {{"what", what},
          {"name", text_or_null(name)},
          {"from", nullptr},
          {"to", nullptr},
          {"bearing", nullptr},
          {"residual", nullptr},
          {"distance_m", nullptr},
          {"semi_major_m", nullptr},
          {"semi_minor_m", nullptr},
          {"major_azimuth", nullptr},
          {"source", nullptr}};
}

/// Features of one log, on their way out.
class Drawing {
 public:
  Drawing(std::string& out, FeatureCollection& features, const notebook::Source& source)
      : out_(out), features_(features), source_(source) {}

  void point(const FoundPoint& point) {
    if (!point.position) return;
    if (point.fix != nullptr && point.fix->position) {
      for (const FixedSight& one : point.fix->sights)
        sight(*point.fix, one);
    }
    if (point.ellipse) ellipse(point);
  }

  void leg(const FixLeg& leg, const reduction::LocatedStation& from,
           const reduction::LocatedStation& to) {
    if (!from.position || !to.position) return;
    Json found = properties("leg", {});
    found["from"] = text_or_null(from.name);
    found["to"] = text_or_null(to.name);
    found["bearing"] = azimuth_figure(leg.azimuth);
    found["distance_m"] = figure(leg.distance_m, 2);
    found["source"] = source_of(source_, leg.line);
    features_.feature(out_);
    append_line(out_, *from.position, *to.position);
    end(found);
  }

 private:
  void sight(const reduction::SightFix& fix, const FixedSight& sight) {
    Json found = properties("sight", fix.name);
    found["from"] = text_or_null(fix.is_landmark ? sight.name : fix.name);
    found["to"] = text_or_null(fix.is_landmark ? fix.name : sight.name);
    found["bearing"] = azimuth_figure(sight.bearing);
    found["residual"] = figure(sight.residual, 2);
    found["distance_m"] = figure(sight.distance_m, 2);
    found["source"] = source_of(source_, sight.line);
    features_.feature(out_);
    if (fix.is_landmark) {
      append_line(out_, sight.known, *fix.position);
    } else {
      append_line(out_, *fix.position, sight.known);
    }
    end(found);
  }

  void ellipse(const FoundPoint& point) {
    Json found = properties("ellipse", point.name);
    found["semi_major_m"] = figure(point.ellipse->semi_major_m, 2);
    found["semi_minor_m"] = figure(point.ellipse->semi_minor_m, 2);
    found["major_azimuth"] = axis_figure(point.ellipse->major_azimuth);
    if (point.line) found["source"] = source_of(source_, *point.line);
    features_.feature(out_);
    append_ellipse(out_, *point.position, *point.ellipse);
    end(found);
  }

  void end(const Json& found) {
    features_.properties(out_);
    append_json(out_, found);
    features_.end_feature(out_);
  }

  std::string& out_;
  FeatureCollection& features_;
  const notebook::Source& source_;
};

}  // namespace

void FixRays::begin(std::string& out) {
  features_.begin(out, "lodebook-rays");
}

void FixRays::log(std::string& out, const notebook::Source& source, const reduction::Fixes& fixes) {
  Drawing drawing(out, features_, source);
  for (const FoundPoint& station : stations_of(fixes))
    drawing.point(station);
  for (const FoundPoint& landmark : landmarks_of(fixes))
    drawing.point(landmark);
  for (const FixLeg& leg : fixes.legs) {
    if (!leg.left_out) drawing.leg(leg, fixes.stations[leg.from], fixes.stations[leg.to]);
  }
}

void FixRays::end(std::string& out) {
  features_.end(out);
}

}  // namespace lodebook::output
