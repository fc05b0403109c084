// SPDX-License-Identifier: MIT
#include "crowd.hpp"

#include <cmath>

#include "../paragraph.hpp"

namespace lodebook::drawing {
namespace {

/// Kept free around each symbol.
constexpr double gap_mm = 0.15;

/// The room of a name, one of a few sizes.
Point size_of(const CrowdName& name) {
  constexpr double margin = 0.6;
  constexpr double step = 3;
  const double width = room_for(name.role, name.text) + margin;
  return {step * std::ceil(width / step), height_of(name.role) + margin};
}

}  // namespace

std::optional<Crowd> arrange(const Box& frame, std::span<const Spot> spots,
                             std::span<const CrowdSymbol> symbols,
                             std::span<const CrowdName> names) {
  Placement placement(frame);
  Crowd crowd;
  crowd.symbols.resize(symbols.size());
  std::vector<bool> is_placed(symbols.size(), false);
  for (std::size_t i = 0; i < symbols.size(); ++i) {
    const Circle disc = {spots[symbols[i].spot].at, symbols[i].radius + gap_mm};
    if (!symbols[i].claims_place || !placement.is_free(disc)) continue;
    placement.take(disc);
    crowd.symbols[i] = disc.center;
    is_placed[i] = true;
  }
  for (const Spot& spot : spots)
    placement.take(Circle{spot.at, spot.radius});
  for (const CrowdName& name : names) {
    const Point size = size_of(name);
    // To the upper right of its place, where a reader looks first.
    const Point wanted = name.at + Point{size.x / 2 + 0.8, -size.y / 2};
    const auto middle = placement.place_box(wanted, size.x, size.y);
    if (!middle) return std::nullopt;
    crowd.names.push_back(box_around(*middle, size.x, size.y));
  }
  for (std::size_t i = 0; i < symbols.size(); ++i) {
    if (is_placed[i]) continue;
    const auto place = placement.place_disc(spots[symbols[i].spot].at, symbols[i].radius + gap_mm);
    if (!place) return std::nullopt;
    crowd.symbols[i] = *place;
  }
  return crowd;
}

}  // namespace lodebook::drawing
