// SPDX-License-Identifier: MIT
// What a picture holds, found by role.
#pragma once

#include <catch.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <lodebook/drawing/picture.hpp>

namespace lodebook::test {

/// The shapes of one role that have one form, in the order in which they are drawn.
template <class Form>
std::vector<Form> drawn(const drawing::Picture& picture, drawing::Role role) {
  std::vector<Form> forms;
  for (const drawing::Picture::Item& item : picture.items()) {
    const auto* const shape = std::get_if<drawing::Shape>(&item);
    if (shape == nullptr || shape->role != role) continue;
    if (const auto* const form = std::get_if<Form>(&shape->form)) forms.push_back(*form);
  }
  return forms;
}

/// Every word of a picture, a line for each.
inline std::string words_of(const drawing::Picture& picture) {
  std::string words;
  for (const drawing::Picture::Item& item : picture.items()) {
    const auto* const shape = std::get_if<drawing::Shape>(&item);
    if (shape == nullptr) continue;
    if (const auto* const form = std::get_if<drawing::Words>(&shape->form))
      words += form->text + '\n';
  }
  return words;
}

inline bool contains(const std::string& text, std::string_view part) {
  return text.find(part) != text.npos;
}

inline double distance(drawing::Point a, drawing::Point b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

inline drawing::Point middle_of(const std::vector<drawing::Point>& points) {
  drawing::Point sum;
  for (const drawing::Point& point : points)
    sum = sum + point;
  return 1 / static_cast<double>(points.size()) * sum;
}

/// Whether a point is inside an odd number of rings.
inline bool is_inside(const std::vector<std::vector<drawing::Point>>& rings, drawing::Point point) {
  bool inside = false;
  for (const auto& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const drawing::Point a = ring[i];
      const drawing::Point b = ring[(i + 1) % ring.size()];
      if ((a.y > point.y) != (b.y > point.y) &&
          point.x < a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x))
        inside = !inside;
    }
  }
  return inside;
}

/// The area within a ring, positive where it runs clockwise on paper.
inline double area_of(const std::vector<drawing::Point>& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const drawing::Point a = ring[i];
    const drawing::Point b = ring[(i + 1) % ring.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

/// Whether every begun reading and clip ends, and none is inside out.
inline bool is_balanced(const drawing::Picture& picture) {
  int open = 0;
  for (const drawing::Picture::Item& item : picture.items()) {
    if (std::holds_alternative<drawing::BeginReading>(item) ||
        std::holds_alternative<drawing::BeginClip>(item))
      ++open;
    if (std::holds_alternative<drawing::End>(item) && --open < 0) return false;
  }
  return open == 0;
}

/// Whether all figures are numbers and all shapes, clipped ones aside, lie on the paper.
inline bool is_on_paper(const drawing::Picture& picture) {
  const auto is_in = [&](drawing::Point p) {
    return p.x >= 0 && p.x <= picture.width() && p.y >= 0 && p.y <= picture.height();
  };
  int clips = 0;
  std::vector<bool> begun;
  for (const drawing::Picture::Item& item : picture.items()) {
    if (std::holds_alternative<drawing::End>(item)) {
      clips -= begun.back() ? 1 : 0;
      begun.pop_back();
    } else if (!std::holds_alternative<drawing::Shape>(item)) {
      begun.push_back(std::holds_alternative<drawing::BeginClip>(item));
      clips += begun.back() ? 1 : 0;
    }
    const auto* const shape = std::get_if<drawing::Shape>(&item);
    if (shape == nullptr || clips > 0) continue;
    if (const auto* const path = std::get_if<drawing::Path>(&shape->form)) {
      for (const auto& part : path->parts) {
        if (!std::ranges::all_of(part, is_in)) return false;
      }
    } else if (const auto* const circle = std::get_if<drawing::Circle>(&shape->form)) {
      const drawing::Point reach = {circle->radius, circle->radius};
      if (!is_in(circle->center - reach) || !is_in(circle->center + reach)) return false;
    } else if (const auto* const words = std::get_if<drawing::Words>(&shape->form)) {
      const double width = width_of(shape->role, words->text);
      const double before = words->anchor == drawing::Words::Anchor::start    ? 0
                            : words->anchor == drawing::Words::Anchor::middle ? width / 2
                                                                              : width;
      if (!is_in(words->at - drawing::Point{before, 0}) ||
          !is_in(words->at + drawing::Point{width - before, 0}))
        return false;
    }
  }
  return true;
}

}  // namespace lodebook::test
