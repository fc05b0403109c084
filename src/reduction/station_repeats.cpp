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

/// Whether the dip side of one of the good planes was typed.
bool any_side(std::span<const Row> rows) {
  return std::any_of(rows.begin(), rows.end(), [](const Row& row) {
    const auto* plane = std::get_if<PlaneAttitude>(&row.reading->what);
    return plane && plane->has_side() && row.status != Status::rejected;
  });
}

/// Where a line that was read points, on the dial.
Vector pointing(const Row& row) {
  const Vector down = direction_of(row.as_read.value_or(0), *row.plunge);
  return row.rises ? -down : down;
}

/// The line by its end that goes down; one that shows as level keeps the end it points to.
TrendAndPlunge line_going_down(Vector arrow) {
  const TrendAndPlunge line = line_of_arrow(arrow);
  if (line.plunge >= 0) return line;
  if (shows_as(line.plunge, 0)) return {line.trend, 0};
  return {wrap_degrees(line.trend + 180), -line.plunge};
}

Ends ends_of(const notebook::Kind& kind) {
  return kind.is_arrow ? Ends::one : Ends::both;
}

/// The errors of the readings average out; the declination's is common to all.
ReadingAccuracy mean_accuracy(std::span<const Row> rows, const Accuracy& in_force) {
  ReadingAccuracy mean;
  double count = 0;
  for (const Row& row : rows) {
    if (row.status == Status::rejected) continue;
    const auto own = accuracy_of(std::get<PlaneAttitude>(row.reading->what), in_force);
    mean.bearing = combined_sigma(mean.bearing, own.bearing);
    mean.dip = combined_sigma(mean.dip, own.dip);
    ++count;
  }
  return {mean.bearing / count, mean.dip / count};
}

}  // namespace

/// So do those of lines; what rakes have from their plane does not.
Station::TrendError Station::mean_error(std::span<const Row> rows, Plunge plunge,
                                        const Settings& settings) const {
  TrendError mean;
  double count = 0;
  for (const Row& row : rows) {
    if (row.status == Status::rejected) continue;
    const auto& line = std::get<LineAttitude>(row.reading->what);
    const TrendError one = trend_error(line, plunge, accuracy_of(line, settings.accuracy));
    mean.own = combined_sigma(mean.own, one.own);
    mean.of_plane += one.of_plane;
    ++count;
  }
  return {mean.own / count, mean.of_plane / count};
}

void Station::check_repeats(std::size_t first_row, const Settings& settings) {
  std::vector<Repeat> repeats;
  std::vector<Row*> rows;
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    Row& row = page_->rows[i];
    if (row.status == Status::rejected) continue;
    if (const auto* plane = std::get_if<PlaneAttitude>(&row.reading->what)) {
      const auto on_dial = plane->plane();
      const ReadingAccuracy accuracy = accuracy_of(*plane, settings.accuracy);
      repeats.push_back(
          {on_dial->pole(), pole_sigma(accuracy.bearing, accuracy.dip, on_dial->dip())});
    } else {
      const ReadingAccuracy accuracy =
          accuracy_of(std::get<LineAttitude>(row.reading->what), settings.accuracy);
      repeats.push_back({pointing(row), line_sigma(accuracy.bearing, accuracy.dip)});
    }
    rows.push_back(&row);
  }
  if (rows.empty()) return;
  const Ends ends = ends_of(*rows.front()->kind);
  const auto agreed = agreement(repeats, ends);
  if (!agreed) return;
  const bool is_plane = rows.front()->kind->type == Kind::Type::plane;

  Check check;
  check.what = Check::What::repeats;
  check.line = rows.front()->entry->line;
  check.kind = rows.front()->kind;
  check.surface = rows.front()->surface;
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
      (planes_.end() - (end - rows[i]))->worth = ReadPlane::Worth::apart;
    }
    std::string help;
    if (const auto* plane = std::get_if<PlaneAttitude>(&rows[i]->reading->what)) {
      help = explain_plane(*plane, member.limit, [&member](const Plane<north::dial>& meant) {
        return angle_between_axes(meant.pole(), member.held_against).degrees();
      });
    } else if (const auto* line = std::get_if<LineAttitude>(&rows[i]->reading->what)) {
      const auto off = [&](const Line<north::dial>& meant, bool rises) {
        const Vector direction = rises ? -meant.direction() : meant.direction();
        return angle_between(direction, member.held_against, ends).degrees();
      };
      help = explain_line(*line, member.limit, ends, off);
    }
    report(*rows[i], wording::repeat_spread(is_plane ? "the pole" : "the line", member.off,
                                            member.limit, help));
  }
  page_->checks.push_back(check);
  if (!agreed->mean) return;

  Check& found = page_->checks.back();
  const Angle turn = correction(settings, options_.north).angle;
  if (is_plane) {
    const StrikeAndDip plane = plane_of_pole(agreed->mean->axis);
    if (!shows_as(plane.dip, 0)) found.mean_azimuth = added(plane.strike, turn);
    if (shows_as(plane.dip, 90) && !any_side(std::span(page_->rows).subspan(first_row)))
      found.mean_azimuth = axis(*found.mean_azimuth);
    found.mean_slope = plane.dip;
  } else {
    const TrendAndPlunge line = line_going_down(agreed->mean->axis);
    if (!shows_as(line.plunge, 90)) found.mean_azimuth = added(line.trend, turn);
    found.mean_slope = line.plunge;
  }
  found.precision = agreed->mean->precision;
  found.cone95 = agreed->mean->cone95;
}

void Station::take_mean(std::size_t first_row, const Settings& settings) {
  std::vector<Vector> axes;
  Row* first = nullptr;
  Row* last = nullptr;
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    Row& row = page_->rows[i];
    if (row.status == Status::rejected) continue;
    const auto* plane = std::get_if<PlaneAttitude>(&row.reading->what);
    axes.push_back(plane ? plane->plane()->pole() : pointing(row));
    if (!first) first = &row;
    last = &row;
  }
  if (axes.size() < 2) return;
  const auto mean = mean_of(axes, ends_of(*first->kind));
  if (!mean) return;

  Row row;
  begin_row(row, *first->entry, settings, first->unit);
  row.surface = first->surface;
  row.repeats = axes.size();
  row.facing = first->facing;
  row.sense = first->sense;
  const char* const begin = first->written.data();
  row.written = {begin,
                 static_cast<std::size_t>(last->written.data() + last->written.size() - begin)};
  const std::size_t noted = page_->diagnostics.size();
  const auto repeats = std::span<const Row>(page_->rows).subspan(first_row);
  if (row.kind->type == Kind::Type::plane) {
    const StrikeAndDip plane = plane_of_pole(mean->axis);
    fill_strike(row,
                Plane<north::dial>::from_strike(*Azimuth<north::dial>::from_degrees(plane.strike),
                                                *Dip::from_degrees(plane.dip), HandRule::right),
                any_side(repeats), mean_accuracy(repeats, settings.accuracy), settings);
  } else {
    const TrendAndPlunge line = line_going_down(mean->axis);
    row.rises = dot(direction_of(line.trend, line.plunge), mean->axis) < 0;
    fill_trend(row,
               Line<north::dial>(*Azimuth<north::dial>::from_degrees(line.trend),
                                 *Plunge::from_degrees(line.plunge)),
               mean_error(repeats, *Plunge::from_degrees(line.plunge), settings), settings);
  }
  // Each repeat has its note about uncertainty already.
  page_->diagnostics.resize(noted);
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    const Row& repeat = page_->rows[i];
    if (repeat.status == Status::rejected) continue;
    // Said of one repeat, it holds for the surface; said differently of two, it is not known.
    if (row.facing == Facing::unstated) row.facing = repeat.facing;
    if (repeat.facing != Facing::unstated && repeat.facing != row.facing)
      row.facing = Facing::unknown;
    if (repeat.sense != row.sense) row.sense = Sense::unstated;
  }
  std::size_t kept = first_row;
  for (std::size_t i = first_row; i < page_->rows.size(); ++i) {
    const bool rejected = page_->rows[i].status == Status::rejected;
    if (rejected) {
      page_->rows[kept++] = page_->rows[i];
    } else if (&page_->rows[i] == first) {
      page_->rows[kept++] = row;
    }
  }
  page_->rows.resize(kept);
}

}  // namespace lodebook::reduction
