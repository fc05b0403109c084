// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/diagnostic.hpp>

#include <lodebook/output/text.hpp>
#include "aligned.hpp"
#include "fix_text.hpp"

namespace lodebook::output {
namespace {

using reduction::FixedSight;
using reduction::SightFix;

/// More are not listed one by one.
constexpr std::size_t most_cuts = 6;

std::string figure_or_dash(const std::optional<double>& value) {
  return value ? figure_text(*value, 1) : "-";
}

std::string_view words_of(const SightFix& fix) {
  if (fix.without_declination) return "no declination is known, and a fix needs true bearings";
  return reduction::words_for(fix.fault.value_or(reduction::SightFault::undetermined));
}

void append_place(std::string& out, const FoundPoint& point) {
  if (!point.position) {
    out += "no position";
    return;
  }
  append_coordinates(out, *point.position);
  out += ", ";
  append_grid(out, *point.position, 1);
}

/// `; 95 % ellipse: semi-axes 12 and 8 m, long axis 040`; a circle has no axis.
void append_ellipse_words(std::string& out, const reduction::ErrorEllipse& ellipse) {
  const bool is_round = rounded(ellipse.semi_major_m, 1) == rounded(ellipse.semi_minor_m, 1);
  out += is_round ? "; 95 % within " : "; 95 % ellipse: semi-axes ";
  append_trimmed(out, ellipse.semi_major_m, 1);
  if (is_round) {
    out += " m";
    return;
  }
  out += " and ";
  append_trimmed(out, ellipse.semi_minor_m, 1);
  out += " m, long axis ";
  append_figure(out, rounded_axis(ellipse.major_azimuth, 0), 0, 3);
}

void append_how(std::string& out, const FoundPoint& point) {
  if (!point.position) return;
  switch (point.from) {
    case reduction::PositionFrom::at:
      out += "  stated in the log";
      break;
    case reduction::PositionFrom::legs:
      out += "  from legs";
      break;
    case reduction::PositionFrom::sights:
      out += "  from ";
      out += point.fix != nullptr ? counted(point.fix->sights.size(), "sight", "sights") : "sights";
      break;
  }
  if (const auto accuracy = point.accuracy_m()) {
    out += ", ±";
    append_trimmed(out, *accuracy, 1);
    out += " m";
  }
  if (point.ellipse) append_ellipse_words(out, *point.ellipse);
  out.push_back('\n');
}

void append_elevation(std::string& out, const FoundPoint& point) {
  if (point.stated_elevation_m) {
    out += "  elevation ";
    append_trimmed(out, *point.stated_elevation_m, 1);
    out += " m stated\n";
  }
  if (const auto& found = point.found_elevation) {
    fmt::format_to(std::back_inserter(out), "  elevation {} ±{} m from {}\n",
                   figure_text(found->elevation_m, 1), figure_text(found->sigma_m, 1),
                   counted(found->sights, "vertical angle", "vertical angles"));
  }
}

void append_sights(std::string& out, const SightFix& fix) {
  if (fix.sights.empty()) return;
  std::vector<AlignedRow> rows = {{{fix.is_landmark ? "sighted from" : "sight", "bearing",
                                    "residual", "offset m", "distance m"},
                                   ""}};
  for (const FixedSight& sight : fix.sights) {
    rows.push_back({{printable(sight.name), azimuth_text(sight.bearing),
                     sight.residual ? figure_text(*sight.residual, 1) + "°" : "-",
                     figure_or_dash(sight.offset_m), figure_or_dash(sight.distance_m)},
                    sight.suspicion.empty() ? "" : "suspect: " + printable(sight.suspicion)});
  }
  append_aligned(out, rows);
}

void append_cut(std::string& out, const SightFix& fix, const reduction::Cut& cut) {
  append_printable(out, fix.sights[cut.first].name);
  out += " and ";
  append_printable(out, fix.sights[cut.second].name);
  out.push_back(' ');
  append_figure_of(out, cut.degrees, 1);
  out += "°";
}

void append_cuts(std::string& out, const SightFix& fix) {
  if (fix.cuts.empty()) return;
  const auto best = std::ranges::max_element(fix.cuts, {}, &reduction::Cut::degrees);
  out += fix.cuts.size() == 1 ? "  the lines cross: " : "  the lines cross, at best: ";
  append_cut(out, fix, *best);
  if (fix.cuts.size() > most_cuts) {
    fmt::format_to(std::back_inserter(out), "; {} more", fix.cuts.size() - 1);
  } else {
    std::string_view before = "; also ";
    for (const reduction::Cut& cut : fix.cuts) {
      if (&cut == &*best) continue;
      out += before;
      append_cut(out, fix, cut);
      before = ", ";
    }
  }
  out.push_back('\n');
  if (fix.weak_cut)
    out += "  caution: under 30° small errors become large; add a sight well to the side\n";
}

std::string chance_text(double chance) {
  constexpr double least_shown = 0.001;
  return chance < least_shown ? "under 0.1 %" : figure_text(chance * 100, 1) + " %";
}

void append_agreement(std::string& out, const SightFix& fix, bool color) {
  if (fix.freedom == 0) {
    out += "  no check: two sights always meet\n";
    return;
  }
  fmt::format_to(std::back_inserter(out),
                 "  chi-square {} with {}, chance {}: ", figure_text(fix.chi_square, 1),
                 counted(fix.freedom, "redundant sight", "redundant sights"),
                 chance_text(fix.chance));
  if (fix.agrees) {
    out += "the sights agree\n";
    return;
  }
  append_bold(out, "THE SIGHTS DISAGREE", color);
  out += "; the ellipse is enlarged accordingly\n";
}

/// `  Cairn: the other end of the needle? then chi-square 1.2 instead of 310.4`
void append_slips(std::string& out, const SightFix& fix) {
  for (const reduction::SightSlip& slip : fix.slips) {
    out += "  ";
    if (slip.sight) {
      append_printable(out, fix.sights[*slip.sight].name);
      out += ": ";
    }
    append_printable(out, slip.words);
    out += "? then chi-square ";
    out += figure_text(slip.chi_square, 1);
    // Where the sights meet nowhere there is none to compare with.
    if (fix.position) {
      out += " instead of ";
      out += figure_text(fix.chi_square, 1);
    }
    out.push_back('\n');
  }
}

void append_triangle(std::string& out, const SightFix& fix) {
  if (!fix.triangle) return;
  fmt::format_to(
      std::back_inserter(out),
      "  triangle of error: area {} m², longest side {} m; it holds the true point about one "
      "time in four\n",
      figure_text(fix.triangle->area_m2, 1), figure_text(fix.triangle->longest_side_m, 1));
  std::string_view before = "  its corners: ";
  for (const earth::Position& corner : fix.triangle->corners) {
    out += before;
    append_coordinates(out, corner);
    before = "; ";
  }
  out.push_back('\n');
}

void append_implied(std::string& out, const SightFix& fix) {
  if (!fix.implied) return;
  out += "  the sights imply a declination of ";
  append_east_or_west(out, fix.implied->degrees_east, 1);
  out += " ±";
  append_figure_of(out, fix.implied->sigma, 1);
  using Verdict = reduction::ImpliedDeclination::Verdict;
  switch (fix.implied->verdict) {
    case Verdict::fits:
      out += ", which fits the one in use\n";
      break;
    case Verdict::differs:
      out += ", which is not the one in use: check it\n";
      break;
    case Verdict::none_in_force:
      out += "; none is in use\n";
      break;
  }
}

void append_fix(std::string& out, const FoundPoint& point, bool color) {
  const SightFix& fix = *point.fix;
  if (!fix.position) {
    fmt::format_to(std::back_inserter(out), "  no fix: {}\n", words_of(fix));
  }
  append_sights(out, fix);
  append_cuts(out, fix);
  if (fix.position) append_agreement(out, fix, color);
  append_slips(out, fix);
  append_triangle(out, fix);
  append_implied(out, fix);
  if (fix.danger_circle) {
    out +=
        "  it lies near the circle through its landmarks, where sights cannot check the "
        "declination\n";
  }
}

}  // namespace

void append_found_point(std::string& out, std::string_view before, const FoundPoint& point,
                        bool color) {
  out += before;
  append_bold(out, point.name, color);
  out += ": ";
  append_place(out, point);
  out.push_back('\n');
  append_how(out, point);
  append_elevation(out, point);
  if (point.fix != nullptr) append_fix(out, point, color);
}

}  // namespace lodebook::output
