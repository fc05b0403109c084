// SPDX-License-Identifier: MIT
// Stations, landmarks and what is said about them: names, positions, heights, times, tallies.
#include <lodebook/earth/geodesic.hpp>

#include "notebook/reading_one.hpp"

namespace lodebook::test {
namespace {

using notebook::At;
using notebook::Clock;
using notebook::Elevation;
using notebook::Landmark;
using notebook::Sample;
using notebook::StationHeading;
using notebook::Tally;
using notebook::Unread;
using test::Book;

std::string station_name(const Book& book) {
  const auto heading = last<StationHeading>(book);
  return heading.name == notebook::no_name ? "" : book.names.shown(heading.name);
}

TEST_CASE("a position or height may say where it came from") {
  const auto origins = [](const std::string& log) {
    const Book book = read(log);
    CHECK(codes(book) == "");
    std::string found;
    for (const notebook::Entry& entry : book.entries) {
      std::optional<notebook::GivenPosition> position;
      notebook::Span height;
      if (const auto* at = std::get_if<At>(&entry.what)) position = at->position;
      if (const auto* heading = std::get_if<StationHeading>(&entry.what))
        position = heading->position;
      if (const auto* landmark = std::get_if<Landmark>(&entry.what)) {
        position = landmark->position;
        height = landmark->elevation_origin;
      }
      if (const auto* elevation = std::get_if<Elevation>(&entry.what)) height = elevation->origin;
      if (position) found += text(book, position->origin) + "|";
      found += text(book, height) + ";";
    }
    return found;
  };
  CHECK(origins("station Q1 at 44.6891S 169.0144E ±50 from map\nelevation 812 from barometer\n") ==
        "map|;barometer;");
  CHECK(origins("station Q1\nat 44.6891S 169.0144E Phone ±8 ; here\nelevation 812m altimeter\n") ==
        ";Phone|;altimeter;");
  CHECK(origins("station Q1 at 59G 345210 5052310 from  sketch-2 ±30 ft\n") == "sketch-2|;");
  CHECK(origins("landmark Mast 44.7S 169E estimated elevation 2664 ft from map # old\n") ==
        "estimated|map;");
  CHECK(origins("station Q1 at 44.6891S 169.0144E\nelevation 812\n") == "|;;");
  for (const char* line :
       {"at 44.6891S 169.0144E sketch", "at 44.6891S 169.0144E from", "elevation 812 from",
        "elevation 812 guessed", "at from map", "elevation from map",
        "at 44.6891S 169.0144E from map ±50 from map", "at 44.6891S 169.0144E from my map"}) {
    CAPTURE(line);
    CHECK(test::read_line(line).diagnostics.size() == 1);
  }
}

TEST_CASE("a name in quotes may have several words, and marks that mean nothing there") {
  const Book book = read(
      "landmark \"Tarr Knob\" 44.6502S 169.0314E ±8 ; east\n"
      "STATION \"Camp; # 2\" at 44.68S 169.01E # high\n"
      "  sight \"tarr knob\" N17W vertical 4 ; seen\n"
      "  leg S38E 120m to \"Camp; # 2\" back N37W\n"
      "  sample \"A 1\" garnet\nask station \"Pt 5; 6\" ; or 7?\n");
  CHECK(codes(book) == "unanswered");
  CHECK(book.diagnostics[0].message == "an open question: or 7?");
  CHECK(book.names.shown(last<Landmark>(book).name) == "Tarr Knob");
  const auto stations = all<StationHeading>(book);
  REQUIRE(stations.size() == 2);
  CHECK(book.names.shown(stations[0].name) == "Camp; # 2");
  CHECK(stations[0].position);
  CHECK(book.names.shown(stations[1].name) == "Pt 5; 6");
  const auto sample = last<notebook::Sample>(book);
  CHECK(text(book, sample.name) == "A 1");
  CHECK(text(book, sample.text) == "garnet");
  const auto leg = std::get<notebook::Leg>(last<notebook::Reading>(book).what);
  CHECK(leg.to == stations[0].name);
  CHECK(leg.back);
}

TEST_CASE("quotes are no part of a name") {
  const Book book = read("station \"Q1\"\nstation q1\nlandmark 5\"\nstation A\"b\n");
  CHECK(codes(book) == "station-repeated");
  CHECK(book.names.shown(last<Landmark>(book).name) == "5\"");
}

TEST_CASE("a name's quotes are closed, and hold something") {
  for (const char* line :
       {"station \"Tarr Knob", "landmark \"Tarr Knob 44.6502S 169.0314E", "sight \"Mast N17W",
        "leg S38E 120m to \"Camp 2 ; a remark", "sample \"A 1", "station \"\"", "landmark \" \"",
        "station \"Camp 2\"at 44S 169E", "station \"Camp\"; base"}) {
    CAPTURE(line);
    const bool touched = std::string_view(line).find("; base") != std::string_view::npos;
    CHECK(codes(read(std::string(line) + "\n")).find(touched ? "" : "name") != std::string::npos);
  }
  const Book book = read("station \"Camp 2\"at 44S 169E\n");
  REQUIRE(book.diagnostics.size() == 1);
  REQUIRE(book.diagnostics[0].fixes.size() == 1);
  CHECK(book.diagnostics[0].fixes[0].text == " ");
}

TEST_CASE("a station has a name of one word") {
  for (const std::string name : {"Q1", "12", "Trig-Dome", "Ü3", "bedding", "N50W", "a#b", "1.2"}) {
    CAPTURE(name);
    const auto book = read("station " + name + "\n");
    CHECK(codes(book) == "");
    CHECK(station_name(book) == name);
  }
}

TEST_CASE("a name has no comma, semicolon or > and does not start with #") {
  CHECK(places(read("station Q,1")) == "1:10-11 name");
  CHECK(places(read("station >Q")) == "1:9-10 name");
  CHECK(places(read("station Q>1")) == "1:10-11 name");
  CHECK(places(read("station #Q")) == "1:9-11 name");
  CHECK(places(read("landmark #Q")) == "1:10-12 name");
  CHECK(places(read("station")) == "1:8-9 name");
  CHECK(places(read("station ; a remark")) == "1:8-9 name");
  CHECK(places(read("landmark")) == "1:9-10 name");
  CHECK(codes(read_line("sample")) == "name");
  CHECK(codes(read("station Q1;a remark")) == "");
}

TEST_CASE("a second word that is no keyword is an error that joins the two") {
  for (const std::string line :
       {"landmark Trig Dome 44.6711S 168.9920E", "landmark Trig Dome", "station Trig Dome",
        "station Trig Dome at 44.6711S 168.9920E", "sight Trig Dome N66W", "station Trig Große"}) {
    CAPTURE(line);
    const auto book = line[1] == 'i' ? read_line(line) : read(line);
    REQUIRE(codes(book) == "name");
    const bool dome = line.find("Dome") != std::string::npos;
    CHECK(book.diagnostics[0].help == (dome ? "\"Trig Dome\" in quotes, or Trig-Dome?"
                                            : "\"Trig Große\" in quotes, or Trig-Große?"));
  }
}

TEST_CASE("a station may state its position, with an accuracy") {
  const auto book = read("station Q1 at 44.6891S 169.0144E ±8");
  CHECK(codes(book) == "");
  const auto position = last<StationHeading>(book).position;
  REQUIRE(position);
  CHECK(position->position.latitude == Approx(-44.6891).margin(1e-12));
  CHECK(position->position.longitude == Approx(169.0144).margin(1e-12));
  CHECK(position->accuracy_m == 8);
}

TEST_CASE("positions in the writings of the field") {
  // 44.6891S is 44 degrees 41.346 minutes, or 44 41 20.76; 169.0144E is 169 00.864, or 00 51.84.
  const char* const typed[] = {
      "44.6891S 169.0144E",
      "S44.6891 E169.0144",
      "-44.6891 169.0144",
      "−44.6891 169.0144",
      "44.6891S, 169.0144E",
      "-44.6891, 169.0144",
      "44.6891°S 169.0144°E",
      "44°41.346'S 169°00.864'E",
      "44 41.346 S 169 00.864 E",
      "44 41 20.76S 169 00 51.84E",
      "44:41:20.76S 169:00:51.84E",
      "44°41'20.76\"S 169°00'51.84\"E",
      "44°41′20.76″S 169°00′51.84″E",
      "44.6891s 169.0144e",
      "44.6891S\t169.0144E",
  };
  for (const std::string position : typed) {
    for (const std::string& line : {"station Q1 at " + position, "station Q1\nat " + position,
                                    "landmark Cairn " + position}) {
      CAPTURE(line);
      const auto book = read(line);
      REQUIRE(codes(book) == "");
      std::optional<notebook::GivenPosition> given;
      if (line.starts_with("landmark")) {
        given = last<Landmark>(book).position;
      } else if (!all<At>(book).empty()) {
        given = last<At>(book).position;
      } else {
        given = last<StationHeading>(book).position;
      }
      REQUIRE(given);
      CHECK(given->position.latitude == Approx(-44.6891).margin(1e-9));
      CHECK(given->position.longitude == Approx(169.0144).margin(1e-9));
      CHECK_FALSE(given->accuracy_m);
    }
  }
}

TEST_CASE("grid positions name their zone") {
  for (const std::string typed : {"59G 345210 5052310", "59 south 345210 5052310"}) {
    CAPTURE(typed);
    const auto book = read("station Q1 at " + typed);
    REQUIRE(codes(book) == "");
    const auto position = last<StationHeading>(book).position;
    REQUIRE(position);
    CHECK(position->position.latitude == Approx(-44.67).margin(0.01));
    CHECK(position->position.longitude == Approx(169.05).margin(0.01));
  }
  CHECK(codes(read("station Q1 at 59H 345210 5052310")) == "position");  // the band contradicts
}

TEST_CASE("a grid reference of the military grid may be spaced or not") {
  const auto position_at = [](const std::string& typed) {
    const auto book = read("station Q1 at " + typed + "\nlandmark Cairn " + typed);
    REQUIRE(codes(book) == "");
    CHECK(last<Landmark>(book).position);
    return last<StationHeading>(book).position.value().position;
  };
  // Columns of zone 59 start at J with 100 km, rows at A with 4000 km: L is 300 km, L is 5000 km.
  const auto same = position_at("59 south 342600.5 5049100.5");
  for (const std::string typed : {"59G LL 42600 49100", "59GLL4260049100", "59g ll 42600 49100"}) {
    CAPTURE(typed);
    CHECK(earth::distance_m(position_at(typed), same) < 1);
  }
}

TEST_CASE("an accuracy is metres, or feet") {
  const auto accuracy = [](const std::string& typed) {
    const auto book = read("station Q1 at 44.6891S 169.0144E " + typed);
    CHECK(codes(book) == "");
    return last<StationHeading>(book).position.value().accuracy_m.value();
  };
  CHECK(accuracy("±8") == 8);
  CHECK(accuracy("± 8") == 8);
  CHECK(accuracy("+-8") == 8);
  CHECK(accuracy("+- 8") == 8);
  CHECK(accuracy("±8m") == 8);
  CHECK(accuracy("±8.5 m") == 8.5);
  CHECK(accuracy("±10ft") == Approx(3.048));
  CHECK(codes(read("station Q1 at 44.6891S 169.0144E ±")) == "number");
  CHECK(codes(read("station Q1 at 44.6891S 169.0144E ±-8")) == "number");
  CHECK(codes(read("station Q1 at 44.6891S 169.0144E ±8 9")) == "trailing-text");
  CHECK(codes(read("station Q1 at 44.6891S 169.0144E ±1e3")) == "number");
  CHECK(codes(read("station Q1 at 44.6891S 169.0144E ±8,5")) == "decimal-comma");
}

TEST_CASE("a position that cannot be read leaves the station") {
  for (const char* const typed : {"94.6891S 169.0144E", "44.6891S", "here", "44,6891S 169.0144E",
                                  "44.6891 S 169.0144", "59G 345210", "44 61S 169E"}) {
    CAPTURE(typed);
    const auto book = read(std::string("station Q1 at ") + typed + "\nbedding N78E 41N\n");
    REQUIRE(book.diagnostics.size() == 1);
    CHECK(book.diagnostics[0].severity == notebook::Severity::error);
    CHECK(station_name(book) == "Q1");
    CHECK_FALSE(last<StationHeading>(book).position);
    CHECK_FALSE(last<notebook::Reading>(book).rejected);
  }
  CHECK(codes(read("station Q1 at 94.6891S 169.0144E")) == "position");
  CHECK(codes(read("station Q1 at 44,6891S 169.0144E")) == "decimal-comma");
  CHECK(codes(read("station Q1 at")) == "incomplete");
  CHECK(codes(read("station Q1\nat")) == "incomplete");
}

TEST_CASE("a position needs its at") {
  CHECK(codes(read("station Q1 44.6891S 169.0144E")) == "trailing-text");
}

TEST_CASE("a zone letter S is the band unless only the south fits the log") {
  // Band S spans 32 to 40 north.
  const auto north = read("station A at 38S 444140 3684706");
  CHECK(codes(north) == "");
  CHECK(last<StationHeading>(north).position.value().position.latitude ==
        Approx(33.3).margin(0.01));

  const auto south = read("landmark Cairn 44.6502S 169.0314E\nstation Q1 at 59S 342600 5049100\n");
  CHECK(places(south) == "2:15-33 zone-south");
  CHECK(south.diagnostics[0].severity == notebook::Severity::note);
  CHECK(last<StationHeading>(south).position.value().position.latitude ==
        Approx(-44.7).margin(0.1));

  // The other positions may come later.
  const auto later = read("station Q1 at 59S 342600 5049100\nstation Q2 at 44.6502S 169.0314E\n");
  CHECK(codes(later) == "zone-south");
  const auto at_line =
      read("station Q1\nat 59S 342600 5049100\nstation Q2 at 44.6502S 169.0314E\n");
  CHECK(codes(at_line) == "zone-south");
  CHECK(last<At>(at_line).position.position.latitude < 0);
}

TEST_CASE("a zone letter S that nothing decides is an error that offers what it may be") {
  // The northing fits only the south, and no other position says that this is meant.
  const auto alone = read("station Q1 at 59S 342600 5049100\n");
  CHECK(codes(alone) == "position");
  CHECK(alone.diagnostics.at(0).help == "59 south (45S 169E)?");
  CHECK_FALSE(last<StationHeading>(alone).position);
  // Neither fits.
  const auto neither = read("landmark Far 10N 10E\nstation Q1 at 38S 444140 3684706\n");
  CHECK(codes(neither) == "position");
  CHECK(neither.diagnostics.at(0).help == "38 north (33N 44E) or 38 south (57S 44E)?");
}

TEST_CASE("a height with a space in it is offered without") {
  const auto book = read_line("elevation 1 200");
  REQUIRE(places(book) == "2:11-16 number");
  CHECK(book.diagnostics[0].help == "1200?");
  REQUIRE(book.diagnostics[0].fixes.size() == 1);
  CHECK(book.diagnostics[0].fixes[0].text == "1200");
}

TEST_CASE("an accuracy without its mark is told so") {
  const auto book = read("station Q1 at 44S 169E 8");
  REQUIRE(places(book) == "1:24-25 position");
  CHECK(book.diagnostics[0].help.starts_with("44S 169E ±8? or, if it is a height"));
}

TEST_CASE("elevations are metres, or feet") {
  struct Row {
    const char* typed;
    double metres;
  };
  const Row rows[] = {{"812", 812},      {"812m", 812},      {"812 m", 812}, {"-3.5", -3.5},
                      {"1000ft", 304.8}, {"400 FT", 121.92}, {"+5 m", 5},    {"−12", -12}};
  for (const Row& row : rows) {
    CAPTURE(row.typed);
    const auto book = read_line(std::string("elevation ") + row.typed);
    CHECK(codes(book) == "");
    CHECK(last<Elevation>(book).height.metres(1) == Approx(row.metres));
    const auto mark = read(std::string("landmark Cairn elevation ") + row.typed);
    CHECK(codes(mark) == "");
    CHECK(last<Landmark>(mark).elevation.value().metres(1) == Approx(row.metres));
  }
  CHECK(codes(read_line("elevation")) == "incomplete");
  CHECK(codes(read_line("elevation high")) == "number");
  CHECK(codes(read_line("elevation 812 km")) == "trailing-text");
  const auto spaced = read_line("elevation 1 412");
  CHECK(codes(spaced) == "number");
  CHECK(spaced.diagnostics[0].help == "1412?");
  CHECK(codes(read_line("elevation 1,412")) == "decimal-comma");
  CHECK(codes(read_line("elevation 1e3")) == "number");
  CHECK(codes(read_line("elevation 8°")) == "number");
}

TEST_CASE("a landmark has a position, an accuracy and a height, each optional") {
  const auto full = read("landmark Cairn 44.6502S 169.0314E ±5 elevation 1412 m");
  CHECK(codes(full) == "");
  const auto cairn = last<Landmark>(full);
  CHECK(full.names.shown(cairn.name) == "Cairn");
  CHECK(cairn.position.value().accuracy_m == 5);
  CHECK(cairn.elevation.value().value == 1412);

  const auto found = read("landmark Cairn");
  CHECK(codes(found) == "");
  CHECK_FALSE(last<Landmark>(found).position);
  CHECK_FALSE(last<Landmark>(found).elevation);

  // With `at`, as behind a station.
  CHECK(last<Landmark>(read("landmark Cairn at 44.6502S 169.0314E ±5")).position);

  CHECK(last<Landmark>(read("landmark Cairn elevation 1412")).elevation);
  CHECK(codes(read("landmark Cairn elevation")) == "incomplete");
  // One whose figures cannot be read is a landmark still.
  const auto bad = read("landmark Cairn 94.6502S 169.0314E elevation 1412");
  CHECK(codes(bad) == "position");
  CHECK_FALSE(last<Landmark>(bad).position);
  CHECK(last<Landmark>(bad).elevation);
}

TEST_CASE("landmarks may be called like anything") {
  for (const std::string name : {"N2", "12", "elevation", "E", "44"}) {
    CAPTURE(name);
    const auto book = read("landmark " + name + " 44.6502S 169.0314E elevation 1412");
    CHECK(codes(book) == "");
    CHECK(book.names.shown(last<Landmark>(book).name) == name);
    CHECK(last<Landmark>(book).position);
    CHECK(last<Landmark>(book).elevation);
  }
}

TEST_CASE("a time of day is hours and minutes") {
  const auto time = [](const char* typed) {
    const auto clock = last<Clock>(read_line(std::string("time ") + typed)).time;
    return clock.hour * 60 + clock.minute;
  };
  CHECK(time("09:40") == 580);
  CHECK(time("00:00") == 0);
  CHECK(time("23:59") == 1439);
  for (const char* const typed : {"9.40", "24:00", "09:60", "0940", "09:4", "9h40", "-1:00", ""}) {
    CAPTURE(typed);
    const auto book = read_line(std::string("time ") + typed);
    REQUIRE(book.diagnostics.size() == 1);
    const bool empty = std::string_view(typed).empty();
    CHECK(codes(book) == (empty ? "incomplete" : "time"));
    CHECK(all<Clock>(book).empty());
  }
}

TEST_CASE("position, elevation and time are stated once a station") {
  CHECK(places(read("station Q1 at 44.6891S 169.0144E\n  at 44.6903S 169.0152E\n")) ==
        "2:3-24 already-stated");
  CHECK(codes(read("station Q1\nat 44.6891S 169.0144E\nat 44.6891S 169.0144E")) ==
        "already-stated");
  CHECK(codes(read_line("elevation 812\nelevation 813")) == "already-stated");
  CHECK(codes(read_line("time 09:40\ntime 09:41")) == "already-stated");
  // Each station has its own, and one that could not be read may be stated again.
  CHECK(codes(read("station A\ntime 09:40\nstation B\ntime 09:41")) == "");
  CHECK(codes(read_line("time 0940\ntime 09:40")) == "time");
  CHECK(codes(read("station Q1 at 94S 169E\nat 44.6891S 169.0144E")) == "position");

  const auto book = read("station Q1\ntime 09:40\ntime 09:41");
  REQUIRE(book.diagnostics.at(0).related.size() == 1);
  CHECK(book.diagnostics[0].related[0].place.line == 2);
}

TEST_CASE("a landmark is declared once, a station may come back") {
  const auto mark = read("landmark Cairn\nlandmark CAIRN\n");
  CHECK(places(mark) == "2:10-15 already-stated");
  CHECK(mark.diagnostics[0].related.at(0).place.line == 1);
  const auto book = read("station Q1\nstation Q2\nstation q1\n");
  CHECK(places(book) == "3:9-11 station-repeated");
  CHECK(book.diagnostics[0].severity == notebook::Severity::warning);
  CHECK(book.diagnostics[0].related.at(0).place.line == 1);
  CHECK(all<StationHeading>(book).size() == 3);
  CHECK(station_name(book) == "Q1");  // shown as first written
  // A station and a landmark may share a name.
  CHECK(codes(read("landmark Q1\nstation Q1\n")) == "");
}

TEST_CASE("readings before the first station are warned of once") {
  const auto book = read("bedding N78E 41N\nlineation N50W 35\nstation Q1\nbedding N78E 41N\n");
  CHECK(places(book) == "1:1-8 reading-outside-station");
  CHECK(book.diagnostics[0].severity == notebook::Severity::warning);
  for (const notebook::Reading& reading : all<notebook::Reading>(book))
    CHECK_FALSE(reading.rejected);
}

TEST_CASE("readings under a broken station line belong to no station above") {
  const auto book = read("station Q1\nstation >\nbedding N78E 41N\n");
  CHECK(codes(book) == "name");
  CHECK(all<StationHeading>(book).size() == 2);
  CHECK(station_name(book) == "");
}

TEST_CASE("a misspelt station line begins a station without a name") {
  for (const std::string line : {"staton C", "stn C", "station: C", "Stat. C", "sta C at 44S 169E",
                                 "stations C", "station,C"}) {
    CAPTURE(line);
    const auto book =
        read("station Q1 at 44S 169E\n" + line + "\nat 45S 170E\nbedding N62E 37NW\n");
    REQUIRE(codes(book) == "unknown-word");
    CHECK(book.diagnostics[0].help.starts_with("station?"));
    CHECK(all<StationHeading>(book).size() == 2);
    CHECK(station_name(book) == "");
    CHECK(all<At>(book).size() == 1);
  }
}

TEST_CASE("a word that is not near station begins none") {
  for (const std::string line : {"st C", "stretch C", "stop C"}) {
    CAPTURE(line);
    const auto book = read("station Q1\n" + line + "\n");
    CHECK(codes(book) == "unknown-word");
    CHECK(all<StationHeading>(book).size() == 1);
  }
}

TEST_CASE("a sample has a name and free text") {
  const auto book = read_line("sample Q1-a garnet band; # not a comment");
  CHECK(codes(book) == "");
  const auto sample = last<Sample>(book);
  CHECK(text(book, sample.name) == "Q1-a");
  CHECK(text(book, sample.text) == "garnet band; # not a comment");
  const auto bare = read_line("sample 7");
  CHECK(text(bare, last<Sample>(bare).name) == "7");
  CHECK(last<Sample>(bare).text.empty());
}

TEST_CASE("a tally counts stations, readings or both") {
  const auto both = last<Tally>(read("tally 14 stations 63 readings"));
  CHECK(both.stations == 14u);
  CHECK(both.readings == 63u);
  const auto turned = last<Tally>(read("tally 63 readings 14 stations"));
  CHECK(turned.stations == 14u);
  CHECK(turned.readings == 63u);
  const auto one = last<Tally>(read("Tally 1 station 1 reading"));
  CHECK(one.stations == 1u);
  CHECK(one.readings == 1u);
  const auto none = last<Tally>(read("tally 0 readings"));
  CHECK(none.readings == 0u);
  CHECK_FALSE(none.stations);
  CHECK(codes(read("tally")) == "incomplete");
  CHECK(codes(read("tally 14")) == "incomplete");
  CHECK(codes(read("tally 14 rocks")) == "unknown-word");
  CHECK(codes(read("tally fourteen stations")) == "number");
  CHECK(codes(read("tally 1.5 stations")) == "number");
  CHECK(codes(read("tally -1 stations")) == "number");
  CHECK(codes(read("tally 1,412 readings")) == "decimal-comma");
  CHECK(codes(read("tally 14 stations 15 stations")) == "unknown-word");
}

TEST_CASE("sights and legs may name what is declared later") {
  const auto book =
      read("station A\nsight Cairn N66W\nleg N14E 5m to B\nstation B\nlandmark Cairn");
  CHECK(codes(book) == "");
  CHECK(book.names.size() == 3);
}

}  // namespace
}  // namespace lodebook::test
