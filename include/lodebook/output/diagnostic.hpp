// SPDX-License-Identifier: MIT
// Diagnostics as text: place, message, the line as typed, a caret, advice.
#pragma once

#include <lodebook/notebook/diagnostic.hpp>

namespace lodebook::output {

/// Appends one diagnostic, several lines of text. Control characters in the user's text are shown
/// as U+FFFD so that no escape sequence reaches a terminal; a long line is cut around the fault.
void append_diagnostic(std::string& out, const notebook::Source& source,
                       const notebook::Diagnostic& diagnostic, bool color);

/// Appends one diagnostic on one line, `file:line:column: severity: message [code]`, which is what
/// an editor's list of errors wants; its advice and the places that it relates to are left out. The
/// file has the name by which it was opened, so that the editor finds it: an absolute path stays
/// one.
void append_diagnostic_line(std::string& out, const notebook::Source& source,
                            const notebook::Diagnostic& diagnostic);

/// The line of a place can be shown.
bool has_line(const notebook::Source& source, const notebook::Place& place);
/// `line 7`, or `line 7 of dial.txt` where that is a heading.
std::string words_of_line(const notebook::Source& source, const notebook::Place& place);

/// What is shown of a line around a fault; `fault` is empty where something is missing at the end.
/// Of a long line some is cut off.
struct Excerpt {
  std::string_view before;
  std::string_view fault;
  std::string_view after;
  bool is_cut_before = false;
  bool is_cut_after = false;
};
Excerpt excerpt(std::string_view line, const notebook::Place& place);

/// A control character of ASCII or Latin 1, or a mark that turns the writing direction or has no
/// width; also a byte that is not UTF-8. `character` is one code point or such a byte.
bool is_hidden(std::string_view character);

/// `text` as valid UTF-8, with what is_hidden shown as U+FFFD.
void append_printable(std::string& out, std::string_view text);

}  // namespace lodebook::output
