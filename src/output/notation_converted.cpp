// SPDX-License-Identifier: MIT
// Corrected or converted readings, with a fixed number of decimals.
#include <algorithm>
#include <array>
#include <cstdlib>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/notation.hpp>

namespace lodebook::output {
namespace {

using notebook::Notation;

/// An azimuth in units of its last place, so that what follows is exact.
class Units {
 public:
  Units(double degrees, int decimals)
      : decimals_(std::clamp(decimals, 0, 7)),
        per_degree_(powers[static_cast<std::size_t>(decimals_)]),
        units_(rounded_azimuth(degrees, decimals_)) {}

  double degrees() const { return static_cast<double>(units_) / static_cast<double>(per_degree_); }
  bool is_cardinal() const { return units_ % turn(90) == 0; }

  /// The end of the axis that points north, or to the east.
  Units northern_end() const {
    Units end = *this;
    if (units_ > turn(90) && units_ <= turn(270)) end.units_ -= turn(180);
    if (end.units_ < 0) end.units_ += turn(360);
    return end;
  }
  /// Derived from the rounded figure, as in the table.
  Units turned_right() const {
    Units right = *this;
    right.units_ = (units_ + turn(90)) % turn(360);
    return right;
  }
  Units below_180() const {
    Units end = *this;
    if (units_ >= turn(180)) end.units_ -= turn(180);
    return end;
  }

  void append(std::string& out, Notation to) const {
    if (to == Notation::azimuth) {
      append_figure(out, units_, decimals_, 3);
      return;
    }
    const auto quarter = static_cast<std::size_t>(units_ / turn(90));
    if (is_cardinal()) {
      out.push_back("NESW"[quarter]);
      return;
    }
    const bool north = quarter == 0 || quarter == 3;
    const std::int64_t nearest_pole = quarter == 0 ? 0 : quarter == 3 ? turn(360) : turn(180);
    out.push_back(north ? 'N' : 'S');
    append_figure(out, std::abs(units_ - nearest_pole), decimals_);
    out.push_back(quarter < 2 ? 'E' : 'W');
  }

 private:
  static constexpr std::array<std::int64_t, 8> powers = {1,      10,      100,       1'000,
                                                         10'000, 100'000, 1'000'000, 10'000'000};
  std::int64_t turn(int degrees) const { return degrees * per_degree_; }

  int decimals_;
  std::int64_t per_degree_;
  std::int64_t units_;
};

void append_slope_figure(std::string& out, double degrees, int decimals) {
  const int places = std::clamp(decimals, 0, 7);
  append_figure(out, rounded(degrees, places), places);
}

bool shows_upright(double dip, int decimals) {
  const int places = std::clamp(decimals, 0, 7);
  return rounded(dip, places) == rounded(90, places);
}

/// `N20E 90` but `N/90` and `020/90`.
void append_separator(std::string& out, const Units& azimuth, Notation to) {
  out.push_back(to == Notation::azimuth || azimuth.is_cardinal() ? '/' : ' ');
}

}  // namespace

void append_converted_bearing(std::string& out, double degrees, int decimals, Notation to) {
  Units(degrees, decimals).append(out, to);
}

void append_converted_plane(std::string& out, std::optional<double> strike, double dip,
                            bool has_side, int strike_decimals, int dip_decimals,
                            ShownIn shown_in) {
  if (!strike) {
    out += "horizontal";
    return;
  }
  const Notation to = shown_in.bearings;
  const Units right(*strike, strike_decimals);
  const bool is_axis = shows_upright(dip, dip_decimals) && !has_side;
  const Units shown = to == Notation::quadrant ? right.northern_end()
                      : is_axis                ? right.below_180()
                                               : right;
  if (shown_in.planes == PlanesAs::direction) {
    if (!is_axis) {
      append_slope_figure(out, dip, dip_decimals);
      out += " > ";
      right.turned_right().append(out, to);
      return;
    }
    out += "vertical ";
    shown.append(out, to);
    return;
  }
  shown.append(out, to);
  append_separator(out, shown, to);
  append_slope_figure(out, dip, dip_decimals);
  if (is_axis) return;
  if (to == Notation::azimuth || shown.is_cardinal()) out.push_back(' ');
  out += name_of(nearest_eighth(right.degrees() + 90));
}

void append_converted_strike(std::string& out, double strike, int decimals, Notation to) {
  const Units shown(strike, decimals);
  out += "strike ";
  (to == Notation::quadrant ? shown.northern_end() : shown.below_180()).append(out, to);
}

void append_converted_dip(std::string& out, double dip, int decimals) {
  out += "dip ";
  append_slope_figure(out, dip, decimals);
}

void append_converted_line(std::string& out, std::optional<double> trend, double plunge,
                           int trend_decimals, int plunge_decimals, Notation to) {
  if (!trend) {
    out += "vertical";
    return;
  }
  const Units shown(*trend, trend_decimals);
  shown.append(out, to);
  append_separator(out, shown, to);
  append_slope_figure(out, plunge, plunge_decimals);
}

}  // namespace lodebook::output
