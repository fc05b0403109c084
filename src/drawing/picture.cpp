// SPDX-License-Identifier: MIT
#include <lodebook/drawing/picture.hpp>

#include <algorithm>
#include <lodebook/orientation/angle.hpp>
#include <utility>

namespace lodebook::drawing {
namespace {

Path moved(Path path, Point offset) {
  for (std::vector<Point>& part : path.parts) {
    for (Point& point : part)
      point = point + offset;
  }
  return path;
}

Circle moved(Circle circle, Point offset) {
  return {circle.center + offset, circle.radius};
}

Words moved(Words words, Point offset) {
  words.at = words.at + offset;
  return words;
}

}  // namespace

Point towards(Point from, double azimuth, double distance) {
  const Angle angle = *Angle::from_degrees(azimuth);
  return {from.x + distance * sin(angle), from.y - distance * cos(angle)};
}

Picture::Picture(std::string name, std::string title, std::string description, double width,
                 double height)
    : name_(std::move(name)),
      title_(std::move(title)),
      description_(std::move(description)),
      width_(width),
      height_(height) {}

void Picture::line(Role role, std::vector<Point> points, std::optional<Series> series) {
  items_.emplace_back(Shape{Path{{std::move(points)}, false}, role, series, {}});
}

void Picture::area(Role role, std::vector<Point> ring, std::optional<Series> series) {
  items_.emplace_back(Shape{Path{{std::move(ring)}, true}, role, series, {}});
}

void Picture::area(Role role, std::vector<std::vector<Point>> rings, std::optional<Series> series) {
  items_.emplace_back(Shape{Path{std::move(rings), true}, role, series, {}});
}

void Picture::contour(std::size_t level, std::vector<std::vector<Point>> rings) {
  items_.emplace_back(Shape{Path{std::move(rings), true}, Role::contour, {}, level});
}

void Picture::circle(Role role, Point center, double radius, std::optional<Series> series) {
  items_.emplace_back(Shape{Circle{center, radius}, role, series, {}});
}

void Picture::words(Role role, Point at, std::string text, Words::Anchor anchor, double turn) {
  items_.emplace_back(Shape{Words{at, std::move(text), anchor, turn}, role, {}, {}});
}

void Picture::begin_reading(std::string source, std::string title, std::string repeats) {
  items_.emplace_back(BeginReading{std::move(source), std::move(title), std::move(repeats)});
}

void Picture::begin_clip(Circle outline) {
  items_.emplace_back(BeginClip{outline});
}

void Picture::begin_clip(Path outline) {
  items_.emplace_back(BeginClip{std::move(outline)});
}

void Picture::end() {
  items_.emplace_back(End());
}

void Picture::place(const Picture& other, Point offset) {
  for (const Item& item : other.items_) {
    if (const auto* const shape = std::get_if<Shape>(&item)) {
      Shape placed = *shape;
      std::visit([&](auto& form) { form = moved(std::move(form), offset); }, placed.form);
      items_.emplace_back(std::move(placed));
    } else if (const auto* const clip = std::get_if<BeginClip>(&item)) {
      BeginClip placed = *clip;
      std::visit([&](auto& outline) { outline = moved(std::move(outline), offset); },
                 placed.outline);
      items_.emplace_back(std::move(placed));
    } else {
      items_.push_back(item);
    }
  }
}

void Picture::resize(double width, double height) {
  width_ = width;
  height_ = height;
}

double height_of(Role role) {
  switch (role) {
    case Role::title:
      return 4;
    case Role::label:
      return 2.8;
    default:
      return 2.2;
  }
}

double width_of(Role role, std::string_view text) {
  // The mean width of a letter of a sans serif face; bytes that go on a code point do not count.
  constexpr double share = 0.56;
  const auto letters = std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
  return share * height_of(role) * static_cast<double>(letters);
}

}  // namespace lodebook::drawing
