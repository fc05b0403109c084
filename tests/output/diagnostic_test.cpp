// SPDX-License-Identifier: MIT
#include <catch.hpp>
#include <lodebook/output/diagnostic.hpp>

namespace lodebook {
namespace {

using notebook::Code;
using notebook::Diagnostic;
using notebook::Severity;
using notebook::Source;

Diagnostic fault(notebook::Place place, std::string message = "that is odd",
                 std::string help = "") {
  Diagnostic diagnostic;
  diagnostic.code = Code::quadrant_angle;
  diagnostic.severity = Severity::error;
  diagnostic.place = place;
  diagnostic.message = std::move(message);
  diagnostic.help = std::move(help);
  return diagnostic;
}

std::string shown(const Source& source, const Diagnostic& diagnostic, bool color = false) {
  std::string out;
  output::append_diagnostic(out, source, diagnostic, color);
  return out;
}

TEST_CASE("a diagnostic shows its place, the line, a caret and advice") {
  std::string text;
  for (int line = 1; line < 18; ++line)
    text += "note\n";
  const Source source("day3.txt", text + "  bedding   N98E 41N\n");
  CHECK(shown(source, fault({18, 13, 17}, "quadrant angle 95 is over 90",
                            "S85E is 95 degrees clockwise from north")) ==
        "day3.txt:18:13: error: quadrant angle 95 is over 90 [quadrant-angle]\n"
        "   18 |   bedding   N98E 41N\n"
        "      |             ^~~~\n"
        "help: S85E is 95 degrees clockwise from north\n");
}

TEST_CASE("related places follow as notes") {
  Diagnostic diagnostic = fault({2, 9, 11}, "station Q1 a second time");
  diagnostic.severity = Severity::warning;
  diagnostic.code = Code::station_repeated;
  diagnostic.related.push_back({{1, 9, 11}, "the first one"});
  CHECK(shown(Source("logs/day.txt", "station Q1\nstation Q1"), diagnostic) ==
        "logs/day.txt:2:9: warning: station Q1 a second time [station-repeated]\n"
        "    2 | station Q1\n"
        "      |         ^~\n"
        "note: logs/day.txt:1:9: the first one\n");
}

TEST_CASE("on one line stands a diagnostic alone, with nothing that could end the line") {
  const auto line = [](const std::string& file, notebook::Severity severity, std::string message) {
    Diagnostic diagnostic = fault({3, 9, 11}, std::move(message), "advice stays out");
    diagnostic.severity = severity;
    diagnostic.related.push_back({{1, 9, 11}, "and this too"});
    std::string out;
    output::append_diagnostic_line(out, Source(file, "a\nb\nstation Q1\n"), diagnostic);
    return out;
  };
  CHECK(line("day 3:b.txt", Severity::error, "that is odd") ==
        "day 3:b.txt:3:9: error: that is odd [quadrant-angle]\n");
  CHECK(line("/logs/day.txt", Severity::warning, "'a: b'") ==
        "/logs/day.txt:3:9: warning: 'a: b' [quadrant-angle]\n");
  CHECK(line("a\n1:1: b", Severity::note, "x\r\x1b[2Jy\nz") ==
        "a\uFFFD1:1: b:3:9: note: x\uFFFD\uFFFD[2Jy\uFFFDz [quadrant-angle]\n");
}

TEST_CASE("the whole path names a file only on such a line") {
  CHECK(shown(Source("/logs/day.txt", "joint N98E\n"), fault({1, 7, 11})) ==
        "day.txt:1:7: error: that is odd [quadrant-angle]\n"
        "    1 | joint N98E\n"
        "      |       ^~~~\n");
}

TEST_CASE("tabs are copied so that the caret lines up") {
  CHECK(shown(Source("a", "\tjoint\tN95E\n"), fault({1, 8, 12})) ==
        "a:1:8: error: that is odd [quadrant-angle]\n"
        "    1 | \tjoint\tN95E\n"
        "      | \t     \t^~~~\n");
}

TEST_CASE("columns are code points") {
  CHECK(shown(Source("a", "joint 20° é5\n"), fault({1, 11, 13})) ==
        "a:1:11: error: that is odd [quadrant-angle]\n"
        "    1 | joint 20° é5\n"
        "      |           ^~\n");
}

TEST_CASE("something missing is shown behind the line's end") {
  CHECK(shown(Source("a", "joint N20E\n"), fault({1, 12, 13})) ==
        "a:1:12: error: that is odd [quadrant-angle]\n"
        "    1 | joint N20E\n"
        "      |            ^\n");
}

TEST_CASE("no control character reaches the terminal") {
  const Source source("a\x1b.txt", "note \x1b[31m red\x7f \xC2\x9B \xE2\x80\xAE \xFF\n");
  const std::string out = shown(source, fault({1, 6, 7}, "bad \x1b[2J\r", "use \a"));
  for (const char c : out)
    CHECK((c == '\n' || static_cast<unsigned char>(c) >= 0x20));
  CHECK(out.find('\x7f') == std::string::npos);
  CHECK(out.find("\xC2\x9B") == std::string::npos);
  CHECK(out.find("\xE2\x80\xAE") == std::string::npos);
  CHECK(out.find("    1 | note \uFFFD[31m red\uFFFD \uFFFD \uFFFD \uFFFD\n") != std::string::npos);
  CHECK(out.find("bad \uFFFD[2J\uFFFD") != std::string::npos);
  CHECK(out.find("help: use \uFFFD\n") != std::string::npos);
  CHECK(notebook::valid_utf8(out) == out);
}

TEST_CASE("a long line is cut to a window around the fault") {
  const std::string line =
      std::string("note ") + std::string(300, 'a') + "!" + std::string(300, 'b');
  const std::string out = shown(Source("a", line), fault({1, 306, 307}));
  const std::string shown_line = out.substr(out.find('\n') + 1);
  CHECK(shown_line == std::string("    1 | ...") + std::string(40, 'a') + "!" +
                          std::string(55, 'b') + "...\n      |    " + std::string(40, ' ') + "^\n");

  // A span longer than the window, and a fault at the line's end.
  const std::string start = shown(Source("a", line), fault({1, 1, 600}));
  CHECK(start.find(std::string("^") + std::string(95, '~') + "\n") != std::string::npos);
  const std::string end = shown(Source("a", line), fault({1, 607, 608}));
  CHECK(end.find(std::string("| ...") + std::string(96, 'b') + "\n      |    " +
                 std::string(96, ' ') + "^\n") != std::string::npos);
}

TEST_CASE("an empty log has no line to show") {
  CHECK(shown(Source("a", ""), fault({1, 1, 2})) == "a:1:1: error: that is odd [quadrant-angle]\n");
}

TEST_CASE("colour is the same text between styles") {
  const Source source("a", "joint N98E\n");
  const Diagnostic diagnostic = fault({1, 7, 11}, "odd", "better");
  const std::string color = shown(source, diagnostic, true);
  std::string plain;
  for (std::size_t at = 0; at < color.size(); ++at) {
    if (color[at] == '\x1b') {
      at = color.find('m', at);
    } else {
      plain.push_back(color[at]);
    }
  }
  CHECK(color != plain);
  CHECK(plain == shown(source, diagnostic));
}

}  // namespace
}  // namespace lodebook
