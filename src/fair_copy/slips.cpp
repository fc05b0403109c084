// SPDX-License-Identifier: MIT
#include "slips.hpp"

#include <fmt/format.h>

#include <algorithm>

#include <lodebook/orientation/angle.hpp>
#include <lodebook/orientation/quadrant.hpp>

namespace lodebook::fair_copy {

std::optional<Lines> slip_of_striae(std::string_view kind, const Tokens& tokens, const Page& page) {
  const auto slip =
      std::ranges::find_if(tokens, [](const Token& token) { return token.is(Meaning::slip); });
  const auto planes = page.neighbours.find(page.plane_kind);
  const bool striae = kind == "slickenline" || kind == "striation";
  if (slip == tokens.end() || !striae || planes == page.neighbours.end() || planes->second.empty())
    return std::nullopt;
  const auto direction = planes->second.back().azimuth;
  if (!direction) return std::nullopt;
  Lines lines;
  Line& line = lines.emplace_back();
  line.text = fmt::format("ask slickenline rake {} from {} on {}  ; no figure was read", slip->says,
                          name_of(nearest_eighth(wrap_degrees(*direction - 90))), page.plane_kind);
  line.readings = 1;
  return lines;
}

}  // namespace lodebook::fair_copy
