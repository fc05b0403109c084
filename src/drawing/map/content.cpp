// SPDX-License-Identifier: MIT
#include "content.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/angle.hpp>
#include <numbers>

#include "../paragraph.hpp"
#include "extent.hpp"
#include "places.hpp"

namespace lodebook::drawing {
namespace {

/// Longer names are shortened on the map; titles have them whole.
constexpr double longest_name_mm = 40;

double distance(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

/// The radius of a symbol's room: a few sizes, so that room looked for in vain is not looked for
/// again.
double room_of(const MapSymbol& symbol) {
  constexpr double usual = 4.5;
  constexpr double step = 1;
  const double radius = radius_of(symbol);
  return usual + step * std::max(0.0, std::ceil((radius - usual) / step));
}

/// Degrees clockwise from the top.
double azimuth_of(Point way) {
  return std::atan2(way.x, -way.y) * 180 / std::numbers::pi;
}

/// Where a line from within a box leaves it.
Point exit_of(const Box& box, Point from, double azimuth) {
  const Point unit = towards({0, 0}, azimuth, 1);
  const double to_side = unit.x > 0 ? box.most.x - from.x : from.x - box.least.x;
  const double to_end = unit.y > 0 ? box.most.y - from.y : from.y - box.least.y;
  return from + std::min(to_side / std::max(std::abs(unit.x), 1e-9),
                         to_end / std::max(std::abs(unit.y), 1e-9)) *
                    unit;
}

/// The box's nearest point.
Point nearest_of(const Box& box, Point to) {
  return {std::clamp(to.x, box.least.x, box.most.x), std::clamp(to.y, box.least.y, box.most.y)};
}

/// A name stands beside its place and symbol, and not as near to another place; else it has a
/// leader. `others` are in the order of their x.
bool needs_leader(const Box& name, Point place, const std::vector<Point>& others) {
  constexpr double beside = 7;
  const double away = distance(nearest_of(name, place), place);
  if (away > beside) return true;
  for (auto other = std::ranges::lower_bound(others, name.least.x - away, {}, &Point::x);
       other != others.end() && other->x <= name.most.x + away; ++other) {
    if (*other != place && distance(nearest_of(name, *other), *other) <= away) return true;
  }
  return false;
}

}  // namespace

Content::Content(const Survey& survey, const MapGrid& grid) : survey_(survey), grid_(grid) {
  std::vector<std::size_t> numbers;
  for (const Survey::Station& station : survey.stations) {
    numbers.push_back(stations_.size());
    if (station.position) stations_.push_back({grid.place(*station.position), &station.name});
  }
  for (const Survey::Landmark& landmark : survey.landmarks)
    landmarks_.push_back(grid.place(landmark.position));
  for (const Survey::Measured& one : survey.measured) {
    Measured measured{numbers[one.station], &one.reading, one.symbol};
    if (auto& azimuth = measured.symbol.azimuth)
      *azimuth = wrap_degrees(*azimuth - stations_[measured.station].place.convergence);
    measured_.push_back(std::move(measured));
  }
  extent_ = extent_of(survey, grid);
}

double Content::area_mm2() const {
  // Symbols fill about two fifths of the paper, names less.
  constexpr double symbol_mm2 = 210;
  constexpr double name_mm2 = 90;
  const auto names = static_cast<double>(stations_.size() + landmarks_.size());
  return symbol_mm2 * static_cast<double>(measured_.size()) + name_mm2 * names;
}

void Content::note_landmarks(std::vector<Spot>& spots) {
  const earth::Position middle = grid_.position(view_.middle);
  landmarks_inside_.clear();
  pointers_.clear();
  for (std::size_t i = 0; i < landmarks_.size(); ++i) {
    const Survey::Landmark& landmark = survey_.landmarks[i];
    const Point at = view_.paper(landmarks_[i].at);
    if (view_.frame.grown(-landmark_radius).holds(at)) {
      landmarks_inside_.push_back(at);
      spots.push_back({at, landmark_radius});
      names_.push_back({at, Role::figure, shortened(landmark.name, Role::figure, longest_name_mm)});
      continue;
    }
    const double azimuth = azimuth_of(at - view_.frame.center());
    const Point tip = exit_of(view_.frame, view_.frame.center(), azimuth);
    pointers_.push_back({tip, azimuth});
    spots.push_back({towards(tip, azimuth + 180, 1), 1.2});
    names_.push_back({towards(tip, azimuth + 180, 2), Role::figure,
                      shortened(landmark.name, Role::figure, longest_name_mm) + ' ' +
                          length_words(earth::distance_m(middle, landmark.position))});
  }
}

bool Content::arrange(const View& view) {
  view_ = view;
  names_.clear();
  std::vector<Spot> spots;
  station_points_.clear();
  for (const Station& station : stations_) {
    const Point at = view.paper(station.place.at);
    station_points_.push_back(at);
    spots.push_back({at, station_radius + 0.2});
    if (!station.name->empty())
      names_.push_back({at, Role::label, shortened(*station.name, Role::label, longest_name_mm)});
  }
  note_landmarks(spots);

  // The first bedding of a station stands at its place, or else its first symbol.
  std::vector<CrowdSymbol> symbols;
  std::vector<std::optional<std::size_t>> claims(stations_.size());
  for (std::size_t i = 0; i < measured_.size(); ++i) {
    auto& claim = claims[measured_[i].station];
    if (!claim ||
        (measured_[i].symbol.kind == "bedding" && measured_[*claim].symbol.kind != "bedding"))
      claim = i;
    symbols.push_back({measured_[i].station, room_of(measured_[i].symbol), false});
  }
  for (const auto& claim : claims) {
    if (claim) symbols[*claim].claims_place = true;
  }
  auto crowd = drawing::arrange(view.frame, spots, symbols, names_);
  if (!crowd) return false;
  crowd_ = std::move(*crowd);
  note_leaders();
  return true;
}

void Content::note_leaders() {
  leaders_.clear();
  for (std::size_t i = 0; i < measured_.size(); ++i) {
    const Point home = station_points_[measured_[i].station];
    const Point at = crowd_.symbols[i];
    if (at == home) continue;
    const double azimuth = azimuth_of(home - at);
    leaders_.push_back({home, towards(at, azimuth, clearance(measured_[i].symbol, azimuth))});
  }
  std::vector<Point> others = station_points_;
  std::ranges::sort(others, {}, &Point::x);
  for (std::size_t i = 0; i < names_.size(); ++i) {
    const Box& box = crowd_.names[i];
    if (needs_leader(box, names_[i].at, others))
      leaders_.push_back({names_[i].at, nearest_of(box, names_[i].at)});
  }
}

void Content::draw_sighted(Picture& picture, Role role, const Survey::Sighted& sighted) const {
  picture.begin_reading(sighted.reading.source, sighted.reading.title);
  picture.line(role, {paper(sighted.from), paper(sighted.to)});
  picture.end();
}

void Content::draw_lines(Picture& picture) const {
  for (const Survey::Sighted& sight : survey_.sights)
    draw_sighted(picture, Role::ray, sight);
  for (const Survey::OpenSight& sight : survey_.open_sights) {
    const GridPlace from = grid_.place(sight.from);
    picture.begin_reading(sight.reading.source, sight.reading.title);
    draw_open_sight(picture, view_.paper(from.at), sight.azimuth - from.convergence);
    picture.end();
  }
  for (const Survey::Sighted& leg : survey_.legs)
    draw_sighted(picture, Role::leg, leg);
  for (const auto& raw : survey_.raw_traverses) {
    std::vector<Point> points;
    points.reserve(raw.size());
    for (const earth::Position& position : raw)
      points.push_back(paper(position));
    picture.line(Role::raw_leg, std::move(points));
  }
}

void Content::draw_errors(Picture& picture) const {
  for (const auto& triangle : survey_.triangles)
    picture.area(Role::triangle, {paper(triangle[0]), paper(triangle[1]), paper(triangle[2])});
  constexpr int corners = 72;
  for (const Survey::ErrorOfPosition& error : survey_.errors) {
    const GridPlace place = grid_.place(error.center);
    const Point center = view_.paper(place.at);
    const double azimuth = error.ellipse.major_azimuth - place.convergence;
    std::vector<Point> ring;
    for (int i = 0; i < corners; ++i) {
      const Point around = towards({0, 0}, 360.0 * i / corners, 1 / view_.metres_per_mm());
      ring.push_back(towards(towards(center, azimuth, -around.y * error.ellipse.semi_major_m),
                             azimuth + 90, around.x * error.ellipse.semi_minor_m));
    }
    picture.area(Role::ellipse, std::move(ring));
  }
}

void Content::draw_symbols(Picture& picture) const {
  // As far as strike lines reach.
  constexpr double halo_radius = 3.3;
  for (std::size_t i = 0; i < measured_.size(); ++i) {
    const Measured& one = measured_[i];
    const Point at = crowd_.symbols[i];
    picture.begin_reading(one.reading->source, one.reading->title, one.reading->repeats);
    if (at != station_points_[one.station]) picture.circle(Role::halo, at, halo_radius);
    draw_symbol(picture, at, one.symbol);
    picture.end();
  }
}

void Content::draw_names(Picture& picture) const {
  for (std::size_t i = 0; i < names_.size(); ++i) {
    const Box& box = crowd_.names[i];
    const double width = std::min(box.width(), room_for(names_[i].role, names_[i].text));
    picture.area(Role::halo, box_around(box.center(), width, box.height() - 0.8).ring());
    // Words stand on their base line, a quarter of their face above its foot.
    const double base = box.most.y - 0.3 - 0.22 * height_of(names_[i].role);
    picture.words(names_[i].role, {box.center().x, base}, names_[i].text, Words::Anchor::middle);
  }
}

void Content::draw(Picture& picture) const {
  picture.begin_clip(Path{{view_.frame.ring()}, true});
  draw_lines(picture);
  draw_errors(picture);
  picture.end();
  for (const Leader& leader : leaders_)
    picture.line(Role::leader, {leader.from, leader.to});
  for (const Point& landmark : landmarks_inside_)
    draw_landmark(picture, landmark);
  for (const Pointer& pointer : pointers_)
    draw_pointer(picture, pointer.tip, pointer.azimuth);
  for (const Point& station : station_points_)
    draw_station(picture, station);
  draw_symbols(picture);
  draw_names(picture);
}

}  // namespace lodebook::drawing
