// SPDX-License-Identifier: MIT
// The field in words for a person, and as JSON for a program.
#include <lodebook/output/field.hpp>

#include <lodebook/orientation/decimal.hpp>

#include <lodebook/output/text.hpp>
#include "json_pieces.hpp"

namespace lodebook::output {
namespace {

/// The size of a figure of `units` of 10^-decimals.
void append_size(std::string& out, std::int64_t units, int decimals) {
  append_figure(out, units < 0 ? -units : units, decimals);
}

void append_change(std::string& out, double change) {
  const std::int64_t units = rounded(change, 2);
  if (units == 0) {
    out += "  changes by less than 0.01 degrees a year\n";
    return;
  }
  out += "  changes by ";
  append_size(out, units, 2);
  out += units > 0 ? " degrees east a year\n" : " degrees west a year\n";
}

void append_magnetic_inclination(std::string& out, double degrees) {
  const std::int64_t units = rounded(degrees, 2);
  out += "  magnetic inclination: ";
  if (units == 0) {
    out += "north end level\n";
    return;
  }
  out += units > 0 ? "north end dips " : "north end rises ";
  append_size(out, units, 2);
  out += units > 0 ? " degrees below the horizontal\n" : " degrees above the horizontal\n";
}

void append_caution(std::string& out, std::string_view caution) {
  out += "caution: ";
  out += caution;
  out.push_back('\n');
}

}  // namespace

void append_field_text(std::string& out, const FieldAnswer& answer) {
  append_coordinates(out, answer.position);
  out += ", elevation ";
  append_trimmed(out, answer.elevation_m, 1);
  out += " m, ";
  out += answer.date;

  out += "\n\n";
  // Above the figure, which nobody should take to such a place.
  for (const std::string& caution : answer.cautions)
    append_caution(out, caution);

  out += "declination ";
  append_east_or_west(out, answer.declination, 2);
  out += " ±";
  append_trimmed(out, answer.uncertainty, 2);

  out += "\n\n";
  append_change(out, answer.annual_change);
  append_magnetic_inclination(out, answer.magnetic_inclination);
  out += "  horizontal field ";
  append_figure(out, rounded(answer.horizontal_nt, 0), 0);
  out += " nT, total field ";
  append_figure(out, rounded(answer.total_nt, 0), 0);
  out += " nT\n  from the model ";
  out += answer.model;
  out += "; ± is one sigma\n\n";
  append_caution(out,
                 "magnetic rock and steel nearby turn the needle, too, and no model knows of them");
}

void append_field_json(std::string& out, const FieldAnswer& answer) {
  const Json object = {{"declination", figure(answer.declination, 4)},
                       {"uncertainty", figure(answer.uncertainty, 2)},
                       {"annual_change", figure(answer.annual_change, 4)},
                       {"inclination", figure(answer.magnetic_inclination, 4)},
                       {"horizontal_nt", figure(answer.horizontal_nt, 1)},
                       {"total_nt", figure(answer.total_nt, 1)},
                       {"model", answer.model},
                       {"date", answer.date},
                       {"latitude", figure(answer.position.latitude, 7)},
                       {"longitude", figure(answer.position.longitude, 7)},
                       {"elevation_m", figure(answer.elevation_m, 1)},
                       {"cautions", answer.cautions}};
  out += object.dump();
  out.push_back('\n');
}

}  // namespace lodebook::output
