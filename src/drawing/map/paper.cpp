// SPDX-License-Identifier: MIT
#include "paper.hpp"

#include <algorithm>
#include <cmath>
#include <lodebook/output/text.hpp>

#include "../paragraph.hpp"
#include "content.hpp"
#include "margin.hpp"

namespace lodebook::drawing {
namespace {

// Millimetres. The usual sheet fits A4 with margins for a printer; the frame is never smaller than
// leaves a map to look at.
constexpr double usual_width = 180;
constexpr double usual_height = 285;
constexpr double least_frame_height = 135;
constexpr double header = 14;
/// Around the whole sheet.
constexpr double inset = 3;
constexpr double beside_left = inset + 5;
constexpr double beside_right = inset;
constexpr double under_frame = 7;

std::string title_of(const Survey& survey) {
  std::string title = survey.area;
  if (title.empty()) title = survey.logs.empty() ? "Map" : survey.logs.front();
  return title;
}

std::string subtitle_of(const Survey& survey) {
  std::string text;
  constexpr std::size_t most_named = 4;
  for (std::size_t i = 0; i < std::min(survey.logs.size(), most_named); ++i)
    text += (i == 0 ? "" : ", ") + survey.logs[i];
  if (survey.logs.size() > most_named)
    text += " and " + output::counted(survey.logs.size() - most_named, "more log", "more logs");
  text += "; " + survey.stations_in_words();
  return text;
}

void draw_header(Picture& picture, const Survey& survey) {
  const double width = picture.width() - 2 * inset;
  picture.words(Role::title, {inset, inset + 3.5}, shortened(title_of(survey), Role::title, width));
  picture.words(Role::figure, {inset, inset + 8},
                shortened(subtitle_of(survey), Role::figure, width));
}

Picture empty_sheet(const Survey& survey) {
  Picture picture("map", title_of(survey), "No station and no landmark has a position.",
                  usual_width, 0);
  draw_header(picture, survey);
  constexpr double width = usual_width - 2 * inset;
  Picture under("words", "", "", width, 0);
  double y =
      draw_paragraph(under, Role::label, {0, 0},
                     "There is nothing to draw: no station and no landmark has a position.", width);
  y = draw_footer(under, survey, y + 2, width);
  picture.place(under, {inset, header});
  picture.resize(usual_width, header + y + inset);
  return picture;
}

}  // namespace

Picture paper_of(const Survey& survey, MapSize size) {
  const std::vector<earth::Position> places = survey.places();
  if (places.empty()) return empty_sheet(survey);

  const MapGrid grid(places);
  Content content(survey, grid);
  View view;
  view.middle = content.extent().middle();
  const double convergence = grid.place(grid.position(view.middle)).convergence;
  Margin margin{survey,
                grid,
                1000,
                size,
                convergence,
                true,
                !survey.landmarks.empty(),
                !survey.landmarks.empty()};

  constexpr double usual_frame_width = usual_width - beside_left - beside_right;
  const double margin_height = margin_picture(margin, usual_width - 2 * inset).height();
  double width = std::max(usual_frame_width, std::sqrt(content.area_mm2()));
  double most_height = std::max({least_frame_height, content.area_mm2() / width,
                                 usual_height - header - under_frame - margin_height - inset});
  do {
    view.scale = scale_for(content.extent(), width, most_height);
    const double needed = content.extent().north_m() / view.metres_per_mm() + 2 * view_margin_mm;
    const double height = std::max({std::min(needed, most_height), least_frame_height,
                                    std::min(most_height, content.area_mm2() / width)});
    view.frame = {{beside_left, header}, {beside_left + width, header + height}};
    // Where there is too little room, the next sheet is larger.
    width *= 1.25;
    most_height *= 1.25;
  } while (!content.arrange(view));

  Picture picture("map", title_of(survey), "", view.frame.most.x + beside_right, 0);
  draw_header(picture, survey);
  draw_grid(picture, view);
  content.draw(picture);
  picture.area(Role::frame, view.frame.ring());
  margin.scale = view.scale;
  margin.has_leaders = content.has_leaders();
  margin.has_landmarks_inside = content.has_landmarks_inside();
  margin.has_landmarks_outside = content.has_landmarks_outside();
  const Picture under = margin_picture(margin, picture.width() - 2 * inset);
  const double y = view.frame.most.y + under_frame;
  picture.place(under, {inset, y});
  picture.resize(picture.width(), y + under.height() + inset);
  const std::string ratio = size == MapSize::own ? ' ' + scale_words(view.scale) : std::string();
  picture.describe("Map" + ratio + ", " + grid.name() + ": " +
                   output::counted(survey.measured.size(), "symbol", "symbols") + "; " +
                   survey.stations_in_words() + '.');
  return picture;
}

}  // namespace lodebook::drawing
