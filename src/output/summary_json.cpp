// SPDX-License-Identifier: MIT
#include <lodebook/notebook/source.hpp>
#include <lodebook/orientation/line.hpp>
#include <lodebook/orientation/plane.hpp>
#include <lodebook/output/summary.hpp>

#include "json_pieces.hpp"

namespace lodebook::output {
namespace {

using reduction::Attitudes;
using reduction::Group;
using reduction::Summary;

constexpr int version = 1;

Json text(std::string_view words) {
  return notebook::valid_utf8(words);
}

Json azimuth_or_null(const std::optional<double>& degrees) {
  return degrees ? azimuth_figure(*degrees) : Json();
}

/// The plane of a pole, and a line.
Json plane_json(Vector pole) {
  const ShownPlane plane = shown_plane(pole, 2);
  Json json = Json::object();
  json["strike"] = azimuth_or_null(plane.strike);
  json["dip"] = figure(plane.dip, 2);
  return json;
}
Json line_json(Vector line) {
  const ShownLine shown = shown_line(line, 2);
  Json json = Json::object();
  json["trend"] = azimuth_or_null(shown.trend);
  json["plunge"] = figure(shown.plunge, 2);
  return json;
}

/// Without a direction where it is no single mean.
Json mean_json(const Group& group, const DirectionMean& mean, bool is_single = true) {
  Json json = group.is_plane ? plane_json(mean.axis) : line_json(mean.axis);
  if (group.is_plane) json["pole"] = line_json(mean.axis);
  if (!is_single) {
    for (auto& [name, value] : json.items())
      value = nullptr;
  }
  json["resultant"] = figure(mean.resultant, 4);
  json["precision_k"] = figure(mean.precision, 2);
  json["cone95"] = figure(mean.cone95, 2);
  return json;
}

Json why_or_null(const std::optional<reduction::NoMean>& why) {
  return why ? Json(reduction::name_of(*why)) : Json();
}

Json sets_json(const Summary& summary) {
  Json list = Json::array();
  if (!summary.sets) return list;
  for (const DirectionSet& set : *summary.sets) {
    Json json = Json::object();
    json["surfaces"] = set.mean.count;
    json["mean"] = mean_json(summary.group, set.mean);
    list.push_back(std::move(json));
  }
  return list;
}

Json tensor_json(const Summary& summary) {
  if (!summary.tensor) return {};
  Json values = Json::array();
  Json axes = Json::array();
  for (std::size_t i = 0; i < 3; ++i) {
    values.push_back(figure(summary.tensor->eigenvalues[i], 4));
    axes.push_back(line_json(summary.tensor->axes[i]));
  }
  Json json = Json::object();
  json["eigenvalues"] = std::move(values);
  json["axes"] = std::move(axes);
  json["woodcock_k"] = figure(summary.tensor->shape(), 3);
  json["woodcock_c"] = figure(summary.tensor->strength(), 3);
  json["chance_of_evenness"] = figure(summary.chance_of_evenness, 4);
  return json;
}

Json girdle_json(const Summary& summary) {
  if (!summary.girdle) return {};
  Json json = plane_json(summary.girdle->pole);
  json["axis"] = line_json(summary.girdle->pole);
  json["axis"]["cone95"] = figure(summary.girdle->cone95, 2);
  json["may_be_fold_axis"] = summary.may_have_fold_axis();
  return json;
}

Json azimuths_json(const Summary& summary) {
  const CircularMean& mean = summary.azimuths;
  const bool any = mean.count > 0;
  Json json = Json::object();
  json["of"] = summary.group.is_plane ? "strikes" : "trends";
  json["axial"] = summary.group.is_axial();
  json["count"] = mean.count;
  json["mean"] = !mean.azimuth || summary.no_azimuth ? Json()
                 : summary.group.is_axial()          ? axis_figure(*mean.azimuth)
                                                     : azimuth_figure(*mean.azimuth);
  json["no_single_mean"] = why_or_null(summary.no_azimuth);
  json["resultant"] = any ? figure(mean.resultant, 4) : Json();
  json["arc95"] = figure(mean.arc95, 2);
  json["chance"] = any ? figure(mean.chance, 4) : Json();
  return json;
}

Json far_off_json(const Attitudes& attitudes, const Summary& summary) {
  Json list = Json::array();
  for (const reduction::FarOff& far : summary.far_off) {
    Json json = Json::object();
    json["source"] = text(source_of(attitudes, *far.attitude));
    json["station"] = text_or_null(attitudes.station(far.attitude->station));
    json["written"] = text(far.attitude->written);
    json["degrees"] = figure(far.degrees, 2);
    list.push_back(std::move(json));
  }
  return list;
}

Json group_json(const Attitudes& attitudes, const Summary& summary) {
  const Group& group = summary.group;
  Json json = Json::object();
  json["kind"] = text(attitudes.kind(group.kind));
  json["type"] = type_of(group);
  json["unit"] = group.unit ? text_or_null(attitudes.unit(*group.unit)) : Json();
  json["station"] = group.station ? text_or_null(attitudes.station(*group.station)) : Json();
  json["file"] = group.log ? text(file_of(attitudes.logs()[*group.log])) : Json();
  json["north"] = reduction::name_of(group.north);
  json["count"] = group.members.size();
  json["surfaces"] = group.surfaces;
  json["suspect"] = group.suspect;
  json["suspect_left_out"] = group.left_out;
  json["rejected"] = group.rejected;
  json["partial"] = group.halves.size();
  json["mean"] = summary.mean ? mean_json(group, *summary.mean, !summary.no_mean) : Json();
  json["no_single_mean"] = why_or_null(summary.no_mean);
  json["sets"] = sets_json(summary);
  json["tensor"] = tensor_json(summary);
  json["fabric"] = reduction::name_of(summary.fabric);
  json["girdle"] = girdle_json(summary);
  json["azimuths"] = azimuths_json(summary);
  json["far_off"] = far_off_json(attitudes, summary);
  json["more_far_off"] = summary.more_far_off;
  return json;
}

Json log_json(const reduction::AttitudeLog& log) {
  Json json = Json::object();
  json["file"] = text(file_of(log));
  json["least_declination"] = figure(log.least_declination, 2);
  json["most_declination"] = figure(log.most_declination, 2);
  json["by_model"] = log.by_model;
  return json;
}

}  // namespace

void append_summary_json(std::string& out, const SummaryDocument& document) {
  out += "{\"format\":\"lodebook-summary\",";
  append_member(out, "version", version);
  append_member(out, "by_unit", document.grouping.by_unit);
  append_member(out, "by_station", document.grouping.by_station);
  append_member(out, "without_suspect", document.selection.without_suspect);
  append_member(out, "repeats", document.repeats == reduction::Repeats::mean ? "mean" : "each");
  append_member(out, "sights_and_legs", document.attitudes.sights_and_legs());
  Json logs = Json::array();
  for (const reduction::AttitudeLog& log : document.attitudes.logs())
    logs.push_back(log_json(log));
  append_member(out, "logs", logs);
  out += "\n\"groups\":[";
  std::string_view before = "\n";
  for (const Summary& summary : document.summaries) {
    out += before;
    append_json(out, group_json(document.attitudes, summary));
    before = ",\n";
  }
  out += "]}\n";
}

}  // namespace lodebook::output
