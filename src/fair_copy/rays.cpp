// SPDX-License-Identifier: MIT
#include "rays.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace lodebook::fair_copy {

namespace {

class RayLines {
 public:
  RayLines(FoundRays found, std::string remark, Page& page)
      : found_(std::move(found)), remark_(std::move(remark)), page_(page) {}

  Lines lines() {
    Lines lines;
    if (!found_.opens_station.empty() && found_.question.empty()) {
      lines.emplace_back().text = "station " + name_text(found_.opens_station);
      page_.begin_station(found_.opens_station);
    }
    for (Ray& ray : found_.rays) {
      Line& line = lines.emplace_back();
      const bool is_leg = found_.is_leg && !ray.distance.empty();
      const std::string question = question_of(ray, is_leg);
      if (ray.target.empty() && !is_leg) ray.target = "mark";
      if (!question.empty()) line.text = "ask ";
      const std::string said = is_leg ? leg_text(ray) : sight_text(ray);
      if (is_leg) page_.last_leg = said;
      line.text += said;
      if (ray.south_end) line.text += " south-end";
      if (ray.about) line.text += " about";
      if (ray.doubtful) line.text += " doubtful";
      if (!question.empty()) {
        line.text += "  ; " + question;
      } else if (&ray == &found_.rays.back() && !remark_.empty()) {
        line.text += "  ; " + remark_;
      }
      line.readings = 1;
    }
    return lines;
  }

 private:
  std::string question_of(const Ray& ray, bool is_leg) const {
    if (!found_.question.empty()) return found_.question;
    if (ray.target.empty() && !is_leg) return "to what?";
    if (!is_leg && !ray.is_known) return fmt::format("is '{}' a landmark?", ray.target);
    if (is_leg && !found_.says_leg && page_.last_leg.empty()) return "is this a leg?";
    const bool two_ends = is_leg && !ray.from.empty() && !page_.is_here(ray.from) &&
                          !ray.target.empty() && !found_.to_here;
    if (two_ends)
      return fmt::format("from {} to {}: at which of them is this?", ray.from, ray.target);
    if (found_.is_leg && !is_leg) return "a leg needs its distance";
    if (!page_.in_station && ray.from.empty()) return "read at which station?";
    return {};
  }

  std::string leg_text(const Ray& ray) {
    std::string text = "leg ";
    if (!ray.from.empty() && folded(ray.from) != folded(page_.station))
      text += fmt::format("from {} ", name_text(ray.from));
    text += fmt::format("{} {}", ray.bearing, ray.distance);
    if (!ray.vertical.empty()) text += " slope " + ray.vertical;
    if (!ray.back.empty()) text += " back " + ray.back;
    if (!ray.target.empty() && !found_.to_here && (ray.from.empty() || page_.is_here(ray.from))) {
      text += " to " + name_text(ray.target);
      page_.leg_ends.insert(folded(ray.target));
      page_.add_name(ray.target);
    }
    return text;
  }

  std::string sight_text(const Ray& ray) const {
    std::string text = fmt::format("sight {}", name_text(ray.target));
    if (!ray.bearing.empty()) text += " " + ray.bearing;
    if (!ray.own_north.empty()) text += " " + ray.own_north;
    if (!ray.from.empty() && folded(ray.from) != folded(page_.station))
      text += fmt::format(" from {}", name_text(ray.from));
    if (!ray.back.empty()) text += " back " + ray.back;
    if (!ray.vertical.empty()) text += " vertical " + ray.vertical;
    return text;
  }

  FoundRays found_;
  std::string remark_;
  Page& page_;
};

}  // namespace

std::string_view unit_of(const Token& unit) {
  return unit.is(Meaning::metres) ? "m" : unit.is(Meaning::feet) ? "ft" : " paces";
}

Lines stated(FoundRays found, std::string remark, Page& page) {
  return RayLines(std::move(found), std::move(remark), page).lines();
}

std::optional<Lines> same_leg(const std::string& leg, const Tokens& tokens) {
  for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
    const Token& unit = tokens[i + 1];
    const bool is_length =
        tokens[i].is_figure() &&
        (unit.is(Meaning::metres) || unit.is(Meaning::feet) || unit.is(Meaning::paces));
    if (!is_length) continue;
    // Behind `leg` and its bearing.
    const std::size_t begin = leg.find(' ', leg.find(' ') + 1) + 1;
    const std::size_t end = std::min(leg.find(' ', begin), leg.size());
    Lines lines;
    lines.emplace_back().text =
        fmt::format("ask {}{}{}{}  ; the same leg again?", leg.substr(0, begin), tokens[i].text,
                    unit_of(unit), leg.substr(end));
    lines.back().readings = 1;
    return lines;
  }
  return std::nullopt;
}

}  // namespace lodebook::fair_copy
