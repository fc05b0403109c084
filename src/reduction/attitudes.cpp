// SPDX-License-Identifier: MIT
#include <lodebook/reduction/attitudes.hpp>

#include <algorithm>
#include <iterator>
#include <limits>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/plane.hpp>
#include <map>
#include <set>
#include <tuple>

namespace lodebook::reduction {
namespace {

using notebook::NameId;

bool is_attitude(const Row& row) {
  using Type = notebook::Kind::Type;
  return row.kind->type == Type::plane || row.kind->type == Type::line;
}

void note_declination(AttitudeLog& log, const Settings& settings) {
  if (!settings.has_figure()) return;
  const double declination = settings.declination.degrees_east();
  log.least_declination = std::min(declination, log.least_declination.value_or(declination));
  log.most_declination = std::max(declination, log.most_declination.value_or(declination));
  log.by_model = log.by_model || settings.from_model();
}

void set_figures(Attitude& attitude, const Row& row) {
  attitude.part = row.part;
  attitude.azimuth = attitude.is_plane ? row.strike : row.trend;
  const double slope = (attitude.is_plane ? row.dip : row.plunge).value_or(0);
  attitude.has_direction = attitude.azimuth && row.uncertainty;
  const double azimuth = attitude.azimuth.value_or(0);
  attitude.axis = attitude.is_plane ? pole_of(azimuth, slope) : direction_of(azimuth, slope);
  if (!row.rises) return;
  attitude.axis = -attitude.axis;
  if (attitude.azimuth) attitude.azimuth = wrap_degrees(azimuth + 180);
}

}  // namespace

void Attitudes::begin_log(const Reduction& reduction) {
  AttitudeLog log;
  log.name = reduction.notebook().source.name();
  const auto dial = reduction.heading().dial.value_or(notebook::Notation::azimuth);
  notation_ = logs_.empty() || dial == notation_ ? dial : notebook::Notation::azimuth;
  logs_.push_back(std::move(log));
}

void Attitudes::add(const Page& page) {
  const NameId station = stations_.intern(page.station);
  const notebook::Kind* kind = nullptr;
  std::optional<std::string_view> unit;
  NameId kind_id = 0;
  NameId unit_id = 0;
  std::size_t most_surfaces = 0;
  for (const Row& row : page.rows) {
    if (!is_attitude(row)) {
      ++sights_and_legs_;
      continue;
    }
    if (row.kind != kind) {
      kind = row.kind;
      kind_id = intern({kind->name, notebook::fold_case(kind->name),
                        kind->type == notebook::Kind::Type::plane, kind->is_arrow, kind->folds,
                        kind->two_ended});
    }
    if (row.unit != unit) {
      unit = row.unit;
      unit_id = units_.intern(row.unit);
    }
    Attitude attitude;
    attitude.log = logs_.size() - 1;
    attitude.kind = kind_id;
    attitude.station = station;
    attitude.unit = unit_id;
    attitude.line = row.entry->line;
    attitude.column = row.entry->column;
    attitude.surface = surfaces_ + row.surface;
    attitude.is_plane = kinds_[kind_id].is_plane;
    attitude.status = row.status;
    attitude.north = row.north;
    attitude.written = row.written;
    if (row.status != Status::rejected) set_figures(attitude, row);
    most_surfaces = std::max<std::size_t>(most_surfaces, row.surface);
    all_.push_back(std::move(attitude));
  }
  surfaces_ += most_surfaces;
  if (most_surfaces > 0) note_declination(logs_.back(), page.settings);
}

void Attitudes::add(Attitudes&& others) {
  if (logs_.empty()) {
    *this = std::move(others);
    return;
  }
  std::vector<NameId> kinds;
  for (const Kind& kind : others.kinds_)
    kinds.push_back(intern(kind));
  const auto interned = [](const notebook::Names& names, notebook::Names& into) {
    std::vector<NameId> ids;
    for (NameId id = 0; id < names.size(); ++id)
      ids.push_back(into.intern(names.shown(id)));
    return ids;
  };
  const std::vector<NameId> stations = interned(others.stations_, stations_);
  const std::vector<NameId> units = interned(others.units_, units_);
  for (Attitude& attitude : others.all_) {
    attitude.log += logs_.size();
    attitude.kind = kinds[attitude.kind];
    attitude.station = stations[attitude.station];
    attitude.unit = units[attitude.unit];
    attitude.surface += surfaces_;
    all_.push_back(std::move(attitude));
  }
  if (others.notation_ != notation_) notation_ = notebook::Notation::azimuth;
  std::ranges::move(others.logs_, std::back_inserter(logs_));
  surfaces_ += others.surfaces_;
  sights_and_legs_ += others.sights_and_legs_;
}

NameId Attitudes::intern(Kind wanted) {
  const auto [known, is_new] = numbers_of_kinds_[wanted.is_plane ? 1 : 0].try_emplace(
      wanted.folded, static_cast<NameId>(kinds_.size()));
  if (is_new) kinds_.push_back(std::move(wanted));
  return known->second;
}

std::vector<std::string> Attitudes::kinds() const {
  std::vector<std::string> names;
  std::set<std::string_view> listed;
  for (const Kind& kind : kinds_) {
    if (listed.insert(kind.name).second) names.push_back(kind.name);
  }
  return names;
}

std::vector<Group> Attitudes::groups(const Grouping& grouping, const Selection& selection) const {
  std::vector<bool> wanted(kinds_.size(), selection.kinds.empty());
  for (const std::string& name : selection.kinds) {
    const std::string folded = notebook::fold_case(name);
    for (NameId id = 0; id < kinds_.size(); ++id) {
      if (kinds_[id].folded == folded) wanted[id] = true;
    }
  }
  constexpr std::size_t any = std::numeric_limits<std::size_t>::max();
  // Names are numbered as they are first read, so that this is the order of groups.
  using Key = std::tuple<std::size_t, std::size_t, std::size_t, std::size_t, North>;
  std::map<Key, std::vector<const Attitude*>> gathered;
  for (const Attitude& attitude : all_) {
    if (!wanted[attitude.kind]) continue;
    const Key key = {attitude.kind, grouping.by_unit ? attitude.unit : any,
                     grouping.by_station ? attitude.log : any,
                     grouping.by_station ? attitude.station : any, attitude.north};
    gathered[key].push_back(&attitude);
  }

  std::vector<Group> groups;
  for (auto& [key, attitudes] : gathered) {
    const Attitude& first = *attitudes.front();
    Group group;
    group.kind = first.kind;
    group.is_plane = first.is_plane;
    group.is_arrow = kinds_[first.kind].is_arrow;
    group.folds = kinds_[first.kind].folds;
    group.two_ended = kinds_[first.kind].two_ended;
    group.north = first.north;
    if (grouping.by_unit) group.unit = first.unit;
    if (grouping.by_station) {
      group.station = first.station;
      group.log = first.log;
    }
    std::size_t surface = 0;  // none has this number
    for (const Attitude* const attitude : attitudes) {
      if (attitude->status == Status::rejected) {
        ++group.rejected;
        continue;
      }
      if (attitude->status == Status::suspect && selection.without_suspect) {
        ++group.left_out;
        continue;
      }
      if (attitude->part != notebook::Part::whole) {
        group.halves.push_back(attitude);
        continue;
      }
      if (attitude->status == Status::suspect) ++group.suspect;
      if (attitude->surface != surface) ++group.surfaces;
      surface = attitude->surface;
      group.members.push_back(attitude);
    }
    groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace lodebook::reduction
