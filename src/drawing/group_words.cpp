// SPDX-License-Identifier: MIT
#include "group_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <lodebook/output/text.hpp>

#include "reading_words.hpp"

namespace lodebook::drawing {

using output::SummaryDocument;
using reduction::Attitude;
using reduction::Attitudes;
using reduction::Group;
using reduction::North;
using reduction::Summary;

namespace {

constexpr std::string_view nothing = "No planes and no lines.";

}  // namespace

bool has_girdle_to_draw(const Summary& summary) {
  return summary.girdle && summary.girdle->is_known();
}

bool has_mean_to_draw(const Summary& summary) {
  return !summary.girdle && !summary.no_mean && summary.mean && summary.mean->cone95 &&
         summary.fabric != reduction::Fabric::no_preference;
}

std::string words_of(const SummaryDocument& document, const Attitude& attitude) {
  const Attitudes& attitudes = document.attitudes;
  const output::ShownIn shown_in = document.shown_in();
  const std::string& station = attitudes.station(attitude.station);
  std::string corrected;
  if (attitude.part == notebook::Part::whole) {
    corrected = attitude.is_plane ? output::plane_words(attitude.axis, shown_in)
                                  : output::line_words(attitude.axis, shown_in.bearings);
  } else if (attitude.is_plane) {
    output::append_converted_strike(corrected, attitude.azimuth.value_or(0), 1, shown_in.bearings);
  } else {
    output::append_converted_bearing(corrected, attitude.azimuth.value_or(0), 1, shown_in.bearings);
  }
  return reading_words(station, attitudes.kind(attitude.kind), attitude.written, corrected,
                       attitude.north);
}

std::string figures_of(const SummaryDocument& document, const Summary& summary) {
  const output::ShownIn shown_in = document.shown_in();
  std::string words = output::counts_of(summary.group);
  if (has_girdle_to_draw(summary)) {
    words += fmt::format("; girdle {}, its pole {} ±{}°",
                         output::plane_words(summary.girdle->pole, shown_in),
                         output::line_words(summary.girdle->pole, shown_in.bearings),
                         output::figure_text(*summary.girdle->cone95, 1));
  } else if (summary.girdle) {
    words += "; a girdle, its pole not known";
  } else if (has_mean_to_draw(summary)) {
    words += fmt::format("; mean {} ±{}°",
                         summary.group.is_plane
                             ? output::plane_words(summary.mean->axis, shown_in)
                             : output::line_words(summary.mean->axis, shown_in.bearings),
                         output::figure_text(*summary.mean->cone95, 1));
  } else if (summary.no_mean) {
    words += "; " + output::no_mean_words(*summary.no_mean);
  }
  if (!summary.far_off.empty())
    words += "; " + output::counted(summary.far_off.size(), "outlier", "outliers");
  return words;
}

std::string legend_of(const SummaryDocument& document, const Summary& summary) {
  return document.attitudes.kind(summary.group.kind) + ": " + figures_of(document, summary);
}

bool has_norths(const SummaryDocument& document) {
  return std::ranges::any_of(document.summaries, [&](const Summary& summary) {
    return summary.group.north != document.summaries.front().group.north;
  });
}

std::string panel_title(const SummaryDocument& document, const Group& group, bool with_kind,
                        bool with_north) {
  std::string title = with_kind ? output::title_of(document.attitudes, group)
                                : output::place_of(document.attitudes, group);
  if (with_north) {
    if (!title.empty()) title += ", ";
    title += fmt::format("from {} north", reduction::name_of(group.north));
  }
  return title;
}

std::string title_of_picture(std::string_view what, const SummaryDocument& document) {
  const auto& logs = document.attitudes.logs();
  if (logs.size() == 1) return fmt::format("{} of {}", what, output::file_of(logs.front()));
  return fmt::format("{} of {} logs", what, logs.size());
}

std::string describe(const SummaryDocument& document, FiguresOf figures) {
  std::string words;
  for (const Summary& summary : document.summaries) {
    if (!words.empty()) words += ". ";
    words += output::title_of(document.attitudes, summary.group);
    words += ": " + figures(document, summary);
  }
  return words.empty() ? std::string(nothing) : words + '.';
}

void append_frame_words(std::vector<std::string>& lines, const SummaryDocument& document) {
  if (document.summaries.empty()) lines.insert(lines.begin(), std::string(nothing));
  std::vector<std::string_view> norths;
  for (const Summary& summary : document.summaries) {
    const std::string_view north = reduction::name_of(summary.group.north);
    if (std::ranges::find(norths, north) == norths.end()) norths.push_back(north);
  }
  std::string words =
      norths.empty() ? "" : fmt::format("From {} north; ", fmt::join(norths, " and "));
  // Logs of one declination are named together.
  std::vector<std::pair<std::string, std::size_t>> declinations;
  for (const reduction::AttitudeLog& log : document.attitudes.logs()) {
    std::string declination = output::declination_of(log);
    const auto same =
        std::ranges::find(declinations, declination, &std::pair<std::string, std::size_t>::first);
    if (same == declinations.end()) {
      declinations.emplace_back(std::move(declination), 1);
    } else {
      ++same->second;
    }
  }
  std::string_view before;
  for (const auto& [declination, logs] : declinations) {
    words += before;
    words += declination;
    if (declinations.size() > 1) words += " in " + output::counted(logs, "log", "logs");
    before = "; ";
  }
  if (!words.empty()) {
    words.push_back('.');
    lines.push_back(std::move(words));
  }
  std::size_t rejected = 0;
  std::size_t left_out = 0;
  for (const Summary& summary : document.summaries) {
    rejected += summary.group.rejected;
    left_out += summary.group.left_out;
  }
  if (rejected + left_out > 0) {
    std::string left = "Left out:";
    if (rejected > 0) left += fmt::format(" {} rejected", rejected);
    if (left_out > 0) left += fmt::format("{} {} suspect", rejected > 0 ? "," : "", left_out);
    lines.push_back(left + '.');
  }
  const bool has_repeats = std::ranges::any_of(document.summaries, [](const Summary& summary) {
    return summary.group.surfaces < summary.group.members.size();
  });
  if (has_repeats || document.repeats == reduction::Repeats::mean)
    lines.emplace_back("Repeats of one surface count once, as their mean.");
}

}  // namespace lodebook::drawing
