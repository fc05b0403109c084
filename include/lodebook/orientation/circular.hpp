// SPDX-License-Identifier: MIT
// The mean of azimuths. It is not the arithmetic mean: that of 350 and 10 is north.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace lodebook {

/// The mean of directions round the horizon, from the sum of their unit vectors.
struct CircularMean {
  std::size_t count = 0;
  /// Degrees in [0, 360); of axes in [0, 180). Nothing where the directions cancel out.
  std::optional<double> azimuth;
  /// The sum's length over the count, in [0, 1]; of axes that of their doubled angles.
  double resultant = 0;
  /// The chance that a resultant as long comes from directions all round: the Rayleigh test,
  /// exp(sqrt(1 + 4N + 4(N^2 - R^2)) - (1 + 2N)) (D. Wilkie 1983, Applied Statistics 32, 311; J. H.
  /// Zar 1999, Biostatistical Analysis, eq. 27.4, from memory).
  double chance = 1;
  /// How far the mean may be off on either side with 95 % confidence, degrees: G. J. G. Upton's
  /// arcs (Zar 1999, eqs. 26.23 and 26.24, from memory), halved for axes. Of simulated samples of
  /// 10 and 40 directions they held the true one in 92 to 97 %. Nothing for fewer than three, or
  /// where the resultant is too short for any.
  std::optional<double> arc95;

  /// Whether the mean is meaningful: it has an arc, and the Rayleigh test finds a direction at 5
  /// %.
  bool is_meaningful() const { return arc95 && chance < 0.05; }
};

/// The mean of azimuths of arrows: finite degrees, in any range.
CircularMean circular_mean(std::span<const double> azimuths);

/// The mean of azimuths of axes such as strikes, whose two ends are alike: angles are doubled,
/// averaged, and halved (W. C. Krumbein 1939, J. Geology 47, 673).
CircularMean axial_mean(std::span<const double> azimuths);

}  // namespace lodebook
