// SPDX-License-Identifier: MIT
// Conversion is reading with the reader of logs and writing with the writer of outputs.
#include <lodebook/cli/converter.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <lodebook/notebook/wording.hpp>
#include <lodebook/output/notation.hpp>

namespace lodebook::cli {
namespace {

using notebook::Bearing;
using notebook::LineAttitude;
using notebook::Notation;
using notebook::PlaneAttitude;
using notebook::Slope;

/// The decimals with which an angle was typed: those of its shortest digits, and for minutes and
/// seconds, whose digits do not end, two and four as in a reading.
int typed_decimals(double degrees) {
  std::array<char, 32> digits;
  const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), degrees,
                                     std::chars_format::fixed);
  const std::string_view text(digits.data(), static_cast<std::size_t>(written.ptr - digits.data()));
  const std::size_t point = text.find('.');
  if (point == std::string_view::npos) return 0;
  const auto decimals = static_cast<int>(text.size() - point - 1);
  if (decimals <= 4) return decimals;
  const double minutes = degrees * 60;
  return std::abs(minutes - std::round(minutes)) < 1e-6 ? 2 : 4;
}

int decimals_of(const Slope& slope) {
  return slope.percent ? 1 : slope.decimals;
}

}  // namespace

Converter::Converter(const CommandLine& line)
    : to_(line.to, line.planes), as_(line.as), options_{.rule = line.rule, .order = line.order} {
  if (!line.north && !line.declination && !line.set) return;
  reduction::Options options;
  options.declination = line.declination;
  options.set = line.set;
  settings_ = reduction::initial_settings(options);
  wanted_ = line.north.value_or(reduction::North::geographic);
  const reduction::Correction correction = reduction::correction(*settings_, wanted_);
  correction_decimals_ = typed_decimals(settings_->set.degrees_east());
  declination_decimals_ = typed_decimals(settings_->declination.degrees_east());
  if (correction.north == reduction::North::geographic)
    correction_decimals_ = std::max(correction_decimals_, declination_decimals_);
  only_magnetic_ = correction.north != wanted_;
}

std::variant<Converter, UsageError> Converter::from(const CommandLine& line) {
  if (line.declination && line.declination->from == notebook::DeclinationSetting::From::model)
    return declination_without_place();
  if (line.north == reduction::North::grid) return grid_without_place();
  Converter converter(line);
  if (line.north && converter.only_magnetic_) return north_without_declination();
  return converter;
}

reduction::Correction Converter::correction_of(const Bearing& bearing) const {
  return settings_ ? reduction::correction(*settings_, wanted_, bearing.north)
                   : reduction::Correction();
}

double Converter::corrected(Azimuth<north::dial> azimuth, const Bearing& bearing) const {
  return (azimuth + correction_of(bearing).angle).degrees();
}

void Converter::append_north(std::string& out, const Bearing& bearing) const {
  const bool stays = !settings_ || correction_of(bearing).lack != reduction::Lack::nothing;
  if (!stays || bearing.north == notebook::OwnNorth::none) return;
  out.push_back(' ');
  out += word_of(bearing.north);
}

int Converter::decimals_of(const Bearing& bearing) const {
  // A point that lies between the eight main ones, such as NNE, is half a degree off a whole one.
  const bool half = bearing.notation == Notation::point &&
                    degrees_of(bearing.point) != std::floor(degrees_of(bearing.point));
  const bool is_turned = correction_of(bearing).angle != Angle();
  const int by_correction = bearing.north == notebook::OwnNorth::none ? correction_decimals_
                            : is_turned                               ? declination_decimals_
                                                                      : 0;
  return std::max({static_cast<int>(bearing.decimals), half ? 1 : 0, by_correction});
}

void Converter::append(std::string& out, const Bearing& bearing) const {
  output::append_converted_bearing(out, corrected(bearing.azimuth(), bearing), decimals_of(bearing),
                                   to_.bearings);
  append_north(out, bearing);
}

void Converter::append(std::string& out, const PlaneAttitude& attitude) const {
  const int strike_decimals = decimals_of(attitude.bearing);
  const int dip_decimals = cli::decimals_of(attitude.dip);
  if (const auto plane = attitude.plane()) {
    const std::optional<double> strike =
        plane->is_horizontal() ? std::nullopt
                               : std::optional(corrected(plane->strike(), attitude.bearing));
    output::append_converted_plane(out, strike, plane->dip().degrees(), attitude.has_side(),
                                   strike_decimals, dip_decimals, to_);
  } else if (attitude.part() == notebook::Part::azimuth) {
    output::append_converted_strike(out, corrected(attitude.bearing.azimuth(), attitude.bearing),
                                    strike_decimals, to_.bearings);
  } else if (attitude.part() == notebook::Part::slope) {
    output::append_converted_dip(out, attitude.dip.degrees(), dip_decimals);
  } else {
    return;
  }
  append_north(out, attitude.bearing);
  output::append_facing(out, attitude);
  output::append_sense(out, attitude.sense);
}

void Converter::append(std::string& out, const LineAttitude& attitude) const {
  const int decimals = decimals_of(attitude.bearing);
  if (attitude.part() == notebook::Part::azimuth) {
    output::append_converted_bearing(out, corrected(attitude.trend(), attitude.bearing), decimals,
                                     to_.bearings);
  } else if (const auto line = attitude.line()) {
    const std::optional<double> trend =
        line->is_vertical() ? std::nullopt
                            : std::optional(corrected(line->trend(), attitude.bearing));
    output::append_converted_line(out, trend, line->plunge().degrees(), decimals,
                                  cli::decimals_of(attitude.slope), to_.bearings);
  } else {
    return;  // a rake needs a plane, so it is not a reading on its own and never comes here
  }
  append_north(out, attitude.bearing);
  if (attitude.on != notebook::no_kind) {
    // A reading on its own declares no kinds, so that it has those that every log has.
    out += " on " + notebook::read_log(notebook::Source({}, {})).kinds[attitude.on].name;
  }
  output::append_sense(out, attitude.sense);
}

void Converter::tell_north(const notebook::Source& source, const Bearing& bearing,
                           std::vector<notebook::Diagnostic>& diagnostics) const {
  const reduction::Lack lack = correction_of(bearing).lack;
  if (lack == reduction::Lack::nothing) return;
  notebook::Diagnostic kept = notebook::wording::north_kept(
      word_of(bearing.north), name_of(wanted_), lack == reduction::Lack::position);
  if (lack == reduction::Lack::position)
    kept.help = "a single reading has none: type it in a log that gives it with 'at'";
  kept.place = source.place(1, source.line(1));
  diagnostics.push_back(std::move(kept));
}

bool Converter::convert(const notebook::Source& source, std::string& out,
                        std::vector<notebook::Diagnostic>& diagnostics) const {
  notebook::SingleReading reading = notebook::read_single(source, as_, options_);
  bool good = true;
  for (notebook::Diagnostic& diagnostic : reading.diagnostics) {
    good = good && diagnostic.severity != notebook::Severity::error;
    diagnostics.push_back(std::move(diagnostic));
  }
  const std::size_t before = out.size();
  std::visit(
      [&](const auto& what) {
        if constexpr (!std::is_same_v<decltype(what), const std::monostate&>) {
          if (!good) return;
          append(out, what);
          if constexpr (std::is_same_v<decltype(what), const Bearing&>) {
            tell_north(source, what, diagnostics);
          } else {
            tell_north(source, what.bearing, diagnostics);
          }
        }
      },
      reading.what);
  if (out.size() == before) return false;
  if (reading.doubtful) out += " doubtful";
  return true;
}

}  // namespace lodebook::cli
