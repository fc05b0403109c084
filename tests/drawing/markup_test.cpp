// SPDX-License-Identifier: MIT
// Markup is well-formed whatever it is given.
#include <lodebook/drawing/markup.hpp>

#include <catch.hpp>

using lodebook::drawing::Markup;

TEST_CASE("elements are nested and closed by the name they were opened with") {
  std::string out;
  Markup markup(out);
  markup.open("table", {{"class", "days"}});
  markup.open("tr");
  markup.element("td", {{"id", "x"}}, "one");
  markup.element("td", "two");
  markup.close();
  markup.close();
  markup.empty("br");
  CHECK(out == "<table class=\"days\"><tr><td id=\"x\">one</td><td>two</td></tr></table><br/>");
}

TEST_CASE("text cannot become an element or leave its attribute") {
  std::string out;
  Markup markup(out);
  markup.element("p", {{"title", "\"><script>alert(1)</script>"}}, "<b>&amp; 'x'</b>");
  CHECK(out ==
        "<p title=\"&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;\">"
        "&lt;b&gt;&amp;amp; 'x'&lt;/b&gt;</p>");
}

TEST_CASE("what XML cannot hold is shown as U+FFFD") {
  std::string out;
  Markup(out).text("a\x1b[31m\xff\xEF\xBF\xBE\xEF\xBF\xBF z");
  CHECK(out == "a\xEF\xBF\xBD[31m\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD z");
}

TEST_CASE("a tab of a log is a space") {
  std::string out;
  Markup(out).text("N78E\t41N");
  CHECK(out == "N78E 41N");
}
