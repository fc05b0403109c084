// SPDX-License-Identifier: MIT
// Cells that every row of a page shares: where its station is, and when it was.
#pragma once

#include <lodebook/output/pen.hpp>
#include <lodebook/output/text.hpp>
#include <lodebook/reduction/page.hpp>

namespace lodebook::output {

inline void append_latitude(Pen& out, const reduction::Page& page) {
  if (page.position) append_figure_of(out, page.position->position.latitude, 7);
}

inline void append_longitude(Pen& out, const reduction::Page& page) {
  if (page.position) append_figure_of(out, page.position->position.longitude, 7);
}

inline void append_elevation(Pen& out, const reduction::Page& page) {
  append_figure_of(out, page.elevation_m, 1);
}

inline void append_position_from(Pen& out, const reduction::Page& page) {
  if (page.position) out += reduction::name_of(page.position_from);
}

inline void append_accuracy(Pen& out, const reduction::Page& page) {
  if (page.position) append_figure_of(out, page.position->accuracy_m, 1);
}

inline void append_date(Pen& out, const std::optional<notebook::Date>& date) {
  if (date) out += notebook::iso_date(*date);
}

inline void append_clock(Pen& out, const reduction::Page& page) {
  if (page.time) out += clock_text(*page.time);
}

}  // namespace lodebook::output
