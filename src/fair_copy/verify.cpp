// SPDX-License-Identifier: MIT
#include "verify.hpp"

#include <cmath>

namespace lodebook::fair_copy {

namespace {

using notebook::Entry;
using notebook::LineAttitude;
using notebook::PlaneAttitude;

/// Both figures come from the same text, but a percent grade or minutes may round.
constexpr double tolerance = 0.01;

bool same(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0)) < tolerance;
}

bool agrees(const PlaneAttitude& read, const Meant& meant) {
  const auto plane = read.plane();
  if (!plane) return true;
  const double dip = plane->dip().degrees();
  if (meant.angle && !same(dip, *meant.angle)) return false;
  if (dip == 0 || !meant.azimuth) return true;
  const double direction = plane->dip_direction().degrees();
  return same(direction, *meant.azimuth) || (dip == 90 && same(direction + 180, *meant.azimuth));
}

bool agrees(const LineAttitude& read, const Meant& meant) {
  if (read.form == LineAttitude::Form::rake)
    return !meant.angle || same(read.slope.degrees(), *meant.angle);
  const auto line = read.line();
  if (!line) return true;
  if (meant.angle && !same(line->plunge().degrees(), *meant.angle)) return false;
  if (!meant.azimuth || line->plunge().degrees() == 90) return true;
  return same(line->trend().degrees(), *meant.azimuth);
}

/// `33/057 SE`, which the language takes as strike 33 and dip 57, is as likely the other way round.
bool is_odd(const notebook::Reading& reading) {
  const auto* plane = std::get_if<PlaneAttitude>(&reading.what);
  if (!plane || plane->form != PlaneAttitude::Form::strike_and_side) return false;
  const bool turned = plane->bearing.notation == notebook::Notation::azimuth &&
                      plane->bearing.digits < 3 && plane->dip.digits == 3;
  const auto read = plane->plane();
  return turned ||
         (read && plane->side && is_far(read->dip_direction().degrees(), degrees_of(*plane->side)));
}

void learn_reading(Page& page, const notebook::Reading& reading,
                   const notebook::Notebook& notebook) {
  const notebook::Kind& kind = notebook.kinds[reading.kind];
  const bool attitude =
      kind.type == notebook::Kind::Type::plane || kind.type == notebook::Kind::Type::line;
  if (!attitude) return;
  if (const auto* plane = std::get_if<PlaneAttitude>(&reading.what)) {
    if (const auto read = plane->plane())
      page.remember(kind.name, {read->dip_direction().degrees(), read->dip().degrees()});
  }
  page.kind = kind.name;
  page.last = {kind.name, std::nullopt, {}, {}, false};
  if (kind.type == notebook::Kind::Type::plane) page.plane_kind = kind.name;
}

}  // namespace

std::vector<StrictLine> strictly_read(const notebook::Notebook& notebook) {
  std::vector<StrictLine> lines(notebook.source.line_count() + 1);
  notebook::BlockReader blocks(notebook);
  notebook::Block block;
  while (blocks.next(block)) {
    for (const Entry& entry : block.entries) {
      StrictLine& line = lines[entry.line];
      line.entries.push_back(entry);
      const auto* reading = std::get_if<notebook::Reading>(&entry.what);
      if ((reading && (reading->rejected || is_odd(*reading))) ||
          std::holds_alternative<notebook::Unread>(entry.what))
        line.is_good = false;
    }
    for (const notebook::Diagnostic& diagnostic : block.diagnostics) {
      const std::uint32_t number = diagnostic.place.line;
      const bool counts = diagnostic.severity == notebook::Severity::error ||
                          diagnostic.code == notebook::Code::remark_reading;
      if (!counts) continue;
      StrictLine& line = lines[number];
      line.is_good = false;
      if (line.fault.empty()) line.fault = diagnostic.message;
      line.is_question = line.is_question || diagnostic.code == notebook::Code::unanswered;
    }
  }
  return lines;
}

bool agrees(const notebook::Reading& reading, const Meant& meant) {
  if (reading.rejected) return false;
  if (const auto* plane = std::get_if<PlaneAttitude>(&reading.what)) return agrees(*plane, meant);
  if (const auto* line = std::get_if<LineAttitude>(&reading.what)) return agrees(*line, meant);
  return true;
}

void learn(Page& page, const StrictLine& line, const notebook::Notebook& notebook) {
  using namespace notebook;
  for (const Entry& entry : line.entries) {
    if (const auto* station = std::get_if<StationHeading>(&entry.what)) {
      if (station->name != no_name) page.begin_station(notebook.names.shown(station->name));
    } else if (const auto* mark = std::get_if<Landmark>(&entry.what)) {
      page.add_mark(notebook.names.shown(mark->name));
    } else if (const auto* rule = std::get_if<RuleSetting>(&entry.what)) {
      page.conventions.rule = rule->rule;
    } else if (const auto* order = std::get_if<OrderSetting>(&entry.what)) {
      if (order->planes != PlaneOrder::unstated) page.conventions.order.planes = order->planes;
      if (order->lines != LineOrder::unstated) page.conventions.order.lines = order->lines;
    } else if (std::holds_alternative<SetSetting>(entry.what)) {
      page.has_set = true;
    } else if (std::holds_alternative<DeclinationSetting>(entry.what)) {
      page.has_declination = true;
    } else if (const auto* reading = std::get_if<Reading>(&entry.what)) {
      learn_reading(page, *reading, notebook);
    } else if (const auto* own = std::get_if<KindDeclaration>(&entry.what)) {
      const Kind& kind = notebook.kinds[own->kind];
      const std::string_view kept = *page.kept.insert(kind.name).first;
      page.words.add(kind.name, {Meaning::kind, kept});
      page.own_kinds[kind.name] = kind.type == Kind::Type::plane ? KindType::plane
                                  : kind.two_ended               ? KindType::axis
                                                                 : KindType::line;
    }
  }
}

}  // namespace lodebook::fair_copy
