// SPDX-License-Identifier: MIT
// Logs drawn as a map, and the shapes of its readings read back.
#pragma once

#include <lodebook/drawing/map.hpp>
#include <lodebook/drawing/svg.hpp>
#include <lodebook/reduction/fixes.hpp>

#include <catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace lodebook::test {

using drawing::Circle;
using drawing::Path;
using drawing::Picture;
using drawing::Point;
using drawing::Role;
using drawing::Shape;
using drawing::Words;

/// A heading that says all of its compass.
inline const std::string on_the_map = "set 0\ndeclination 0\nrule right\n";

inline drawing::Map map_of(const std::vector<std::string>& logs,
                           const reduction::Selection& selection = {}) {
  drawing::Map map(selection);
  for (const std::string& log : logs) {
    const notebook::Notebook notebook = notebook::read_log(notebook::Source("day.log", log));
    reduction::Options options;
    options.repeats = reduction::Repeats::mean;
    options.all_places = true;
    reduction::Reduction reduction(notebook, options);
    map.begin_log(reduction);
    reduction::Page page;
    while (reduction.next(page))
      map.page(notebook.source, page);
  }
  return map;
}

struct Mapped {
  Picture picture;
  std::vector<std::string> remarks;
};

inline Mapped mapped(const std::vector<std::string>& logs,
                     const reduction::Selection& selection = {}) {
  const drawing::Map map = map_of(logs, selection);
  return {map.picture(), map.remarks()};
}

inline Mapped mapped(const std::string& readings) {
  return mapped(std::vector<std::string>{on_the_map + readings});
}

/// A reading on the map, and what shows it.
struct Drawn {
  drawing::BeginReading reading;
  std::vector<Shape> shapes;

  /// Lines and areas of a role.
  std::vector<std::vector<Point>> paths(Role role) const {
    std::vector<std::vector<Point>> found;
    for (const Shape& shape : shapes) {
      const auto* const path = std::get_if<Path>(&shape.form);
      if (path != nullptr && shape.role == role) found.push_back(path->parts.front());
    }
    return found;
  }
  std::size_t circles(Role role) const {
    std::size_t count = 0;
    for (const Shape& shape : shapes)
      count += std::holds_alternative<Circle>(shape.form) && shape.role == role ? 1U : 0U;
    return count;
  }
  std::string words() const {
    for (const Shape& shape : shapes) {
      if (const auto* const words = std::get_if<Words>(&shape.form)) return words->text;
    }
    return {};
  }
};

inline std::vector<Drawn> drawn(const Picture& picture) {
  std::vector<Drawn> readings;
  bool inside = false;
  for (const Picture::Item& item : picture.items()) {
    if (const auto* const reading = std::get_if<drawing::BeginReading>(&item)) {
      readings.push_back({*reading, {}});
      inside = true;
    } else if (std::holds_alternative<drawing::End>(item)) {
      inside = false;
    } else if (const auto* const shape = std::get_if<Shape>(&item); shape != nullptr && inside) {
      readings.back().shapes.push_back(*shape);
    }
  }
  return readings;
}

inline std::vector<Shape> shapes_of(const Picture& picture, Role role) {
  std::vector<Shape> found;
  for (const Picture::Item& item : picture.items()) {
    const auto* const shape = std::get_if<Shape>(&item);
    if (shape != nullptr && shape->role == role) found.push_back(*shape);
  }
  return found;
}

inline std::vector<Words> words_of(const Picture& picture, Role role) {
  std::vector<Words> found;
  for (const Shape& shape : shapes_of(picture, role)) {
    if (const auto* const words = std::get_if<Words>(&shape.form)) found.push_back(*words);
  }
  return found;
}

/// All words of the picture, a line each.
inline std::string text_of(const Picture& picture) {
  std::string text;
  for (const Role role : {Role::title, Role::label, Role::figure}) {
    for (const Words& words : words_of(picture, role))
      text += words.text + '\n';
  }
  return text;
}

inline bool says(const std::string& text, std::string_view part) {
  return text.find(part) != text.npos;
}

/// The corners of the map's frame: upper left and lower right.
struct Frame {
  Point least;
  Point most;
  bool holds(Point at) const {
    return at.x >= least.x && at.x <= most.x && at.y >= least.y && at.y <= most.y;
  }
};
inline Frame frame_of(const Picture& picture) {
  const std::vector<Shape> frames = shapes_of(picture, Role::frame);
  REQUIRE(frames.size() == 1);
  const auto& ring = std::get<Path>(frames.front().form).parts.front();
  return {ring[0], ring[2]};
}

/// 1 in so many.
inline double scale_of(const Picture& picture) {
  for (const Words& words : words_of(picture, Role::title)) {
    if (words.text.starts_with("1:")) return std::stod(words.text.substr(2));
  }
  FAIL("no scale");
  return 0;
}

inline double distance(Point a, Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}
/// Degrees clockwise from the top.
inline double azimuth(Point from, Point to) {
  return std::atan2(to.x - from.x, from.y - to.y) * 180 / std::numbers::pi;
}
/// How far two directions are apart, degrees.
inline double apart(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

/// Where stations are marked within the frame.
inline std::vector<Point> dots(const Picture& picture) {
  const Frame frame = frame_of(picture);
  std::vector<Point> found;
  for (const Shape& shape : shapes_of(picture, Role::solid)) {
    const auto* const circle = std::get_if<Circle>(&shape.form);
    if (circle != nullptr && circle->radius == 0.5 && frame.holds(circle->center))
      found.push_back(circle->center);
  }
  return found;
}

/// The middle of each symbol, by its strike line.
inline std::vector<Point> middles(const Picture& picture) {
  std::vector<Point> found;
  for (const Drawn& one : drawn(picture)) {
    const auto line = one.paths(Role::symbol).front();
    found.push_back(0.5 * (line[0] + line[1]));
  }
  return found;
}

/// Everything is finite, and within the paper unless it is clipped.
inline void check_on_paper(const Picture& picture) {
  const Frame paper = {{0, 0}, {picture.width(), picture.height()}};
  CHECK(std::isfinite(picture.width() + picture.height()));
  std::size_t outside = 0;
  std::size_t infinite = 0;
  int groups_in_clip = 0;
  const auto check = [&](Point point) {
    infinite += std::isfinite(point.x) && std::isfinite(point.y) ? 0U : 1U;
    outside += groups_in_clip > 0 || paper.holds(point) ? 0U : 1U;
  };
  for (const Picture::Item& item : picture.items()) {
    if (std::holds_alternative<drawing::BeginClip>(item) ||
        (groups_in_clip > 0 && std::holds_alternative<drawing::BeginReading>(item)))
      ++groups_in_clip;
    if (groups_in_clip > 0 && std::holds_alternative<drawing::End>(item)) --groups_in_clip;
    const auto* const shape = std::get_if<Shape>(&item);
    if (shape == nullptr) continue;
    if (const auto* const path = std::get_if<Path>(&shape->form)) {
      for (const auto& part : path->parts)
        std::ranges::for_each(part, check);
    } else if (const auto* const circle = std::get_if<Circle>(&shape->form)) {
      check(circle->center);
    } else {
      check(std::get<Words>(shape->form).at);
    }
  }
  CHECK(infinite == 0);
  CHECK(outside == 0);
}

}  // namespace lodebook::test
