// SPDX-License-Identifier: MIT
// Settings: each word of each, the values refused, and where they take effect.
#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::AccuracySetting;
using notebook::AttractionSetting;
using notebook::DateSetting;
using notebook::DatumSetting;
using notebook::DeclinationSetting;
using notebook::DialSetting;
using notebook::HeadingText;
using notebook::KindDeclaration;
using notebook::LineOrder;
using notebook::Notation;
using notebook::OrderSetting;
using notebook::PaceSetting;
using notebook::PlaneOrder;
using notebook::Reading;
using notebook::RuleSetting;
using notebook::SetSetting;
using notebook::ShortDeclaration;
using notebook::Unread;

/// The codes of one void statement.
std::string fault(std::string_view line) {
  const auto book = read(std::string(line));
  CHECK(all<Unread>(book).size() == 1);
  return codes(book);
}

TEST_CASE("an angle east or west of north") {
  struct Row {
    const char* typed;
    double east;
  };
  const Row rows[] = {{"24.6E", 24.6},
                      {"24.6W", -24.6},
                      {"24.6 E", 24.6},
                      {"24.6e", 24.6},
                      {"24.6°E", 24.6},
                      {"24.6° W", -24.6},
                      {"12°30'W", -12.5},
                      {"0", 0},
                      {"0E", 0},
                      {"0W", 0},
                      {"0.0", 0},
                      {"24.6 deg E", 24.6},
                      {"12°30′36″E", 12.51}};
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto declination = read(std::string("declination ") + row.typed);
    CHECK(codes(declination) == "");
    CHECK(std::abs(last<DeclinationSetting>(declination).declination.degrees_east() - row.east) <
          1e-9);
    const auto set = read(std::string("set ") + row.typed);
    CHECK(codes(set) == "");
    CHECK(std::abs(last<SetSetting>(set).set.degrees_east() - row.east) < 1e-9);
  }
}

TEST_CASE("an angle other than 0 must carry E or W") {
  for (const std::string word : {"declination ", "set "}) {
    CHECK(fault(word + "24.6") == "declination-side");
    CHECK(fault(word + "-24.6") == "declination-side");
    CHECK(fault(word + "+24.6") == "declination-side");
    CHECK(fault(word + "-24.6E") == "declination-side");
    CHECK(fault(word + "24.6N") == "declination-side");
    CHECK(fault(word + "E24.6") == "number");
    CHECK(fault(word) == "incomplete");
    CHECK(fault(word + "24,6E") == "decimal-comma");
    CHECK(fault(word + "24.6E west") == "trailing-text");
  }
}

TEST_CASE("a declination over 60 degrees is doubted, over 180 refused") {
  const auto large = read("declination 65E");
  CHECK(codes(large) == "declination-large");
  CHECK(large.diagnostics[0].severity == notebook::Severity::warning);
  CHECK(last<DeclinationSetting>(large).declination.degrees_east() == 65);
  CHECK(codes(read("declination 60E")) == "");
  CHECK(codes(read("declination 180W")) == "declination-large");
  CHECK(fault("declination 181E") == "declination-large");
  CHECK(read("declination 181E").diagnostics.at(0).severity == notebook::Severity::error);
}

TEST_CASE("a declination may say how well it is known") {
  const auto sigma = [](const char* typed) {
    const auto book = read(std::string("declination 24.6E ") + typed);
    CHECK(codes(book) == "");
    return last<DeclinationSetting>(book).sigma;
  };
  CHECK(sigma("±0.4") == 0.4);
  CHECK(sigma("± 0.4") == 0.4);
  CHECK(sigma("+-0.4") == 0.4);
  CHECK(sigma("+- 0.4") == 0.4);
  CHECK(sigma("±0.4°") == 0.4);
  CHECK(sigma("±0°30'") == 0.5);
  CHECK(sigma("") == 0);
  CHECK(last<DeclinationSetting>(read("declination 0 ±0.4")).sigma == 0.4);
  CHECK(codes(read("declination 24.6E ±")) != "");
  CHECK(fault("declination 24.6E ±-0.4") == "number");
  CHECK(fault("declination 24.6E ±4%") == "number");
  CHECK(fault("declination 24.6E 0.4") == "trailing-text");
}

TEST_CASE("the dial may have been right, or the model may be asked") {
  CHECK(last<DeclinationSetting>(read("declination as-set")).from ==
        DeclinationSetting::From::as_set);
  CHECK(last<DeclinationSetting>(read("Declination AS-SET")).from ==
        DeclinationSetting::From::as_set);
  CHECK(last<DeclinationSetting>(read("declination 24.6E")).from ==
        DeclinationSetting::From::stated);
  CHECK(last<DeclinationSetting>(read("declination model")).from ==
        DeclinationSetting::From::model);
  CHECK(fault("declination model ±0.4") == "trailing-text");
  CHECK(fault("set as-set") == "number");
}

TEST_CASE("read_declination reads what an option says, as a log does") {
  std::vector<notebook::Diagnostic> diagnostics;
  const auto east = [&](const char* typed) {
    return notebook::read_declination(notebook::Source("--declination", typed), diagnostics);
  };
  CHECK(east("24.6E").value().declination.degrees_east() == 24.6);
  CHECK(east("0").value().declination.degrees_east() == 0);
  CHECK(east("12°30'W").value().declination.degrees_east() == -12.5);
  CHECK(east("24.6E ±0.4").value().sigma == 0.4);
  CHECK(east("as-set").value().from == DeclinationSetting::From::as_set);
  CHECK(codes(diagnostics) == "");
  CHECK_FALSE(east("24.6"));
  CHECK(places(diagnostics) == "1:1-5 declination-side");
  diagnostics.clear();
  CHECK_FALSE(east("24.6E x"));
  CHECK(codes(diagnostics) == "trailing-text");
  diagnostics.clear();
  CHECK_FALSE(east(""));
  CHECK(codes(diagnostics) == "incomplete");
  diagnostics.clear();
  CHECK_FALSE(east("24,6E"));
  CHECK(codes(diagnostics) == "decimal-comma");
  diagnostics.clear();
  CHECK_FALSE(east("\xFF"));
  CHECK(diagnostics.size() == 1);
}

TEST_CASE("dial and rule take one of two words") {
  CHECK(last<DialSetting>(read("dial quadrant")).notation == Notation::quadrant);
  CHECK(last<DialSetting>(read("DIAL Azimuth")).notation == Notation::azimuth);
  CHECK(last<RuleSetting>(read("rule right")).rule == HandRule::right);
  CHECK(last<RuleSetting>(read("rule LEFT")).rule == HandRule::left);
  CHECK(fault("dial") == "incomplete");
  CHECK(fault("dial points") == "unknown-word");
  CHECK(fault("dial azimuth 360") == "trailing-text");
  CHECK(fault("rule") == "incomplete");
  CHECK(fault("rule up") == "unknown-word");
  CHECK(read("rule left hand").diagnostics.at(0).help == "leave it out: 'rule left'");
  CHECK(read("rule right hand").diagnostics.at(0).help == "leave it out: 'rule right'");
}

TEST_CASE("order names how pairs are written") {
  struct Row {
    const char* typed;
    PlaneOrder planes;
    LineOrder lines;
  };
  const Row rows[] = {
      {"strike/dip", PlaneOrder::strike_dip, LineOrder::unstated},
      {"direction/dip", PlaneOrder::direction_dip, LineOrder::unstated},
      {"dip/direction", PlaneOrder::dip_direction, LineOrder::unstated},
      {"dip/strike", PlaneOrder::dip_strike, LineOrder::unstated},
      {"Dip / Direction", PlaneOrder::dip_direction, LineOrder::unstated},
      {"trend/plunge", PlaneOrder::unstated, LineOrder::trend_plunge},
      {"plunge/trend", PlaneOrder::unstated, LineOrder::plunge_trend},
      {"dip/direction plunge/trend", PlaneOrder::dip_direction, LineOrder::plunge_trend},
  };
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto order = last<OrderSetting>(read(std::string("order ") + row.typed));
    CHECK(order.planes == row.planes);
    CHECK(order.lines == row.lines);
  }
  CHECK(fault("order") == "incomplete");
  CHECK(fault("order strike") == "unknown-word");
  CHECK(fault("order strike/plunge") == "unknown-word");
}

TEST_CASE("a pace is a length") {
  CHECK(last<PaceSetting>(read("pace 0.76m")).pace.metres(1) == 0.76);
  CHECK(last<PaceSetting>(read("pace 0.76 m")).pace.metres(1) == 0.76);
  CHECK(last<PaceSetting>(read("pace 2.5 ft")).pace.metres(1) == Approx(0.762));
  CHECK(fault("pace") == "incomplete");
  CHECK(fault("pace 0.76") == "distance-unit");
  CHECK(fault("pace 0m") == "number");
  CHECK(fault("pace -0.76m") == "number");
  CHECK(fault("pace 0,76m") == "decimal-comma");
  CHECK(fault("pace 2 paces") == "distance-unit");
}

TEST_CASE("accuracy names one or more of bearing, dip and distance") {
  const auto full = last<AccuracySetting>(read("accuracy bearing 0.5 dip 1 distance 2%"));
  CHECK(full.bearing == 0.5);
  CHECK(full.dip == 1.0);
  CHECK(full.distance_percent == 2.0);
  const auto part = last<AccuracySetting>(read("accuracy dip 2°"));
  CHECK(part.dip == 2.0);
  CHECK_FALSE(part.bearing);
  CHECK_FALSE(part.distance_percent);
  CHECK(last<AccuracySetting>(read("accuracy dip 2 bearing 1")).bearing == 1.0);
  CHECK(fault("accuracy") == "incomplete");
  CHECK(fault("accuracy bearing") == "incomplete");
  CHECK(fault("accuracy bearing 0") == "number");
  CHECK(fault("accuracy bearing -1") == "number");
  CHECK(fault("accuracy distance 2") == "number");
  CHECK(fault("accuracy dip 2%") == "number");
  CHECK(fault("accuracy strike 2") == "unknown-word");
}

TEST_CASE("datums that equal WGS 84 at compass accuracy are taken, others refused") {
  for (const std::string datum :
       {"WGS84", "wgs84", "WGS 84", "GDA2020", "NZGD2000", "ETRS89", "NAD83"}) {
    CAPTURE(datum);
    const auto book = read("datum " + datum);
    CHECK(codes(book) == "");
    CHECK(text(book, last<DatumSetting>(book).text) == datum);
  }
  for (const std::string datum : {"NAD27", "ED50", "NZGD49", "AGD66", "GDA94", "WGS72"}) {
    CAPTURE(datum);
    CHECK(fault("datum " + datum) == "datum");
  }
  CHECK(read("datum NAD27").diagnostics.at(0).help.find("convert") != std::string::npos);
  CHECK(fault("datum") == "incomplete");
}

TEST_CASE("attraction correct") {
  CHECK(all<AttractionSetting>(read("attraction correct")).size() == 1);
  CHECK(fault("attraction") == "incomplete");
  CHECK(fault("attraction yes") == "unknown-word");
}

TEST_CASE("dates are year-month-day") {
  const auto date = last<DateSetting>(read("date 2026-02-14")).date;
  CHECK(date == notebook::Date{2026, 2, 14});
  CHECK(last<DateSetting>(read("date 2024-02-29")).date.day == 29);
  for (const char* const typed :
       {"2026-02-30", "2023-02-29", "14.2.2026", "2026-2-14", "2026/02/14", "14 Feb 2026",
        "2026-13-01", "2026-00-10", "2026-02-00", "20260214", "2026-02-14T09:40", "today"}) {
    CAPTURE(typed);
    CHECK(fault(std::string("date ") + typed) == "date");
  }
  CHECK(fault("date") == "incomplete");
}

TEST_CASE("a date in another order is offered in the right one where only one makes sense") {
  const auto help = [](const char* typed) {
    return read(std::string("date ") + typed).diagnostics.at(0).help;
  };
  CHECK(help("14.2.2026") == "2026-02-14?");
  CHECK(help("2/14/2026") == "2026-02-14?");
  CHECK(help("2026/2/14") == "2026-02-14?");
  CHECK(help("3/3/2026") == "2026-03-03?");
  // March to some, April to others: neither is offered.
  CHECK(help("3/4/2026").find("2026-03") == std::string::npos);
  CHECK(help("3/4/2026").find("2026-04") == std::string::npos);
}

TEST_CASE("area, observer and instrument are text to the line's end") {
  struct Row {
    const char* line;
    HeadingText::Which which;
  };
  const Row rows[] = {{"area", HeadingText::Which::area},
                      {"Observer", HeadingText::Which::observer},
                      {"INSTRUMENT", HeadingText::Which::instrument}};
  for (const Row& row : rows) {
    CAPTURE(row.line);
    const auto book = read(std::string(row.line) + "  Quern  Ridge ; # 3, 1e3 \n");
    CHECK(codes(book) == "");
    CHECK(last<HeadingText>(book).which == row.which);
    CHECK(text(book, last<HeadingText>(book).text) == "Quern  Ridge ; # 3, 1e3");
  }
}

TEST_CASE("a faulty setting is void, and the one before it holds no longer") {
  const auto book = read_line("rule up\nbedding 242/37", "rule left");
  CHECK(codes(book) == "unknown-word");
  CHECK(last<notebook::Reading>(book).rejected);
  const auto again = read_line("rule up\nrule right\nbedding 242/37", "rule left");
  CHECK(codes(again) == "unknown-word");
  CHECK(good<notebook::PlaneAttitude>(again).rule == HandRule::right);
}

TEST_CASE("an angle with a sign and a letter is told so") {
  const auto help = [](const std::string& line) { return read(line).diagnostics.at(0).help; };
  CHECK(help("declination -24.6E").starts_with("24.6W?"));
  CHECK(help("declination +24.6E").starts_with("24.6E?"));
  CHECK(help("set -24.6 W").starts_with("24.6W or 24.6E?"));
  CHECK(read("declination -24.6E").diagnostics.at(0).message == "'-24.6E' has a sign and a letter");
}

TEST_CASE("an accuracy says what is wrong with it") {
  const auto first = [](const std::string& line) { return read(line).diagnostics.at(0); };
  CHECK(first("accuracy dip 0").message == "accuracy '0' is not above 0");
  CHECK(first("accuracy distance 2").message == "'2' lacks its %");
  CHECK(first("accuracy distance 2").help == "2%?");
  CHECK(first("accuracy distance 0").message == "accuracy '0' is not above 0");
}

TEST_CASE("kind adds a kind of plane or line") {
  const auto book = read_line(
      "kind gneissosity plane\nkind Boudin-Axis line\n"
      "GNEISSOSITY N78E 41N\nboudin-axis N50W 35 on gneissosity");
  CHECK(codes(book) == "");
  const auto kinds = all<KindDeclaration>(book);
  REQUIRE(kinds.size() == 2);
  CHECK(book.kinds.at(kinds[0].kind).name == "gneissosity");
  CHECK(book.kinds.at(kinds[0].kind).type == notebook::Kind::Type::plane);
  CHECK(book.kinds.at(kinds[1].kind).name == "Boudin-Axis");
  CHECK(book.kinds.at(kinds[1].kind).type == notebook::Kind::Type::line);
  CHECK(book.reading_count == 2);
  CHECK(codes(read_line("gneissosity N78E 41N\nkind gneissosity plane")) == "unknown-word");
}

TEST_CASE("kinds may have digits and letters of any script in their names") {
  for (const std::string name : {"S1", "s_2", "Klüftung", "L1+", "сланцеватость"}) {
    CAPTURE(name);
    const auto book = read_line("kind " + name + " plane\nshort x " + name + "\n" + name +
                                " N78E 41N\nx N78E 41N\nlineation N50W 35 on " + name);
    CHECK(codes(book) == "");
    CHECK(book.reading_count == 3);
  }
}

TEST_CASE("what kind needs") {
  CHECK(fault("kind") == "name");
  CHECK(fault("kind slab") == "incomplete");
  CHECK(fault("kind slab point") == "unknown-word");
  CHECK(fault("kind slab plane x") == "trailing-text");
  CHECK(codes(read("kind slab plane\nkind Slab line")) == "already-stated");
}

TEST_CASE("short lets a word stand for any keyword or kind") {
  const auto book = read(
      "short b bedding\nshort st station\nshort si sight\nshort no note\nshort d dyke\n"
      "st Q1\nb N78E 41N\nB N78E 41N\nsi Cairn N66W\nno free # text; all\nd N78E 41N\n");
  CHECK(codes(book) == "");
  CHECK(book.reading_count == 4);
  CHECK(kind_of(book, last<Reading>(book)) == "dike");
  CHECK(text(book, last<notebook::Note>(book).text) == "free # text; all");
  const auto shorts = all<ShortDeclaration>(book);
  REQUIRE(shorts.size() == 5);
  CHECK(text(book, shorts[1].word) == "st");
  CHECK(text(book, shorts[1].meaning) == "station");
}

TEST_CASE("a word that already means something cannot be redefined") {
  for (const std::string word : {"bedding", "station", "N", "e", "NNW", "rake", "at", "to", "on",
                                 "from", "back", "Dyke", "sight", "short", "kind", "note"}) {
    CAPTURE(word);
    CHECK(fault("short " + word + " joint") == "word-taken");
    CHECK(fault("kind " + word + " plane") == "word-taken");
  }
  CHECK(codes(read("short b bedding\nshort B joint")) == "word-taken");
  CHECK(codes(read("short b bedding\nkind b plane")) == "word-taken");
}

TEST_CASE("a log has so many kinds and no more, and the last of them is read as itself") {
  std::string text = "rule right\n";
  for (std::size_t i = 0; i <= notebook::most_kinds; ++i)
    text += "kind k" + std::to_string(i) + " plane\n";
  const std::string last = read(text).kinds.back().name;
  const auto book = read(text + "station Q1\n  " + last + " 078/41\n");
  CHECK(book.kinds.size() == notebook::most_kinds);
  CHECK(codes(book).starts_with("word-taken"));
  CHECK(book.kinds[std::get<Reading>(book.entries.back().what).kind].name == last);
}

TEST_CASE("what short needs") {
  CHECK(fault("short") == "name");
  CHECK(fault("short b") == "incomplete");
  CHECK(fault("short b beding") == "unknown-word");
  CHECK(read("short b beding").diagnostics.at(0).help == "bedding?");
  CHECK(fault("short b bedding x") == "trailing-text");
}

TEST_CASE("settings may stand anywhere and keep their place") {
  const auto book = read("station Q1\nbedding N78E 41N\nset 0\nstation Q2\ndeclination 24.6E\n");
  CHECK(codes(book) == "");
  REQUIRE(book.entries.size() == 5);
  CHECK(std::holds_alternative<SetSetting>(book.entries[2].what));
  CHECK(book.entries[2].line == 3);
  CHECK(std::holds_alternative<DeclinationSetting>(book.entries[4].what));
}

}  // namespace
}  // namespace lodebook::test
