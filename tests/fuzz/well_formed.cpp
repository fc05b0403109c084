// SPDX-License-Identifier: MIT
// A reader of XML that forgives nothing, of as much of it as drawings and pages use.
#include <algorithm>
#include <iterator>
#include <set>

#include <lodebook/notebook/source.hpp>

#include "target.hpp"

namespace lodebook::fuzz {
namespace {

constexpr std::string_view name_characters =
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-:_";

/// Attributes that hold figures, or figures between letters.
constexpr std::string_view figures[] = {"d", "x",     "y",      "cx",      "cy",
                                        "r", "width", "height", "viewBox", "transform"};

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  void read() {
    if (take("<?xml")) skip_past("?>");
    skip_spaces();
    if (take("<!DOCTYPE")) skip_past(">");
    skip_spaces();
    while (at_ < text_.size()) {
      if (open_.empty() && elements_ > 0) {
        skip_spaces();
        require(at_ == text_.size(), "text behind the last element");
      } else if (take("</")) {
        require(!open_.empty() && name() == open_.back(), "an element ended out of turn");
        open_.pop_back();
        require(take(">"), "an end tag that does not end");
      } else if (take("<")) {
        element();
      } else {
        require(!open_.empty(), "text outside all elements");
        character('<');
      }
    }
    require(open_.empty() && elements_ > 0, "an element that does not end");
  }

 private:
  bool take(std::string_view what) {
    if (!text_.substr(at_).starts_with(what)) return false;
    at_ += what.size();
    return true;
  }
  void skip_spaces() {
    while (take(" ") || take("\n")) {
    }
  }
  void skip_past(std::string_view end) {
    const std::size_t found = text_.find(end, at_);
    require(found != text_.npos, "a declaration that does not end");
    at_ = found + end.size();
  }
  std::string_view name() {
    const std::size_t end = std::min(text_.find_first_not_of(name_characters, at_), text_.size());
    require(end > at_, "a tag or attribute without a name");
    const std::string_view name = text_.substr(at_, end - at_);
    at_ = end;
    return name;
  }

  void element() {
    ++elements_;
    const std::string_view tag = name();
    std::set<std::string_view> known;
    while (take(" ")) {
      const std::string_view attribute = name();
      require(known.insert(attribute).second, "an attribute that stands twice");
      require(!attribute.starts_with("on"), "an attribute that runs");
      require(take("=\""), "an attribute without quotes");
      const std::size_t start = at_;
      while (!take("\"")) {
        require(at_ < text_.size() && text_[at_] != '<', "an attribute that does not end");
        character('"');
      }
      require_value(attribute, text_.substr(start, at_ - start - 1));
    }
    if (take("/>")) return;
    require(take(">"), "a tag that does not end");
    open_.push_back(tag);
  }

  static void require_value(std::string_view attribute, std::string_view value) {
    if (std::ranges::find(figures, attribute) != std::end(figures)) {
      require(value.find("nan") == value.npos && value.find("inf") == value.npos,
              "a figure that is no number");
    }
    if (attribute == "href" || attribute == "src" || attribute == "xlink:href")
      require(value.starts_with('#'), "a reference to elsewhere");
  }

  /// One character of text, or one entity.
  void character(char end) {
    if (take("&")) {
      require(take("amp;") || take("lt;") || take("gt;") || take("quot;"), "an unknown entity");
      return;
    }
    const char c = text_[at_];
    require(c != end && (static_cast<unsigned char>(c) >= 0x20 || c == '\n'),
            "a character that XML has no place for");
    const std::size_t length = notebook::utf8_length(text_.substr(at_));
    require(length > 0, "bytes that are not UTF-8");
    const std::string_view whole = text_.substr(at_, length);
    require(whole != "\xEF\xBF\xBE" && whole != "\xEF\xBF\xBF", "a noncharacter");
    at_ += length;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t elements_ = 0;
  std::vector<std::string_view> open_;
};

}  // namespace

void require_well_formed(std::string_view text) {
  Reader(text).read();
}

}  // namespace lodebook::fuzz
