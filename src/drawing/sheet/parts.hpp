// SPDX-License-Identifier: MIT
// The parts of a sheet.
#pragma once

#include <lodebook/drawing/markup.hpp>
#include <lodebook/output/notation.hpp>
#include <lodebook/reduction/reduction.hpp>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>

namespace lodebook::drawing {

/// The page's own rules; pictures have theirs (style.hpp).
extern const std::string_view sheet_style;

/// Marks a reading, hovered or focused, wherever it is shown.
extern const std::string_view sheet_script;
/// The script's SHA-256 in base 64: the only script that the page lets run.
extern const std::string_view sheet_script_hash;

/// What `append` appends.
template <class Append>
std::string made(Append append) {
  std::string out;
  append(out);
  return out;
}

/// Where a station's block, or a fault within it, can be jumped to.
std::string id_of(const reduction::Page& page);
std::string id_of(const notebook::Diagnostic& diagnostic);

/// A name and its text, as an item of a list of terms; nothing where the text is empty.
void append_fact(Markup& markup, std::string_view name, std::string_view words);

/// A line as typed, the fault in it marked; cut where it is long.
void append_typed_line(Markup& markup, const notebook::Source& source,
                       const notebook::Place& place);

/// The log's name and settings, and how many readings it has.
void append_sheet_heading(Markup& markup, std::string_view title,
                          const reduction::Reduction& reduction);

/// A station's block: what is known of it, its table, checks and faults. `on_map` has the source of
/// each reading that the map shows.
void append_sheet_station(Markup& markup, const notebook::Source& source,
                          const reduction::Page& page, const reduction::Reduction& reduction,
                          const std::unordered_set<std::string>& on_map, output::PlanesAs planes);

/// The table of its readings.
void append_sheet_table(Markup& markup, const notebook::Source& source, const reduction::Page& page,
                        const std::unordered_set<std::string>& on_map, output::PlanesAs planes);

}  // namespace lodebook::drawing
