// SPDX-License-Identifier: MIT
// `lodebook explain`: what a diagnostic means.
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <lodebook/cli/commands.hpp>
#include <lodebook/notebook/catalogue.hpp>

namespace lodebook::cli {
namespace {

constexpr std::size_t width = 78;

/// Appends `text` with lines of at most `width` columns, broken at spaces; its own line ends stay.
void append_wrapped(std::string& out, std::string_view text) {
  std::size_t column = 0;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    const std::string_view word = text.substr(0, end);
    const std::size_t columns = notebook::count_columns(word);
    if (column > 0 && column + 1 + columns > width) {
      out += '\n';
      column = 0;
    }
    if (column > 0 && !word.empty()) {
      out += ' ';
      ++column;
    }
    out += word;
    column += columns;
    if (end < text.size() && text[end] == '\n') {
      out += '\n';
      column = 0;
    }
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  out += '\n';
}

/// Appends a line of an example that is safe for a screen: control bytes become U+FFFD, and a line
/// that is there for its length is cut.
void append_shown(std::string& out, std::string_view line) {
  const bool cut = line.size() > 4 * width;
  for (const char c : notebook::valid_utf8(cut ? line.substr(0, width / 2) : line)) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7F) {
      out += "\uFFFD";
    } else {
      out += c;
    }
  }
  if (cut) fmt::format_to(std::back_inserter(out), "... ({} bytes)", line.size());
}

void append_indented(std::string& out, std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    if (end > 0) out += "    ";
    append_shown(out, text.substr(0, end));
    out += '\n';
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

std::string page_of(const notebook::CodePage& page) {
  std::string out;
  append_wrapped(
      out, fmt::format("{} ({}): {}", page.name, notebook::name_of(page.severity), page.title));
  out += '\n';
  append_wrapped(out, page.meaning);
  out += "\nExample:\n\n";
  append_indented(out, page.example);
  out += '\n';
  append_wrapped(out, fmt::format("Remedy: {}", page.remedy));
  return out;
}

std::string list() {
  std::size_t longest = 0;
  for (const notebook::CodePage& page : notebook::catalogue())
    longest = std::max(longest, page.name.size());
  std::string out;
  for (const notebook::CodePage& page : notebook::catalogue()) {
    fmt::format_to(std::back_inserter(out), "{:{}}  {:7}  {}\n", page.name, longest,
                   notebook::name_of(page.severity), page.title);
  }
  return out;
}

}  // namespace

Outcome explain(const CommandLine& line) {
  if (line.words.empty()) return print(list());
  if (line.words.size() > 1) return refused(words_too_many(Command::explain, line.words[1]));
  const notebook::CodePage* const page = notebook::page_named(line.words.front());
  return page == nullptr ? refused(code_unknown(line.words.front())) : print(page_of(*page));
}

}  // namespace lodebook::cli
