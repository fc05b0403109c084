// SPDX-License-Identifier: MIT
#include <lodebook/reduction/chi_square.hpp>

#include <boost/math/distributions/chi_squared.hpp>
#include <cmath>

namespace lodebook::reduction {

double chance_of(double chi_square, std::size_t freedom) {
  if (freedom == 0) return 1;
  if (!std::isfinite(chi_square)) return 0;
  const boost::math::chi_squared distribution(static_cast<double>(freedom));
  return boost::math::cdf(boost::math::complement(distribution, chi_square));
}

}  // namespace lodebook::reduction
