// SPDX-License-Identifier: MIT
// A document of several logs, each written by a copy of its writer.
#pragma once

#include <string>
#include <vector>

namespace lodebook::test {

/// Puts a document together the way the program does; `write_one` writes one log by the copy.
template <class Writer, class Log, class WriteOne>
std::string joined(Writer writer, const std::vector<Log>& logs, WriteOne write_one) {
  const Writer blank = writer;
  std::string out;
  if constexpr (requires { writer.begin(out); }) writer.begin(out);
  bool has_text = false;
  for (const Log& log : logs) {
    Writer one = blank;
    std::string text;
    write_one(one, text, log);
    if constexpr (requires { writer.between; }) {
      if (has_text && !text.empty()) out += writer.between;
    }
    has_text = has_text || !text.empty();
    out += text;
    if constexpr (requires { writer.add(one); }) writer.add(one);
  }
  if constexpr (requires { writer.end(out); }) writer.end(out);
  return out;
}

}  // namespace lodebook::test
