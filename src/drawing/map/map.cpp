// SPDX-License-Identifier: MIT
// Collects what a map needs from logs and their pages.
#include <lodebook/drawing/map.hpp>

#include <algorithm>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>
#include <lodebook/reduction/fixes.hpp>
#include <set>
#include <tuple>
#include <unordered_map>

#include "../reading_words.hpp"
#include "observed.hpp"
#include "paper.hpp"
#include "survey.hpp"
#include "traverse.hpp"

namespace lodebook::drawing {
namespace {

using earth::Position;
using notebook::fold_case;
using notebook::Kind;
using reduction::Fixes;
using reduction::Page;
using reduction::Row;
using reduction::SightFix;

/// Where the other readings of a mean stand. They follow its first one in the log; those among them
/// that were rejected have rows of their own.
std::string repeats_of(const Page& page, const Row& row) {
  std::string places;
  const Row* next = &row + 1;
  const Row* const end = page.rows.data() + page.rows.size();
  const notebook::Entry* entry = row.entry + 1;
  for (std::size_t found = 1; found < row.repeats; ++entry) {
    if (next != end && next->entry == entry) {
      ++next;
      continue;
    }
    if (!places.empty()) places.push_back(' ');
    places += std::to_string(entry->line) + ':' + std::to_string(entry->column);
    ++found;
  }
  return places;
}

std::string origin_of(const reduction::Settings& settings) {
  if (settings.from_model()) return "by " + std::string(name_of(settings.site.field->model()));
  if (settings.as_set()) return "as set on the dial";
  return settings.declination_from == reduction::From::option ? "by an option" : "as stated";
}

/// A plane or line that can be drawn has an azimuth, unless it is horizontal or vertical.
std::optional<MapSymbol> map_symbol_of(const Row& row) {
  const bool is_plane = row.kind->type == Kind::Type::plane;
  if (row.part == notebook::Part::slope) return std::nullopt;
  MapSymbol symbol;
  symbol.kind = row.kind->name;
  symbol.is_plane = is_plane;
  symbol.azimuth = is_plane ? row.strike : row.trend;
  symbol.slope = is_plane ? row.dip : row.plunge;
  symbol.facing = row.facing;
  symbol.sense = row.sense;
  symbol.suspect = row.status == reduction::Status::suspect;
  symbol.is_arrow = row.kind->is_arrow;
  symbol.two_ended = row.kind->two_ended;
  symbol.facing_doubtful = row.facing_doubtful;
  if (row.rises) {
    symbol.slope = -*symbol.slope;
    if (symbol.azimuth) symbol.azimuth = wrap_degrees(*symbol.azimuth + 180);
  }
  return symbol;
}

}  // namespace

class Map::Notes {
 public:
  explicit Notes(const reduction::Selection& selection)
      : without_suspect_(selection.without_suspect) {
    for (const std::string& kind : selection.kinds)
      survey_.kinds.push_back(fold_case(kind));
  }

  const Survey& survey() const { return survey_; }
  const std::vector<std::string>& kinds() const { return kinds_; }

  void begin_log(const reduction::Reduction& reduction) {
    const Fixes& fixes = reduction.fixes();
    if (survey_.area.empty()) survey_.area = reduction.heading().area;
    survey_.logs.emplace_back(output::shown_name(reduction.notebook().source));
    dial_ = reduction.heading().dial.value_or(notebook::Notation::azimuth);
    wanted_.clear();
    stations_.clear();
    places_.clear();
    observed_.clear();
    legs_.clear();
    for (const reduction::LocatedLandmark& landmark : fixes.landmarks) {
      if (!landmark.position) continue;
      note_landmark(landmark.name, *landmark.position);
      if (landmark.is_found && landmark.covariance)
        survey_.errors.push_back({*landmark.position, reduction::ellipse95(*landmark.covariance)});
    }
    for (const reduction::LocatedStation& station : fixes.stations) {
      note_station(station.name, station.position);
      if (station.position && station.from != reduction::PositionFrom::at && station.ellipse)
        survey_.errors.push_back({*station.position, *station.ellipse});
    }
    for (const SightFix& fix : fixes.sight_fixes)
      note_fix(fix);
    for (const reduction::FixLeg& leg : fixes.legs) {
      const auto& from = fixes.stations[leg.from].position;
      const auto& to = fixes.stations[leg.to].position;
      if (from && to && !leg.left_out) legs_[leg.reading] = {*from, *to};
    }
    note_traverses(fixes, survey_);
  }

  void page(const notebook::Source& source, const Page& page) {
    std::optional<Position> position;
    if (page.is_station && page.position) position = page.position->position;
    const std::string name(output::page_name(page));
    const std::size_t station = page.is_station ? note_station(page.station, position) : 0;
    if (page.is_station && !position) position = survey_.stations[station].position;
    if (page.is_station) note_declination(name, page.settings);
    for (const Row& row : page.rows) {
      if (!is_wanted(*row.kind)) continue;
      survey_.readings += row.repeats;
      if (without_suspect_ && row.status == reduction::Status::suspect) {
        survey_.left_out += row.repeats;
        continue;
      }
      if (row.status == reduction::Status::suspect) survey_.suspect += row.repeats;
      if (const auto why = note_row({source, page, row}, position, station)) miss(*why, name, row);
    }
  }

 private:
  using Why = Survey::Why;

  /// The number of the log in hand.
  std::size_t log() const { return survey_.logs.size() - 1; }

  /// Names are compared once for each of the log's kinds, which are noted so.
  bool is_wanted(const Kind& kind) {
    const auto [known, is_new] = wanted_.try_emplace(&kind);
    if (is_new) {
      if (std::ranges::count(kinds_, kind.name) == 0) kinds_.push_back(kind.name);
      known->second =
          survey_.kinds.empty() || std::ranges::count(survey_.kinds, fold_case(kind.name)) != 0;
    }
    return known->second;
  }

  /// The station's number; another one where a name comes again at another place. A block that
  /// states no place belongs to the station that has its name. One without a name is its own.
  std::size_t note_station(std::string_view name, const std::optional<Position>& position) {
    if (name.empty()) {
      survey_.stations.push_back({"", position, log()});
      return survey_.stations.size() - 1;
    }
    const auto [at, is_new] = stations_.try_emplace(fold_case(name), survey_.stations.size());
    if (position) places_[at->first] = *position;
    if (is_new || (position && survey_.stations[at->second].position != position)) {
      at->second = survey_.stations.size();
      survey_.stations.push_back({std::string(name), position, log()});
    }
    return at->second;
  }

  /// Logs of one area share landmarks: each is drawn once.
  void note_landmark(std::string_view name, const Position& position) {
    const std::string folded = fold_case(name);
    places_[folded] = position;
    if (landmarks_.emplace(folded, position.latitude, position.longitude).second)
      survey_.landmarks.push_back({std::string(name), position, log()});
  }

  BeginReading reading_of(const output::RowContext& context) const {
    const Row& row = context.row;
    return {output::source_of(context),
            reading_words(context.page.station, row.kind->name, row.written,
                          corrected_words(row, dial_), row.north),
            repeats_of(context.page, row)};
  }

  void note_fix(const SightFix& fix) {
    if (fix.without_declination) return;
    for (const reduction::FixedSight& sight : fix.sights)
      observed_[sight.reading] = observed(fix, sight);
    if (fix.triangle) survey_.triangles.push_back(fix.triangle->corners);
  }

  void note_declination(const std::string& station, const reduction::Settings& settings) {
    if (!settings.has_figure()) return;
    const double east = settings.declination.degrees_east();
    if (!survey_.magnetic)
      survey_.magnetic = Survey::Magnetic{east, origin_of(settings), station, east, east};
    survey_.magnetic->least = std::min(survey_.magnetic->least, east);
    survey_.magnetic->most = std::max(survey_.magnetic->most, east);
  }

  /// Why it cannot be drawn, or nothing.
  std::optional<Why> note_row(const output::RowContext& context,
                              const std::optional<Position>& position, std::size_t station) {
    const Row& row = context.row;
    if (row.status == reduction::Status::rejected) return Why::rejected;
    const auto ray = observed_.find(row.reading->number);
    if (ray != observed_.end()) {
      survey_.sights.push_back({reading_of(context), ray->second.first, ray->second.second});
      return std::nullopt;
    }
    const auto from = row.elsewhere ? position_of(*row.elsewhere) : position;
    if (!from) return Why::position;
    const bool is_true = row.north == reduction::North::geographic;
    switch (row.kind->type) {
      case Kind::Type::plane:
      case Kind::Type::line: {
        auto symbol = map_symbol_of(row);
        if (!symbol) return Why::direction;
        if (symbol->azimuth && !is_true) return Why::declination;
        survey_.measured.push_back({station, reading_of(context), *symbol});
        break;
      }
      case Kind::Type::sight:
        return note_sight(context, *from, is_true);
      case Kind::Type::leg: {
        const auto leg = legs_.find(row.reading->number);
        if (leg == legs_.end()) return Why::other_end;
        survey_.legs.push_back({reading_of(context), leg->second.first, leg->second.second});
        break;
      }
    }
    return std::nullopt;
  }

  static std::optional<Position> position_of(const reduction::Elsewhere& elsewhere) {
    if (!elsewhere.position) return std::nullopt;
    return elsewhere.position->position;
  }

  std::optional<Why> note_sight(const output::RowContext& context, const Position& from,
                                bool is_true) {
    const Row& row = context.row;
    const auto target = places_.find(fold_case(row.target));
    if (target != places_.end()) {
      survey_.sights.push_back({reading_of(context), from, target->second});
    } else if (row.bearing && is_true) {
      survey_.open_sights.push_back({reading_of(context), from, *row.bearing});
    } else {
      return row.bearing && !is_true ? Why::declination : Why::other_end;
    }
    return std::nullopt;
  }

  void miss(Why why, const std::string& station, const Row& row) {
    auto& list = survey_.missing[static_cast<std::size_t>(why)];
    if (list.empty() || list.back().station != station || list.back().log != log())
      list.push_back({station, log(), 0});
    list.back().readings += row.repeats;
  }

  bool without_suspect_;
  Survey survey_;
  std::vector<std::string> kinds_;
  std::set<std::tuple<std::string, double, double>> landmarks_;
  // of the log in hand
  notebook::Notation dial_ = notebook::Notation::azimuth;
  std::unordered_map<const Kind*, bool> wanted_;
  std::unordered_map<std::string, std::size_t> stations_;
  std::unordered_map<std::string, Position> places_;
  std::unordered_map<std::uint32_t, std::pair<Position, Position>> observed_;
  std::unordered_map<std::uint32_t, std::pair<Position, Position>> legs_;
};

Map::Map(const reduction::Selection& selection) : notes_(std::make_unique<Notes>(selection)) {}
Map::~Map() = default;
Map::Map(Map&&) noexcept = default;
Map& Map::operator=(Map&&) noexcept = default;

void Map::begin_log(const reduction::Reduction& reduction) {
  notes_->begin_log(reduction);
}

void Map::page(const notebook::Source& source, const reduction::Page& page) {
  notes_->page(source, page);
}

bool Map::has_places() const {
  return !notes_->survey().places().empty();
}

std::optional<std::string> Map::too_wide() const {
  return notes_->survey().too_wide();
}

Picture Map::picture(MapSize size) const {
  return paper_of(notes_->survey(), size);
}

std::vector<std::string> Map::kinds() const {
  return notes_->kinds();
}

std::vector<std::string> Map::remarks() const {
  return notes_->survey().remarks();
}

}  // namespace lodebook::drawing
