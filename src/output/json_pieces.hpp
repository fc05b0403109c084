// SPDX-License-Identifier: MIT
// The small structures that the two JSON documents share.
#pragma once

#include <lodebook/output/second_look.hpp>
#include <lodebook/reduction/reduction.hpp>
#include <nlohmann/json.hpp>

namespace lodebook::output {

using Json = nlohmann::ordered_json;

/// A number rounded as the table rounds it; null where it is missing.
Json figure(const std::optional<double>& value, int decimals);
/// An azimuth with two decimals, wrapped after rounding into [0, 360); of an axis into [0, 180).
Json azimuth_figure(double degrees);
Json axis_figure(double degrees);
/// Text as valid UTF-8; null where it is empty.
Json text_or_null(std::string_view text);
Json texts(const std::vector<std::string_view>& values);

Json json_of(const reduction::Settings& settings, reduction::North wanted);
Json json_of(const std::optional<notebook::GivenPosition>& position);
Json json_of(const std::optional<notebook::Time>& time);
Json json_of(const std::vector<reduction::Check>& checks);
Json json_of(const notebook::Diagnostic& diagnostic);
Json json_of(const reduction::Counts& counts);

/// Appends the value; what a terminal would obey is escaped (append_json_text).
void append_json(std::string& out, const Json& value);
/// Appends `"name":` and the value, then a comma.
void append_member(std::string& out, std::string_view name, const Json& value);

}  // namespace lodebook::output
