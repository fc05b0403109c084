// SPDX-License-Identifier: MIT
// A leg or a sight in columns: from, to, bearing, distance, slope, back.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/decimal.hpp>
#include <utility>

#include "rays.hpp"
#include "row.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

/// So far a back bearing is from the opposite of its fore bearing before it is asked, and so near
/// with two digits swapped, degrees. Our own choice.
constexpr double far_apart = 5;
constexpr double too_far_apart = 20;
constexpr double near = 2;

double apart(double fore, double back) {
  return std::abs(std::remainder(fore - back - 180, 360.0));
}

/// With two digits side by side swapped it fits the other bearing: 343 for 334; empty for none.
std::string fitting_swap(const Token& token, double other) {
  const std::string& text = token.text;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    const bool digits =
        text[i] >= '0' && text[i] <= '9' && text[i + 1] >= '0' && text[i + 1] <= '9';
    if (!digits) continue;
    const double unit = i + 2 < text.size() && text[i + 2] >= '0' && text[i + 2] <= '9' ? 10 : 1;
    const double change = 9 * unit * (text[i + 1] - text[i]);
    // Towards south or on the left a quadrant bearing counts down.
    if (apart(token.value + change, other) > near && apart(token.value - change, other) > near)
      continue;
    std::string swapped = text;
    std::swap(swapped[i], swapped[i + 1]);
    return swapped;
  }
  return {};
}

class LegRow {
 public:
  LegRow(Row& row, Page& page) : row_(row), page_(page), is_leg_(row.has(Column::distance)) {}

  Lines lines() {
    Lines lines;
    Ray ray;
    ray.bearing = bearing(row_.take(Column::bearing), fore_);
    if (ray.bearing.empty()) ask("which bearing?");
    ray.back = bearing(row_.take(Column::back), back_);
    check_back();
    if (is_leg_) ray.distance = distance();
    ray.vertical = slope();
    ray.doubtful = is_doubtful_;
    take_ends(ray, lines);
    const std::string remark = row_.rest();
    FoundRays found;
    found.rays.push_back(std::move(ray));
    found.is_leg = found.says_leg = is_leg_;
    found.to_here = to_here_;
    found.question = question_;
    Lines legs = stated(std::move(found), {}, page_);
    add_remark(legs.back(), remark);
    lines.insert(lines.end(), legs.begin(), legs.end());
    return lines;
  }

 private:
  void ask(std::string question) {
    if (question_.empty()) question_ = std::move(question);
  }

  Tokens tokens(std::string_view cell) const { return tokens_of(cell, page_.words, false); }

  /// The one figure of a cell; what else it holds is a question, or doubt.
  const Token* only(const Tokens& tokens, std::string_view cell, bool may_be_point) {
    const Token* found = nullptr;
    for (const Token& token : tokens) {
      const bool counts = token.is_figure() || token.type == Type::bearing ||
                          (may_be_point && token.type == Type::point);
      if (counts && !found) {
        found = &token;
        is_doubtful_ = is_doubtful_ || token.is_rough;
        if (token.is_unclear) ask(fmt::format("'{}': what is meant?", cell));
      } else if (token.is(Meaning::doubt) || token.is(Meaning::rough)) {
        is_doubtful_ = true;
      } else if (!is_unit(token)) {
        ask(fmt::format("'{}': what is meant?", cell));
      }
    }
    return found;
  }
  bool is_unit(const Token& token) const {
    return unit_named(token.text) != Unit::none || token.is(Meaning::toward) || token.text == "°" ||
           token.text == "'" || token.is('+') || token.is('-') || token.is(Meaning::up) ||
           token.is(Meaning::down);
  }

  std::string bearing(const std::string& cell, std::optional<Token>& kept) {
    if (cell.empty()) return {};
    if (std::string minutes = with_minutes(cell); !minutes.empty()) {
      ask(fmt::format("'{}': degrees and minutes?", cell));
      return minutes;
    }
    const Tokens pieces = tokens(cell);
    const Token* const one = only(pieces, cell, true);
    if (!one) {
      ask(fmt::format("'{}': which bearing?", cell));
      return cell;
    }
    if (one->is_faulty || one->is_percent || one->has_sign)
      ask(fmt::format("'{}' is no bearing", one->text));
    const bool figure = one->is_figure();
    if (figure && (one->digits > 3 || one->value > 360))
      ask(fmt::format("{} is over 360", one->text));
    if (one->type != Type::point) kept = *one;
    // `09` is one digit short, of 090 or of 009.
    if (figure && one->digits == 2 && one->text[0] == '0')
      ask(fmt::format("{0}0, or 0{0}?", one->text));
    return figure ? azimuth_text(one->text, one->digits) : one->text;
  }

  /// `N 45 30 E` as `N45°30'E`; empty for another cell.
  std::string with_minutes(std::string_view cell) const {
    const Tokens pieces = tokens(cell);
    const bool whole = pieces.size() == 4 && pieces[1].is_figure() && pieces[2].is_figure() &&
                       pieces[1].decimals + pieces[2].decimals == 0 && pieces[2].digits == 2 &&
                       pieces[1].value < 90 && pieces[2].value < 60;
    const auto is_one_of = [&](std::size_t i, std::string_view points) {
      return pieces[i].text.size() == 1 && points.find(pieces[i].text) != std::string_view::npos;
    };
    if (!whole || !is_one_of(0, "NS") || !is_one_of(3, "EW")) return {};
    return fmt::format("{}{}°{}'{}", pieces[0].text, pieces[1].text, pieces[2].text,
                       pieces[3].text);
  }

  void check_back() {
    if (!fore_ || !back_ || fore_->is_faulty || back_->is_faulty) return;
    const double off = apart(fore_->value, back_->value);
    const std::string back = fitting_swap(*back_, fore_->value);
    const std::string swapped = back.empty() ? fitting_swap(*fore_, back_->value) : back;
    if (off > too_far_apart || (off > far_apart && !swapped.empty()))
      ask(fmt::format("back {} is {}° off{}", back_->text, trimmed_text(off, 1),
                      swapped.empty() ? "" : fmt::format(": digits swapped? {}", swapped)));
  }

  std::string distance() {
    const std::string cell = row_.take(Column::distance);
    const Tokens pieces = tokens(cell);
    const Token* const one = only(pieces, cell, false);
    if (!one) {
      ask("which distance?");
      return "?m";
    }
    if (!(one->value > 0)) ask(fmt::format("a distance of {}", one->text));
    Unit unit = one->is_minutes ? Unit::feet : Unit::none;
    for (const Token& token : pieces) {
      if (token.type == Type::word && unit == Unit::none) unit = unit_named(token.text);
    }
    if (unit == Unit::none) unit = row_.unit_of(Column::distance);
    if (unit == Unit::none) unit = page_.units.length;
    if (unit == Unit::none || unit == Unit::other) ask("in m, or in ft? the page does not say");
    if (unit != Unit::feet && unit != Unit::paces) unit = Unit::metres;
    return one->text + std::string(length_unit(unit));
  }

  std::string slope() {
    const std::string cell = row_.take(Column::slope);
    if (cell.empty()) return {};
    const Tokens pieces = tokens(cell);
    for (const Token& token : pieces) {
      if (token.is(Meaning::level) || token.is(Meaning::horizontal)) return std::string(1, '0');
    }
    const Token* const one = only(pieces, cell, false);
    if (!one) {
      ask(fmt::format("'{}': which slope?", cell));
      return {};
    }
    const bool down =
        std::ranges::any_of(pieces, [](const Token& token) { return token.is(Meaning::down); });
    const std::string text = down && !one->has_sign ? "-" + one->text : one->text;
    Unit unit = one->is_degrees ? Unit::degrees : Unit::none;
    for (const Token& token : pieces) {
      if (token.type == Type::word && unit == Unit::none) unit = unit_named(token.text);
    }
    if (unit == Unit::none) unit = row_.unit_of(Column::slope);
    if (unit == Unit::none) unit = page_.units.slope;
    const bool angle = unit == Unit::degrees || row_.is_angle_named(Column::slope);
    const bool percent = one->is_percent || unit == Unit::percent;
    if (!percent && std::abs(one->value) > 90) ask(fmt::format("slope {} is over 90", one->text));
    if (!percent && !angle && one->value != 0) ask("in degrees, or percent? the page does not say");
    return percent && !one->is_percent && one->value != 0 ? text + "%" : text;
  }

  /// Opens the station where the leg begins. A leg from one that was left before is typed at its
  /// other end.
  void take_ends(Ray& ray, Lines& lines) {
    std::string from = row_.take(Column::station);
    const std::string to = row_.take(Column::to);
    if (from.empty() && !row_.has(Column::station)) from = page_.station;
    if (from.empty()) {
      ask(fmt::format("from {}, as above?", page_.station));
      from = page_.station;
    }
    if (!to.empty() && folded(from) == folded(to)) ask("from a station to itself?");
    const bool was_left = !page_.is_here(from) && page_.is_station(from);
    if (!is_leg_) {
      ray.target = to;
      if (!to.empty()) page_.add_mark(to);
      if (was_left) {
        ray.from = from;
        return;
      }
    }
    if (was_left && !to.empty() && (page_.is_here(to) || !page_.is_station(to))) {
      if (!page_.is_here(to)) open(to, lines);
      ray.from = from;
      ray.target = to;
      to_here_ = true;
      return;
    }
    if (!page_.is_here(from) && !from.empty()) open(from, lines);
    ray.target = to;
  }
  void open(const std::string& station, Lines& lines) {
    page_.begin_station(station);
    lines.emplace_back().text = "station " + name_text(station);
  }

  Row& row_;
  Page& page_;
  bool is_leg_;
  std::string question_;
  bool is_doubtful_ = false;
  bool to_here_ = false;
  std::optional<Token> fore_;
  std::optional<Token> back_;
};

}  // namespace

Lines leg_of(Row& row, Page& page) {
  return LegRow(row, page).lines();
}

}  // namespace lodebook::fair_copy
