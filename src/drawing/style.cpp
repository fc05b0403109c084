// SPDX-License-Identifier: MIT
#include <lodebook/drawing/style.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace lodebook::drawing {
namespace {

/// Colours that rules refer to by name, on light paper and on a dark screen.
struct Color {
  std::string_view light;
  std::string_view dark;
  std::string_view on(Paper paper) const { return paper == Paper::light ? light : dark; }
};
constexpr Color paper_color = {"#fffefa", "#17191c"};
constexpr Color ink = {"#20242a", "#e6e4dd"};
constexpr Color faint = {"#a9adb1", "#5b6167"};
constexpr Color middling = {"#6b7178", "#a2a7ab"};
constexpr Color warm = {"#a33b12", "#f08a5d"};

// From dark to light, their hues alternating between blue and orange: lightness (CIE L*) about 27,
// 42, 53, 63 and 38 on paper.
constexpr std::array<Color, 5> series_colors = {{
    {"#16437e", "#8db8f0"},
    {"#a3470a", "#f0a05e"},
    {"#2e8b7a", "#6fd3bf"},
    {"#b58a14", "#e6cb6b"},
    {"#8a2f6b", "#e08cc4"},
}};
constexpr std::array<Color, 6> contour_colors = {{
    {"#f1eee4", "#23272c"},
    {"#e2ddcd", "#30363d"},
    {"#cfc8b3", "#3f474f"},
    {"#b7ae95", "#505a64"},
    {"#9b9176", "#64707b"},
    {"#7d745b", "#7b8894"},
}};

/// How one role looks. Colours are those of its series where it has one.
struct Look {
  std::string_view name;
  const Color* stroke = nullptr;
  double width = 0;
  const Color* fill = nullptr;
  std::string_view extra = {};
};
constexpr std::array<Look, role_count> looks = {{
    {"frame", &ink, 0.35},
    {"grid", &faint, 0.12},
    {"tick", &ink, 0.25},
    {"curve", &ink, 0.22},
    {"mark", &paper_color, 0.18, &ink},
    {"mean", &ink, 0.6},
    {"cone", &ink, 0.3, nullptr, "stroke-dasharray:1.2 .7"},
    {"sector", nullptr, 0, &ink, "fill-opacity:.16"},
    {"girdle", &ink, 0.45, nullptr, "stroke-dasharray:3 1"},
    {"contour", &middling, 0.15, nullptr, "fill-rule:evenodd"},
    {"petal", &ink, 0.2, nullptr, "fill-opacity:.55"},
    {"symbol", &ink, 0.4},
    {"solid", &ink, 0.2, &ink},
    {"hollow", &ink, 0.3, &paper_color},
    {"halo", nullptr, 0, &paper_color, "fill-opacity:.8"},
    {"leader", &middling, 0.15},
    {"ray", &middling, 0.15, nullptr, "stroke-dasharray:.4 1"},
    {"leg", &ink, 0.25, nullptr, "stroke-dasharray:2 .8"},
    {"raw", &warm, 0.2, nullptr, "stroke-dasharray:.5 .7"},
    {"ellipse", &warm, 0.3},
    {"error", &warm, 0.25, &warm, "fill-opacity:.3"},
    {"title", nullptr, 0, &ink, "font-weight:bold"},
    {"label", nullptr, 0, &ink},
    {"figure", nullptr, 0, &ink},
}};

/// Of curves: dashes and gaps, millimetres.
constexpr std::array<std::string_view, series_colors.size()> patterns = {"none", "1.6 .5", ".4 .5",
                                                                         "2.6 .5 .4 .5", ".9 .9"};

/// Which form or pattern a series has; the next round through the colours begins with another.
std::size_t place_of(Series series) {
  return (series + series / series_colors.size()) % series_colors.size();
}

bool is_words(Role role) {
  return role == Role::title || role == Role::label || role == Role::figure;
}

}  // namespace

std::string_view class_of(Role role) {
  return looks[static_cast<std::size_t>(role)].name;
}

std::string class_of_series(Series series) {
  return fmt::format("s{}", series % series_colors.size());
}

std::string class_of_pattern(Series series) {
  return fmt::format("p{}", place_of(series));
}

std::string class_of_level(std::size_t level) {
  return fmt::format("c{}", std::min(level, contour_colors.size() - 1));
}

void append_style_sheet(std::string& out, Paper paper, std::string_view scope) {
  const auto to = std::back_inserter(out);
  const auto color = [paper](const Color* which) {
    return which == nullptr ? std::string_view("none") : which->on(paper);
  };
  fmt::format_to(to, "{}text{{font-family:'DejaVu Sans',Verdana,Arial,sans-serif}}\n", scope);
  fmt::format_to(to, "{}.paper{{fill:{}}}\n", scope, color(&paper_color));
  for (std::size_t i = 0; i < looks.size(); ++i) {
    const Look& look = looks[i];
    fmt::format_to(to, "{}.{}{{fill:{};stroke:{}", scope, look.name, color(look.fill),
                   color(look.stroke));
    if (is_words(static_cast<Role>(i))) {
      fmt::format_to(to, ";font-size:{}px", height_of(static_cast<Role>(i)));
    } else {
      fmt::format_to(to, ";stroke-width:{};stroke-linejoin:round", look.width);
    }
    if (!look.extra.empty()) fmt::format_to(to, ";{}", look.extra);
    out += "}\n";
  }
  for (std::size_t i = 0; i < series_colors.size(); ++i) {
    const std::string_view shade = series_colors[i].on(paper);
    fmt::format_to(to, "{0}.curve.s{1},{0}.mean.s{1},{0}.cone.s{1},{0}.girdle.s{1}{{stroke:{2}}}\n",
                   scope, i, shade);
    fmt::format_to(to, "{0}.mark.s{1},{0}.petal.s{1},{0}.sector.s{1}{{fill:{2}}}\n", scope, i,
                   shade);
  }
  for (std::size_t i = 0; i < patterns.size(); ++i)
    fmt::format_to(to, "{}.curve.p{}{{stroke-dasharray:{}}}\n", scope, i, patterns[i]);
  for (std::size_t i = 0; i < contour_colors.size(); ++i)
    fmt::format_to(to, "{}.contour.c{}{{fill:{}}}\n", scope, i, contour_colors[i].on(paper));
}

std::vector<Point> symbol_of(Series series, Point center, double radius) {
  struct Form {
    int corners;
    double first;  ///< azimuth of the first corner
    double share;  ///< of the radius, so that all forms look equally large
  };
  constexpr std::array<Form, series_colors.size()> forms = {
      {{24, 0, 1}, {4, 45, 1.2}, {3, 0, 1.35}, {4, 0, 1.3}, {3, 180, 1.35}}};
  const Form& form = forms[place_of(series)];
  std::vector<Point> ring;
  ring.reserve(static_cast<std::size_t>(form.corners));
  for (int i = 0; i < form.corners; ++i)
    ring.push_back(towards(center, form.first + 360.0 * i / form.corners, form.share * radius));
  return ring;
}

}  // namespace lodebook::drawing
