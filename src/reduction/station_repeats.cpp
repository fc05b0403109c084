// SPDX-License-Identifier: MIT
// Repeat readings of one surface at a station: whether they agree, and their mean as one row.
#include <algorithm>
#include <cmath>

#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/mean.hpp>
#include <lodebook/orientation/precision.hpp>

#include "repeats.hpp"
#include "slips.hpp"
#include "station.hpp"
#include "turned.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// Repeats that can be held against each other.
using Peers = std::vector<Row*>;

/// The good ones that are whole; without any, those whose strike or trend alone was read. All that
/// have a direction refer to one north, that of the first.
Peers peers_of(std::span<Row> rows) {
  for (const Part part : {Part::whole, Part::azimuth}) {
    Peers peers;
    const Row* leader = nullptr;
    for (Row& row : rows) {
      if (row.status == Status::rejected || row.part != part) continue;
      if (row.correction && !leader) leader = &row;
      if (!row.correction || row.north == leader->north) peers.push_back(&row);
    }
    if (!peers.empty()) return peers;
  }
  return {};
}

/// The one in whose frame they are compared, as it was read.
const Row& leader_of(std::span<Row* const> rows) {
  const auto directed =
      std::ranges::find_if(rows, [](const Row* row) { return row->correction.has_value(); });
  return directed == rows.end() ? *rows.front() : **directed;
}

/// What takes a repeat into that frame, if it was read from another north.
Angle turn_of(const Row& row, const Row& leader) {
  return *Angle::from_degrees(row.correction.value_or(0) -
                              (row.correction ? leader.correction.value_or(0) : 0));
}

Vector turned(Vector direction, Angle turn) {
  return {direction.north * cos(turn) - direction.east * sin(turn),
          direction.north * sin(turn) + direction.east * cos(turn), direction.down};
}

const PlaneAttitude* plane_of(const Row& row) {
  return std::get_if<PlaneAttitude>(&row.reading->what);
}

/// Whether the dip side of one of the planes was typed.
bool any_side(std::span<Row* const> planes) {
  return std::ranges::any_of(planes, [](const Row* row) { return plane_of(*row)->has_side(); });
}

/// Where a line that was read points, as read; level where its plunge was not read.
Vector pointing(const Row& row) {
  const Vector down = direction_of(row.as_read.value_or(0), row.plunge.value_or(0));
  return row.rises ? -down : down;
}

/// The pole of a plane, or the direction of its strike alone, or of a line; in the frame in which
/// `leader` was read.
Vector vector_of(const Row& row, const Row& leader) {
  const PlaneAttitude* const plane = plane_of(row);
  const bool has_pole = plane && row.part == Part::whole;
  return turned(has_pole ? plane->plane()->pole() : pointing(row), turn_of(row, leader));
}

Repeat repeat_of(const Row& row, const Row& leader, const Accuracy& in_force) {
  const PlaneAttitude* const plane = plane_of(row);
  const ReadingAccuracy accuracy =
      plane ? accuracy_of(*plane, in_force)
            : accuracy_of(std::get<LineAttitude>(row.reading->what), in_force);
  if (row.part != Part::whole) return {vector_of(row, leader), accuracy.bearing};
  const double sigma = plane ? pole_sigma(accuracy.bearing, accuracy.dip, plane->plane()->dip())
                             : line_sigma(accuracy.bearing, accuracy.dip);
  return {vector_of(row, leader), sigma};
}

/// What of it is compared.
std::string_view name_of_compared(const Row& row) {
  const bool is_plane = plane_of(row) != nullptr;
  if (row.part == Part::whole) return is_plane ? "the pole" : "the line";
  return is_plane ? "the strike" : "the trend";
}

/// The line by its end that goes down; one that shows as level keeps the end it points to.
TrendAndPlunge line_going_down(Vector arrow) {
  const TrendAndPlunge line = line_of_arrow(arrow);
  if (line.plunge >= 0) return line;
  if (shows_as(line.plunge, 0)) return {line.trend, 0};
  return {wrap_degrees(line.trend + 180), -line.plunge};
}

/// Of a strike both ends are alike, too.
Ends ends_of(const notebook::Kind& kind) {
  return kind.is_arrow ? Ends::one : Ends::both;
}

/// The errors of the readings average out; the declination's is common to all.
ReadingAccuracy mean_accuracy(std::span<Row* const> planes, const Accuracy& in_force) {
  ReadingAccuracy mean;
  for (const Row* row : planes) {
    const auto own = accuracy_of(*plane_of(*row), in_force);
    mean.bearing = combined_sigma(mean.bearing, own.bearing);
    mean.dip = combined_sigma(mean.dip, own.dip);
  }
  const auto count = static_cast<double>(planes.size());
  return {mean.bearing / count, mean.dip / count};
}

}  // namespace

/// So do those of lines; what rakes have from their plane does not.
Station::TrendError Station::mean_error(std::span<Row* const> rows, Plunge plunge,
                                        const Settings& settings) const {
  TrendError mean;
  for (const Row* row : rows) {
    const auto& line = std::get<LineAttitude>(row->reading->what);
    const TrendError one = trend_error(line, plunge, accuracy_of(line, settings.accuracy));
    mean.own = combined_sigma(mean.own, one.own);
    mean.of_plane += one.of_plane;
  }
  const auto count = static_cast<double>(rows.size());
  return {mean.own / count, mean.of_plane / count};
}

Correction Station::mean_correction(std::span<Row* const> rows, const Settings& settings) const {
  Correction mean = correction_of(leader_of(rows), settings);
  double sum = 0;
  std::size_t count = 0;
  for (const Row* row : rows) {
    if (!row->correction) continue;
    sum += correction_of(*row, settings).sigma;
    ++count;
  }
  if (count > 0) mean.sigma = sum / static_cast<double>(count);
  return mean;
}

std::string Station::explain_apart(const Row& row, Angle turn, const Agreement::Member& member,
                                   Ends ends) const {
  if (row.part != Part::whole) return {};
  if (const PlaneAttitude* const plane = plane_of(row)) {
    return explain_plane(*plane, member.limit, [&](const Plane<north::dial>& meant) {
      return angle_between_axes(turned(meant.pole(), turn), member.held_against).degrees();
    });
  }
  const auto off = [&](const Line<north::dial>& meant, bool rises) {
    const Vector direction = rises ? -meant.direction() : meant.direction();
    return angle_between(turned(direction, turn), member.held_against, ends).degrees();
  };
  return explain_line(std::get<LineAttitude>(row.reading->what), member.limit, ends, off);
}

void Station::check_repeats(std::size_t first_row, const Settings& settings) {
  const Peers rows = peers_of(std::span(page_->rows).subspan(first_row));
  if (rows.empty()) return;
  const Row& leader = leader_of(rows);
  std::vector<Repeat> repeats;
  repeats.reserve(rows.size());
  for (const Row* row : rows)
    repeats.push_back(repeat_of(*row, leader, settings.accuracy));
  const Row& first = *rows.front();
  const bool is_plane = plane_of(first) != nullptr;
  const Ends ends = ends_of(*first.kind);
  const auto agreed = agreement(repeats, ends);
  if (!agreed) return;

  Check check;
  check.what = Check::What::repeats;
  check.line = first.entry->line;
  check.kind = first.kind;
  check.surface = first.surface;
  check.count = repeats.size();
  // Limits differ between shallow and steep planes, so the furthest of those that are over theirs.
  const Agreement::Member& worst =
      *std::max_element(agreed->members.begin(), agreed->members.end(),
                        [](const Agreement::Member& a, const Agreement::Member& b) {
                          return std::pair(a.apart, a.off) < std::pair(b.apart, b.off);
                        });
  check.figure = worst.off;
  check.limit = worst.limit;
  check.passed = !worst.apart;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Agreement::Member& member = agreed->members[i];
    if (!member.apart) continue;
    if (is_plane) {
      const Row* const end = page_->rows.data() + page_->rows.size();
      ReadPlane& read = *(planes_.end() - (end - rows[i]));
      if (read.worth == ReadPlane::Worth::good) read.worth = ReadPlane::Worth::apart;
    }
    report(*rows[i], wording::repeat_spread(
                         name_of_compared(*rows[i]), member.off, member.limit,
                         explain_apart(*rows[i], turn_of(*rows[i], leader), member, ends)));
  }
  if (agreed->mean) note_mean(check, *agreed->mean, rows, settings);
  page_->checks.push_back(check);
}

void Station::note_mean(Check& check, const DirectionMean& mean, std::span<Row* const> rows,
                        const Settings& settings) const {
  const Row& first = *rows.front();
  const Angle turn = mean_correction(rows, settings).angle;
  if (first.part == Part::whole && plane_of(first)) {
    const StrikeAndDip plane = plane_of_pole(mean.axis);
    if (!shows_as(plane.dip, 0)) check.mean_azimuth = added(plane.strike, turn);
    if (shows_as(plane.dip, 90) && !any_side(rows)) check.mean_azimuth = axis(*check.mean_azimuth);
    check.mean_slope = plane.dip;
  } else {
    const TrendAndPlunge line = line_going_down(mean.axis);
    if (!shows_as(line.plunge, 90)) check.mean_azimuth = added(line.trend, turn);
    if (first.part == Part::whole) check.mean_slope = line.plunge;
    const bool is_axis = plane_of(first) || first.kind->two_ended;
    if (is_axis && first.part == Part::azimuth) check.mean_azimuth = axis(*check.mean_azimuth);
  }
  check.precision = mean.precision;
  check.cone95 = mean.cone95;
}

void Station::take_mean(std::size_t first_row, const Settings& settings) {
  const Peers rows = peers_of(std::span(page_->rows).subspan(first_row));
  if (rows.size() < 2) return;
  std::vector<Vector> axes;
  axes.reserve(rows.size());
  for (const Row* row : rows)
    axes.push_back(vector_of(*row, leader_of(rows)));
  const Row& first = *rows.front();
  const auto mean = mean_of(axes, ends_of(*first.kind));
  if (!mean) return;

  Row row;
  begin_row(row, *first.entry, settings, first.unit);
  row.surface = first.surface;
  row.repeats = rows.size();
  row.part = first.part;
  row.facing = first.facing;
  row.facing_doubtful =
      std::ranges::any_of(rows, [](const Row* repeat) { return repeat->facing_doubtful; });
  row.sense = first.sense;
  const char* const begin = first.written.data();
  const std::string_view last = rows.back()->written;
  row.written = {begin, static_cast<std::size_t>(last.data() + last.size() - begin)};
  const std::size_t noted = page_->diagnostics.size();
  fill_mean(row, mean->axis, rows, settings);
  // Each repeat has its note about uncertainty already.
  page_->diagnostics.resize(noted);
  for (const Row* repeat : rows) {
    // Said of one repeat, it holds for the surface; said differently of two, it is not known.
    if (row.facing == Facing::unstated) row.facing = repeat->facing;
    if (repeat->facing != Facing::unstated && repeat->facing != row.facing)
      row.facing = Facing::unknown;
    if (repeat->sense != row.sense) row.sense = Sense::unstated;
  }
  // What is not in the mean keeps its row.
  std::size_t kept = first_row;
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    Row* const old = &page_->rows[i];
    if (old == rows.front()) {
      page_->rows[kept++] = row;
    } else if (!std::ranges::binary_search(rows, old)) {
      page_->rows[kept++] = *old;
    }
  }
  page_->rows.resize(kept);
}

void Station::fill_mean(Row& row, Vector mean, std::span<Row* const> rows,
                        const Settings& settings) {
  const Correction added_angle = mean_correction(rows, settings);
  row.north = added_angle.north;
  if (row.part == Part::whole && row.kind->type == Kind::Type::plane) {
    const StrikeAndDip plane = plane_of_pole(mean);
    fill_strike(row,
                Plane<north::dial>::from_strike(*Azimuth<north::dial>::from_degrees(plane.strike),
                                                *Dip::from_degrees(plane.dip), HandRule::right),
                any_side(rows), mean_accuracy(rows, settings.accuracy), added_angle);
    return;
  }
  const TrendAndPlunge line = line_going_down(mean);
  const auto trend = *Azimuth<north::dial>::from_degrees(line.trend);
  const auto plunge = *Plunge::from_degrees(line.plunge);
  if (row.kind->type == Kind::Type::plane) {
    fill_strike_alone(row, trend, true, mean_accuracy(rows, settings.accuracy), 0, added_angle);
    return;
  }
  if (row.part != Part::whole) {
    fill_trend_alone(row, trend, mean_error(rows, plunge, settings), added_angle);
    return;
  }
  row.rises = dot(direction_of(line.trend, line.plunge), mean) < 0;
  fill_trend(row, Line<north::dial>(trend, plunge), mean_error(rows, plunge, settings),
             added_angle);
}

}  // namespace lodebook::reduction
