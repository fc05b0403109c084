// SPDX-License-Identifier: MIT
// What a help offers to type, put into the log as a person would, and read again.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "notebook/reading_one.hpp"

namespace lodebook::test {

/// What stands in quotes; a mark of minutes does not end one.
inline std::vector<std::string> quoted(const std::string& help) {
  const auto opens = [&](std::size_t at) { return at == 0 || help[at - 1] == ' '; };
  const auto closes = [&](std::size_t at) {
    return at + 1 == help.size() || std::string(" ,;:?").find(help[at + 1]) != std::string::npos;
  };
  std::vector<std::string> found;
  for (std::size_t at = 0; at < help.size(); ++at) {
    if (help[at] != '\'' || !opens(at)) continue;
    const std::size_t begin = ++at;
    while (at < help.size() && !(help[at] == '\'' && closes(at)))
      ++at;
    found.push_back(help.substr(begin, at - begin));
  }
  return found;
}

inline std::string with_fix(const std::string& text, const notebook::Fix& fix) {
  std::string changed = text;
  return changed.replace(fix.span.offset, fix.span.length, fix.text);
}

inline std::size_t errors_in(const Book& book) {
  return static_cast<std::size_t>(
      std::ranges::count_if(book.diagnostics, [](const notebook::Diagnostic& diagnostic) {
        return diagnostic.severity == notebook::Severity::error;
      }));
}

/// One error less than before, and no reading lost: a comma may make two of what was one.
inline bool mends(const Book& before, const std::string& text) {
  const Book after = read(text);
  return errors_in(after) + 1 == errors_in(before) && after.reading_count >= before.reading_count &&
         after.reading_count <= before.reading_count + 1;
}

/// `line` (a statement) put above the line of the fault.
inline std::string with_above(const Book& book, const notebook::Diagnostic& fault,
                              const std::string& line) {
  std::string text(book.source.text());
  return text.insert(book.source.line(fault.place.line).offset, line + "\n");
}

/// The line of a fault with each of its fixes.
inline std::vector<std::string> lines_with_fixes(const Book& book,
                                                 const notebook::Diagnostic& fault) {
  std::vector<std::string> lines;
  for (const notebook::Fix& fix : fault.fixes) {
    const notebook::Source after("day.txt", with_fix(std::string(book.source.text()), fix));
    lines.emplace_back(after.text(after.line(fault.place.line)));
  }
  return lines;
}

/// The first promise of a fault's help that does not hold; empty where all do.
inline std::string broken_promise(const Book& book, const notebook::Diagnostic& fault) {
  const std::string text(book.source.text());
  const std::vector<std::string> lines = lines_with_fixes(book, fault);
  for (const notebook::Fix& fix : fault.fixes) {
    if (!mends(book, with_fix(text, fix))) return "the fix '" + fix.text + "' is not accepted";
  }
  for (const std::string& typed : quoted(fault.help)) {
    const bool is_fix = std::ranges::any_of(
        lines, [&](const std::string& line) { return line.find(typed) != std::string::npos; });
    if (!is_fix && !mends(book, with_above(book, fault, typed)))
      return "'" + typed + "' is neither a fix nor a setting that helps";
  }
  return {};
}

}  // namespace lodebook::test
