// SPDX-License-Identifier: MIT
// What the report says of settings and stations, in words, for every output that a person reads.
#pragma once

#include <lodebook/output/notation.hpp>
#include <lodebook/reduction/page.hpp>
#include <string>
#include <string_view>

namespace lodebook::output {

/// `H1`, `station without a name`, `before the first station`
std::string_view page_name(const reduction::Page& page);

/// `dial set to 0 (log), declination 24.6E ±0.4 (log), so 24.6 is added to every bearing`
void append_compass(std::string& out, const reduction::Settings& settings, reduction::North wanted);

/// `right-hand rule (log)`
void append_rule(std::string& out, const reduction::Settings& settings);

/// Whether bearings refer to the north that was asked for.
bool has_wanted_north(const reduction::Settings& settings, reduction::North wanted);
/// `output refers to true north`; a warning in capitals where it is not the north asked for.
void append_north(std::string& out, const reduction::Settings& settings, reduction::North wanted);

/// The correction belongs to the station: by the model's declination, or by the grid's north.
bool varies_by_station(const reduction::Settings& settings, reduction::North wanted);

/// `24.6 is added to every bearing`; to those from a north of their own, if it is named.
void append_what_is_added(std::string& out, double degrees, std::string_view north = {});

/// `44.84250S 169.24130E given ±6 m, elevation 1186 m`; `no position`
void append_position(std::string& out, const reduction::Page& page);

/// What changes from station to station: the model's declination, and the grid's north. Nothing
/// where all stations share their correction.
void append_site(std::string& out, const reduction::Settings& settings, reduction::North wanted);

/// Names the command that makes a log of a page, where `source` is one; otherwise empty.
std::string advice_on_page(const notebook::Source& source, const reduction::Counts& counts);

/// `8 ok, 1 suspect`; `no readings`
void append_counts(std::string& out, const reduction::Counts& counts);

/// `3 bedding within 1.0°, mean N66W 30NE, cone 1.5°`, the mean in `notation`; the limit where the
/// check failed.
void append_check(std::string& out, const reduction::Check& check, ShownIn shown_in);

}  // namespace lodebook::output
