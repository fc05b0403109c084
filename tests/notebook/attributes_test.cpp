// SPDX-License-Identifier: MIT
#include <catch.hpp>

#include <lodebook/notebook/attributes.hpp>

#include <string>

using namespace lodebook::notebook;

namespace {

std::string attributes_in(std::string_view remark) {
  std::string out;
  for (const auto& [key, value] : attributes_of(remark)) {
    if (!out.empty()) out += '|';
    out += std::string(key) + ':' + std::string(value);
    CHECK(attribute_of(remark, key) == value);
  }
  return out;
}

}  // namespace

TEST_CASE("words of a remark with a key, an equals sign and a value are attributes") {
  CHECK(attributes_in("spacing=0.3m infill=clay") == "infill:clay|spacing:0.3m");
  CHECK(attributes_in("wet, spacing=0.3m, and infill=clay; open") == "infill:clay|spacing:0.3m");
  CHECK(attributes_in("a=b=c") == "a:b=c");
  CHECK(attributes_in("j_r-2=3") == "j_r-2:3");
  CHECK(attributes_in("infill=ton\u00A0wet=no") == "infill:ton|wet:no");
  CHECK(attributes_in("") == "");
  CHECK(attribute_of("spacing=0.3m", "infill") == "");
}

TEST_CASE("the last of a key wins") {
  CHECK(attributes_in("infill=clay spacing=1m infill=sand") == "infill:sand|spacing:1m");
}

TEST_CASE("what has no key or no value is text") {
  for (const char* remark : {"=", "=clay", "infill=", "infill=,", "infill = clay", "Infill=clay",
                             "2nd=clay", "_a=1", "k\u00E9y=1", "dip>=30"}) {
    CAPTURE(remark);
    CHECK(attributes_in(remark) == "");
  }
}

TEST_CASE("a key is a small letter, then small letters, digits, underscores and hyphens") {
  CHECK(is_attribute_key("j_r-2"));
  for (const char* word : {"", "2a", "-a", "_a", "A", "aB", "a b", "a.b"})
    CHECK_FALSE(is_attribute_key(word));
}
