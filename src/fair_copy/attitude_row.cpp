// SPDX-License-Identifier: MIT
// Attitudes in columns, put into words for the readers of lines.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>
#include <utility>

#include "row.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

/// A cell of angles: a figure, or a word for a plane that is upright or level.
enum class Angle : std::uint8_t {
  none,
  figure,
  vertical,
  horizontal,
  nearly_vertical,
  nearly_level
};

Angle angle_in(std::string_view cell, const Words& words) {
  const std::string text = folded(cell);
  if (const auto word = words.find(text)) {
    if (word->meaning == Meaning::vertical) return Angle::vertical;
    if (word->meaning == Meaning::horizontal) return Angle::horizontal;
  }
  if (has_digit(text)) return Angle::figure;
  if (text.find("vert") != std::string::npos) return Angle::nearly_vertical;
  if (text.find("horiz") != std::string::npos || text.find("flat") != std::string::npos)
    return Angle::nearly_level;
  return Angle::none;
}

class AttitudeRow {
 public:
  AttitudeRow(Row& row, TableState& table, Page& page) : row_(row), table_(table), page_(page) {}

  std::optional<Lines> lines() {
    if (!has_reading()) return std::nullopt;
    if (auto mean = mean_in(row_, page_.words)) return mean;
    const bool is_line = row_.peek(Column::strike).empty() && row_.peek(Column::dip).empty() &&
                         row_.peek(Column::direction).empty();
    kind_ = kind_in(row_.take(Column::kind), !is_line, table_, page_);
    take_set(!is_line);
    take_on();
    if (kind_.kind.empty()) ask_about_kind();
    if (kind_.kind.empty()) kind_.kind = page_.list_kind;
    if (kind_.kind.empty()) kind_.kind = table_.kind.empty() ? page_.kind : table_.kind;
    // Sets are of joints, nearly always.
    if (kind_.kind.empty() && row_.has(Column::set)) {
      kind_.kind = "joint";
      is_invented_ = true;
      ask("of which kind are the sets?");
    }
    std::string first = plane();
    std::string second;
    if (first.empty()) {
      first = line_words();
    } else {
      second = line_words();
    }
    return stated(first, second);
  }

 private:
  bool has_reading() const {
    return std::ranges::any_of(row_.fields(), [&](const Field& field) {
      const bool counts = is_angle(field.column) || is_bearing(field.column);
      return counts &&
             (has_digit(field.text) ||
              (is_angle(field.column) && angle_in(field.text, page_.words) != Angle::none));
    });
  }
  void ask(std::string question) {
    if (question_.empty()) question_ = std::move(question);
  }
  bool is_line_kind() const { return !kind_.kind.empty() && !is_plane(page_, kind_.kind); }

  void take_on() {
    for (const Token& token : tokens_of(row_.peek(Column::on), page_.words, false)) {
      if (!token.is(Meaning::kind)) continue;
      row_.take(Column::on);
      kind_.on = token.says;
    }
  }
  /// An empty cell below others may be the same, or forgotten.
  void ask_about_kind() {
    if (!row_.has(Column::kind) && !row_.has(Column::set)) return;
    const std::string_view set = row_.peek(Column::set);
    if (row_.has(Column::kind) || set.empty() || !has_digit(set))
      ask(set.empty() ? std::string("its kind is left out")
                      : fmt::format("'{}': of which kind?", set));
  }
  /// `J1` is a kind where the page says so, `2` is a number.
  void take_set(bool is_plane) {
    const std::string_view set = row_.peek(Column::set);
    if (set.empty() || !kind_.kind.empty() || !names_kind(set)) return;
    kind_ = kind_in(row_.take(Column::set), is_plane, table_, page_);
  }
  bool names_kind(std::string_view cell) const {
    return std::ranges::any_of(tokens_of(cell, page_.words, false),
                               [](const Token& token) { return token.is(Meaning::kind); });
  }

  // ---- the plane

  std::string plane() {
    std::string strike = row_.take(Column::strike);
    std::string dip = row_.take(Column::dip);
    std::string direction = row_.take(Column::direction);
    std::string bearing;
    if (strike.empty() && direction.empty() && !dip.empty()) bearing = row_.take(Column::bearing);
    turn_back(direction, dip);
    turn_back(strike, dip);
    if (strike.empty() && direction.empty() && bearing.empty() && dip.empty()) return {};
    ask_about_digits(strike, 3);
    ask_about_digits(direction, 3);
    ask_about_digits(dip, 2);
    if (is_line_kind()) return line_in_plane_columns(strike, direction, bearing, dip);
    const Angle angle = angle_in(dip, page_.words);
    if (angle == Angle::nearly_vertical || angle == Angle::nearly_level)
      ask(fmt::format("'{}': how steep?", dip));
    if (angle == Angle::horizontal || angle == Angle::nearly_level) return "horizontal";
    if (dip.empty()) return without_dip(strike, direction);
    if (angle == Angle::none) ask(fmt::format("'{}': how steep?", dip));
    const bool is_vertical = angle == Angle::vertical || angle == Angle::nearly_vertical;
    if (is_vertical) dip = "90";
    const std::string side = side_of(strike, direction);
    if (!strike.empty()) {
      if (is_vertical && side.empty()) return "vertical " + strike;
      return fmt::format("strike {} dip {} {}", strike, dip, side);
    }
    if (!direction.empty()) check_direction(direction);
    if (!direction.empty()) return fmt::format("dip direction {} dip {}", direction, dip);
    // An azimuth of a plane: the page's order says what of.
    if (!bearing.empty()) return fmt::format("{}/{}", bearing, dip);
    ask("a dip alone? its strike is missing");
    return "dip " + dip;
  }

  /// `7?` where two digits should stand.
  void ask_about_digits(std::string_view cell, std::size_t usual) {
    const std::size_t end = std::min(cell.find_first_not_of("0123456789"), cell.size());
    if (end > 0 && end < usual && end < cell.size() && cell[end] == '?')
      ask(fmt::format("'{}': is a digit missing?", cell));
  }

  /// `N171/74` under `dip/dd`.
  void turn_back(std::string& bearing, std::string& angle) {
    if (bearing.empty() || angle.empty()) return;
    const Tokens a = tokens_of(bearing, page_.words, false);
    const Tokens b = tokens_of(angle, page_.words, false);
    if (a.size() != 1 || b.size() != 1 || !a.front().is_figure()) return;
    const bool short_angle = a.front().digits <= 2 && a.front().value <= 90;
    const bool is_bearing =
        b.front().type == Type::bearing || (b.front().is_figure() && b.front().digits == 3);
    if (!short_angle || !is_bearing) return;
    ask(fmt::format("{} and {} are the other way round than the heading says", bearing, angle));
    std::swap(bearing, angle);
  }

  std::string line_in_plane_columns(const std::string& strike, const std::string& direction,
                                    const std::string& bearing, const std::string& dip) const {
    const std::string& trend = !strike.empty() ? strike : !direction.empty() ? direction : bearing;
    if (trend.empty()) return dip.empty() ? std::string() : "plunge " + dip;
    if (dip.empty()) return "trend " + trend;
    return fmt::format("trend {} plunge {}", trend, dip);
  }

  std::string without_dip(const std::string& strike, const std::string& direction) {
    if (strike.empty() && direction.empty()) return {};
    ask("its dip is missing");
    return strike.empty() ? "dip direction " + direction + " dip 0"
                          : fmt::format("strike {}", strike);
  }

  /// As typed, or by the dip direction beside a strike.
  std::string side_of(const std::string& strike, const std::string& direction) {
    std::string side = row_.take(Column::side);
    const Field* const point = unplaced_point(row_, page_.words);
    if (side.empty() && direction.empty() && !strike.empty() && point) {
      side = point->text;
      ask(fmt::format("is {} of the column '{}' its side?", side, point->heading->name));
    }
    if (!side.empty() || strike.empty() || direction.empty()) return side;
    const auto degrees = read_decimal(direction);
    return degrees ? std::string(name_of(nearest_eighth(*degrees))) : direction;
  }

  /// A point beside it, in a column that nobody knows, says otherwise.
  void check_direction(const std::string& direction) {
    const Field* const point = unplaced_point(row_, page_.words);
    const auto degrees = read_decimal(direction);
    if (!point || !degrees) return;
    const auto side = point_named(tokens_of(point->text, page_.words, false).front().text);
    if (side && std::abs(std::remainder(*degrees - degrees_of(*side), 360.0)) > 67.5)
      ask(fmt::format("does it dip to {}, and is {} its strike?", point->text, direction));
  }

  // ---- the line

  std::string line_words() {
    const std::string rake = row_.take(Column::rake);
    if (has_digit(rake)) return fmt::format("rake {}{}", rake, end_of_rake(rake));
    std::string trend = row_.take(Column::trend);
    if (trend.empty() && !row_.peek(Column::plunge).empty()) trend = row_.take(Column::bearing);
    std::string plunge = row_.take(Column::plunge);
    turn_back(trend, plunge);
    const Angle angle = angle_in(plunge, page_.words);
    if (angle == Angle::vertical) return "vertical";
    if (angle == Angle::horizontal) plunge = std::string(1, '0');
    if (!trend.empty() && !plunge.empty()) return fmt::format("trend {} plunge {}", trend, plunge);
    if (trend.empty() && plunge.empty()) return {};
    if (plunge.empty()) return "trend " + trend;
    ask("its trend is missing");
    return "plunge " + plunge;
  }

  std::string end_of_rake(std::string_view rake) {
    const std::string end = row_.take(Column::end);
    const bool says = rake.find("from") != std::string_view::npos || end.empty();
    return says ? std::string() : " from " + end;
  }

  /// A line that stands beside its plane, by the heading of its column or by the plane.
  std::string second_kind(const std::string& plane) {
    if (!table_.rake_kind.empty()) return table_.rake_kind;
    if (plane != "fault" && plane != "shear") ask_second_ = "which kind of line is it?";
    return "slickenline";
  }

  // ---- what is said of it

  /// In its own column a point is where the beds young to, and `up` the way up.
  std::string facing() {
    const std::string cell = row_.take(Column::facing);
    if (cell.empty()) return {};
    const std::string text = folded(cell);
    if (text == "up" || text == "right" || text == "normal") return " upright";
    const Tokens tokens = tokens_of(cell, page_.words, false);
    if (tokens.size() == 1 && tokens.front().type == Type::point) return " youngs " + cell;
    const bool says = std::ranges::any_of(tokens, [](const Token& token) {
      return token.is(Meaning::facing) || token.is(Meaning::youngs);
    });
    if (!says) ask(fmt::format("'{}': which way up?", cell));
    return " " + cell;
  }

  std::string said() {
    std::string words;
    words += facing();
    SenseCell sense = sense_in(row_.take(Column::sense), table_, page_);
    if (!sense.words.empty()) words += " " + sense.words;
    remark_ = both(std::move(remark_), sense.remark);
    if (!sense.question.empty()) ask(std::move(sense.question));
    spoken_ = take_spoken(row_, page_.words);
    return words + ", " + spoken_;
  }

  // ---- its statements

  Lines stated(const std::string& first, const std::string& second) {
    if (std::string why = doubt_in(row_, page_.words); !why.empty()) ask(std::move(why));
    remark_ = kind_.remark;
    std::string words = fmt::format("{} {}", kind_.kind, first);
    if (!kind_.on.empty()) words += " on " + kind_.on;
    words += said();
    Lines lines;
    add_place(row_, table_, page_, lines);
    const std::size_t head = lines.size();
    add_reading(words, lines);
    // Figures that are left over in a remark may be of the row's own reading.
    const auto asked = std::find_if(lines.begin() + static_cast<std::ptrdiff_t>(head), lines.end(),
                                    [](const Line& line) { return line.is_question(); });
    if (asked != lines.end() && !names_kind(spoken_)) ask("see the other reading of this row");
    if (!question_.empty()) {
      for (std::size_t i = head; i < lines.size(); ++i) {
        if (lines[i].readings > 0) fair_copy::ask(lines[i], question_);
      }
    }
    if (is_invented_) page_.kind.clear();
    number_row();
    const std::size_t plane = lines.size() - 1;
    if (!second.empty()) add_second(second, lines);
    ask_about_columns(row_, table_, page_.words, lines);
    add_remark(lines[plane], both(remark_, row_.rest()));
    return lines;
  }

  void add_reading(const std::string& words, Lines& lines) {
    Tokens tokens = tokens_of(words, page_.words, false);
    if (const auto readings = readings_of(words, tokens, page_)) {
      lines.insert(lines.end(), readings->begin(), readings->end());
    } else {
      lines.emplace_back().text = fmt::format("ask note {}  ; what is read here?", stripped(words));
    }
  }

  /// The line in the plane before it.
  void add_second(const std::string& words, Lines& lines) {
    const bool plane_stands = !lines.back().is_question();
    const std::string kind = page_.kind;
    const std::size_t at = lines.size();
    add_reading(fmt::format("{} {}", second_kind(kind), words), lines);
    if (!ask_second_.empty()) fair_copy::ask(lines.back(), ask_second_);
    const bool is_rake = words.starts_with("rake");
    for (std::size_t i = at; i < lines.size() && is_rake && !plane_stands; ++i) {
      if (lines[i].readings > 0) fair_copy::ask(lines[i], "its plane is asked");
    }
    page_.kind = kind;
  }

  void number_row() {
    for (const Field& field : row_.fields()) {
      if (field.column == Column::index && !field.text.empty())
        table_.kinds[field.text] = page_.kind;
    }
  }

  Row& row_;
  TableState& table_;
  Page& page_;
  KindCell kind_;
  std::string remark_;
  std::string question_;
  std::string ask_second_;
  std::string spoken_;        ///< of its other cells, what may be about it
  bool is_invented_ = false;  ///< its kind stands nowhere
};

}  // namespace

std::optional<Lines> attitudes_of(Row& row, TableState& table, Page& page) {
  return AttitudeRow(row, table, page).lines();
}

}  // namespace lodebook::fair_copy
