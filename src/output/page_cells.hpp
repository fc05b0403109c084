// SPDX-License-Identifier: MIT
// Cells that the rows of a page share: where their station is, and when it was. A place is a page,
// or another station where a reading of it was made.
#pragma once

#include <lodebook/output/pen.hpp>
#include <lodebook/output/text.hpp>
#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

template <class Place>
void append_latitude(Pen& out, const Place& place) {
  if (place.position) append_figure_of(out, place.position->position.latitude, 7);
}

template <class Place>
void append_longitude(Pen& out, const Place& place) {
  if (place.position) append_figure_of(out, place.position->position.longitude, 7);
}

template <class Place>
void append_elevation(Pen& out, const Place& place) {
  append_figure_of(out, place.elevation_m, 1);
}

template <class Place>
void append_position_from(Pen& out, const Place& place) {
  if (place.position) out += reduction::name_of(place.position_from);
}

template <class Place>
void append_accuracy(Pen& out, const Place& place) {
  if (place.position) append_figure_of(out, place.position->accuracy_m, 1);
}

inline void append_date(Pen& out, const std::optional<notebook::Date>& date) {
  if (date) out += notebook::iso_date(*date);
}

inline void append_clock(Pen& out, const reduction::Page& page) {
  if (page.time) out += clock_text(*page.time);
}

}  // namespace lodebook::output
