// SPDX-License-Identifier: MIT
#include "dates.hpp"

#include <fmt/format.h>

#include <chrono>
#include <lodebook/notebook/date.hpp>

namespace lodebook::fair_copy {

namespace {

/// A year of two digits lies in the century of the compass as it is used now.
int full_year(const Token& figure) {
  const int year = static_cast<int>(figure.value);
  if (figure.digits > 2) return year;
  return year < 70 ? 2000 + year : 1900 + year;
}

std::string iso(int year, int month, int day) {
  std::string text = fmt::format("{:04}-{:02}-{:02}", year, month, day);
  return notebook::read_date(text) ? text : std::string();
}

/// Monday is 1.
unsigned weekday_of(const std::string& text) {
  const auto date = notebook::read_date(text);
  const std::chrono::year_month_day day(
      std::chrono::year(date->year), std::chrono::month(date->month), std::chrono::day(date->day));
  return std::chrono::weekday(std::chrono::sys_days(day)).iso_encoding();
}

class DayReader {
 public:
  explicit DayReader(const Tokens& tokens) : tokens_(tokens) {}

  std::optional<Day> read() {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      if (tokens_[i].is(Meaning::weekday))
        weekday_ = static_cast<unsigned>(tokens_[i].says[0] - '0');
    }
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      auto day = at(i);
      if (!day) continue;
      day->begin = i;
      choose(*day);
      return day;
    }
    return std::nullopt;
  }

 private:
  bool is_whole(std::size_t i) const {
    return i < tokens_.size() && tokens_[i].is_figure() && tokens_[i].decimals == 0 &&
           !tokens_[i].is_percent && !tokens_[i].is_degrees;
  }
  bool is_day(std::size_t i) const {
    return is_whole(i) && tokens_[i].digits <= 2 && tokens_[i].value >= 1 && tokens_[i].value <= 31;
  }
  bool is_year(std::size_t i) const {
    return is_whole(i) &&
           (tokens_[i].digits == 2 || (tokens_[i].value >= 1850 && tokens_[i].value < 2200));
  }
  bool is(std::size_t i, std::string_view marks) const {
    return i < tokens_.size() && tokens_[i].type == Token::Type::mark &&
           marks.find(tokens_[i].text) != std::string_view::npos;
  }
  /// Behind marks and endings such as `th`.
  std::size_t behind(std::size_t i) const {
    while (is(i, "/-.,'") ||
           (i < tokens_.size() && tokens_[i].type == Token::Type::word &&
            (tokens_[i].text == "th" || tokens_[i].text == "st" || tokens_[i].text == "nd" ||
             tokens_[i].text == "rd" || tokens_[i].text == "of")))
      ++i;
    return i;
  }

  std::optional<Day> at(std::size_t i) const {
    if (i < tokens_.size() && tokens_[i].is(Meaning::month)) return month_first(i);
    if (is_whole(i) && tokens_[i].digits == 4) {
      const std::size_t k = behind(i + 1);
      const std::size_t day = behind(k + 1);
      if (k < tokens_.size() && tokens_[k].is(Meaning::month) && is_day(day))
        return made(i, month(k), day, day + 1);
    }
    if (is_day(i)) {
      const std::size_t k = behind(i + 1);
      if (k < tokens_.size() && tokens_[k].is(Meaning::month)) return day_and_month(i, k);
    }
    return in_figures(i);
  }

  std::optional<Day> month_first(std::size_t i) const {
    const std::size_t day = behind(i + 1);
    const std::size_t year = behind(day + 1);
    if (!is_day(day) || !is_year(year)) return std::nullopt;
    return made(year, month(i), day, year + 1);
  }
  std::optional<Day> day_and_month(std::size_t day, std::size_t k) const {
    const std::size_t year = behind(k + 1);
    if (!is_year(year)) return std::nullopt;
    return made(year, month(k), day, year + 1);
  }
  int month(std::size_t i) const { return std::stoi(std::string(tokens_[i].says)); }
  std::optional<Day> made(std::size_t year, int month, std::size_t day, std::size_t end) const {
    Day made;
    made.iso = iso(full_year(tokens_[year]), month, static_cast<int>(tokens_[day].value));
    made.end = end;
    if (made.iso.empty()) return std::nullopt;
    return made;
  }

  /// `14.05.2026`, `5/6/26`, `2026-05-14`
  std::optional<Day> in_figures(std::size_t i) const {
    if (!is_whole(i)) return dotted(i);
    for (const std::string_view mark : {"/", "-", "."}) {
      if (!is(i + 1, mark) || !is_whole(i + 2) || !is(i + 3, mark) || !is_whole(i + 4)) continue;
      return ordered(tokens_[i], tokens_[i + 2], tokens_[i + 4], i + 5);
    }
    return std::nullopt;
  }
  /// `14.05.2026`: a figure with a point, then a point and a figure, or a point in both.
  std::optional<Day> dotted(std::size_t i) const {
    if (!tokens_[i].is_figure() || !tokens_[i].is_unclear || i + 1 >= tokens_.size())
      return std::nullopt;
    const std::string& text = tokens_[i].text;
    const std::size_t point = text.find('.');
    const std::size_t k = is(i + 1, ".") ? i + 2 : i + 1;
    if (point == std::string_view::npos || k >= tokens_.size() || !tokens_[k].is_figure())
      return std::nullopt;
    Token day = tokens_[i];
    Token month = tokens_[i];
    Token year = tokens_[k];
    day.value = std::stod(text.substr(0, point));
    month.value = std::stod(text.substr(point + 1));
    month.digits = static_cast<std::uint8_t>(text.size() - point - 1);
    if (year.digits == 0) {  // `.2026`
      year.digits = year.decimals;
      year.value = std::stod(year.text.substr(year.text.find('.') + 1));
    }
    return ordered(day, month, year, k + 1);
  }

  std::optional<Day> ordered(const Token& a, const Token& b, const Token& c,
                             std::size_t end) const {
    Day day;
    day.end = end;
    const auto whole = [](const Token& token) { return static_cast<int>(token.value); };
    if (a.digits == 4) {
      day.iso = iso(whole(a), whole(b), whole(c));
    } else if (c.digits == 4 || c.digits == 2) {
      const std::string day_first = iso(full_year(c), whole(b), whole(a));
      const std::string month_first = iso(full_year(c), whole(a), whole(b));
      day.iso = day_first.empty() ? month_first : day_first;
      if (!day_first.empty() && day_first != month_first) day.other = month_first;
      // With points the day stands first.
      if (is_dotted(a)) day.other.clear();
    }
    if (day.iso.empty()) return std::nullopt;
    return day;
  }
  static bool is_dotted(const Token& token) { return token.is_unclear; }

  /// By the day of the week, if one is written.
  void choose(Day& day) const {
    if (day.other.empty() || weekday_ == 0) return;
    const bool first = weekday_of(day.iso) == weekday_;
    const bool second = weekday_of(day.other) == weekday_;
    if (first == second) return;
    if (second) day.iso = day.other;
    day.other.clear();
  }

  const Tokens& tokens_;
  unsigned weekday_ = 0;
};

}  // namespace

std::optional<Day> day_on(const Tokens& tokens) {
  return DayReader(tokens).read();
}

}  // namespace lodebook::fair_copy
