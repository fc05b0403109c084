// SPDX-License-Identifier: MIT
// Small pieces of text that several outputs share.
#pragma once

#include <cstddef>
#include <lodebook/earth/position.hpp>
#include <lodebook/notebook/written.hpp>
#include <optional>
#include <string>
#include <string_view>

namespace lodebook::output {

/// The shortest digits that read back to the same value, without an exponent: `24.6`, `0`, `-3`.
void append_shortest(std::string& out, double value);

/// The same with at least three digits before the point: `007.5`.
void append_shortest_azimuth(std::string& out, double degrees);

/// `44.65020S 169.03140E`, to about a metre.
void append_coordinates(std::string& out, const earth::Position& position);

/// The value rounded to exactly so many decimals: `12.0`.
void append_figure_of(std::string& out, double value, int decimals);

/// Nothing where there is no value.
void append_figure_of(std::string& out, const std::optional<double>& value, int decimals);

std::string figure_text(double value, int decimals);

/// `007.5`: one decimal, wrapped after rounding.
std::string azimuth_text(double degrees);

/// `09:40`
std::string clock_text(const notebook::Time& time);

/// What append_printable makes of it.
std::string printable(std::string_view text);

/// `1 sight`, `3 sights`.
std::string counted(std::size_t count, std::string_view one, std::string_view many);

/// `text` made printable, bold on a terminal.
void append_bold(std::string& out, std::string_view text, bool color);

/// A JSON string with its quotes; bytes that are not UTF-8 become U+FFFD.
void append_json_string(std::string& out, std::string_view text);

/// JSON as it is, but that no string in it holds a character that a terminal obeys: those are
/// written as escapes, `\u009b`.
void append_json_text(std::string& out, std::string_view json);

}  // namespace lodebook::output
