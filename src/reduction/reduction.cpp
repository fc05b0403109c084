// SPDX-License-Identifier: MIT
#include <lodebook/reduction/reduction.hpp>

#include <algorithm>
#include <cassert>
#include <unordered_map>
#include <utility>

#include <lodebook/notebook/wording.hpp>
#include <lodebook/reduction/fixes.hpp>

#include "blocks.hpp"
#include "settings_keeper.hpp"
#include "site_checks.hpp"
#include "site_keeper.hpp"
#include "station.hpp"

namespace lodebook::reduction {

namespace {

using namespace notebook;

/// Codes on a reading's own value, which make it suspect.
bool makes_suspect(Code code) {
  switch (code) {
    case Code::plunge_missing:
    case Code::repeat_spread:
    case Code::line_off_plane:
    case Code::plane_unknown:
    case Code::back_bearing:
    case Code::percent_or_degrees:
    case Code::own_station:
    case Code::landmark_unknown:
    case Code::sight_misfit:
    case Code::sight_off:
    case Code::misclosure:
    case Code::doubtful:
      return true;
    default:
      return false;
  }
}

bool comes_before(const Diagnostic& a, const Diagnostic& b) {
  return in_order(a.place) < in_order(b.place);
}

/// Lines with an error of the language that belongs to no reading.
std::size_t lines_not_understood(std::span<const Diagnostic> faults) {
  std::size_t lines = 0;
  const Diagnostic* last = nullptr;
  for (const Diagnostic& fault : faults) {
    const bool is_understood = fault.severity != Severity::error || fault.code == Code::unanswered;
    if (is_understood || fault.reading != no_reading) continue;
    if (!last || !on_one_line(last->place, fault.place)) ++lines;
    last = &fault;
  }
  return lines;
}

/// Has sights, legs, or a wish to correct them.
bool tells_places(const Notebook& notebook) {
  return std::ranges::any_of(notebook.entries, [](const Entry& entry) {
    if (std::holds_alternative<AttractionSetting>(entry.what)) return true;
    const auto* reading = std::get_if<Reading>(&entry.what);
    return reading && (std::holds_alternative<Sight>(reading->what) ||
                       std::holds_alternative<Leg>(reading->what));
  });
}

Places places_of(const Notebook& notebook) {
  Places places;
  places.is_station.resize(notebook.names.size());
  places.is_landmark.resize(notebook.names.size());
  for (const Entry& entry : notebook.entries) {
    if (const auto* station = std::get_if<StationHeading>(&entry.what)) {
      if (station->name != no_name) places.is_station[station->name] = true;
    } else if (const auto* landmark = std::get_if<Landmark>(&entry.what)) {
      places.is_landmark[landmark->name] = true;
    }
  }
  if (!tells_places(notebook)) return places;  // nothing points to one
  for (NameId id = 0; id < notebook.names.size(); ++id) {
    if (places.is_station[id]) places.stations.push_back(notebook.names.shown(id));
    if (places.is_station[id] || places.is_landmark[id])
      places.targets.push_back(notebook.names.shown(id));
  }
  return places;
}

/// Whether a sight or leg was read at another station than its own, or at its mark.
bool is_read_elsewhere(const Entry& entry) {
  const auto* reading = std::get_if<Reading>(&entry.what);
  if (!reading) return false;
  if (const auto* sight = std::get_if<Sight>(&reading->what))
    return sight->is_back || sight->back || sight->from != no_name;
  const auto* leg = std::get_if<Leg>(&reading->what);
  return leg && leg->from != no_name;
}

/// Fills in where stations and landmarks are, if that is asked for.
void know_places(Places& places, const Fixes& fixes, const Notebook& notebook,
                 const Options& options) {
  if (std::ranges::none_of(notebook.entries, is_read_elsewhere)) return;
  const bool wants_grid = options.grid_columns || options.north == North::grid;
  const auto know = [&](std::string_view name, const auto& located, PositionFrom from) {
    Elsewhere one;
    one.station = name;
    if (located.position) {
      std::optional<double> accuracy;
      if (located.covariance) accuracy = circular_sigma(*located.covariance);
      one.position = {*located.position, accuracy};
      if (wants_grid) one.grid = earth::grid_position(*located.position);
    }
    one.position_from = from;
    one.elevation_m = located.stated_elevation_m;
    if (!one.elevation_m && located.elevation) one.elevation_m = located.elevation->elevation_m;
    places.known.try_emplace(notebook.names.find(name), std::make_shared<const Elsewhere>(one));
  };
  for (const LocatedStation& station : fixes.stations)
    know(station.name, station, station.from);
  for (const LocatedLandmark& landmark : fixes.landmarks) {
    if (!landmark.is_found) know(landmark.name, landmark, PositionFrom::at);
  }
}

Reduction::NextBlock read_here(const Notebook& notebook) {
  const auto reader = std::make_shared<BlockReader>(notebook);
  return [reader](Block& block, std::optional<KnownField>&) { return reader->next(block); };
}

}  // namespace

class Reduction::Log {
 public:
  Log(const Notebook& log, const Options& said, NextBlock next_block)
      : notebook(log),
        options(said),
        fixes(said.all_places || tells_places(log) ? locate(log, said) : Fixes()),
        places_(places_of(log)),
        station_(log, options, places_),
        site_(options),
        site_checks_(options),
        settings_(initial_settings(said)),
        next_block_(next_block ? std::move(next_block) : read_here(log)) {
    know_places(places_, fixes, log, said);
    for (const LocatedStation& station : fixes.stations)
      located_.emplace(station.name, &station);
    settle_heading();
    for (const Entry& entry : notebook.entries) {
      if (const auto* landmark = std::get_if<Landmark>(&entry.what)) {
        LandmarkRow row;
        row.name = notebook.names.shown(landmark->name);
        row.position = landmark->position;
        if (row.position) row.position_origin = text(row.position->origin);
        if (landmark->elevation) row.elevation_m = landmark->elevation->metres(1);
        row.elevation_origin = text(landmark->elevation_origin);
        landmarks.push_back(row);
      }
    }
  }

  bool next(Page& page);

  const Notebook& notebook;
  const Options options;
  const Fixes fixes;
  Settings heading;
  std::vector<LandmarkRow> landmarks;
  Counts counts;

 private:
  void settle_heading();
  void read_page(Page& page, const std::optional<KnownField>& field);
  std::string_view read_station(Page& page, std::span<const Entry> entries) const;
  void take_entry(Page& page, const Entry& entry);
  void add_item(Page& page, Item::What what, const Entry& entry, Span said, Span name = {});
  void check_at(Page& page, std::span<const Entry> statement);
  void check_settings(Page& page, const Entry& entry);
  void report_site(Page& page, const Entry& entry);
  void check_tally(Page& page, const Entry& entry, const Tally& tally);
  void check_date(Page& page, const Entry& entry, const Date& date);
  void report(Page& page, const Entry& entry, Diagnostic diagnostic);
  void finish(Page& page);
  std::string_view text(Span span) const { return notebook.source.text(span); }

  Places places_;
  std::unordered_map<std::string_view, const LocatedStation*> located_;
  Station station_;
  SiteKeeper site_;
  SiteChecks site_checks_;
  Settings settings_;
  std::string_view unit_;

  NextBlock next_block_;
  std::size_t next_fix_fault_ = 0;  ///< next diagnostic of the fixes
  /// The settings in force have not been checked at a good reading of this page.
  bool unchecked_ = true;
  bool declination_missing_said_ = false;
  bool set_missing_said_ = false;
  std::optional<Date> last_date_;
  std::uint32_t readings_since_tally_ = 0;
  std::uint32_t stations_since_tally_ = 0;
};

void Reduction::Log::settle_heading() {
  heading = initial_settings(options);
  SiteKeeper site(options);
  const std::span<const Entry> entries = notebook.entries;
  bool is_station = false;
  for (std::size_t begin = 0, end = 0;; begin = end, is_station = true) {
    end = block_end(notebook, begin, is_station);
    const auto block = entries.subspan(begin, end - begin);
    Page page;
    read_station(page, block);
    site.enter(page);
    for (const Entry& entry : block) {
      if (entry.line >= notebook.first_reading_line) break;
      site.pass(entry);
      apply(heading, entry, notebook.source);
    }
    if (end < entries.size() && entries[end].line < notebook.first_reading_line) continue;
    site.settle(heading);
    return;
  }
}

bool Reduction::Log::next(Page& page) {
  Page fresh;
  fresh.block = std::move(page.block);
  fresh.rows = std::move(page.rows);
  fresh.checks = std::move(page.checks);
  fresh.diagnostics = std::move(page.diagnostics);
  fresh.items = std::move(page.items);
  page = std::move(fresh);
  page.rows.clear();
  page.checks.clear();
  page.diagnostics.clear();
  page.items.clear();
  // A page that was copied keeps its statements.
  if (page.block.use_count() != 1) page.block = std::make_shared<Block>();
  Block& block = *page.block;
  std::optional<KnownField> field;
  if (!next_block_(block, field)) return false;
  page.is_station = block.is_station;
  page.first_line = block.first_line;
  page.last_line = block.last_line;
  read_page(page, field);
  finish(page);
  counts += page.counts;
  return true;
}

/// What belongs to the whole station, with what was found of its place. Returns as
/// read_station_wide does.
std::string_view Reduction::Log::read_station(Page& page, std::span<const Entry> entries) const {
  const std::string_view unit = read_station_wide(page, notebook, entries);
  const auto located = located_.find(page.station);
  if (located == located_.end()) return unit;
  const LocatedStation& found = *located->second;
  if (!page.position && found.from != PositionFrom::at && found.position) {
    page.position = {*found.position, circular_sigma(*found.covariance)};
    page.position_from = found.from;
  }
  if (!page.elevation_m && found.elevation) page.elevation_m = found.elevation->elevation_m;
  return unit;
}

void Reduction::Log::read_page(Page& page, const std::optional<KnownField>& field) {
  const std::span<const Entry> entries = page.block->entries;
  page.diagnostics.swap(page.block->diagnostics);
  page.counts.not_understood = lines_not_understood(page.diagnostics);
  for (; next_fix_fault_ < fixes.diagnostics.size() &&
         fixes.diagnostics[next_fix_fault_].place.line <= page.last_line;
       ++next_fix_fault_)
    page.diagnostics.push_back(fixes.diagnostics[next_fix_fault_]);
  station_.begin(page);
  unit_ = read_station(page, entries);
  site_.enter(page, field);
  site_checks_.enter(page);
  unchecked_ = true;
  bool settled = false;
  for (std::size_t i = 0; i < entries.size();) {
    const Entry& entry = entries[i];
    if (!std::holds_alternative<Reading>(entry.what)) {
      take_entry(page, entry);
      ++i;
      continue;
    }
    std::size_t last = i + 1;
    while (last < entries.size() && std::holds_alternative<Reading>(entries[last].what) &&
           !std::get<Reading>(entries[last].what).first) {
      ++last;
    }
    const auto statement = entries.subspan(i, last - i);
    // A rejected reading has no bearing that could be wrong.
    const bool any_good = std::any_of(statement.begin(), statement.end(), [](const Entry& repeat) {
      return !std::get<Reading>(repeat.what).rejected;
    });
    if (site_.settle(settings_)) unchecked_ = true;
    if (!std::exchange(settled, true)) page.settings = settings_;
    if (any_good && unchecked_) check_at(page, statement);
    station_.add(statement, settings_, unit_);
    page.counts.readings += last - i;
    ++page.counts.lines_of_readings;
    readings_since_tally_ += static_cast<std::uint32_t>(last - i);
    i = last;
  }
  if (!settled) {
    site_.settle(settings_);
    page.settings = settings_;
  }
  if (!entries.empty()) report_site(page, entries.front());
}

/// The settings in force, as far as the readings of a statement need them. What names another
/// north than the needle's needs none.
void Reduction::Log::check_at(Page& page, std::span<const Entry> statement) {
  bool on_dial = false;
  bool by_needle = false;
  bool on_grid = false;
  for (const Entry& repeat : statement) {
    const auto& reading = std::get<Reading>(repeat.what);
    if (reading.rejected) continue;
    const OwnNorth north = north_of(reading);
    on_dial = on_dial || north == OwnNorth::none;
    by_needle = by_needle || on_dial || north == OwnNorth::magnetic;
    on_grid = on_grid || north == OwnNorth::grid;
  }
  if (on_grid) site_checks_.check_grid(settings_);
  if (by_needle) site_checks_.check(settings_);
  if (on_dial) check_settings(page, statement.front());
  report_site(page, statement.front());
  unchecked_ = !on_dial;
}

void Reduction::Log::take_entry(Page& page, const Entry& entry) {
  if (const auto overridden = overridden_option(entry, options)) report(page, entry, *overridden);
  if (const auto* date = std::get_if<DateSetting>(&entry.what)) check_date(page, entry, date->date);
  if (apply(settings_, entry, notebook.source)) unchecked_ = true;
  site_.pass(entry);
  site_checks_.state(entry, notebook.source);
  if (const auto* unit = std::get_if<Unit>(&entry.what)) {
    unit_ = text(unit->text);
  } else if (const auto* sample = std::get_if<Sample>(&entry.what)) {
    add_item(page, Item::What::sample, entry, sample->text, sample->name);
  } else if (const auto* photo = std::get_if<Photo>(&entry.what)) {
    add_item(page, Item::What::photo, entry, photo->text);
  } else if (const auto* note = std::get_if<Note>(&entry.what)) {
    add_item(page, Item::What::note, entry, note->text);
  } else if (const auto* tally = std::get_if<Tally>(&entry.what)) {
    check_tally(page, entry, *tally);
  } else if (std::holds_alternative<StationHeading>(entry.what)) {
    ++page.counts.stations;
    ++stations_since_tally_;
  }
  if (!entry.remark.empty()) {
    add_item(page, Item::What::note, entry, entry.remark);
    page.items.back().column = notebook.source.place(entry.line, entry.remark).column;
  }
}

void Reduction::Log::add_item(Page& page, Item::What what, const Entry& entry, Span said,
                              Span name) {
  page.items.push_back({what, text(name), text(said), unit_, settings_.observer, settings_.date,
                        entry.line, entry.column});
}

void Reduction::Log::report(Page& page, const Entry& entry, Diagnostic diagnostic) {
  diagnostic.place = notebook.source.place(entry.line, entry.statement);
  page.diagnostics.push_back(std::move(diagnostic));
}

/// Settings that readings need and the log does not state: once a log.
void Reduction::Log::check_settings(Page& page, const Entry& entry) {
  const double declination = settings_.declination.degrees_east();
  if (settings_.declination_from == From::nowhere && options.north != North::magnetic &&
      !settings_.lacks_declination_by_fault() && !declination_missing_said_) {
    declination_missing_said_ = true;
    report(page, entry, wording::declination_missing(settings_.set_from != From::nowhere));
  }
  if (settings_.declination_known() && !settings_.as_set() && settings_.set_from == From::nowhere &&
      (declination > 1 || declination < -1) && !settings_.set_void && !set_missing_said_) {
    set_missing_said_ = true;
    report(page, entry, wording::set_missing(declination));
  }
}

/// Passes on what the site's checks have found. It is shown where it was stated, or else at the
/// station's heading, or at `entry` before the first station.
void Reduction::Log::report_site(Page& page, const Entry& entry) {
  for (SiteChecks::Found& found : site_checks_.take_found()) {
    report(page, page.is_station ? page.block->entries.front() : entry,
           std::move(found.diagnostic));
    if (!found.stated_at) continue;
    Diagnostic& shown = page.diagnostics.back();
    shown.related.push_back({shown.place, wording::needed_here()});
    shown.place = *found.stated_at;
  }
}

void Reduction::Log::check_tally(Page& page, const Entry& entry, const Tally& tally) {
  if (tally.stations && *tally.stations != stations_since_tally_)
    report(page, entry, wording::tally("stations", *tally.stations, stations_since_tally_));
  if (tally.readings && *tally.readings != readings_since_tally_)
    report(page, entry, wording::tally("readings", *tally.readings, readings_since_tally_));
  stations_since_tally_ = 0;
  readings_since_tally_ = 0;
}

void Reduction::Log::check_date(Page& page, const Entry& entry, const Date& date) {
  if (last_date_ && date < *last_date_)
    report(page, entry, wording::date_order(iso_date(date), iso_date(*last_date_)));
  last_date_ = date;
}

/// Codes and status of each row, and the page's counts, from its diagnostics.
void Reduction::Log::finish(Page& page) {
  std::stable_sort(page.diagnostics.begin(), page.diagnostics.end(), comes_before);
  Counts& found = page.counts;
  for (const Row& row : page.rows) {
    if (row.status == Status::rejected) ++found.rejected;
  }
  std::vector<std::uint32_t> suspects;
  for (const Diagnostic& diagnostic : page.diagnostics) {
    if (diagnostic.severity == Severity::error) ++found.errors;
    if (diagnostic.severity == Severity::warning) ++found.warnings;
    if (diagnostic.severity == Severity::note) ++found.notes;
    if (diagnostic.reading == no_reading) continue;
    // Rows are in the order of readings. One without a row is in the mean before it, which stands
    // for all good ones of its line.
    auto row =
        std::lower_bound(page.rows.begin(), page.rows.end(), diagnostic.reading,
                         [](const Row& r, std::uint32_t n) { return r.reading->number < n; });
    if (row == page.rows.end() || row->reading->number != diagnostic.reading) {
      const auto mean = std::find_if(std::make_reverse_iterator(row), page.rows.rend(),
                                     [](const Row& r) { return r.repeats > 1; });
      assert(mean != page.rows.rend());
      row = std::prev(mean.base());
    }
    // Not in that of their places: a statement's parts may be typed in any order.
    const auto code = std::lower_bound(row->codes.begin(), row->codes.end(), diagnostic.code);
    if (code == row->codes.end() || *code != diagnostic.code)
      row->codes.insert(code, diagnostic.code);
    if (row->status == Status::rejected || !makes_suspect(diagnostic.code)) continue;
    row->status = Status::suspect;
    suspects.push_back(diagnostic.reading);
  }
  std::ranges::sort(suspects);
  suspects.erase(std::unique(suspects.begin(), suspects.end()), suspects.end());
  found.suspect = suspects.size();
  found.ok = found.readings - found.suspect - found.rejected;
}

Reduction::Reduction(const Notebook& notebook, const Options& options, NextBlock next_block)
    : log_(std::make_unique<Log>(notebook, options, std::move(next_block))) {}
Reduction::~Reduction() = default;

bool Reduction::next(Page& page) {
  return log_->next(page);
}
const Notebook& Reduction::notebook() const {
  return log_->notebook;
}
const Options& Reduction::options() const {
  return log_->options;
}
const Settings& Reduction::heading() const {
  return log_->heading;
}
const std::vector<LandmarkRow>& Reduction::landmarks() const {
  return log_->landmarks;
}
const Fixes& Reduction::fixes() const {
  return log_->fixes;
}
const Counts& Reduction::counts() const {
  return log_->counts;
}

}  // namespace lodebook::reduction
