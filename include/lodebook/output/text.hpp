// SPDX-License-Identifier: MIT
// Small pieces of text that several outputs share. Those that every reading has are appended to a
// string or to a pen.
#pragma once

#include <cstddef>
#include <lodebook/earth/position.hpp>
#include <lodebook/notebook/written.hpp>
#include <lodebook/orientation/decimal.hpp>
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
template <class Text>
void append_figure_of(Text& out, double value, int decimals) {
  append_figure(out, rounded(value, decimals), decimals);
}

/// Nothing where there is no value.
template <class Text>
void append_figure_of(Text& out, const std::optional<double>& value, int decimals) {
  if (value) append_figure_of(out, *value, decimals);
}

using lodebook::figure_text;

/// `007.5`: one decimal, wrapped after rounding.
std::string azimuth_text(double degrees);

/// `09:40`
std::string clock_text(const notebook::Time& time);

/// What append_printable makes of it.
std::string printable(std::string_view text);

/// `1 sight`, `3 sights`.
std::string counted(std::size_t count, std::string_view one, std::string_view many);

/// `text` in quotes for a shell, where it needs them.
std::string shell_quoted(std::string_view text);

/// `text` made printable, bold on a terminal.
void append_bold(std::string& out, std::string_view text, bool color);

/// The same JSON, in which characters that a terminal obeys are written as escapes, such as
/// `\u009b`.
std::string safe_json(std::string_view json);

/// Plain ASCII that stands in a JSON string as it is.
bool is_plain_json(std::string_view text);
/// A JSON string with its quotes; bytes that are not UTF-8 become U+FFFD.
std::string json_string(std::string_view text);

}  // namespace lodebook::output
