// SPDX-License-Identifier: MIT
// The page of each diagnostic: what it means, an example that provokes it, the remedy.
#pragma once

#include <optional>
#include <span>

#include <lodebook/notebook/diagnostic.hpp>

namespace lodebook::notebook {

/// What `lodebook explain` prints of one code.
struct CodePage {
  Code code;
  std::string_view name;
  /// The severity it usually has.
  Severity severity;
  /// One line: what is at fault.
  std::string_view title;
  /// A paragraph or two in plain words: why it matters and what the program did.
  std::string_view meaning;
  /// A small log that provokes it, as typed; tests run every one.
  std::string_view example;
  /// What to type or do instead.
  std::string_view remedy;
};

/// All pages, in the order of Code.
std::span<const CodePage> catalogue();

/// The page of a kebab-case name in any case, or nothing.
const CodePage* page_named(std::string_view name);

}  // namespace lodebook::notebook
