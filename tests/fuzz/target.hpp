// SPDX-License-Identifier: MIT
// One target: what is done with any bytes at all, and what must hold of it.
#pragma once

#include <string>
#include <string_view>

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::fuzz {

/// Does with `input` what the target is for. Ends the program with a message where anything that
/// must hold does not. Each target defines it once.
void try_input(std::string_view input);

/// Ends the program, saying `what`, unless it `holds`.
void require(bool holds, std::string_view what);
/// Ends the program with the fault, unless it is empty.
void require_none(std::string_view fault);

/// A log and how it is reduced. The last byte of an input chooses among the options and the
/// encodings; a newline, and so any ordinary log, chooses what the program does without options.
struct Choice {
  std::string text;
  reduction::Options options;
  /// The last byte, freed of the newline's bits: for what only one target chooses.
  unsigned bits = 0;
};
Choice choice_of(std::string_view input);

// ---- what holds of every output

/// Valid UTF-8 without control characters, but for tabs and ends of lines, and without marks that
/// turn the writing direction: nothing that does something to a terminal.
void require_printable(std::string_view text, std::string_view what);

/// The cells of CSV (RFC 4180) without their quotes, row by row from the header on; every row has
/// as many as that.
std::vector<std::vector<std::string>> cells_of_csv(std::string_view text);
/// No cell begins as a formula and is not a number.
void require_no_formula(const std::vector<std::vector<std::string>>& rows);

/// XML: elements that end in turn, attributes in quotes and each once, known entities, and no
/// character that XML has no place for. Figures of attributes are numbers.
void require_well_formed(std::string_view text);

}  // namespace lodebook::fuzz
