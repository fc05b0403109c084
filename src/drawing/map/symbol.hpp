// SPDX-License-Identifier: MIT
// The map symbols of planes and lines: which form a reading has, how it is drawn, how a legend
// explains it.
#pragma once

#include <lodebook/drawing/picture.hpp>
#include <lodebook/notebook/notebook.hpp>
#include <optional>
#include <string>
#include <tuple>

namespace lodebook::drawing {

/// What a symbol tells of a reading.
struct MapSymbol {
  std::string kind;
  bool is_plane = true;
  /// Strike (dip to the right) or trend, degrees clockwise from the top of the paper; missing where
  /// there is none.
  std::optional<double> azimuth;
  /// Dip or plunge, degrees; negative of an arrow that rises. Missing where it was not read.
  std::optional<double> slope = 0;
  notebook::Facing facing = notebook::Facing::unstated;
  notebook::Sense sense = notebook::Sense::unstated;
  bool suspect = false;
  /// It points somewhere, as a current does, also where it is level.
  bool is_arrow = false;
  /// A line whose two ends are alike.
  bool two_ended = false;
  bool facing_doubtful = false;
};

/// It follows the figure that is printed: a dip of 89.7 is printed as 90 and drawn as vertical.
/// One whose slope was not read is drawn by its direction alone.
enum class Form : std::uint8_t { inclined, vertical, horizontal, overturned, unmeasured };
Form form_of(const MapSymbol& symbol);

/// The sense shows as a ball or as arrows, for which a normal or reverse fault needs a side.
bool shows_sense(const MapSymbol& symbol);
/// Otherwise a letter shows it.
std::string_view letter_of(notebook::Sense sense);

/// The figure beside the symbol: the slope in whole degrees, in brackets where it is suspect, with
/// a letter for a sense that the symbol cannot show and `?` for a facing that is not known or in
/// doubt. Empty where the form says it all.
std::string figure_of(const MapSymbol& symbol);

/// How far the symbol reaches from its place, millimetres.
double radius_of(const MapSymbol& symbol);

/// How near a leader that comes from `azimuth` may come to the symbol's place: it must not cross
/// the figure nor seem to lengthen the symbol's line.
double clearance(const MapSymbol& symbol, double azimuth);

/// Draws it; the first shape of a plane that has a strike is its strike line, from back to front.
void draw_symbol(Picture& picture, Point at, const MapSymbol& symbol);

/// A row of the legend.
struct SymbolMeaning {
  /// Of FGDC-STD-013-2006; otherwise our own.
  bool is_standard = false;
  std::string words;
  /// The symbol as drawn there.
  MapSymbol example;

  /// The standard's first, in the order of their words; a plane before a line of the same name.
  friend bool operator<(const SymbolMeaning& a, const SymbolMeaning& b) {
    return std::tie(b.is_standard, a.words, b.example.is_plane) <
           std::tie(a.is_standard, b.words, a.example.is_plane);
  }
};
SymbolMeaning meaning_of(const MapSymbol& symbol);

}  // namespace lodebook::drawing
