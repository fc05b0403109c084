// SPDX-License-Identifier: MIT
// What random pages say before their readings, and at the head of each station.
#include <cstdio>

#include "fair_copy/page_writer.hpp"

namespace lodebook::test {
namespace {

constexpr std::string_view months[] = {"Mar", "April", "May", "June", "July", "Aug", "Sept"};

}  // namespace

void PageWriter::heading() {
  const std::string_view area = draw_.any(areas);
  means("area " + std::string(area));
  line(area);
  date();
  means(hand_.quadrant ? "dial quadrant" : "dial azimuth");
  static constexpr std::string_view azimuths[] = {"azimuth compass", "compass 0-360",
                                                  "Azimuth compass, 0-360"};
  line(hand_.quadrant ? "quadrant compass" : draw_.any(azimuths));
  declination();
  orders();
  means("pace 0.75m");
  line(draw_.one_in(2) ? "pace 0.75 m" : "my pace = 0.75 m");
  // Positions are few: a fix at each station takes longer than all the rest.
  if (draw_.one_in(8))
    landmarks();
  else if (draw_.one_in(2))
    marks_to_be_found();
  line();
}

void PageWriter::date() {
  const std::size_t month = draw_.below(std::size(months));
  const std::string day = std::to_string(13 + draw_.below(16));
  const std::string name(months[month]);
  means("date 2026-0" + std::to_string(month + 3) + "-" + day);
  switch (draw_.below(4)) {
    case 0:
      return line(day + " " + name + " 2026");
    case 1:
      return line(name + " " + day + ", 2026");
    case 2:
      return line(day + "." + std::to_string(month + 3) + ".2026");
    default:
      return line("2026-0" + std::to_string(month + 3) + "-" + day);
  }
}

void PageWriter::declination() {
  const std::string figure = plain_figure(half(1 + static_cast<double>(draw_.below(24))));
  const std::string letter = draw_.one_in(2) ? "E" : "W";
  const std::string typed = figure + (draw_.one_in(2) ? " " : "") + letter;
  static constexpr std::string_view is_set[] = {", set on the compass", ", already turned in",
                                                ", set on the dial"};
  static constexpr std::string_view not_set[] = {", nothing set on the compass", ", not set",
                                                 ", dial set to 0"};
  static constexpr std::string_view words[] = {"decl. ", "declination ", "Decl ",
                                               "magnetic declination "};
  const bool set = draw_.one_in(2);
  means(set ? "set " + figure + letter : "set 0");
  means(set ? "declination as-set" : "declination " + figure + letter);
  line(std::string(draw_.any(words)) + typed + std::string(draw_.any(set ? is_set : not_set)));
}

void PageWriter::orders() {
  using enum PlaneHabit;
  if (hand_.planes == strike_dip_by_rule) {
    means(hand_.left_hand ? "rule left" : "rule right");
    line(hand_.left_hand ? "left hand rule" : "right hand rule");
  }
  if (hand_.quadrant) return;
  const bool by_strike = hand_.planes == strike_dip_side || hand_.planes == strike_dip_by_rule ||
                         hand_.planes == words;
  if (by_strike) {
    means("order strike/dip");
    line("planes strike/dip");
  } else if (hand_.planes == direction_dip_pair) {
    means("order direction/dip");
    line(draw_.one_in(2) ? "planes: dip direction/dip" : "planes dip direction / dip");
  } else {
    means("order dip/direction");
    line(draw_.one_in(2) ? "planes: dip/dip direction" : "all planes dip/dip direction");
  }
  const bool plunge_first =
      hand_.lines == LineHabit::plunge_trend || hand_.lines == LineHabit::plunge_towards;
  means(plunge_first ? "order plunge/trend" : "order trend/plunge");
  line(plunge_first ? "lines plunge/trend" : "lines trend/plunge");
}

std::string PageWriter::position() {
  char text[64];
  const int south = static_cast<int>(440000 + draw_.below(9000));
  const int east = static_cast<int>(1690000 + draw_.below(9000));
  static constexpr const char* forms[] = {"%d.%04dS %d.%04dE", "%d.%04d S, %d.%04d E",
                                          "-%d.%04d, %d.%04d", "-%d.%04d %d.%04d"};
  std::snprintf(text, sizeof text, draw_.any(forms), south / 10000, south % 10000, east / 10000,
                east % 10000);
  return text;
}

void PageWriter::marks_to_be_found() {
  sight_word_ = draw_.one_in(2) ? "sight " : "sight to ";
  for (const std::string_view mark : marks)
    means("landmark " + std::string(mark));
}

void PageWriter::landmarks() {
  sight_word_ = draw_.one_in(4) ? "to " : "";
  for (std::size_t i = 0; i < 3; ++i) {
    std::string name(marks[i]);
    const std::string at = position();
    line(name + "   " + at);
    means("landmark " + name + " " + at);
  }
}

void PageWriter::station_heading() {
  // A page keeps to one word for stations, as to all its habits.
  static constexpr std::size_t words = std::size(station_words);
  const std::string name = std::to_string(station_);
  std::string text(station_words[hand_.station_word % words]);
  text += name;
  means("station " + name);
  if (draw_.one_in(3)) {
    const std::string at = position();
    means("at " + at);
    return line(text + "   " + at);
  }
  line(text + std::string(draw_.any(station_tails)));
}

}  // namespace lodebook::test
