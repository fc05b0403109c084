// SPDX-License-Identifier: MIT
#include "fair_copy/random_pages.hpp"

#include "fair_copy/page_writer.hpp"

namespace lodebook::test {

RandomPage random_page(std::uint32_t seed) {
  Draw draw(seed);
  const Hand hand(draw);
  PageWriter writer(hand, draw);
  writer.heading();
  for (std::size_t left = 3 + draw.below(4); left > 0; --left)
    writer.station(left > 1);
  return writer.finished();
}

}  // namespace lodebook::test
