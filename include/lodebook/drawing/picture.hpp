// SPDX-License-Identifier: MIT
// A picture: shapes on paper, in millimetres.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace lodebook::drawing {

/// Millimetres from the left and from the top of the paper.
struct Point {
  double x = 0;
  double y = 0;

  friend constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Point operator*(double factor, Point a) { return {factor * a.x, factor * a.y}; }
  friend constexpr bool operator==(Point, Point) = default;
};

/// The point `distance` away from `from` towards `azimuth`, degrees clockwise from the top.
Point towards(Point from, double azimuth, double distance);

/// What a shape is. How it looks is the style sheet's business (style.hpp).
enum class Role : std::uint8_t {
  frame,     ///< the border of a picture
  grid,      ///< lines to measure by
  tick,      ///< a short mark on a border or rim
  curve,     ///< a plane as a great circle; the pattern of its series
  mark,      ///< a pole or line as a filled symbol
  mean,      ///< a mean, larger than its readings
  cone,      ///< the cone of a mean's confidence
  sector,    ///< the same of a mean azimuth
  girdle,    ///< a best great circle
  contour,   ///< a line of equal density, filled; darker with each level
  petal,     ///< a bin of a rose
  symbol,    ///< the lines of a map symbol
  solid,     ///< its filled parts
  hollow,    ///< its open parts, on paper
  halo,      ///< paper under words and symbols, which hides lines that cross them
  leader,    ///< a thin line to a symbol that was moved aside, or around a stray
  ray,       ///< a line of sight
  leg,       ///< a leg of a traverse, adjusted
  raw_leg,   ///< the same as measured
  ellipse,   ///< of a position's error
  triangle,  ///< of error, where three sights cross
  title,     ///< words: the picture's name
  label,     ///< words beside a shape
  figure,    ///< small words: figures of symbols, grid lines and footers
};
inline constexpr std::size_t role_count = static_cast<std::size_t>(Role::figure) + 1;

/// Which of several groups a shape belongs to: it decides the colour and, of symbols, the form.
/// Larger numbers begin again at 0 with another form or pattern.
using Series = std::size_t;

/// Lines from point to point; several where one shape has parts or holes.
struct Path {
  std::vector<std::vector<Point>> parts;
  bool closed = false;
};
struct Circle {
  Point center;
  double radius = 0;
};
/// Words around or from a point; `turn` in degrees clockwise about it.
struct Words {
  enum class Anchor : std::uint8_t { start, middle, end };
  Point at;
  std::string text;
  Anchor anchor = Anchor::start;
  double turn = 0;
};
/// One thing to look at.
struct Shape {
  std::variant<Path, Circle, Words> form;
  Role role = Role::frame;
  std::optional<Series> series;
  /// Of a contour: its level from 0.
  std::optional<std::size_t> level;
};
/// What follows, up to its `End`, shows one reading: `source` as in the table, `title` in words.
struct BeginReading {
  std::string source;
  std::string title;
  /// Of a mean: where its other repeats stand in the same log, `18:23 18:33`.
  std::string repeats = {};
};
/// What follows, up to its `End`, is cut off at an outline.
struct BeginClip {
  std::variant<Circle, Path> outline;
};
struct End {};

/// Items in the order in which they are drawn. A picture is plain values: nothing is rounded.
class Picture {
 public:
  /// `name` is one word, unlike that of other pictures on the same page; `title` and `description`
  /// are read to those who do not see it. The size may still grow: see `resize`.
  Picture(std::string name, std::string title, std::string description, double width,
          double height);

  void line(Role role, std::vector<Point> points, std::optional<Series> series = {});
  void area(Role role, std::vector<Point> ring, std::optional<Series> series = {});
  void area(Role role, std::vector<std::vector<Point>> rings, std::optional<Series> series = {});
  void contour(std::size_t level, std::vector<std::vector<Point>> rings);
  void circle(Role role, Point center, double radius, std::optional<Series> series = {});
  void words(Role role, Point at, std::string text, Words::Anchor anchor = Words::Anchor::start,
             double turn = 0);
  void begin_reading(std::string source, std::string title, std::string repeats = {});
  void begin_clip(Circle outline);
  void begin_clip(Path outline);
  void end();
  /// Appends the items of another picture, moved by `offset`.
  void place(const Picture& other, Point offset);
  void resize(double width, double height);
  void describe(std::string description) { description_ = std::move(description); }

  using Item = std::variant<Shape, BeginReading, BeginClip, End>;
  const std::vector<Item>& items() const { return items_; }
  const std::string& name() const { return name_; }
  const std::string& title() const { return title_; }
  const std::string& description() const { return description_; }
  double width() const { return width_; }
  double height() const { return height_; }

 private:
  std::string name_;
  std::string title_;
  std::string description_;
  double width_;
  double height_;
  std::vector<Item> items_;
};

/// How high words of a role stand, millimetres, and about how wide a text of that role is.
double height_of(Role role);
double width_of(Role role, std::string_view text);

}  // namespace lodebook::drawing
