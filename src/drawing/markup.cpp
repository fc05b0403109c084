// SPDX-License-Identifier: MIT
#include <lodebook/drawing/markup.hpp>

#include <algorithm>
#include <lodebook/output/text.hpp>

namespace lodebook::drawing {
namespace {

/// XML has no place for these two either.
void replace_noncharacters(std::string& text) {
  for (const std::string_view noncharacter : {"\xEF\xBF\xBE", "\xEF\xBF\xBF"}) {
    for (auto at = text.find(noncharacter); at != std::string_view::npos;
         at = text.find(noncharacter, at))
      text.replace(at, noncharacter.size(), "\xEF\xBF\xBD");
  }
}

void append_escaped(std::string& out, std::string_view text) {
  std::string spaced(text);
  std::ranges::replace(spaced, '\t', ' ');
  std::string shown = output::printable(spaced);
  replace_noncharacters(shown);
  for (const char c : shown) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      default:
        out.push_back(c);
    }
  }
}

}  // namespace

void Markup::tag(std::string_view tag, Attributes attributes) {
  out_.push_back('<');
  out_ += tag;
  for (const Attribute& attribute : attributes) {
    out_.push_back(' ');
    out_ += attribute.name;
    out_ += "=\"";
    append_escaped(out_, attribute.value);
    out_.push_back('"');
  }
}

void Markup::open(std::string_view name, Attributes attributes) {
  tag(name, attributes);
  out_.push_back('>');
  open_.emplace_back(name);
}

void Markup::close() {
  out_ += "</";
  out_ += open_.back();
  out_.push_back('>');
  open_.pop_back();
}

void Markup::empty(std::string_view name, Attributes attributes) {
  tag(name, attributes);
  out_ += "/>";
}

void Markup::element(std::string_view name, Attributes attributes, std::string_view words) {
  open(name, attributes);
  text(words);
  close();
}

void Markup::text(std::string_view words) {
  append_escaped(out_, words);
}

}  // namespace lodebook::drawing
