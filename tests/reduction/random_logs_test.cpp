// SPDX-License-Identifier: MIT
// What holds for every log: counts, ranges and figures, over random logs of sound and broken
// lines. LODEBOOK_RANDOM_LOGS sets how many; the seed is fixed.
#include <algorithm>
#include <array>
#include <cstdlib>
#include <initializer_list>
#include <iostream>
#include <map>
#include <random>
#include <set>
#include <sstream>

#include "reduced.hpp"

#include <lodebook/orientation/decimal.hpp>

using namespace lodebook;
using namespace lodebook::test;

namespace {

constexpr std::uint32_t seed = 20260214;
constexpr int usual_logs = 3000;

int log_count() {
  const char* said = std::getenv("LODEBOOK_RANDOM_LOGS");
  return said ? std::atoi(said) : usual_logs;
}

/// Its parts in a row. A braced list is filled in order, so that a seed gives one log with every
/// compiler; and g++ 12 warns of `"literal" + std::string` when it optimizes (PR 105651).
std::string joined(std::initializer_list<std::string_view> parts) {
  std::string text;
  for (const std::string_view part : parts)
    text += part;
  return text;
}

/// Builds logs of fragments, sound ones and broken ones.
class Typist {
 public:
  explicit Typist(std::uint32_t from) : random_(from) {}

  std::string log() {
    std::string text;
    const std::size_t lines = below(25);
    for (std::size_t i = 0; i < lines; ++i)
      text += joined({line(), one_in(20) ? "\r\n" : "\n"});
    if (one_in(5) && !text.empty()) text.pop_back();
    return text;
  }

  Options options() {
    Options options;
    if (one_in(2)) options.north = one_in(2) ? North::magnetic : North::grid;
    options.grid_columns = one_in(3);
    if (one_in(4)) options.set = Declination::east(10);
    if (one_in(4)) options.declination = setting();
    if (one_in(4)) options.rule = one_in(2) ? HandRule::right : HandRule::left;
    return options;
  }

 private:
  std::size_t below(std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_);
  }
  bool one_in(std::size_t n) { return below(n) == 0; }
  template <std::size_t N>
  std::string of(const std::array<const char*, N>& words) {
    return words[below(N)];
  }

  notebook::DeclinationSetting setting() {
    using From = notebook::DeclinationSetting::From;
    if (one_in(3)) return {one_in(2) ? From::as_set : From::model, {}, 0};
    return {From::stated, *Declination::west(static_cast<double>(below(60))), one_in(2) ? 0.4 : 0};
  }

  std::string line() {
    std::string text = one_in(3) ? "  " : "";
    if (one_in(20)) text += "ask ";
    switch (below(10)) {
      case 0:
        text += station();
        break;
      case 1:
      case 2:
        text += heading();
        break;
      case 3:
        text += broken();
        break;
      default:
        text += reading();
    }
    if (one_in(8)) text += " ; a remark, and more";
    if (one_in(12)) text += " # aside";
    return text;
  }

  std::string station() {
    return of(std::array{"station Q1",
                         "station Q2 at 44.5S 169.2E ±8",
                         "station q1",
                         "station",
                         "station Q3 Q4",
                         "station \"Pt 3; #\" at 44.51S 169.2E",
                         "station \"Pt",
                         "landmark \"Old Peak\" 44.6S 169.1E",
                         "sample \"A 1\" garnet",
                         "station 12 at 59G 345210 5052310",
                         "at 44S 169E",
                         "at 44S 169E ±50 from map",
                         "elevation 812 from barometer",
                         "at nowhere",
                         "elevation 400 ft",
                         "elevation",
                         "time 09:40",
                         "time 25:00",
                         "unit schist",
                         "unit",
                         "sample Q1-a garnet",
                         "sample",
                         "photo 12",
                         "note free; text # here",
                         "landmark Peak",
                         "landmark Cairn 44S 169E",
                         "landmark",
                         "tally 2 stations 5 readings",
                         "tally",
                         "tally 1 readings"});
  }

  std::string heading() {
    return of(std::array{"set 0",
                         "set 10E",
                         "set 12.5W",
                         "set 10",
                         "declination 24.6E ±0.4",
                         "declination 24.6",
                         "declination 0",
                         "declination 70W",
                         "declination 190E",
                         "declination as-set",
                         "declination model",
                         "declination",
                         "rule right",
                         "rule left",
                         "rule up",
                         "dial quadrant",
                         "dial azimuth",
                         "dial",
                         "order strike/dip trend/plunge",
                         "order direction/dip",
                         "order dip/direction",
                         "order dip/strike",
                         "order plunge/trend",
                         "order",
                         "pace 0.76m",
                         "pace 2.5ft",
                         "pace 3",
                         "accuracy bearing 0.5 dip 1",
                         "accuracy bearing 60 dip 80",
                         "accuracy bearing 5 dip 3 distance 3%",
                         "accuracy dip 0",
                         "accuracy bearing 99999999999999999999999999999999999999999999",
                         "attraction correct",
                         "date 2026-02-14",
                         "date 2025-02-14",
                         "date 31.2.2026",
                         "observer AM",
                         "area Quern",
                         "instrument compass",
                         "datum WGS84",
                         "datum other",
                         "kind stylolite plane",
                         "kind striae line",
                         "short b bedding",
                         "short bedding b",
                         "kind bedding line"});
  }

  std::string broken() {
    return of(std::array{"",
                         "",
                         "   ",
                         "\t",
                         "# comment",
                         "; remark",
                         "quux",
                         "N78E 41N",
                         "beding N78E 41N",
                         "bedding",
                         "lineation",
                         "sight",
                         "leg",
                         "sight Peak",
                         "leg N50W",
                         "bedding \x01",
                         "bedding N78E \xFF",
                         "\xC2\xA0",
                         "note",
                         "bedding ,",
                         "bedding , N78E 41N",
                         "lineation N50W 35,",
                         "leg 12 12 12",
                         "sight Peak N50W vertical",
                         "1e3",
                         "bedding 1e3/20",
                         "bedding nan 32 N",
                         "bedding N78E 99999999999999999999999999 N",
                         "leg N50W 99999999999999999m",
                         "leg N50W 0.00000000000000000000000000000000001m",
                         "bedding 020/0.0000001 E",
                         "bedding 020/89.9999999999999 E",
                         "lineation 020/89.99999999999999"});
  }

  std::string azimuth() {
    const std::size_t degrees = below(one_in(10) ? 400 : 361);
    std::string text;
    if (!one_in(6)) text.append(degrees < 10 ? 2 : degrees < 100 ? 1 : 0, '0');
    text += std::to_string(degrees);
    if (one_in(4)) text += ".5";
    if (one_in(12)) text += ",5";
    return text;
  }

  std::string bearing() {
    if (one_in(20)) return joined({"~", bearing()});
    if (one_in(15)) return joined({bearing(), north()});
    switch (below(4)) {
      case 0:
        return azimuth();
      case 1:
        return of(std::array{"N", "E", "S", "W", "NE", "SSW", "due N", "NNX"});
      default: {
        std::string text = one_in(2) ? "N" : "S";
        text += std::to_string(below(one_in(10) ? 99 : 91));
        if (one_in(8)) text += "°30'";
        return text + (one_in(2) ? "E" : "W");
      }
    }
  }

  std::string north() { return of(std::array{" true", " magnetic", " grid"}); }

  std::string slope() {
    std::string text = one_in(20) ? "~" : "";
    text += std::to_string(below(one_in(12) ? 120 : 91));
    if (one_in(6)) text += ".5";
    if (one_in(10)) text += "%";
    if (one_in(20)) text += "±2";
    return text;
  }

  std::string plane() {
    if (one_in(8)) return one_in(3) ? joined({"dip ", slope()}) : joined({"strike ", bearing()});
    switch (below(6)) {
      case 0:
        return joined({slope(), " > ", bearing()});
      case 1:
        return joined({"vertical ", bearing()});
      case 2:
        return one_in(2) ? "horizontal" : joined({bearing(), "/0"});
      case 3:
        return joined({bearing(), "/", slope()});
      default:
        return joined({bearing(), "/", slope(), " ",
                       of(std::array{"N", "NE", "E", "SE", "S", "SW", "W", "NW"})});
    }
  }

  std::string lines() {
    if (one_in(8)) return one_in(3) ? joined({"from ", bearing()}) : bearing();
    switch (below(5)) {
      case 0:
        return joined({slope(), " > ", bearing()});
      case 1:
        return joined({"rake ", slope(), " from ", bearing()});
      case 2:
        return one_in(2) ? "vertical" : joined({"horizontal ", bearing()});
      default:
        return joined({bearing(), one_in(5) ? "/-" : "/", slope()});
    }
  }

  /// Behind an attitude.
  std::string words(bool plane) {
    std::string text;
    if (one_in(6)) {
      text += plane ? of(std::array{" overturned", " upright", " facing unknown", " reverse",
                                    " youngs N", " youngs SE", " facing doubtful"})
                    : of(std::array{" on bedding", " on fault", " on lineation", " dextral"});
    }
    if (one_in(12)) text += " doubtful";
    if (one_in(20)) text += " about";
    if (one_in(20)) text += north();
    if (one_in(30)) text += " wibble";
    return text;
  }

  /// Repeats near the first one, so that some agree.
  std::string attitudes(bool plane) {
    std::string text = plane ? this->plane() : lines();
    const std::string first = text;
    text += words(plane);
    while (one_in(2)) {
      text += ", ";
      text += one_in(2) ? first : plane ? this->plane() : lines();
      text += words(plane);
    }
    if (one_in(12)) text += of(std::array{" x2", " x3", " X4", " x1"});
    return text;
  }

  std::string reading() {
    switch (below(6)) {
      case 0: {
        std::string text = "sight ";
        text += of(std::array{"Peak", "\"Old Peak\"", "\"pt 3; #\"", "Cairn", "Q1", "Peek", "Q9"});
        if (one_in(8)) text += of(std::array{" from Q1", " from \"Pt 3; #\"", " from Q9"});
        text += joined({one_in(6) ? " back " : " ", bearing()});
        if (one_in(6)) text += joined({" back ", bearing()});
        if (one_in(4)) text += joined({" vertical ", one_in(4) ? "level" : slope()});
        while (one_in(4))
          text += joined({", ", one_in(4) ? "back " : "", bearing()});
        if (one_in(5)) text += " south-end";
        if (one_in(10)) text += " doubtful";
        return text;
      }
      case 1: {
        std::string text = joined({"leg ", one_in(6) ? "from Q1 " : "", bearing(), " ", slope()});
        text += of(std::array{"m", "ft", " paces", "", "'"});
        if (one_in(3)) text += joined({" back ", bearing()});
        if (one_in(4)) text += joined({" slope -", slope()});
        if (one_in(4)) text += of(std::array{" to Q1", " to Q2", " to Q9", " to \"Pt 3; #\""});
        if (one_in(6)) text += " south-end";
        return text;
      }
      case 2:
      case 3:
        return joined({of(std::array{"bedding ", "fault ", "joint ", "b ", "stylolite ", "shear "}),
                       attitudes(true)});
      default:
        return joined({of(std::array{"lineation ", "slickenline ", "flute ", "striae ", "groove "}),
                       attitudes(false)});
    }
  }

  std::mt19937 random_;
};

/// Figures of a row by name; azimuths first.
std::vector<std::pair<const char*, std::optional<double>>> azimuths_of(const Row& row) {
  return {{"strike", row.strike},
          {"trend", row.trend},
          {"bearing", row.bearing},
          {"back_bearing", row.back_bearing},
          {"as_read", row.as_read}};
}
std::vector<std::pair<const char*, std::optional<double>>> other_figures_of(const Row& row) {
  return {{"dip", row.dip},
          {"plunge", row.plunge},
          {"rake", row.rake},
          {"correction", row.correction},
          {"uncertainty", row.uncertainty},
          {"distance_m", row.distance_m},
          {"vertical_angle", row.vertical_angle}};
}

/// All that the reduction says, as text.
std::string everything(const Reduced& log) {
  std::ostringstream out;
  out.precision(17);
  const auto figure = [&out](const std::optional<double>& value) {
    if (value) out << *value;
    out << ',';
  };
  for (const Page& page : log.pages()) {
    out << page.station << '|' << page.first_line << '-' << page.last_line << '\n';
    for (const Row& row : page.rows) {
      out << row.written << '|' << static_cast<int>(row.status) << '|';
      for (const auto& [name, value] : azimuths_of(row))
        figure(value);
      for (const auto& [name, value] : other_figures_of(row))
        figure(value);
      for (const Code code : row.codes)
        out << notebook::name_of(code) << ' ';
      out << '\n';
    }
    for (const Check& check : page.checks) {
      out << static_cast<int>(check.what) << ' ' << check.figure << ' ' << check.limit << ' ';
      figure(check.mean_azimuth);
      figure(check.mean_slope);
      figure(check.cone95);
      out << '\n';
    }
    for (const Diagnostic& diagnostic : page.diagnostics) {
      out << diagnostic.place.line << ':' << diagnostic.place.column << ' ' << diagnostic.message
          << '|' << diagnostic.help << '\n';
    }
  }
  return out.str();
}

/// What is wrong with a log's reduction, as text: Catch's assertions are slow by the million.
class Auditor {
 public:
  Auditor(const Reduced& log, Repeats repeats) : log_(log), repeats_(repeats) {
    audit_pages();
    audit_counts();
    audit_lines();
    for (std::size_t i = 0; i < log.row_count(); ++i)
      audit_row(log.row(i));
    for (std::size_t i = 0; i < log.check_count(); ++i)
      audit_check(log.check(i));
  }
  const std::string& faults() const { return faults_; }

 private:
  void expect(bool holds, const std::string& what) {
    if (!holds) faults_ += what + '\n';
  }

  void audit_pages() {
    std::uint32_t next = 1;
    for (const Page& page : log_.pages()) {
      expect(page.first_line == next, "pages overlap or leave a gap");
      expect(page.last_line + 1 >= page.first_line, "a page ends before it starts");
      next = page.last_line + 1;
      for (const Row& row : page.rows) {
        expect(row.entry->line >= page.first_line && row.entry->line <= page.last_line,
               "a row on another page");
      }
      for (const Diagnostic& diagnostic : page.diagnostics) {
        expect(diagnostic.place.line >= page.first_line && diagnostic.place.line <= page.last_line,
               "a fault on another page");
      }
      expect(page.is_station == (&page != &log_.pages().front()), "not a station's page");
    }
    expect(next == std::max(1u, log_.book().source.line_count()) + 1, "lines without a page");
  }

  void audit_counts() {
    const reduction::Counts& whole = log_.counts();
    reduction::Counts sum;
    std::size_t rejected_rows = 0;
    for (const Page& page : log_.pages()) {
      sum += page.counts;
      std::size_t stands_for = 0;
      for (const Row& row : page.rows) {
        stands_for += row.repeats;
        if (row.status == Status::rejected) ++rejected_rows;
      }
      expect(stands_for == page.counts.readings, "rows out are not readings in, on a page");
    }
    expect(sum.readings == whole.readings && sum.ok == whole.ok && sum.suspect == whole.suspect &&
               sum.rejected == whole.rejected && sum.stations == whole.stations &&
               sum.not_understood == whole.not_understood && sum.errors == whole.errors &&
               sum.warnings == whole.warnings && sum.notes == whole.notes,
           "the pages' counts do not add up");
    std::size_t readings = 0;
    std::size_t stations = 0;
    for (const Page& page : log_.pages()) {
      for (const notebook::Entry& entry : page.block->entries) {
        if (std::holds_alternative<notebook::Reading>(entry.what)) ++readings;
        if (std::holds_alternative<notebook::StationHeading>(entry.what)) ++stations;
      }
    }
    expect(whole.readings == readings, "readings are not the entries");
    expect(whole.readings == log_.book().reading_count, "readings are not those that were read");
    expect(whole.stations == stations, "stations are not the entries");
    expect(whole.ok + whole.suspect + whole.rejected == whole.readings, "the counts differ");
    expect(whole.ok <= whole.readings, "more ok than readings");
    expect(whole.rejected == rejected_rows, "rejected rows are not those counted");
    expect(whole.errors + whole.warnings + whole.notes == log_.diagnostics().size(),
           "faults are not those counted");
    if (repeats_ == Repeats::each) {
      std::size_t suspect = 0;
      for (std::size_t i = 0; i < log_.row_count(); ++i)
        if (log_.row(i).status == Status::suspect) ++suspect;
      expect(log_.row_count() == readings, "rows out are not readings in");
      expect(whole.suspect == suspect, "suspect rows are not those counted");
    }
  }

  /// Every line that is not blank is a row, a statement, a comment or a fault.
  void audit_lines() {
    std::set<std::uint32_t> told;
    std::size_t notes = 0;
    std::size_t samples = 0;
    std::size_t photos = 0;
    for (std::size_t i = 0; i < log_.row_count(); ++i)
      told.insert(log_.row(i).entry->line);
    for (const Diagnostic* diagnostic : log_.diagnostics()) {
      if (diagnostic->severity == Severity::error) told.insert(diagnostic->place.line);
    }
    for (const Page& page : log_.pages()) {
      for (const notebook::Entry& entry : page.block->entries) {
        if (std::holds_alternative<notebook::Reading>(entry.what)) continue;
        if (std::holds_alternative<notebook::Note>(entry.what)) ++notes;
        if (std::holds_alternative<notebook::Sample>(entry.what)) ++samples;
        if (std::holds_alternative<notebook::Photo>(entry.what)) ++photos;
        if (!entry.remark.empty()) ++notes;
        if (!std::holds_alternative<notebook::Unread>(entry.what)) told.insert(entry.line);
      }
    }
    for (const Page& page : log_.pages()) {
      for (const Item& item : page.items)
        --(item.what == Item::What::note    ? notes
           : item.what == Item::What::photo ? photos
                                            : samples);
    }
    expect(notes == 0 && samples == 0 && photos == 0, "a note, sample or photo is lost");
    const notebook::Source& source = log_.book().source;
    for (std::uint32_t line = 1; line <= source.line_count(); ++line) {
      const std::string_view text = source.text(source.line(line));
      const bool blank = text.find_first_not_of(" \t\r\xC2\xA0") == std::string_view::npos;
      expect(blank || told.contains(line),
             joined({"nothing is said of line ", std::to_string(line)}));
    }
  }

  void audit_row(const Row& row) {
    const std::string at = joined({"'", row.written, "': "});
    bool has_figure = false;
    for (const auto& [name, value] : azimuths_of(row)) {
      if (!value) continue;
      has_figure = true;
      expect(*value >= 0 && *value < 360, at + name + " is not in [0, 360)");
    }
    for (const auto& [name, value] : other_figures_of(row)) {
      if (!value) continue;
      has_figure = true;
      expect(std::isfinite(*value), at + name + " is not finite");
    }
    expect(has_figure == (row.status != Status::rejected), at + "rejected with figures, or the "
                                                                "reverse");
    for (const auto& slope : {row.dip, row.plunge, row.rake})
      expect(!slope || (*slope >= 0 && *slope <= 90), at + "a dip, plunge or rake out of range");
    expect(!row.uncertainty || (*row.uncertainty > 0 && *row.uncertainty <= 52),
           at + "an uncertainty that means nothing");
    expect(row.as_read.has_value() == row.correction.has_value(), at + "half a correction");
    const auto value = row.strike ? row.strike : row.trend ? row.trend : row.bearing;
    expect(value.has_value() == row.as_read.has_value(), at + "an azimuth that was not read");
    if (value) {
      expect(off(*row.as_read + *row.correction, *value) < exact,
             at + "not what was read and added");
    }
    expect(!row.strike_is_axis || rounded_azimuth(*row.strike, 1) < 1800, at + "an axis over 180");
    bool error = false;
    for (const Code code : row.codes) {
      // One diagnostic asks for all that wait.
      if (row.reading->waits_for == code) error = true;
      expect(std::count(row.codes.begin(), row.codes.end(), code) == 1, at + "a code twice");
      for (const Diagnostic* diagnostic : log_.all(code)) {
        if (diagnostic->reading == row.reading->number && diagnostic->severity == Severity::error)
          error = true;
      }
    }
    expect(row.status != Status::rejected || error, at + "rejected without a reason");
    expect(row.status != Status::suspect || !row.codes.empty(), at + "suspect without a reason");
  }

  void audit_check(const Check& check) {
    const std::string at = joined({"check of line ", std::to_string(check.line), ": "});
    expect(check.figure >= 0 && check.figure <= 180, at + "no angle");
    expect(std::isfinite(check.limit) && check.limit >= 2, at + "no limit");
    expect(check.passed == (check.figure <= check.limit), at + "passed and over, or the reverse");
    for (const auto& figure : {check.mean_azimuth, check.mean_slope, check.precision, check.cone95})
      expect(!figure || std::isfinite(*figure), at + "not finite");
    expect(!check.mean_azimuth || (*check.mean_azimuth >= 0 && *check.mean_azimuth < 360),
           at + "a mean out of [0, 360)");
    expect(!check.cone95 || check.count >= 3, at + "a cone of two");
    expect(!check.cone95 || !check.precision || *check.precision >= 4, at + "a cone too wide");
    bool said = false;
    for (const Diagnostic* diagnostic : log_.diagnostics()) {
      const bool its = check.what == Check::What::repeats ? diagnostic->code == Code::repeat_spread
                       : check.what == Check::What::line_in_plane
                           ? diagnostic->code == Code::line_off_plane
                           : diagnostic->code == Code::back_bearing;
      if (its && diagnostic->place.line == check.line) said = true;
    }
    expect(check.passed || said, at + "failed in silence");
  }

  const Reduced& log_;
  Repeats repeats_;
  std::string faults_;
};

}  // namespace

TEST_CASE("every log keeps its counts, ranges and lines") {
  std::cout << "random logs: " << log_count() << ", seed " << seed << '\n';
  Typist typist(seed);
  std::map<Code, int> seen;
  std::map<Status, int> statuses;
  for (int i = 0; i < log_count(); ++i) {
    const std::string text = typist.log();
    Options options = typist.options();
    INFO("log " << i << " of seed " << seed << ":\n" << text);
    const Reduced each(text, options);
    const std::string faults = Auditor(each, Repeats::each).faults();
    if (!faults.empty()) FAIL_CHECK(faults);
    if (everything(Reduced(text, options)) != everything(each)) FAIL_CHECK("not the same twice");

    options.repeats = Repeats::mean;
    const Reduced mean(text, options);
    const std::string mean_faults = Auditor(mean, Repeats::mean).faults();
    if (!mean_faults.empty()) FAIL_CHECK("repeats mean: " << mean_faults);
    const auto& a = each.counts();
    const auto& b = mean.counts();
    if (std::tuple(a.readings, a.ok, a.suspect, a.rejected, a.errors, a.warnings, a.notes) !=
        std::tuple(b.readings, b.ok, b.suspect, b.rejected, b.errors, b.warnings, b.notes))
      FAIL_CHECK("means change the counts of what was typed");

    for (const Diagnostic* diagnostic : each.diagnostics())
      ++seen[diagnostic->code];
    for (std::size_t row = 0; row < each.row_count(); ++row)
      ++statuses[each.row(row).status];
  }
  // The logs reach what this room says, and are not mostly broken.
  for (const Code code : {Code::rake_no_plane,
                          Code::rake_end,
                          Code::landmark_unknown,
                          Code::station_unknown,
                          Code::back_bearing,
                          Code::percent_or_degrees,
                          Code::repeat_spread,
                          Code::line_off_plane,
                          Code::plane_unknown,
                          Code::strike_uncertain,
                          Code::trend_uncertain,
                          Code::doubtful,
                          Code::tally,
                          Code::declination_missing,
                          Code::set_missing,
                          Code::option_overridden,
                          Code::attraction_unapplied,
                          Code::date_order,
                          Code::station_repeated,
                          Code::reading_outside_station}) {
    INFO(notebook::name_of(code));
    CHECK(seen[code] > 0);
  }
  CHECK(statuses[Status::ok] > statuses[Status::rejected] / 2);
  CHECK(statuses[Status::suspect] > 0);
}
