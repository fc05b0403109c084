// SPDX-License-Identifier: MIT
#include "margin.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/output/text.hpp>

#include "../paragraph.hpp"

namespace lodebook::drawing {
namespace {

using output::counted;
using output::figure_text;

constexpr double gap = 2;

/// `1.3° east`; `0.0°`.
std::string side_words(double degrees_east) {
  const double degrees = std::remainder(degrees_east, 360.0);
  const std::string figure = figure_text(std::abs(degrees), 1);
  return figure + (figure == "0.0" ? "°" : degrees > 0 ? "° east" : "° west");
}

/// `1.3° east of true north`; nothing between them is `in line with true north`.
std::string lies(double degrees_east, std::string_view of) {
  const std::string words = side_words(degrees_east);
  return (words == side_words(0) ? "in line with " : words + " of ") + std::string(of);
}

std::vector<std::string> north_words(const Margin& margin) {
  std::vector<std::string> words = {"Grid north lies " + lies(margin.convergence, "true north") +
                                    ": the convergence at the middle of the map."};
  const auto& magnetic = margin.survey.magnetic;
  if (!magnetic) {
    words.emplace_back("Magnetic north is not drawn: no declination is known as a figure.");
    return words;
  }
  words.push_back("Magnetic north lies " + lies(magnetic->declination, "true north") + " and " +
                  lies(magnetic->declination - margin.convergence, "grid north") +
                  ": the declination at " + magnetic->station + ", " + magnetic->origin + ".");
  // Less than this is not seen in the figures above.
  constexpr double seen = 0.05;
  if (magnetic->most - magnetic->least > seen) {
    words.push_back("Over the stations the declination runs from " + side_words(magnetic->least) +
                    " to " + side_words(magnetic->most) +
                    "; each reading is corrected by its own.");
  }
  return words;
}

/// Norths at the left, scale and words at the right; returns where they end.
double draw_orientation(Picture& picture, const Margin& margin, double y, double width) {
  std::optional<double> declination;
  if (margin.survey.magnetic) declination = margin.survey.magnetic->declination;
  const double norths_end =
      draw_norths(picture, {norths_radius, y + norths_radius}, margin.convergence, declination);
  const double left = 2 * norths_radius + 2 * gap;
  const bool has_ratio = margin.size == MapSize::own;
  double bar = left + 2;
  if (has_ratio) {
    const std::string words = scale_words(margin.scale);
    picture.words(Role::title, {left, y + 6}, words);
    bar = left + std::max(32.0, 1.3 * width_of(Role::title, words));
  }
  draw_scale_bar(picture, {bar, y + 4.6}, margin.scale);
  double end = y + 10;
  end += draw_paragraph(picture, Role::figure, {left, end},
                        "The grid is in metres: " + margin.grid.name() +
                            ". Grid north is up the sheet. " +
                            (has_ratio ? "The scale holds for the sheet at its own size."
                                       : "Measure by the bar: the map is fitted to the page."),
                        width - left);
  for (const std::string& sentence : north_words(margin))
    end += draw_paragraph(picture, Role::figure, {left, end}, sentence, width - left);
  return std::max(end, norths_end) + gap;
}

double draw_closures(Picture& picture, const Survey& survey, double y, double width) {
  // More are counted, not told.
  constexpr std::size_t most_told = 14;
  if (survey.closures.empty()) return y;
  std::string text = "Traverses: ";
  for (std::size_t i = 0; i < std::min(survey.closures.size(), most_told); ++i)
    text += (i == 0 ? "" : "; ") + survey.closures[i];
  if (survey.closures.size() > most_told)
    text += "; and " + counted(survey.closures.size() - most_told, "more", "more");
  return y + draw_paragraph(picture, Role::figure, {0, y}, text + '.', width) + gap;
}

std::string counts_words(const Survey& survey) {
  std::string text = counted(survey.readings, "reading", "readings") + ": " +
                     counted(survey.measured.size(), "symbol", "symbols");
  const std::size_t sights = survey.sights.size() + survey.open_sights.size();
  if (sights != 0) text += ", " + counted(sights, "sight", "sights");
  if (!survey.legs.empty()) text += ", " + counted(survey.legs.size(), "leg", "legs");
  text += " drawn.";
  for (std::size_t i = 0; i < survey.kinds.size(); ++i)
    text += (i == 0 ? " Only these kinds: " : ", ") + survey.kinds[i];
  if (!survey.kinds.empty()) text += '.';
  if (!survey.measured.empty())
    text += " One symbol for each surface or line, the mean of its repeats.";
  if (survey.suspect != 0)
    text += " Suspect: " + counted(survey.suspect, "reading", "readings") + '.';
  if (survey.left_out != 0)
    text += " Left out as suspect: " + counted(survey.left_out, "reading", "readings") + '.';
  return text;
}

}  // namespace

double draw_footer(Picture& picture, const Survey& survey, double y, double width) {
  const auto add = [&](const std::string& text) {
    y += draw_paragraph(picture, Role::figure, {0, y}, text, width);
  };
  add(counts_words(survey));
  if (!survey.measured.empty()) {
    add("Strikes and trends are corrected to true north and turned to the grid by the convergence "
        "at their place.");
  }
  for (const std::string& remark : survey.remarks())
    add("Not drawn: " + remark + '.');
  y += 1;
  add("Caution: a position is as good as the sights, legs or receiver behind it. This sheet does "
      "not replace knowledge of the ground, a published map or a licensed survey; do not use it "
      "to find your way over steep or dangerous ground.");
  return y;
}

Picture margin_picture(const Margin& margin, double width) {
  Picture picture("margin", "", "", width, 0);
  double y = draw_orientation(picture, margin, 0, width);
  y = draw_legend(picture, margin, y, width) + gap;
  y = draw_closures(picture, margin.survey, y, width);
  y = draw_footer(picture, margin.survey, y, width);
  picture.resize(width, y);
  return picture;
}

}  // namespace lodebook::drawing
