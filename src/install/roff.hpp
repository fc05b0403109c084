// SPDX-License-Identifier: MIT
// The text of a manual page (mdoc), a block at a time.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace lodebook::install {

/// Text with `code` and **bold** and links in the manner of Markdown, as running text of a page: in
/// ASCII, with marks that roff would take for its own escaped, in lines of at most 80 columns.
std::string prose(std::string_view text);

/// The same on one line, as one argument of a macro.
std::string argument(std::string_view text);

/// Blocks one after the other, with room between them where mdoc makes none.
class Blocks {
 public:
  void section(std::string_view title);
  void paragraph(std::string_view text);
  /// Lines to be shown as they are.
  void literal(std::span<const std::string_view> lines);

  enum class List { tagged, bullets };
  void begin_list(List list);
  /// An item's head, ready for roff; empty in a list of bullets.
  void item(std::string_view head = {});
  /// A separate line within a paragraph.
  void next_line(std::string_view text);
  void end_list();

  const std::string& text() const { return text_; }

 private:
  std::string text_;
  /// What comes next stands at the start of a section or item, and needs no room before it.
  bool at_start_ = true;
};

}  // namespace lodebook::install
