// SPDX-License-Identifier: MIT
#include "fair_copy/page_writer.hpp"

#include <algorithm>
#include <cctype>

namespace lodebook::test {
namespace {

/// An azimuth with the three digits that make it one.
std::string azimuth(double degrees) {
  std::string text = plain_figure(turned(degrees));
  const std::size_t digits = std::min(text.find('.'), text.size());
  return text.insert(0, digits < 3 ? 3 - digits : 0, '0');
}

std::string meant_plane(Surface surface) {
  if (surface.dip >= 90) return "vertical " + azimuth(surface.strike);
  return plain_figure(surface.dip) + " > " + azimuth(surface.strike + 90);
}

bool is_one_of(const KindWords& kind, std::initializer_list<std::string_view> kinds) {
  return std::ranges::find(kinds, kind.kind) != kinds.end();
}

}  // namespace

void PageWriter::line(std::string_view text) {
  page_.text.append(text).append("\n");
  ++line_;
}

void PageWriter::means(std::string_view statement) {
  page_.truth.append(statement).append("\n");
}

void PageWriter::put(std::string_view kind, const Figures& figures, const Tail& tail) {
  Known known;
  known.line = line_;
  known.offset = page_.text.size();
  known.length = figures.typed.size();
  known.stands_alone = figures.stands_alone && figures.meant;
  if (figures.meant) {
    known.canonical = std::string(kind) + " " + *figures.meant + tail.meant;
    means(known.canonical);
  }
  page_.readings.push_back(known);
  page_.text += figures.typed + tail.typed;
}

// ---- readings

Surface PageWriter::near() {
  const double strike = about_.strike + static_cast<double>(draw_.below(13)) - 6;
  const double dip = about_.dip + static_cast<double>(draw_.below(9)) - 4;
  return {turned(half(strike)), half(dip)};
}

PageWriter::Figures PageWriter::good_plane(Surface surface) {
  return {pen_.plane(surface), meant_plane(surface)};
}

PageWriter::Figures PageWriter::mistaken_plane(Surface surface) {
  if (hand_.planes == PlaneHabit::strike_dip_side && draw_.one_in(2)) {
    surface.strike = turned(45.0 * static_cast<double>(draw_.below(8)) +
                            static_cast<double>(draw_.below(31)) - 15);
    return {pen_.impossible_plane(surface), {}, false};
  }
  surface.dip = 91 + static_cast<double>(draw_.below(9));
  return {pen_.plane(surface), {}, false};
}

PageWriter::Figures PageWriter::plane_figures(const KindWords& kind) {
  if (is_one_of(kind, {"joint", "vein", "dike"}) && draw_.one_in(12)) {
    const double strike = near().strike;
    const std::string end = pen_.bearing(pen_.either_end(strike));
    const bool says_strike = hand_.planes >= PlaneHabit::dip_towards || draw_.one_in(2);
    return {(says_strike ? "vertical, strike " : "vertical ") + end, "vertical " + azimuth(strike)};
  }
  if (kind.kind == "bedding" && draw_.one_in(20))
    return {draw_.one_in(2) ? "horizontal" : "flat", "horizontal", false};
  if (draw_.one_in(40)) return mistaken_plane(near());
  return good_plane(near());
}

std::string PageWriter::kind_word(const KindWords& kind) {
  std::string word(draw_.any(kind.written));
  if (hand_.upper_case_kinds)
    std::ranges::transform(word, word.begin(),
                           [](char c) { return static_cast<char>(std::toupper(c)); });
  return word;
}

std::string PageWriter::remark() {
  const std::string_view remark = draw_.any(remarks);
  const bool starts_with_figure = std::isdigit(static_cast<unsigned char>(remark[0])) != 0;
  // Spaces alone would leave one figure beside another.
  if (hand_.before_remark == "  " && starts_with_figure) return ", " + std::string(remark);
  std::string text(hand_.before_remark);
  text += remark;
  return hand_.before_remark == " (" ? text + ")" : text;
}

PageWriter::Tail PageWriter::tail(const KindWords& kind, bool may_face) {
  Tail tail;
  facing_above_ = "";
  const std::string gap = draw_.one_in(2) ? " " : ", ";
  if (draw_.one_in(12)) {
    tail = {std::string(hand_.doubt), " doubtful"};
  } else if (kind.has_sense && draw_.one_in(4)) {
    const Said& sense = draw_.any(senses);
    tail = {gap + std::string(sense.written), " " + std::string(sense.word)};
  } else if (may_face && kind.kind == "bedding" && draw_.one_in(4)) {
    const Said& facing = draw_.any(facings);
    tail = {gap + std::string(facing.written), " " + std::string(facing.word)};
    facing_above_ = facing.word;
  }
  if (!draw_.one_in(5)) return tail;
  tail.typed += remark();
  facing_above_ = "";
  return tail;
}

void PageWriter::one_plane(const KindWords& kind, const Figures& figures) {
  const bool is_inclined = figures.meant && figures.meant->starts_with("horizontal") == false;
  if (!draw_.one_in(25) || !figures.meant) {
    put(kind.kind, figures, tail(kind, is_inclined));
    return;
  }
  facing_above_ = "";
  const std::size_t times = 2 + draw_.below(2);
  Figures again{"", figures.meant, false};
  put(kind.kind, {figures.typed, figures.meant, false});
  for (std::size_t more = 1; more < times; ++more)
    put(kind.kind, again);
  page_.text += " x" + std::to_string(times);
}

void PageWriter::list_of_planes(const KindWords& kind, bool may_be_many) {
  const std::size_t count = may_be_many && draw_.one_in(3) ? 2 + draw_.below(2) : 1;
  if (count == 1) return one_plane(kind, plane_figures(kind));
  facing_above_ = "";
  for (std::size_t i = 0; i < count; ++i) {
    if (i > 0) page_.text += hand_.between;
    put(kind.kind, good_plane(near()));
  }
}

void PageWriter::repeated_facing(const KindWords& kind) {
  put(kind.kind, good_plane(near()),
      {"  " + std::string(hand_.ditto), " " + std::string(facing_above_)});
}

// ---- the planes of a station

void PageWriter::planes_by_line() {
  for (std::size_t kinds = 1 + draw_.below(3); kinds > 0; --kinds) {
    const KindWords& kind = draw_.any(plane_kinds);
    about_ = {static_cast<double>(draw_.below(360)), 12 + static_cast<double>(draw_.below(70))};
    const bool by_marks = draw_.one_in(2);
    const std::size_t lines = 1 + draw_.below(4);
    facing_above_ = "";
    for (std::size_t i = 0; i < lines; ++i) {
      const bool ditto = i > 0 && by_marks;
      page_.text += ditto ? std::string(hand_.ditto) : kind_word(kind);
      page_.text += hand_.behind_kind == ": " && ditto ? "  " : hand_.behind_kind;
      if (ditto && !facing_above_.empty() && draw_.one_in(2))
        repeated_facing(kind);
      else
        list_of_planes(kind, true);
      line();
    }
    if (kind.kind == "fault" || kind.kind == "joint") rake();
  }
}

void PageWriter::planes_by_heading() {
  for (std::size_t kinds = 1 + draw_.below(2); kinds > 0; --kinds) {
    const KindWords& kind = draw_.any(plane_kinds);
    about_ = {static_cast<double>(draw_.below(360)), 12 + static_cast<double>(draw_.below(70))};
    page_.text += kind_word(kind);
    line(draw_.one_in(2) ? ":" : "");
    for (std::size_t lines = 2 + draw_.below(4); lines > 0; --lines) {
      page_.text += hand_.bullet;
      list_of_planes(kind, true);
      line();
    }
  }
}

void PageWriter::table_header() {
  const std::string cell(hand_.cell);
  std::string columns = "strike" + cell + "dip" + cell + "side";
  if (hand_.planes == PlaneHabit::strike_dip_by_rule) columns = "strike" + cell + "dip";
  if (hand_.planes == PlaneHabit::dip_towards || hand_.planes == PlaneHabit::dip_direction_pair)
    columns = "dip" + cell + "dip dir";
  if (hand_.planes == PlaneHabit::direction_dip_pair) columns = "dip dir" + cell + "dip";
  line("kind" + cell + columns + cell + "remarks");
}

void PageWriter::table_row(const KindWords& kind, bool ditto) {
  const std::string cell(hand_.cell);
  const Surface surface = near();
  const double direction = turned(surface.strike + 90);
  page_.text += ditto ? std::string(hand_.ditto) : kind_word(kind);
  page_.text += cell;
  std::string typed;
  switch (hand_.planes) {
    case PlaneHabit::strike_dip_by_rule:
      typed = pen_.bearing(surface.strike + (hand_.left_hand ? 180 : 0)) + cell +
              pen_.slope(surface.dip);
      break;
    case PlaneHabit::dip_towards:
    case PlaneHabit::dip_direction_pair:
      typed = pen_.slope(surface.dip) + cell + pen_.bearing(direction);
      break;
    case PlaneHabit::direction_dip_pair:
      typed = pen_.bearing(direction) + cell + pen_.slope(surface.dip);
      break;
    default:
      typed = pen_.bearing(pen_.either_end(surface.strike)) + cell + pen_.slope(surface.dip) +
              cell + pen_.point(direction);
  }
  Tail tail;
  if (draw_.one_in(4)) tail.typed = cell + std::string(draw_.any(remarks));
  put(kind.kind, {typed, meant_plane(surface)}, tail);
  line();
}

void PageWriter::table() {
  if (station_ == 1 || draw_.one_in(2)) table_header();
  for (std::size_t kinds = 1 + draw_.below(3); kinds > 0; --kinds) {
    const KindWords& kind = draw_.any(plane_kinds);
    about_ = {static_cast<double>(draw_.below(360)), 12 + static_cast<double>(draw_.below(70))};
    const bool by_marks = draw_.one_in(2);
    for (std::size_t row = 0, rows = 1 + draw_.below(4); row < rows; ++row)
      table_row(kind, row > 0 && by_marks);
  }
}

// ---- lines, sights, legs, notes

void PageWriter::line_reading() {
  const KindWords& kind = draw_.any(line_kinds);
  const Axis axis{half(static_cast<double>(draw_.below(360))),
                  half(4 + static_cast<double>(draw_.below(60)))};
  page_.text += kind_word(kind);
  page_.text += hand_.behind_kind;
  put(kind.kind, {pen_.line(axis), plain_figure(axis.plunge) + " > " + azimuth(axis.trend)},
      tail(kind, false));
  line();
}

/// In a plane written just for it, which must be a good one.
void PageWriter::rake() {
  if (!draw_.one_in(2)) return;
  const KindWords& plane = plane_kinds[draw_.one_in(2) ? 4 : 5];
  const Surface surface = near();
  page_.text += kind_word(plane);
  page_.text += hand_.behind_kind;
  put(plane.kind, {pen_.plane(surface), meant_plane(surface), false});
  line();
  const double end = pen_.either_end(surface.strike);
  const std::string from(nearest_point(end));
  const std::string rake = plain_figure(10 + static_cast<double>(draw_.below(70)));
  page_.text += draw_.one_in(2) ? "  slicks on it " : "slickenlines ";
  put("slickenline", {(draw_.one_in(2) ? "pitch " : "rake ") + rake + " from " + from,
                      "rake " + rake + " from " + from, false});
  line();
}

void PageWriter::sights() {
  if (!sight_word_) return;
  page_.text += *sight_word_;
  for (std::size_t i = 0, count = 1 + draw_.below(std::size(marks)); i < count; ++i) {
    const std::string name(marks[i]);
    const double bearing = half(static_cast<double>(draw_.below(360)));
    page_.text += (i > 0 ? ", " : "") + name + " ";
    put("sight", {pen_.bearing(bearing), name + " " + azimuth(bearing)});
  }
  line();
}

void PageWriter::leg() {
  const double bearing = static_cast<double>(draw_.below(360));
  const std::string next = std::to_string(station_ + 1);
  static constexpr std::string_view units[] = {" m", "m", " ft", " paces"};
  const std::string_view unit = draw_.any(units);
  const std::string figure = std::to_string(20 + draw_.below(180));
  const bool has_back = draw_.one_in(2);
  const double back = bearing + 178 + static_cast<double>(draw_.below(5));
  page_.text += draw_.one_in(2) ? "leg to " : "to ";
  page_.text += next + (hand_.quadrant && draw_.one_in(2) ? " " : ": ");
  std::string typed = pen_.bearing(bearing) + " " + figure + std::string(unit);
  std::string meant = azimuth(bearing) + " " + figure + std::string(unit);
  if (unit == " m" || unit == " ft") meant.erase(meant.rfind(' '), 1);
  if (has_back) {
    typed += (draw_.one_in(2) ? " back " : ", back ") + pen_.bearing(back);
    meant += " back " + azimuth(back);
  }
  put("leg", {typed, meant + " to " + next});
  line();
}

void PageWriter::some_notes() {
  for (std::size_t count = draw_.below(3); count > 0; --count)
    line(draw_.any(notes));
}

void PageWriter::station(bool leads_on) {
  ++station_;
  station_heading();
  some_notes();
  switch (hand_.layout) {
    case Layout::kind_first:
      planes_by_line();
      break;
    case Layout::kind_as_heading:
      planes_by_heading();
      break;
    case Layout::table:
      table();
      break;
  }
  // A line under a heading or a table is a paragraph of its own.
  if (hand_.layout != Layout::kind_first) line();
  for (std::size_t lines = draw_.below(3); lines > 0; --lines)
    line_reading();
  sights();
  some_notes();
  if (leads_on && draw_.one_in(2)) leg();
  line();
}

}  // namespace lodebook::test
