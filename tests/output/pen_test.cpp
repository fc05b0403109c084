// SPDX-License-Identifier: MIT
#include <lodebook/output/pen.hpp>
#include <lodebook/output/text.hpp>

#include <catch.hpp>

using lodebook::output::is_plain_json;
using lodebook::output::Pen;

TEST_CASE("a pen leaves what a string would hold, however much it writes") {
  for (const std::size_t texts : {0U, 1U, 100U, 1000U, 5000U}) {
    std::string appended = "before ";
    std::string written = appended;
    {
      Pen pen(written);
      for (std::size_t i = 0; i < texts; ++i) {
        const std::string text(i % 23, static_cast<char>('a' + i % 26));
        appended += text;
        appended.push_back(',');
        pen += text;
        pen.push_back(',');
        CHECK(pen.size() == appended.size());
      }
    }
    CHECK(written == appended);
  }
  const std::string longer_than_a_block(10'000, 'x');
  std::string written;
  Pen(written) += longer_than_a_block;
  CHECK(written == longer_than_a_block);
}

TEST_CASE("a pen repeats, takes back and changes what it wrote") {
  std::string written = "1;";
  {
    Pen pen(written);
    pen += "bedding,";
    CHECK(pen.behind(2) == "bedding,");
    for (int i = 0; i < 1000; ++i)
      pen.repeat(2, 8);
    pen.cut(18);
    pen.pop_back();
    pen.push_back(';');
    pen.back() = '.';
  }
  CHECK(written == "1;bedding,bedding.");
}

TEST_CASE("text is plain in JSON where it is printable ASCII that needs no escape") {
  for (int byte = 0; byte < 256; ++byte) {
    const char c = static_cast<char>(byte);
    const bool plain = byte >= ' ' && byte <= '~' && c != '"' && c != '\\';
    for (std::size_t size = 1; size <= 17; ++size) {
      for (std::size_t at = 0; at < size; ++at) {
        std::string text(size, 'N');
        text[at] = c;
        INFO("byte " << byte << " at " << at << " of " << size);
        CHECK(is_plain_json(text) == plain);
      }
    }
  }
  CHECK(is_plain_json(""));
}
