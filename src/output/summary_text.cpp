// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <iterator>
#include <lodebook/output/notation.hpp>
#include <lodebook/output/summary.hpp>
#include <lodebook/output/text.hpp>

namespace lodebook::output {
namespace {

using notebook::Notation;
using reduction::Attitudes;
using reduction::Fabric;
using reduction::Group;
using reduction::Summary;

constexpr std::string_view undefined = "undefined";

/// A line of a paragraph: a name, padded to a column, and the text.
void append_item(std::string& out, std::string_view name, std::string_view text) {
  fmt::format_to(std::back_inserter(out), "  {:<15} {}\n", name, text);
}

std::string figure_or_undefined(const std::optional<double>& value, int decimals) {
  return value ? figure_text(*value, decimals) : std::string(undefined);
}

/// `R 9.374 of 12, k 3.9, 95 % cone 7.1°`; nothing of a single reading.
std::string precision_words(const DirectionMean& mean) {
  if (mean.count == 1) return {};
  std::string words = fmt::format("; R {} of {}", figure_text(mean.resultant, 3), mean.count);
  if (mean.count < 3) return words + ", k and cone undefined (under three)";
  // Near 4 it decides whether there is a cone.
  words += mean.precision ? ", k " + figure_text(*mean.precision, *mean.precision < 10 ? 2 : 1)
                          : std::string(", k undefined (all coincide)");
  words += mean.cone95 ? fmt::format(", 95 % cone {}°", figure_text(*mean.cone95, 1))
                       : std::string(", 95 % cone undefined (k under 4)");
  return words;
}

std::string direction_words(const Group& group, Vector axis, ShownIn shown_in) {
  std::string words = line_words(axis, shown_in.bearings);
  if (group.is_plane) words += ", plane " + plane_words(axis, shown_in);
  return words;
}

void append_mean(std::string& out, const Summary& summary, ShownIn shown_in) {
  const Group& group = summary.group;
  const std::string_view name = group.is_plane   ? "mean of poles"
                                : group.is_arrow ? "mean of arrows"
                                                 : "mean of lines";
  std::string words = summary.no_mean ? no_mean_words(*summary.no_mean)
                                      : direction_words(group, summary.mean->axis, shown_in);
  if (summary.mean) words += precision_words(*summary.mean);
  append_item(out, name, words);
}

void append_sets(std::string& out, const Summary& summary, ShownIn shown_in) {
  if (!summary.sets) return;
  std::string_view name = "first set";
  for (const DirectionSet& set : *summary.sets) {
    append_item(
        out, name,
        direction_words(summary.group, set.mean.axis, shown_in) + precision_words(set.mean));
    name = "second set";
  }
}

std::string fabric_words(const Summary& summary) {
  std::string words;
  switch (summary.fabric) {
    case Fabric::too_few:
      return "too few for a fabric";
    case Fabric::no_preference:
      return "no preferred direction";
    case Fabric::cluster:
      words = "a cluster";
      break;
    case Fabric::girdle:
      words = "a girdle";
      break;
    case Fabric::two_sets:
      words = "two sets";
      break;
  }
  // An arrow may be an outlier though its axis is not.
  if (summary.group.is_arrow)
    return summary.fabric == Fabric::two_sets ? words : "as axes, " + words;
  if (!summary.far_off.empty()) words += ", apart from the outliers below";
  return words;
}

void append_tensor(std::string& out, const Summary& summary, ShownIn shown_in) {
  const OrientationTensor& tensor = *summary.tensor;
  std::string values;
  std::string axes;
  for (std::size_t i = 0; i < 3; ++i) {
    values += (i == 0 ? "" : " ") + figure_text(tensor.eigenvalues[i], 4);
    axes += (i == 0 ? "" : ", ") + line_words(tensor.axes[i], shown_in.bearings);
  }
  append_item(out, "eigenvalues",
              fmt::format("{}; K {}, C {}: {}", values, figure_or_undefined(tensor.shape(), 2),
                          figure_or_undefined(tensor.strength(), 2), fabric_words(summary)));
  append_item(out, "axes", axes);
}

void append_girdle(std::string& out, const Summary& summary, ShownIn shown_in) {
  if (!summary.girdle) return;
  const reduction::Girdle& girdle = *summary.girdle;
  append_item(out, "girdle", plane_words(girdle.pole, shown_in));
  std::string words = line_words(girdle.pole, shown_in.bearings);
  words += girdle.cone95
               ? fmt::format(", 95 % cone {}° (bootstrap)", figure_text(*girdle.cone95, 1))
               : ", 95 % cone undefined";
  if (!girdle.is_known()) {
    words += ": it may point almost anywhere";
  } else if (summary.may_have_fold_axis()) {
    words += "; the fold axis, if these are folded";
  }
  append_item(out, "its pole", words);
}

void append_azimuths(std::string& out, const Summary& summary, ShownIn shown_in) {
  const CircularMean& mean = summary.azimuths;
  const Group& group = summary.group;
  std::string words;
  if (summary.no_azimuth) {
    words = fmt::format("{}, resultant {}", no_mean_words(*summary.no_azimuth),
                        figure_text(mean.resultant, 3));
  } else if (mean.count > 1) {
    words = group.is_axial() ? "axial mean " : "mean ";
    words += mean_azimuth_words(summary, shown_in.bearings);
    if (mean.arc95) words += fmt::format(" ±{}° (95 %)", figure_text(*mean.arc95, 1));
    words += fmt::format(", resultant {}", figure_text(mean.resultant, 3));
    if (!mean.is_meaningful()) words += ": means little";
  }
  if (summary.undirected > 0) {
    if (!words.empty()) words += "; ";
    words += fmt::format("{} without a direction", summary.undirected);
  }
  if (!words.empty()) append_item(out, group.is_plane ? "strikes" : "trends", words);
}

void append_far_off(std::string& out, const Attitudes& attitudes, const Summary& summary) {
  for (const reduction::FarOff& far : summary.far_off) {
    const std::string& station = attitudes.station(far.attitude->station);
    std::string words = source_of(attitudes, *far.attitude);
    if (!station.empty()) words += ", station " + station;
    words +=
        fmt::format(": {}, {}° from the {}", far.attitude->written, figure_text(far.degrees, 1),
                    summary.girdle                       ? "girdle"
                    : summary.fabric == Fabric::two_sets ? "nearer set"
                                                         : "mean of the others");
    append_item(out, "outlier", printable(words));
  }
  if (summary.more_far_off) append_item(out, "outlier", "there may be more: the search ended here");
}

void append_group(std::string& out, const SummaryDocument& document, const Summary& summary,
                  ShownIn shown_in, bool color) {
  const Group& group = summary.group;
  append_bold(out, title_of(document.attitudes, group), color);
  fmt::format_to(std::back_inserter(out), ": {}; from {} north\n", counts_of(group),
                 reduction::name_of(group.north));
  if (!group.members.empty()) append_mean(out, summary, shown_in);
  append_sets(out, summary, shown_in);
  if (summary.surfaces.size() >= 3) append_tensor(out, summary, shown_in);
  append_girdle(out, summary, shown_in);
  append_azimuths(out, summary, shown_in);
  append_far_off(out, document.attitudes, summary);
}

}  // namespace

void append_summary_text(std::string& out, const SummaryDocument& document, bool color) {
  const Attitudes& attitudes = document.attitudes;
  for (const reduction::AttitudeLog& log : attitudes.logs()) {
    append_bold(out, file_of(log), color);
    fmt::format_to(std::back_inserter(out), ": {}\n", declination_of(log));
  }
  out +=
      "repeats of one surface count once, as their mean; planes are averaged by their poles, poles "
      "and lines as axes\n";
  const ShownIn shown_in = document.shown_in();
  for (const Summary& summary : document.summaries) {
    out.push_back('\n');
    append_group(out, document, summary, shown_in, color);
  }
  if (document.summaries.empty()) out += "\nno planes and no lines\n";
  if (attitudes.sights_and_legs() > 0) {
    fmt::format_to(std::back_inserter(out), "\n{} not summed up\n",
                   counted(attitudes.sights_and_legs(), "sight or leg is", "sights and legs are"));
  }
}

}  // namespace lodebook::output
