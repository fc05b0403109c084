// SPDX-License-Identifier: MIT
// The page of each diagnostic: what it means, an example that provokes it, the remedy.
#pragma once

#include <optional>
#include <span>

#include <lodebook/notebook/diagnostic.hpp>

namespace lodebook::notebook {

/// What `lodebook explain` prints about one diagnostic.
struct CodePage {
  Code code;
  std::string_view name;
  /// The severity it usually has.
  Severity severity;
  /// One line: what is wrong.
  std::string_view title;
  /// A paragraph or two in plain words: why it matters and what the program did.
  std::string_view meaning;
  /// A small log, as typed, that causes the diagnostic. The tests run every example.
  std::string_view example;
  /// What to type or do instead.
  std::string_view remedy;
};

/// All pages, in the order of Code.
std::span<const CodePage> catalogue();

/// The page for a kebab-case name such as `quadrant-angle`, ignoring case; null if no code has this
/// name.
const CodePage* page_named(std::string_view name);

}  // namespace lodebook::notebook
