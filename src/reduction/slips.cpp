// SPDX-License-Identifier: MIT
#include "slips.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>
#include <vector>

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// A slip in words, and how far off the reading would be without it.
struct Candidate {
  std::string words;
  double misfit;
};

std::string advice(std::vector<Candidate> candidates, double limit) {
  std::erase_if(candidates, [limit](const Candidate& c) { return !(c.misfit <= limit); });
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Candidate& a, const Candidate& b) { return a.misfit < b.misfit; });
  if (candidates.size() > 3) candidates.resize(3);
  std::string text;
  for (const Candidate& candidate : candidates) {
    text += fmt::format("{}{}? then {} degrees off", text.empty() ? "" : "; or ", candidate.words,
                        figure_text(candidate.misfit, 1));
  }
  return text;
}

/// A figure with two of its whole digits swapped, in words and as a value.
struct Swapped {
  std::string words;
  double value;
};

std::vector<Swapped> digit_swaps(double value, std::size_t typed_digits) {
  const double whole = std::floor(value);
  const std::string text = fmt::format("{:0{}.0f}", whole, typed_digits);
  std::vector<Swapped> swaps;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    for (std::size_t j = i + 1; j < text.size(); ++j) {
      if (text[i] == text[j]) continue;
      std::string swapped = text;
      std::swap(swapped[i], swapped[j]);
      double figure = 0;
      for (const char c : swapped)
        figure = figure * 10 + (c - '0');
      swaps.push_back({fmt::format("{} for {}", text, swapped), figure + (value - whole)});
    }
  }
  return swaps;
}

struct MeantSlope {
  std::string words;
  Slope slope;
};

std::vector<MeantSlope> slope_slips(const Slope& typed) {
  std::vector<MeantSlope> slips;
  Slope other = typed;
  other.percent = !typed.percent;
  if (std::abs(other.degrees()) <= 90 && typed.value != 0)
    slips.push_back({typed.percent ? "degrees, not percent" : "percent for degrees", other});
  const double size = std::abs(typed.value);
  for (const Swapped& swap : digit_swaps(size, std::max<std::size_t>(typed.digits, 1))) {
    Slope slope = typed;
    slope.value = typed.value < 0 ? -swap.value : swap.value;
    if (std::abs(slope.degrees()) <= 90) slips.push_back({"digits swapped, " + swap.words, slope});
  }
  return slips;
}

double separation_from_opposite(Azimuth<north::dial> fore, Azimuth<north::dial> back) {
  return separation(back, fore.opposite()).degrees();
}

}  // namespace

bool may_be_percent(const Slope& slope) {
  return !slope.percent && std::abs(slope.value) > 45;
}

std::vector<MeantBearing> bearing_slips(const Bearing& typed) {
  std::vector<MeantBearing> slips;
  const auto add = [&slips](std::string words, const Bearing& bearing) {
    slips.push_back({std::move(words), bearing});
  };
  if (typed.notation == Notation::quadrant) {
    const bool east = typed.side == QuadrantBearing::Side::east;
    const bool north = typed.pole == QuadrantBearing::Pole::north;
    Bearing side = typed;
    side.side = east ? QuadrantBearing::Side::west : QuadrantBearing::Side::east;
    add(east ? "east for west" : "west for east", side);
    Bearing pole = typed;
    pole.pole = north ? QuadrantBearing::Pole::south : QuadrantBearing::Pole::north;
    add(north ? "N for S" : "S for N", pole);
  }
  if (typed.notation != Notation::point) {
    const double largest = typed.notation == Notation::quadrant ? 90 : 360;
    for (const Swapped& swap : digit_swaps(typed.angle, std::max<std::size_t>(typed.digits, 1))) {
      if (swap.value > largest) continue;
      Bearing bearing = typed;
      bearing.angle = swap.value;
      add("digits swapped, " + swap.words, bearing);
    }
  }
  return slips;
}

std::string explain_plane(const PlaneAttitude& typed, double limit, const PlaneMisfit& misfit) {
  using DialPlane = Plane<north::dial>;
  using Form = PlaneAttitude::Form;
  std::vector<Candidate> candidates;
  const auto try_plane = [&](std::string words, const std::optional<DialPlane>& plane) {
    if (plane) candidates.push_back({std::move(words), misfit(*plane)});
  };
  const auto plane = typed.plane();
  if (!plane || typed.form == Form::horizontal) return {};
  const Azimuth<north::dial> bearing = typed.bearing.azimuth();

  for (const MeantBearing& slip : bearing_slips(typed.bearing)) {
    // With a side, N for S turns a strike into the same line as east for west.
    const bool same = typed.form == Form::strike_and_side && slip.words.ends_with(" for S");
    const bool same_too = typed.form == Form::strike_and_side && slip.words.ends_with(" for N");
    if (same || same_too) continue;
    PlaneAttitude other = typed;
    other.bearing = slip.bearing;
    try_plane(slip.words, other.plane());
  }
  if (typed.form == Form::dip_direction) {
    for (const HandRule rule : {HandRule::right, HandRule::left})
      try_plane("the strike for the dip direction",
                DialPlane::from_strike(bearing, plane->dip(), rule));
  } else {
    try_plane("the dip direction for the strike",
              DialPlane::from_dip_direction(bearing, plane->dip()));
    try_plane("the other end of the dip direction for the strike",
              DialPlane::from_dip_direction(bearing.opposite(), plane->dip()));
  }
  try_plane(typed.form == Form::strike_by_rule ? "the other hand rule" : "the other side",
            DialPlane::from_strike(plane->strike(), plane->dip(), HandRule::left));
  if (typed.form != Form::vertical) {
    for (const MeantSlope& slip : slope_slips(typed.dip)) {
      PlaneAttitude other = typed;
      other.dip = slip.slope;
      try_plane(slip.words, other.plane());
    }
  }
  return advice(std::move(candidates), limit);
}

std::string explain_line(const LineAttitude& typed, double limit, Ends ends,
                         const LineMisfit& misfit) {
  using Form = LineAttitude::Form;
  std::vector<Candidate> candidates;
  const auto try_line = [&](std::string words, const LineAttitude& meant) {
    if (const auto line = meant.line())
      candidates.push_back({std::move(words), misfit(*line, meant.slope.value < 0)});
  };
  if (typed.form == Form::rake || typed.form == Form::vertical) return {};
  if (const auto line = typed.line(); line && ends == Ends::one) {
    const Line<north::dial> turned(line->trend().opposite(), line->plunge());
    candidates.push_back({"read against the flow", misfit(turned, typed.slope.value < 0)});
  }
  for (const MeantBearing& slip : bearing_slips(typed.bearing)) {
    LineAttitude other = typed;
    other.bearing = slip.bearing;
    try_line(slip.words, other);
  }
  if (typed.form != Form::horizontal) {
    LineAttitude other = typed;
    other.slope.value = -typed.slope.value;
    try_line("the other end of the line", other);
    for (const MeantSlope& slip : slope_slips(typed.slope)) {
      other.slope = slip.slope;
      try_line(slip.words, other);
    }
  }
  return advice(std::move(candidates), limit);
}

std::string explain_sight(const Bearing& typed, bool south_end, std::optional<double> declination,
                          Azimuth<north::dial> expected, double limit) {
  const auto off = [&](const Bearing& bearing, double turn = 0) {
    const Azimuth<north::dial> read = bearing.azimuth() + *Angle::from_degrees(turn);
    return separation(south_end ? read.opposite() : read, expected).degrees();
  };
  std::vector<Candidate> candidates;
  candidates.push_back({"the other end of the needle", 180 - off(typed)});
  for (const MeantBearing& slip : bearing_slips(typed))
    candidates.push_back({slip.words, off(slip.bearing)});
  // A smaller one would bring a sight that is hardly over the limit under it.
  if (declination && std::abs(*declination) > limit) {
    candidates.push_back({"the declination applied twice", off(typed, -*declination)});
    candidates.push_back({"the declination on the wrong side", off(typed, -2 * *declination)});
  }
  return advice(std::move(candidates), limit);
}

std::string explain_back_bearing(const Leg& leg, Angle turn, double limit) {
  if (!leg.back) return {};
  std::vector<Candidate> candidates;
  const Azimuth<north::dial> fore = leg.azimuth();
  const Azimuth<north::dial> back = leg.back->azimuth() + turn;
  candidates.push_back({"one of the two read off the other end of the needle",
                        separation_from_opposite(fore, back.opposite())});
  for (const MeantBearing& slip : bearing_slips(*leg.back)) {
    candidates.push_back({slip.words + " in the back bearing",
                          separation_from_opposite(fore, slip.bearing.azimuth() + turn)});
  }
  for (const MeantBearing& slip : bearing_slips(leg.bearing)) {
    Leg other = leg;
    other.bearing = slip.bearing;
    candidates.push_back(
        {slip.words + " in the fore bearing", separation_from_opposite(other.azimuth(), back)});
  }
  return advice(std::move(candidates), limit);
}

}  // namespace lodebook::reduction
