// SPDX-License-Identifier: MIT
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/fix_report.hpp>
#include <lodebook/output/table.hpp>

#include <lodebook/output/text.hpp>
#include "fix_text.hpp"
#include "report_pieces.hpp"

namespace lodebook::output {

std::string_view fix_caution() {
  return "a fix is as good as its sights, and no substitute for navigation by local knowledge and "
         "proper instruments; a triangle of error holds the true point about one time in four";
}

namespace {

void append_diagnostics(std::string& out, const notebook::Source& source,
                        const reduction::Fixes& fixes, bool color) {
  append_notes(out, fixes.diagnostics);
  for (const notebook::Diagnostic& diagnostic : fixes.diagnostics) {
    if (diagnostic.severity != notebook::Severity::note)
      append_diagnostic(out, source, diagnostic, color);
  }
}

}  // namespace

void append_fix_diagnostics(std::string& out, const notebook::Source& source,
                            const reduction::Fixes& fixes, bool color) {
  if (fixes.diagnostics.empty()) return;
  append_bold(out, shown_name(source), color);
  out.push_back('\n');
  append_diagnostics(out, source, fixes, color);
}

void FixReport::log(std::string& out, const notebook::Source& source,
                    const reduction::Fixes& fixes) const {
  append_bold(out, shown_name(source), color_);
  out += fixes.stations.empty() ? ": no stations\n" : "\n";
  for (const FoundPoint& station : stations_of(fixes)) {
    out.push_back('\n');
    append_found_point(out, "", station, color_);
  }
  for (const FoundPoint& landmark : landmarks_of(fixes)) {
    out.push_back('\n');
    append_found_point(out, "landmark ", landmark, color_);
  }
  for (const reduction::Traverse& traverse : fixes.traverses) {
    out.push_back('\n');
    append_traverse(out, fixes, traverse, color_);
  }
  append_left_out_legs(out, fixes, color_);
  append_back_bearings(out, fixes, color_);
  if (!fixes.diagnostics.empty()) out.push_back('\n');
  append_diagnostics(out, source, fixes, color_);
}

void FixReport::end(std::string& out) {
  out += "\n± is one sigma\n";
  out += fix_caution();
  out.push_back('\n');
}

}  // namespace lodebook::output
