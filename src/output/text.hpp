// SPDX-License-Identifier: MIT
// Small pieces of text that several outputs share.
#pragma once

#include <cstddef>
#include <lodebook/earth/position.hpp>
#include <string>
#include <string_view>

namespace lodebook::output {

/// The shortest digits that read back to the same value, without an exponent: `24.6`, `0`, `-3`.
void append_shortest(std::string& out, double value);

/// The same with at least three digits before the point: `007.5`.
void append_shortest_azimuth(std::string& out, double degrees);

/// `44.65020S 169.03140E`, to about a metre.
void append_coordinates(std::string& out, const earth::Position& position);

/// A JSON string with its quotes; bytes that are not UTF-8 become U+FFFD.
void append_json_string(std::string& out, std::string_view text);

}  // namespace lodebook::output
