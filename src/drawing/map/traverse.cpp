// SPDX-License-Identifier: MIT
#include "traverse.hpp"

#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/text.hpp>

namespace lodebook::drawing {
namespace {

using output::figure_text;
using reduction::Fixes;
using reduction::Traverse;

std::string closure_of(const Fixes& fixes, const Traverse& traverse) {
  const auto name = [&](std::size_t station) { return std::string(fixes.stations[station].name); };
  std::string text = name(traverse.stations.front());
  if (traverse.kind == Traverse::Kind::loop) {
    text += " and back to it";
  } else {
    text += " to " + name(traverse.stations.back());
  }
  text += ", " + output::counted(traverse.legs.size(), "leg", "legs") + ", " +
          figure_text(traverse.length_m, 1) + " m: ";
  if (traverse.kind == Traverse::Kind::open) return text + "ends in the open, no check";
  text += "misclosure " + figure_text(traverse.misclosure_m, 1) + " m";
  if (traverse.precision) text += ", 1 in " + figure_text(*traverse.precision, 0);
  if (traverse.contradicts) text += ", more than its errors allow";
  return text;
}

/// From its first station on, as measured. In the open this is where its legs are drawn anyhow.
void note_raw(const Fixes& fixes, const Traverse& traverse, Survey& survey) {
  const auto& start = fixes.stations[traverse.stations.front()].position;
  if (!start || traverse.kind == Traverse::Kind::open) return;
  const earth::LocalPlane plane(*start);
  earth::PlanePoint at;
  std::vector<earth::Position> places = {*start};
  for (const reduction::TraversedLeg& leg : traverse.legs) {
    at.east_m += leg.departure_m;
    at.north_m += leg.latitude_m;
    places.push_back(plane.to_position(at));
  }
  survey.raw_traverses.push_back(std::move(places));
}

}  // namespace

void note_traverses(const Fixes& fixes, Survey& survey) {
  for (const Traverse& traverse : fixes.traverses) {
    survey.closures.push_back(closure_of(fixes, traverse));
    note_raw(fixes, traverse, survey);
  }
}

}  // namespace lodebook::drawing
