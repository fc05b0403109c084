// SPDX-License-Identifier: MIT
#include "drawn.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <lodebook/earth/geodesic.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <numbers>
#include <vector>

namespace lodebook::output {
namespace {

using earth::Position;

constexpr double longest_step_m = 5000;
constexpr int most_steps = 200;
constexpr int corners = 72;
constexpr double least_semi_axis_m = 0.05;

/// In units of the last decimal. The longitude runs on beyond 180 degrees, so that neighbours are
/// neighbours.
struct Vertex {
  std::int64_t longitude = 0;
  std::int64_t latitude = 0;

  friend bool operator==(const Vertex&, const Vertex&) = default;
};
using Path = std::vector<Vertex>;

constexpr int decimals = 7;
constexpr std::int64_t half_turn = 1'800'000'000;
constexpr std::int64_t full_turn = 2 * half_turn;

/// The vertex of `position` at that of its longitudes which is nearest to `beside`.
Vertex vertex_of(const Position& position, std::int64_t beside) {
  Vertex vertex{rounded(position.longitude, decimals), rounded(position.latitude, decimals)};
  while (vertex.longitude - beside > half_turn)
    vertex.longitude -= full_turn;
  while (vertex.longitude - beside < -half_turn)
    vertex.longitude += full_turn;
  return vertex;
}

/// Where the line between two vertices meets a meridian between them.
Vertex crossing(const Vertex& a, const Vertex& b, std::int64_t meridian) {
  const double share =
      static_cast<double>(meridian - a.longitude) / static_cast<double>(b.longitude - a.longitude);
  return {meridian,
          a.latitude + std::llround(share * static_cast<double>(b.latitude - a.latitude))};
}

/// The parts of a path on the two sides of a meridian, those to its west first.
struct Sides {
  std::vector<Path> west;
  std::vector<Path> east;
};

Sides cut_line(const Path& path, std::int64_t meridian) {
  Sides sides;
  const auto on_east = [&](const Vertex& v) { return v.longitude > meridian; };
  Path part = {path.front()};
  // A line that starts on the meridian belongs to the side to which it leaves.
  const auto leaving =
      std::ranges::find_if(path, [&](const Vertex& v) { return v.longitude != meridian; });
  bool east = leaving != path.end() && on_east(*leaving);
  const auto close = [&] { (east ? sides.east : sides.west).push_back(std::move(part)); };
  for (std::size_t i = 1; i < path.size(); ++i) {
    const Vertex& next = path[i];
    if (next.longitude != meridian && on_east(next) != east) {
      const Vertex cut = crossing(path[i - 1], next, meridian);
      if (part.back() != cut) part.push_back(cut);
      close();
      part = {cut};
      east = !east;
    }
    part.push_back(next);
  }
  close();
  return sides;
}

/// The part of a convex ring on one side of a meridian.
Path clip_ring(const Path& ring, std::int64_t meridian, bool east) {
  const auto is_inside = [&](const Vertex& v) {
    return east ? v.longitude >= meridian : v.longitude <= meridian;
  };
  Path clipped;
  const auto add = [&](const Vertex& v) {
    if (clipped.empty() || clipped.back() != v) clipped.push_back(v);
  };
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
    if (is_inside(ring[i])) add(ring[i]);
    if (is_inside(ring[i]) != is_inside(ring[i + 1])) add(crossing(ring[i], ring[i + 1], meridian));
  }
  if (!clipped.empty() && clipped.front() != clipped.back()) clipped.push_back(clipped.front());
  return clipped;
}

/// The meridian of 180 degrees that a path crosses, if it does.
std::optional<std::int64_t> crossed(const Path& path) {
  const auto [least, most] = std::ranges::minmax(path, {}, &Vertex::longitude);
  if (most.longitude > half_turn) return half_turn;
  if (least.longitude < -half_turn) return -half_turn;
  return std::nullopt;
}

void shift(std::vector<Path>& paths, std::int64_t by) {
  for (Path& path : paths) {
    for (Vertex& vertex : path)
      vertex.longitude += by;
  }
}

/// Moves both sides of the cut to longitudes within 180 degrees and puts them together.
std::vector<Path> joined(Sides sides, std::int64_t meridian) {
  if (meridian > 0) {
    shift(sides.east, -full_turn);
  } else {
    shift(sides.west, full_turn);
  }
  std::vector<Path> all = std::move(sides.west);
  all.insert(all.end(), sides.east.begin(), sides.east.end());
  return all;
}

void append_path(std::string& out, const Path& path) {
  char before = '[';
  for (const Vertex& vertex : path) {
    out.push_back(before);
    out.push_back('[');
    append_figure(out, vertex.longitude, decimals);
    out.push_back(',');
    append_figure(out, vertex.latitude, decimals);
    out.push_back(']');
    before = ',';
  }
  out.push_back(']');
}

/// `open` and `close` stand around each path.
void append_geometry(std::string& out, std::string_view type, const std::vector<Path>& paths,
                     std::string_view open, std::string_view close) {
  const bool several = paths.size() > 1;
  out += "{\"type\":\"";
  if (several) out += "Multi";
  out += type;
  out += "\",\"coordinates\":";
  if (several) out.push_back('[');
  bool first = true;
  for (const Path& path : paths) {
    if (!first) out.push_back(',');
    first = false;
    out += open;
    append_path(out, path);
    out += close;
  }
  if (several) out.push_back(']');
  out.push_back('}');
}

}  // namespace

std::string point_geometry(const std::optional<Position>& position) {
  if (!position) return "null";
  std::string out = "{\"type\":\"Point\",\"coordinates\":[";
  append_figure(out, rounded(position->longitude, decimals), decimals);
  out.push_back(',');
  append_figure(out, rounded(position->latitude, decimals), decimals);
  out += "]}";
  return out;
}

void append_line(std::string& out, const Position& from, const Position& to) {
  const earth::GeodesicLine line = earth::geodesic(from, to);
  const int steps = static_cast<int>(
      std::clamp(std::ceil(line.distance_m / longest_step_m), 1.0, double{most_steps}));
  Path path = {vertex_of(from, 0)};
  for (int i = 1; i <= steps; ++i) {
    const Position next =
        i == steps ? to : earth::travelled(from, line.azimuth, line.distance_m * i / steps);
    path.push_back(vertex_of(next, path.back().longitude));
  }
  std::vector<Path> parts = {path};
  if (const auto meridian = crossed(path)) parts = joined(cut_line(path, *meridian), *meridian);
  append_geometry(out, "LineString", parts, "", "");
}

void append_ellipse(std::string& out, const Position& center,
                    const reduction::ErrorEllipse& ellipse) {
  const double major = std::max(ellipse.semi_major_m, least_semi_axis_m);
  const double minor = std::max(ellipse.semi_minor_m, least_semi_axis_m);
  const Vertex middle = vertex_of(center, 0);
  Path ring;
  for (int i = 0; i < corners; ++i) {
    const double turned = 2 * std::numbers::pi * i / corners;
    const double along = major * std::cos(turned);
    const double aside = minor * std::sin(turned);
    const double azimuth =
        ellipse.major_azimuth - std::atan2(aside, along) * 180 / std::numbers::pi;
    const Vertex corner =
        vertex_of(earth::travelled(center, azimuth, std::hypot(along, aside)), middle.longitude);
    if (ring.empty() || ring.back() != corner) ring.push_back(corner);
  }
  ring.push_back(ring.front());
  const auto apart = [](const Vertex& a, const Vertex& b) {
    return std::abs(a.longitude - b.longitude) > half_turn;
  };
  if (std::ranges::adjacent_find(ring, apart) != ring.end()) {
    out += "null";
    return;
  }
  std::vector<Path> parts = {ring};
  if (const auto meridian = crossed(ring)) {
    parts = joined({{clip_ring(ring, *meridian, false)}, {clip_ring(ring, *meridian, true)}},
                   *meridian);
  }
  append_geometry(out, "Polygon", parts, "[", "]");
}

}  // namespace lodebook::output
