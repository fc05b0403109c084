// SPDX-License-Identifier: MIT
// The small structures that the two JSON documents share.
#pragma once

#include <lodebook/output/pen.hpp>
#include <lodebook/output/second_look.hpp>
#include <lodebook/output/text.hpp>
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

Json json_of(const reduction::Check& check);

/// Appends the value; what a terminal would obey is escaped.
template <class Text>
void append_json(Text& out, const Json& value) {
  out += safe_json(value.dump());
}

/// Appends `"name":`; the name is our own.
template <class Text>
void append_name(Text& out, std::string_view name) {
  out.push_back('"');
  out += name;
  out += "\":";
}
/// Appends `"name":` and the value, then a comma.
template <class Text>
void append_member(Text& out, std::string_view name, const Json& value) {
  append_name(out, name);
  append_json(out, value);
  out.push_back(',');
}

// ---- the same without a Json between, for what every station has

void append_string(Pen& out, std::string_view text);
/// null where it is empty.
void append_text(Pen& out, std::string_view name, std::string_view text);
void append_number(Pen& out, std::string_view name, const std::optional<double>& value,
                   int decimals);
void append_flag(Pen& out, std::string_view name, bool flag);
void append_count(Pen& out, std::string_view name, std::size_t count);
void append_time(Pen& out, std::string_view name, const std::optional<notebook::Time>& time);
void append_position(Pen& out, std::string_view name,
                     const std::optional<notebook::GivenPosition>& position,
                     std::string_view origin);
void append_settings(Pen& out, std::string_view name, const reduction::Settings& settings,
                     reduction::North wanted);
void append_counts(Pen& out, std::string_view name, const reduction::Counts& counts);
/// `append_element(out, element)` appends one element and a comma.
template <class Elements, class AppendElement>
void append_array(Pen& out, std::string_view name, const Elements& elements,
                  AppendElement append_element) {
  append_name(out, name);
  out.push_back('[');
  for (const auto& element : elements)
    append_element(out, element);
  if (!elements.empty()) out.pop_back();
  out += "],";
}
/// An object, and no comma.
void append_object(Pen& out, const notebook::Source& source,
                   const notebook::Diagnostic& diagnostic);
void append_checks(Pen& out, std::string_view name, const std::vector<reduction::Check>& checks);

}  // namespace lodebook::output
