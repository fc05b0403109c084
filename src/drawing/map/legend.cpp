// SPDX-License-Identifier: MIT
#include <algorithm>
#include <functional>
#include <lodebook/output/notation.hpp>
#include <set>

#include "../paragraph.hpp"
#include "margin.hpp"
#include "places.hpp"

namespace lodebook::drawing {
namespace {

using notebook::Facing;
using notebook::Sense;

struct Entry {
  std::function<void(Picture&, Point)> draw;
  std::string words;
};

/// A short piece of a line of that role.
Entry line_entry(Role role, std::string words) {
  return {[role](Picture& picture, Point at) {
            picture.line(role, {at - Point{4, 0}, at + Point{4, 0}});
          },
          std::move(words)};
}

/// Words without a symbol: an addition to the others.
Entry word_entry(std::string sign, std::string words) {
  return {[sign = std::move(sign)](Picture& picture, Point at) {
            picture.words(Role::figure, at + Point{0, 0.8}, sign, Words::Anchor::middle);
          },
          std::move(words)};
}

Entry symbol_entry(MapSymbol symbol, std::string words) {
  return {[symbol = std::move(symbol)](Picture& picture, Point at) {
            draw_symbol(picture, at - Point{0, figure_of(symbol).empty() ? 0.0 : 1.2}, symbol);
          },
          std::move(words)};
}

class Legend {
 public:
  Legend(Picture& picture, double y, double width) : picture_(picture), y_(y), width_(width) {}

  void group(const std::string& title, const std::vector<Entry>& entries) {
    if (entries.empty()) return;
    picture_.words(Role::label, {0, y_ + 3.2}, title);
    y_ += 4.6;
    const auto columns = static_cast<std::size_t>(width_ / column_mm);
    const std::size_t rows = (entries.size() + columns - 1) / columns;
    for (std::size_t i = 0; i < entries.size(); ++i) {
      const std::size_t column = i / rows;
      const Point corner = {static_cast<double>(column) * width_ / static_cast<double>(columns),
                            y_ + static_cast<double>(i % rows) * row_mm};
      entries[i].draw(picture_, corner + Point{icon_mm / 2, row_mm / 2});
      draw_words(corner + Point{icon_mm + 1, row_mm / 2 + 0.8}, entries[i].words);
    }
    y_ += static_cast<double>(rows) * row_mm + 1;
  }

  double y() const { return y_; }

 private:
  /// In one line or two.
  void draw_words(Point at, const std::string& words) {
    constexpr double most_mm = column_mm - icon_mm - 2;
    constexpr double half_step = 1.3;
    const std::vector<std::string> lines = lines_of(words, Role::figure, most_mm);
    if (lines.size() < 2) {
      picture_.words(Role::figure, at, words);
      return;
    }
    picture_.words(Role::figure, at - Point{0, half_step}, lines.front());
    const std::string rest = words.substr(words.find(lines[1], lines.front().size()));
    picture_.words(Role::figure, at + Point{0, half_step}, shortened(rest, Role::figure, most_mm));
  }

  static constexpr double column_mm = 43;
  static constexpr double icon_mm = 10;
  static constexpr double row_mm = 6.4;

  Picture& picture_;
  double y_;
  double width_;
};

/// The additions to symbols on this map.
std::vector<Entry> additions(const Survey& survey) {
  std::set<Sense> shown;
  std::set<Sense> lettered;
  bool upright = false;
  bool unknown = false;
  for (const Survey::Measured& one : survey.measured) {
    const MapSymbol& symbol = one.symbol;
    upright = upright || (symbol.is_plane && symbol.facing == Facing::upright &&
                          form_of(symbol) == Form::inclined);
    unknown = unknown || symbol.facing == Facing::unknown;
    if (symbol.sense == Sense::unstated) continue;
    (shows_sense(symbol) ? shown : lettered).insert(symbol.sense);
  }
  std::vector<Entry> entries;
  MapSymbol fault{"fault", true, 90, 60, Facing::unstated, Sense::normal, false};
  if (shown.contains(Sense::normal) || shown.contains(Sense::reverse))
    entries.push_back(symbol_entry(fault, "ball: downthrown side"));
  fault.sense = Sense::dextral;
  if (shown.contains(Sense::dextral)) entries.push_back(symbol_entry(fault, "dextral"));
  fault.sense = Sense::sinistral;
  if (shown.contains(Sense::sinistral)) entries.push_back(symbol_entry(fault, "sinistral"));
  for (const Sense sense : lettered) {
    std::string words = "movement:";
    output::append_sense(words, sense);
    entries.push_back(word_entry("34" + std::string(letter_of(sense)), std::move(words)));
  }
  const MapSymbol bedding{"bedding", true, 90, 30, Facing::upright, Sense::unstated, false};
  if (upright) entries.push_back(symbol_entry(bedding, "dot: known to be upright"));
  if (unknown) entries.push_back(word_entry("30?", "facing not known"));
  if (std::ranges::any_of(survey.measured, [](const auto& one) { return one.symbol.suspect; }))
    entries.push_back(word_entry("(30)", "suspect reading"));
  return entries;
}

std::vector<Entry> places_and_lines(const Margin& margin) {
  const Survey& survey = margin.survey;
  std::vector<Entry> entries;
  entries.push_back({[](Picture& picture, Point at) { draw_station(picture, at); }, "station"});
  if (margin.has_landmarks_inside)
    entries.push_back({[](Picture& picture, Point at) { draw_landmark(picture, at); }, "landmark"});
  if (margin.has_landmarks_outside)
    entries.push_back(
        {[](Picture& picture, Point at) { draw_pointer(picture, at, 90); }, "landmark outside"});
  if (margin.has_leaders) entries.push_back(line_entry(Role::leader, "line to its place"));
  if (!survey.sights.empty()) entries.push_back(line_entry(Role::ray, "sight"));
  if (!survey.open_sights.empty()) {
    entries.push_back({[](Picture& picture, Point at) {
                         draw_open_sight(picture, at - Point{4, 0}, 90);
                       },
                       "sight on an unknown point"});
  }
  if (!survey.legs.empty()) entries.push_back(line_entry(Role::leg, "leg, adjusted"));
  if (!survey.raw_traverses.empty())
    entries.push_back(line_entry(Role::raw_leg, "traverse as measured"));
  if (!survey.errors.empty()) {
    entries.push_back({[](Picture& picture, Point at) {
                         std::vector<Point> ring;
                         for (int i = 0; i < 36; ++i) {
                           const Point around = towards({0, 0}, i * 10, 1);
                           ring.push_back(at + Point{4 * around.x, 2 * around.y});
                         }
                         picture.area(Role::ellipse, std::move(ring));
                       },
                       "95 % error ellipse"});
  }
  if (!survey.triangles.empty()) {
    entries.push_back({[](Picture& picture, Point at) {
                         picture.area(Role::triangle,
                                      {at + Point{-3, 1.6}, at + Point{3, 1}, at + Point{0.5, -2}});
                       },
                       "triangle of error"});
  }
  return entries;
}

}  // namespace

double draw_legend(Picture& picture, const Margin& margin, double y, double width) {
  std::set<SymbolMeaning> meanings;
  for (const Survey::Measured& one : margin.survey.measured)
    meanings.insert(meaning_of(one.symbol));
  std::vector<Entry> standard;
  std::vector<Entry> own;
  for (const SymbolMeaning& meaning : meanings)
    (meaning.is_standard ? standard : own).push_back(symbol_entry(meaning.example, meaning.words));
  for (Entry& entry : additions(margin.survey))
    own.push_back(std::move(entry));
  Legend legend(picture, y, width);
  legend.group("Symbols after FGDC-STD-013-2006", standard);
  legend.group("Our own symbols", own);
  legend.group("Places and lines", places_and_lines(margin));
  return legend.y();
}

}  // namespace lodebook::drawing
