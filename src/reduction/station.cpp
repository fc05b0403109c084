// SPDX-License-Identifier: MIT
#include "station.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include <lodebook/notebook/nearest.hpp>
#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/precision.hpp>

#include "reading_accuracy.hpp"
#include "repeats.hpp"
#include "site_keeper.hpp"
#include "slips.hpp"
#include "turned.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;
using wording::Doubt;

/// Over this sigma (degrees) a direction means nothing: 52 is that of a direction drawn blindly,
/// 90 / sqrt(3).
constexpr double meaningless_sigma = 52;
/// From this sigma (degrees) on, a strike or trend gets the note that it is uncertain.
constexpr double uncertain_sigma = 10;
constexpr double plane_floor = 5;
constexpr double back_floor = 2;

/// An azimuth as read, in another frame.
template <class North>
Azimuth<North> turned_to(Azimuth<north::dial> azimuth, Angle turn) {
  return Azimuth<North>::clockwise(azimuth - Azimuth<north::dial>() + turn);
}

std::optional<double> meaningful(double sigma) {
  if (!(sigma <= meaningless_sigma)) return std::nullopt;
  return sigma;
}

/// The other station at which a sight or leg was read; no_name for none.
NameId read_from(const Reading& reading) {
  if (const auto* sight = std::get_if<Sight>(&reading.what)) return sight->from;
  const auto* leg = std::get_if<Leg>(&reading.what);
  return leg ? leg->from : no_name;
}

KindId kind_named(const Notebook& notebook, std::string_view name) {
  const auto found = std::ranges::find(notebook.kinds, name, &Kind::name);
  return static_cast<KindId>(found - notebook.kinds.begin());
}

}  // namespace

Station::Station(const Notebook& notebook, const Options& options, const Places& places)
    : notebook_(notebook),
      options_(options),
      places_(places),
      fault_(kind_named(notebook, "fault")),
      shear_(kind_named(notebook, "shear")) {}

void Station::begin(Page& page) {
  page_ = &page;
  surfaces_ = 0;
  planes_.clear();
  ends_of_kinds_.clear();
}

void Station::report_at(const Row& row, std::string_view keyword, Diagnostic diagnostic) {
  report(row, std::move(diagnostic));
  show_at(row, keyword);
}

void Station::show_at(const Row& row, std::string_view keyword) {
  page_->diagnostics.back().place = notebook_.source.place(
      row.entry->line, find_word(notebook_.source, row.reading->written, keyword));
}

void Station::report(const Row& row, Diagnostic diagnostic) {
  diagnostic.place = notebook_.source.place(row.entry->line, row.reading->written);
  diagnostic.reading = row.reading->number;
  page_->diagnostics.push_back(std::move(diagnostic));
}

void Station::begin_row(Row& row, const Entry& entry, const Settings& settings,
                        std::string_view unit) const {
  row.entry = &entry;
  row.reading = &std::get<Reading>(entry.what);
  row.kind = &notebook_.kinds[row.reading->kind];
  row.read_from = north_read(*row.reading, settings);
  row.north = correction_of(row, settings).north;
  row.unit = unit;
  const std::string_view by = notebook_.source.text(row.reading->by);
  row.observer = by.empty() ? settings.observer : by;
  row.date = settings.date;
  row.written = notebook_.source.text(row.reading->written);
  row.remark = notebook_.source.text(entry.remark);
  if (row.reading->waits_for) row.codes.push_back(*row.reading->waits_for);
}

void Station::add(std::span<const Entry> statement, const Settings& here, std::string_view unit) {
  const std::size_t first_row = page_->rows.size();
  const NameId from = read_from(std::get<Reading>(statement.front().what));
  const auto elsewhere = elsewhere_of(from);
  const Settings there = elsewhere ? at_place(here, from) : Settings();
  const Settings& settings = elsewhere ? there : here;
  const Kind::Type type = notebook_.kinds[std::get<Reading>(statement.front().what).kind].type;
  const bool is_surface = type == Kind::Type::plane || type == Kind::Type::line;
  if (is_surface) ++surfaces_;
  for (const Entry& entry : statement) {
    Row& row = page_->rows.emplace_back();
    begin_row(row, entry, settings, unit);
    row.elsewhere = elsewhere;
    row.surface = is_surface ? surfaces_ : 0;
    bool good = !row.reading->rejected;
    if (const auto* sight = std::get_if<Sight>(&row.reading->what)) {
      if (sight->target != no_name) row.target = notebook_.names.shown(sight->target);
      if (good) fill_sight(row, *sight, settings);
    } else if (const auto* leg = std::get_if<Leg>(&row.reading->what)) {
      if (leg->to != no_name) row.target = notebook_.names.shown(leg->to);
      if (from != no_name) row.target = page_->station;
      if (good) fill_leg(row, *leg, settings);
    } else if (const auto* plane = std::get_if<PlaneAttitude>(&row.reading->what)) {
      good = good && fill_plane(row, *plane, settings);
      if (!good) keep({row.reading->kind, row.surface, ReadPlane::Worth::rejected});
    } else if (const auto* line = std::get_if<LineAttitude>(&row.reading->what)) {
      good = good && fill_line(row, *line, settings);
    }
    if (!good) row.status = Status::rejected;
  }
  const auto good = std::ranges::find_if(
      page_->rows.begin() + static_cast<std::ptrdiff_t>(first_row), page_->rows.end(),
      [](const Row& row) { return row.status != Status::rejected; });
  if (from != no_name && good != page_->rows.end()) check_ends(*good, from);
  if (statement.size() > 1 && type == Kind::Type::sight) {
    check_sight_repeats(first_row, settings);
    if (options_.repeats == Repeats::mean) take_sight_mean(first_row, settings);
  } else if (statement.size() > 1) {
    check_repeats(first_row, settings);
    if (options_.repeats == Repeats::mean) take_mean(first_row, settings);
  }
}

Correction Station::correction_of(const Row& row, const Settings& settings) const {
  return correction(settings, options_.north, row.read_from);
}

OwnNorth Station::north_read(const Reading& reading, const Settings& settings) const {
  const auto* line = std::get_if<LineAttitude>(&reading.what);
  if (!line || line->form != LineAttitude::Form::rake) return north_of(reading);
  const ReadPlane* plane = plane_of_rake(*line);
  if (!plane || plane->worth < ReadPlane::Worth::apart) return OwnNorth::none;
  const bool on_dial = plane->on_dial && plane->north == frame_of(settings, OwnNorth::none).north;
  return on_dial ? OwnNorth::none : plane->north;
}

void Station::fill_strike(Row& row, const Plane<north::dial>& plane, bool has_side,
                          const ReadingAccuracy& accuracy, const Correction& added_angle) {
  row.dip = plane.dip().degrees();
  if (shows_as(*row.dip, 0)) return;
  fill_strike_alone(row, plane.strike(), shows_as(*row.dip, 90) && !has_side, accuracy,
                    strike_sigma(0, accuracy.dip, plane.dip()), added_angle);
}

void Station::fill_strike_alone(Row& row, Azimuth<north::dial> strike, bool is_axis,
                                const ReadingAccuracy& accuracy, double by_dip,
                                const Correction& added_angle) {
  const double turned_strike = added(strike.degrees(), added_angle.angle);
  row.strike_is_axis = is_axis;
  row.strike = is_axis ? axis(turned_strike) : turned_strike;
  const bool turned = *row.strike != turned_strike;
  row.as_read = (turned ? strike.opposite() : strike).degrees();
  row.correction = added_angle.angle.degrees();
  tell_north(row, "", added_angle);
  const double sigma = combined_sigma(combined_sigma(accuracy.bearing, by_dip), added_angle.sigma);
  row.uncertainty = meaningful(sigma);
  if (!(sigma > uncertain_sigma)) return;
  const Doubt cause = by_dip > accuracy.bearing ? Doubt::slope
                      : accuracy.by_point       ? Doubt::point
                                                : Doubt::bearing;
  const bool by_declination = added_angle.sigma > std::max(by_dip, accuracy.bearing);
  report(row, wording::strike_uncertain(sigma, row.dip.value_or(0),
                                        by_declination ? Doubt::declination : cause));
}

void Station::fill_half_plane(Row& row, const PlaneAttitude& attitude, const Settings& settings) {
  if (row.part == Part::slope) {
    row.dip = attitude.dip.degrees();
  } else {
    fill_strike_alone(row, attitude.bearing.azimuth(), true,
                      accuracy_of(attitude, settings.accuracy), 0, correction_of(row, settings));
  }
  keep({row.reading->kind, row.surface, ReadPlane::Worth::half});
}

bool Station::fill_plane(Row& row, const PlaneAttitude& attitude, const Settings& settings) {
  row.facing = attitude.facing;
  row.facing_doubtful = attitude.facing_doubtful;
  row.sense = attitude.sense;
  row.part = attitude.part();
  if (row.part != Part::whole) {
    fill_half_plane(row, attitude, settings);
    return true;
  }
  const auto plane = attitude.plane();
  if (!plane) return false;
  const ReadingAccuracy accuracy = accuracy_of(attitude, settings.accuracy);
  fill_strike(row, *plane, attitude.has_side(), accuracy, correction_of(row, settings));
  const Frame frame = frame_of(settings, attitude.bearing.north);
  keep({row.reading->kind, row.surface, ReadPlane::Worth::good,
        Plane<KeptNorth>::from_strike(turned_to<KeptNorth>(plane->strike(), frame.turn),
                                      plane->dip(), HandRule::right),
        accuracy, attitude.bearing.north == OwnNorth::none, frame.north});
  return true;
}

Station::Frame Station::frame_of(const Settings& settings, OwnNorth read) {
  if (read != OwnNorth::none) return {read, Angle()};
  // A dial that is declared right shows true north, even if nobody says what was set on it.
  if (settings.as_set() && !settings.has_figure()) return {OwnNorth::geographic, Angle()};
  return {OwnNorth::magnetic, -settings.set.eastward()};
}

std::optional<Angle> Station::turn_to(const ReadPlane& plane, const Settings& settings,
                                      OwnNorth read) {
  const Frame frame = frame_of(settings, read);
  const auto turn = turn_between(settings, frame.north, plane.north);
  return turn ? std::optional(frame.turn + *turn) : std::nullopt;
}

void Station::fill_trend(Row& row, const Line<north::dial>& line, const TrendError& error,
                         const Correction& added_angle) {
  row.plunge = line.plunge().degrees();
  if (!shows_as(*row.plunge, 90)) fill_trend_alone(row, line.trend(), error, added_angle);
}

void Station::fill_trend_alone(Row& row, Azimuth<north::dial> trend, const TrendError& error,
                               const Correction& added_angle) {
  const double turned_trend = added(trend.degrees(), added_angle.angle);
  const bool is_axis = row.kind->two_ended && row.part == Part::azimuth;
  row.trend = is_axis ? axis(turned_trend) : turned_trend;
  row.as_read = (*row.trend == turned_trend ? trend : trend.opposite()).degrees();
  row.correction = added_angle.angle.degrees();
  tell_north(row, "", added_angle);
  const double sigma = combined_sigma(combined_sigma(error.own, error.of_plane), added_angle.sigma);
  row.uncertainty = meaningful(sigma);
  if (!(sigma > uncertain_sigma)) return;
  const bool by_declination = added_angle.sigma > std::max(error.own, error.of_plane);
  report(row, wording::trend_uncertain(sigma, row.plunge.value_or(0),
                                       by_declination ? Doubt::declination : error.cause));
}

Station::TrendError Station::trend_error(const LineAttitude& attitude, Plunge plunge,
                                         const ReadingAccuracy& accuracy) const {
  if (attitude.form != LineAttitude::Form::rake) {
    const Doubt by_bearing = accuracy.by_point ? Doubt::point : Doubt::bearing;
    const bool steep = 2 * cos(plunge.angle()) < 1;
    return {trend_sigma(accuracy.bearing, plunge), 0, steep ? Doubt::slope : by_bearing};
  }
  const ReadPlane& read = *plane_of_rake(attitude);
  const Dip dip = read.plane.dip();
  const RakeTurnSigma turn = rake_turn_sigma(accuracy.dip, read.accuracy.dip, dip,
                                             *Rake::from_degrees(attitude.slope.value));
  const double of_plane =
      combined_sigma(strike_sigma(read.accuracy.bearing, read.accuracy.dip, dip), turn.by_dip);
  return {turn.by_rake, of_plane, turn.by_rake > of_plane ? Doubt::slope : Doubt::plane};
}

bool Station::fill_line(Row& row, const LineAttitude& attitude, const Settings& settings) {
  row.sense = attitude.sense;
  row.part = attitude.part();
  const ReadingAccuracy accuracy = accuracy_of(attitude, settings.accuracy);
  if (row.part == Part::azimuth) {
    fill_trend_alone(row, attitude.trend(), trend_error(attitude, Plunge(), accuracy),
                     correction_of(row, settings));
    return true;
  }
  const bool is_rake = attitude.form == LineAttitude::Form::rake;
  const auto line = is_rake ? line_of_rake(row, attitude, settings) : attitude.line();
  if (!line) return false;
  if (is_rake) row.rake = attitude.slope.value;
  row.rises = row.kind->is_arrow && attitude.slope.value < 0;
  fill_trend(row, *line, trend_error(attitude, line->plunge(), accuracy),
             correction_of(row, settings));
  if (!is_rake) check_in_plane(row, attitude, *line, settings);
  return true;
}

void Station::keep(const ReadPlane& plane) {
  planes_.push_back(plane);
  if (ends_of_kinds_.size() <= plane.kind) ends_of_kinds_.resize(plane.kind + 1U);
  ends_of_kinds_[plane.kind] = planes_.size();
}

std::size_t Station::end_of(KindId kind) const {
  return kind < ends_of_kinds_.size() ? ends_of_kinds_[kind] : 0;
}

const Station::ReadPlane* Station::last_plane(std::size_t end) const {
  if (end == 0) return nullptr;
  const ReadPlane* best = &planes_[end - 1];
  for (std::size_t i = end - 1; i > 0 && planes_[i - 1].surface == best->surface; --i) {
    if (planes_[i - 1].worth > best->worth) best = &planes_[i - 1];
  }
  return best;
}

const Station::ReadPlane* Station::plane_of_rake(const LineAttitude& attitude) const {
  return last_plane(attitude.on == no_kind ? planes_.size() : end_of(attitude.on));
}

std::optional<Line<north::dial>> Station::line_of_rake(const Row& row, const LineAttitude& attitude,
                                                       const Settings& settings) {
  const ReadPlane* read = plane_of_rake(attitude);
  const auto fail = [&](std::string_view why) {
    report(row, wording::rake_no_plane(why));
    return std::nullopt;
  };
  if (!read) return fail("none was read before it at this station");
  if (read->worth == ReadPlane::Worth::rejected) return fail("the one read before it was rejected");
  if (read->worth == ReadPlane::Worth::half)
    return fail("of the one read before it only one half was read");
  if (shows_as(read->plane.dip().degrees(), 0)) return fail("the one read before it is horizontal");
  const auto rake = Rake::from_degrees(attitude.slope.value);
  // Where nothing leads from one north to the other the bearing still names an end of the strike.
  const Angle turn = turn_to(*read, settings, attitude.bearing.north).value_or(Angle());
  const auto from = turned_to<KeptNorth>(attitude.bearing.azimuth(), turn);
  const auto line = Line<KeptNorth>::in_plane(read->plane, *rake, from);
  // Back onto the dial, if the plane was read on it.
  const Angle kept = frame_of(settings, row.read_from).turn;
  const auto as_read = [&](Azimuth<KeptNorth> azimuth) {
    return Azimuth<north::dial>::clockwise(azimuth - Azimuth<KeptNorth>() - kept);
  };
  if (!line) {
    const double off = separation(from, read->plane.strike()).degrees();
    report(row,
           wording::rake_end(std::min(off, 180 - off),
                             trimmed_azimuth_text(as_read(read->plane.strike()).degrees(), 0)));
    return std::nullopt;
  }
  return Line<north::dial>(as_read(line->trend()), line->plunge());
}

void Station::check_in_plane(const Row& row, const LineAttitude& attitude,
                             const Line<north::dial>& line, const Settings& settings) {
  const bool named = attitude.on != no_kind;
  if (!named && row.kind->name != "slickenline") return;
  const ReadPlane* read =
      last_plane(named ? end_of(attitude.on) : std::max(end_of(fault_), end_of(shear_)));
  if (!read || read->worth < ReadPlane::Worth::apart) {
    if (named) report(row, wording::plane_unknown(notebook_.kinds[attitude.on].name));
    return;
  }
  const auto turn = turn_to(*read, settings, attitude.bearing.north);
  // From two norths that nothing known joins: their rows tell so.
  if (!turn) return;
  const Vector pole = read->plane.pole();
  const auto off = [&](const Line<north::dial>& candidate, bool = false) {
    const Line<KeptNorth> turned(turned_to<KeptNorth>(candidate.trend(), *turn),
                                 candidate.plunge());
    return angle_out_of_plane(turned.direction(), pole).degrees();
  };
  Check check;
  check.what = Check::What::line_in_plane;
  check.line = row.entry->line;
  check.kind = row.kind;
  check.plane_kind = &notebook_.kinds[read->kind];
  check.surface = row.surface;
  check.figure = off(line);
  const ReadingAccuracy accuracy = accuracy_of(attitude, settings.accuracy);
  check.limit = limit_of(
      combined_sigma(line_sigma(accuracy.bearing, accuracy.dip),
                     pole_sigma(read->accuracy.bearing, read->accuracy.dip, read->plane.dip())),
      plane_floor);
  check.passed = check.figure <= check.limit;
  if (!check.passed) {
    report(row, wording::line_off_plane(check.figure, check.plane_kind->name, check.limit,
                                        explain_line(attitude, check.limit, Ends::both, off)));
  }
  page_->checks.push_back(check);
}

void Station::tell_north(const Row& row, std::string_view keyword, const Correction& added_angle) {
  if (added_angle.lack != Lack::declination && added_angle.lack != Lack::position) return;
  const bool by_position = added_angle.lack == Lack::position;
  report(row,
         wording::north_kept(name_of(added_angle.north), name_of(options_.north), by_position));
  if (!keyword.empty()) show_at(row, keyword);
}

void Station::check_slope(const Row& row, std::string_view keyword,
                          const std::optional<Slope>& slope) {
  if (!slope || !may_be_percent(*slope)) return;
  report_at(row, keyword,
            wording::percent_or_degrees(trimmed_text(slope->value, angle_decimals),
                                        degrees_from_percent(slope->value),
                                        std::holds_alternative<Leg>(row.reading->what)));
}

Settings Station::at_place(const Settings& settings, NameId name) const {
  Settings there = settings;
  const auto known = places_.known.find(name);
  if (known == places_.known.end() || !known->second->position) return there;
  const bool wants_grid = options_.grid_columns || options_.north == North::grid;
  put_at(there, known->second->position->position, known->second->elevation_m.value_or(0),
         wants_grid);
  return there;
}

std::shared_ptr<const Elsewhere> Station::elsewhere_of(NameId name) const {
  if (name == no_name) return nullptr;
  const auto known = places_.known.find(name);
  if (known != places_.known.end()) return known->second;
  Elsewhere unknown;
  unknown.station = notebook_.names.shown(name);
  return std::make_shared<const Elsewhere>(unknown);
}

std::string_view Station::station_of(const Row& row) const {
  return row.elsewhere ? row.elsewhere->station : page_->station;
}

void Station::check_ends(const Row& row, NameId from) {
  const bool is_leg = row.kind->type == Kind::Type::leg;
  if (!places_.is_station[from]) {
    report_at(
        row, "from",
        wording::station_unknown(station_of(row), nearest(station_of(row), places_.stations)));
  } else if (is_leg && row.target == station_of(row)) {
    report_at(row, "from", wording::own_station(row.target));
  }
}

void Station::fill_sight(Row& row, const Sight& sight, const Settings& settings) {
  // What was read at the mark has the declination of the mark, where that is known.
  const Settings there = sight.is_back ? at_place(settings, sight.target) : Settings();
  const Correction added_angle = correction_of(row, sight.is_back ? there : settings);
  row.north = added_angle.north;
  row.as_read = sight.azimuth().degrees();
  row.correction = added_angle.angle.degrees();
  row.bearing = added(*row.as_read, added_angle.angle);
  tell_north(row, "", added_angle);
  row.back_bearing = added(sight.azimuth().opposite().degrees(), added_angle.angle);
  const double sigma = accuracy_of(sight.bearing, Told::direction, settings.accuracy).bearing;
  row.uncertainty = meaningful(combined_sigma(sigma, added_angle.sigma));
  if (sight.vertical) row.vertical_angle = sight.vertical->degrees();
  check_slope(row, "vertical", sight.vertical);
  if (!places_.is_landmark[sight.target] && !places_.is_station[sight.target])
    report_at(row, "", wording::landmark_unknown(row.target, nearest(row.target, places_.targets)));
  if (sight.back) check_back_of_sight(row, sight, settings);
}

void Station::check_back_of_sight(Row& row, const Sight& sight, const Settings& settings) {
  Correction there =
      correction(at_place(settings, sight.target), options_.north, sight.back->north);
  // Neither can be corrected alike: as far as the dial goes both are as read.
  const bool are_read_alike = sight.back->north == sight.bearing.north;
  if (there.north != row.north && are_read_alike) there = correction_of(row, settings);
  Leg both;
  both.bearing = sight.bearing;
  both.back = sight.back;
  both.south_end = sight.south_end;
  tell_north(row, "back", there);
  check_back(row, both, there, settings);
}

void Station::check_back(Row& row, const Leg& both, const Correction& of_back,
                         const Settings& settings) {
  // From two norths that nothing known joins.
  if (of_back.north != row.north) {
    row.back_bearing.reset();
    return;
  }
  row.back_bearing = added(both.back->azimuth().degrees(), of_back.angle);
  Check check;
  check.what = Check::What::fore_and_back;
  check.line = row.entry->line;
  check.kind = row.kind;
  check.figure = std::abs(std::remainder(*row.back_bearing - *row.bearing - 180, 360.0));
  const double sigma = accuracy_of(both.bearing, Told::direction, settings.accuracy).bearing;
  const double back_sigma = accuracy_of(*both.back, Told::direction, settings.accuracy).bearing;
  check.limit = limit_of(combined_sigma(sigma, back_sigma), back_floor);
  check.passed = check.figure <= check.limit;
  if (!check.passed) {
    const Angle turn = *Angle::from_degrees(of_back.angle.degrees() - *row.correction);
    report_at(row, "back",
              wording::back_bearing(check.figure, check.limit,
                                    explain_back_bearing(both, turn, check.limit)));
  }
  page_->checks.push_back(check);
}

void Station::fill_leg(Row& row, const Leg& leg, const Settings& settings) {
  const Correction added_angle = correction_of(row, settings);
  row.as_read = leg.azimuth().degrees();
  row.correction = added_angle.angle.degrees();
  row.bearing = added(*row.as_read, added_angle.angle);
  tell_north(row, "", added_angle);
  const double sigma = accuracy_of(leg.bearing, Told::direction, settings.accuracy).bearing;
  row.uncertainty = meaningful(combined_sigma(sigma, added_angle.sigma));
  row.distance_m = leg.distance.metres(settings.pace_m.value_or(0));
  if (leg.slope) row.vertical_angle = leg.slope->degrees();
  check_slope(row, "slope", leg.slope);
  if (leg.to != no_name && !places_.is_station[leg.to])
    report_at(row, "to",
              wording::station_unknown(row.target, nearest(row.target, places_.stations)));
  if (leg.to != no_name && row.target == page_->station)
    report_at(row, "to", wording::own_station(row.target));
  if (!leg.back) return;
  const Correction of_back = correction(settings, options_.north, leg.back->north);
  tell_north(row, "back", of_back);
  check_back(row, leg, of_back, settings);
}

}  // namespace lodebook::reduction
