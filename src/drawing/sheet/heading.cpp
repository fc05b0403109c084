// SPDX-License-Identifier: MIT
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/report.hpp>
#include <lodebook/output/report_words.hpp>
#include <lodebook/output/table.hpp>
#include <lodebook/output/text.hpp>

#include "parts.hpp"

namespace lodebook::drawing {
namespace {

using reduction::Settings;

std::string_view dial_words(const Settings& settings) {
  if (!settings.dial) return {};
  return *settings.dial == notebook::Notation::quadrant ? "quadrant" : "azimuth";
}

/// One sigma of a bearing, a dip and a distance.
std::string accuracy_words(const reduction::Accuracy& accuracy) {
  std::string out = "bearings ±";
  append_trimmed(out, accuracy.bearing, 2);
  out += "°, dips ±";
  append_trimmed(out, accuracy.dip, 2);
  out += "°, distances ±";
  append_trimmed(out, accuracy.distance_percent, 2);
  return out + " %";
}

std::string pace_words(const Settings& settings) {
  if (!settings.pace_m) return {};
  std::string out;
  append_trimmed(out, *settings.pace_m, 3);
  return out + " m";
}

}  // namespace

void append_sheet_heading(Markup& markup, std::string_view title,
                          const reduction::Reduction& reduction) {
  const Settings& settings = reduction.heading();
  const reduction::North wanted = reduction.options().north;
  const std::string north =
      made([&](std::string& out) { output::append_north(out, settings, wanted); });
  const bool is_wanted = output::has_wanted_north(settings, wanted);

  markup.open("header");
  markup.line_break();
  markup.element("h1", title);
  markup.line_break();
  if (!is_wanted) {
    markup.open("p", {{"class", "alarm"}});
    markup.element("strong", north);
    markup.close();
    markup.line_break();
  }
  markup.open("dl", {{"class", "facts"}});
  append_fact(markup, "Log", output::shown_name(reduction.notebook().source));
  append_fact(markup, "Observer", settings.observer);
  append_fact(markup, "Instrument", settings.instrument);
  append_fact(markup, "Dial", dial_words(settings));
  append_fact(markup, "Correction",
              made([&](std::string& out) { output::append_compass(out, settings, wanted); }));
  if (is_wanted) append_fact(markup, "North", north);
  append_fact(markup, "Rule", made([&](std::string& out) { output::append_rule(out, settings); }));
  append_fact(markup, "Accuracy", accuracy_words(settings.accuracy));
  append_fact(markup, "Datum", settings.datum);
  append_fact(markup, "Pace", pace_words(settings));
  if (settings.attraction_correct)
    append_fact(markup, "Attraction", "legs are corrected for it where they place stations");
  append_fact(markup, "Readings",
              made([&](std::string& out) { output::append_totals(out, reduction.counts()); }));
  markup.close();
  markup.close();
  markup.line_break();
}

}  // namespace lodebook::drawing
