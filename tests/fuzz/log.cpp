// SPDX-License-Identifier: MIT
// The reader of logs: any bytes are read whole, and everything in them comes out.
#include <algorithm>
#include <vector>

#include <lodebook/output/diagnostic.hpp>

#include "notebook/whole.hpp"
#include "target.hpp"

namespace lodebook::fuzz {
namespace {

using namespace notebook;

/// What the log's text may be about, for spans that stand inside single statements.
struct Inner {
  const test::Book& book;

  void span(Span span) const { require(test::inside(book.source, span), "a text outside the log"); }
  void name(NameId id) const {
    require(id == no_name || id < book.names.size(), "a name that the log does not have");
  }
  void place(const std::optional<GivenPosition>& given) const {
    if (!given) return;
    span(given->origin);
    const auto& [latitude, longitude] = given->position;
    require(latitude >= -90 && latitude <= 90, "a latitude beyond the poles");
    require(longitude >= -180 && longitude <= 180, "a longitude beyond 180 degrees");
    if (given->accuracy_m) require(*given->accuracy_m >= 0, "a negative accuracy");
  }

  void operator()(const Reading& reading) const {
    if (const auto* const sight = std::get_if<Sight>(&reading.what)) {
      require(reading.rejected || sight->target != no_name, "a sight to nowhere");
      name(sight->target);
      name(sight->from);
    }
    if (const auto* const leg = std::get_if<Leg>(&reading.what)) {
      name(leg->to);
      name(leg->from);
    }
    if (const auto* const line = std::get_if<LineAttitude>(&reading.what))
      require(line->on == no_kind || line->on < book.kinds.size(), "a line on no kind");
  }
  void operator()(const StationHeading& heading) const {
    name(heading.name);
    place(heading.position);
  }
  void operator()(const Landmark& landmark) const {
    name(landmark.name);
    place(landmark.position);
    span(landmark.elevation_origin);
  }
  void operator()(const Elevation& elevation) const { span(elevation.origin); }
  void operator()(const At& at) const { place(at.position); }
  void operator()(const Unit& unit) const { span(unit.text); }
  void operator()(const Sample& sample) const {
    span(sample.name);
    span(sample.text);
  }
  void operator()(const Photo& photo) const { span(photo.text); }
  void operator()(const Note& note) const { span(note.text); }
  void operator()(const HeadingText& heading) const { span(heading.text); }
  void operator()(const DatumSetting& datum) const { span(datum.text); }
  void operator()(const KindDeclaration& declaration) const {
    require(declaration.kind < book.kinds.size(), "a declared kind that the log does not have");
  }
  void operator()(const ShortDeclaration& declaration) const {
    span(declaration.word);
    span(declaration.meaning);
  }
  template <class Other>
  void operator()(const Other&) const {}
};

/// A line's readings, its errors and whether anything came of it.
struct Line {
  std::size_t entries = 0;
  std::size_t readings = 0;
  std::size_t errors = 0;
  bool landmark = false;
};

void try_log(std::string text) {
  const test::Book book = test::read_whole(Source("fuzz.log", std::move(text)));
  require_none(test::entry_fault(book));
  require_none(test::diagnostic_fault(book));

  std::vector<Line> lines(book.source.line_count() + 1U);
  for (const Entry& entry : book.entries) {
    std::visit(Inner{book}, entry.what);
    Line& line = lines[entry.line];
    ++line.entries;
    line.readings += std::holds_alternative<Reading>(entry.what) ? 1U : 0U;
    line.landmark = line.landmark || std::holds_alternative<Landmark>(entry.what);
  }
  std::string shown;
  for (const Diagnostic& diagnostic : book.diagnostics) {
    output::append_diagnostic(shown, book.source, diagnostic, false);
    if (diagnostic.place.line < lines.size() && diagnostic.severity == Severity::error)
      ++lines[diagnostic.place.line].errors;
  }
  require_printable(shown, "a diagnostic");
  if (book.entries.empty()) return;  // in UTF-16
  for (std::uint32_t number = 1; number < lines.size(); ++number) {
    const std::string_view typed = book.source.text(book.source.line(number));
    const Line& line = lines[number];
    const bool blank = typed.find_first_not_of(" \t") == typed.npos;
    const bool spaced = typed.find('\xC2') != typed.npos || typed.find('\xE2') != typed.npos;
    require(line.entries > 0 || blank || spaced, "a line of which nothing came");
    // A landmark's position and its height are two causes.
    require(line.errors <= std::max<std::size_t>(line.readings, line.landmark ? 2 : 1),
            "more errors in a line than it has readings");
  }
}

}  // namespace

void try_input(std::string_view input) {
  try_log(std::string(input));
  const bool ascii = std::ranges::all_of(input, [](unsigned char c) { return c < 0x80; });
  if (!ascii) try_log(utf8_from_windows_1252(input));
}

}  // namespace lodebook::fuzz
