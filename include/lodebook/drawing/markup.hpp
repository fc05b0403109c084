// SPDX-License-Identifier: MIT
// Elements, attributes and text of SVG and HTML: the only place that writes a tag.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace lodebook::drawing {

/// Appends elements to a text, each well-formed as XML and as HTML. Whatever stands in attributes
/// and text is escaped, so that no name or remark of a log can become an element; bytes that are
/// not UTF-8, control characters, and marks that turn the writing direction or have no width become
/// U+FFFD, and a tab a space.
class Markup {
 public:
  struct Attribute {
    std::string_view name;
    std::string_view value;
  };
  using Attributes = std::initializer_list<Attribute>;

  explicit Markup(std::string& out) : out_(out) {}

  /// Begins an element; `close` ends the one begun last.
  void open(std::string_view name, Attributes attributes = {});
  void close();
  /// An element that holds nothing: of SVG, or one of HTML that never has an end, such as `meta`.
  void empty(std::string_view name, Attributes attributes = {});
  /// An element that holds text alone.
  void element(std::string_view name, Attributes attributes, std::string_view words);
  void element(std::string_view name, std::string_view words) { element(name, {}, words); }
  void text(std::string_view words);
  /// Our own style sheets and scripts, and what already is markup.
  void verbatim(std::string_view markup) { out_ += markup; }
  void line_break() { out_.push_back('\n'); }

 private:
  void tag(std::string_view tag, Attributes attributes);

  std::string& out_;
  std::vector<std::string> open_;
};

}  // namespace lodebook::drawing
