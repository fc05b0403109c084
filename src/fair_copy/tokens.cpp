// SPDX-License-Identifier: MIT
#include "joins.hpp"
#include "spelling.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <lodebook/notebook/source.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>
#include <utility>

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

class Lexer {
 public:
  Lexer(std::string_view line, const Words& words, bool decimal_commas)
      : line_(line), words_(words), decimal_commas_(decimal_commas) {}

  Tokens read() {
    while (at_ < line_.size()) {
      if (const std::size_t blank = blank_at(line_, at_)) {
        at_ += blank;
        spaced_ = true;
        continue;
      }
      begin_ = at_;
      if (starts_name()) {
        read_name();
      } else if (is_digit(line_[at_]) || starts_fraction() || starts_decimal()) {
        read_figure();
      } else if (stands_in_time()) {
        add(Type::mark, ":");
        ++at_;
      } else if (letter_at(at_) > 0) {
        read_word();
      } else {
        read_mark();
      }
      tokens_.back().spaced = spaced_;
      tokens_.back().begin = begin_;
      tokens_.back().end = at_;
      spaced_ = false;
    }
    join_tokens(tokens_, words_);
    return std::move(tokens_);
  }

 private:
  std::string_view rest() const { return line_.substr(at_); }
  /// The `h` of `17h20`.
  bool stands_in_time() const {
    const bool behind_hour = !spaced_ && !tokens_.empty() && tokens_.back().is_figure() &&
                             tokens_.back().digits <= 2 && tokens_.back().decimals == 0;
    const std::string_view left = rest();
    return behind_hour && left.size() > 2 && left[0] == 'h' && is_digit(left[1]) &&
           is_digit(left[2]) && letter_at(at_ + 3) == 0 && (left.size() == 3 || !is_digit(left[3]));
  }
  const Spelling* spelling() const { return spelling_at(rest()); }
  bool starts_fraction() const {
    const Spelling* const one = spelling();
    return one && part_of(one->meant) > 0;
  }
  bool starts_decimal() const {
    return line_[at_] == '.' && at_ + 1 < line_.size() && is_digit(line_[at_ + 1]) &&
           (at_ == 0 || !is_digit(line_[at_ - 1]));
  }

  /// Bytes of the letter at `at`; 0 for none.
  std::size_t letter_at(std::size_t at) const {
    if (at >= line_.size()) return 0;
    if (is_letter(line_[at])) return 1;
    if (static_cast<unsigned char>(line_[at]) < 0x80) return 0;
    const std::string_view from = line_.substr(at);
    const bool is_mark = blank_at(line_, at) > 0 || spelling_at(from);
    return is_mark ? 0 : std::max<std::size_t>(notebook::utf8_length(from), 1);
  }

  Token& add(Type type, std::string text) {
    Token& token = tokens_.emplace_back();
    token.type = type;
    token.text = std::move(text);
    return token;
  }

  std::string_view take_digits() {
    const std::size_t begin = at_;
    while (at_ < line_.size() && is_digit(line_[at_]))
      ++at_;
    return line_.substr(begin, at_ - begin);
  }

  /// `4O`, `3l5`: letters that look like the figure's digits.
  bool take_like_digits(std::string& whole) {
    const bool in_bearing = !spaced_ && !tokens_.empty() && tokens_.back().type == Type::point;
    if (in_bearing || whole.empty() || words_.letter_o() != 0) return false;
    std::size_t end = at_;
    std::string more;
    bool letters = false;
    while (end < line_.size() && (is_digit(line_[end]) || line_[end] == 'O' || line_[end] == 'l')) {
      letters = letters || !is_digit(line_[end]);
      more += line_[end] == 'O' ? '0' : line_[end] == 'l' ? '1' : line_[end];
      ++end;
    }
    // `10l` are litres.
    if (!letters || letter_at(end) > 0 || line_[end - 1] == 'l' || whole.size() + more.size() > 3)
      return false;
    whole += more;
    at_ = end;
    return true;
  }

  bool takes_sign() const {
    if (tokens_.empty() || tokens_.back().type != Type::mark) return false;
    const std::string& mark = tokens_.back().text;
    return (mark == "-" || mark == "+") && !spaced_ &&
           (tokens_.size() == 1 || tokens_.back().spaced ||
            tokens_[tokens_.size() - 2].type == Type::mark);
  }

  void read_figure() {
    std::string sign;
    if (takes_sign()) {
      if (tokens_.back().text == "-") sign = "-";
      signed_ = true;
    }
    std::string whole(take_digits());
    std::string fraction;
    bool unclear = take_like_digits(whole);
    if (at_ + 1 < line_.size() && (line_[at_] == '.' || line_[at_] == ',') &&
        is_digit(line_[at_ + 1])) {
      const bool comma = line_[at_] == ',';
      const std::size_t mark = at_++;
      const std::string_view behind = take_digits();
      const bool more =
          at_ + 1 < line_.size() && line_[at_] == line_[mark] && is_digit(line_[at_ + 1]);
      if (comma && behind.size() == 3 && is_length_behind()) {
        whole += behind;  // thousands
      } else if (!comma || is_decimal_comma(whole, behind)) {
        fraction = behind;
      } else if (whole.size() == 3 && behind.size() <= 2) {
        at_ = mark;  // a list, or a pair: two figures
      } else {
        fraction = behind;
        unclear = true;
      }
      if (more) unclear = true;  // a date, or a version of something
    }
    double part = 0;
    if (fraction.empty()) part = take_fraction();
    // `1/2` alone
    const std::string_view left = rest();
    const bool alone = part == 0 && whole.size() == 1 && left.size() >= 2 && left[0] == '/' &&
                       (left[1] == '2' || left[1] == '4') &&
                       (left.size() == 2 || !is_digit(left[2]));
    if (alone && fraction.empty() && (whole == "1" || (whole == "3" && left[1] == '4'))) {
      part = static_cast<double>(whole[0] - '0') / (left[1] - '0');
      whole = "0";
      at_ += 2;
    }
    Token& figure = add(Type::figure, "");
    figure.digits = static_cast<std::uint8_t>(std::min<std::size_t>(whole.size(), 200));
    if (whole.empty()) whole = "0";
    if (part > 0) {
      fraction = part == 0.5    ? "5"
                 : part == 0.25 ? "25"
                 : part == 0.75 ? "75"
                 : part < 0.5   ? "33"
                                : "67";
    }
    figure.decimals = static_cast<std::uint8_t>(std::min<std::size_t>(fraction.size(), 200));
    figure.text = sign + whole + (fraction.empty() ? "" : "." + fraction);
    figure.value =
        read_decimal(figure.text.substr(sign.size())).value_or(0) * (sign.empty() ? 1 : -1);
    figure.has_sign = std::exchange(signed_, false);
    figure.is_unclear = unclear;
    take_marks(figure);
    if (figure.has_sign) drop_sign();
  }

  /// ` 1/2`, `½`, `1/2` behind a whole figure or alone.
  double take_fraction() {
    if (const Spelling* const one = spelling(); one && part_of(one->meant) > 0) {
      at_ += one->typed.size();
      return part_of(one->meant);
    }
    const std::string_view from = rest();
    if (from.size() >= 4 && from[0] == ' ' && from[2] == '/' &&
        (from.size() == 4 || !is_digit(from[4]))) {
      const double upper = from[1] - '0';
      const double lower = from[3] - '0';
      if (upper >= 1 && upper < lower && (lower == 2 || lower == 4)) {
        at_ += 4;
        return upper / lower;
      }
    }
    return 0;
  }

  bool is_length_behind() const {
    std::size_t at = at_;
    while (const std::size_t blank = blank_at(line_, at))
      at += blank;
    const std::string_view from = line_.substr(at);
    return from.starts_with("m") || from.starts_with("ft") || from.starts_with("'");
  }

  bool is_decimal_comma(std::string_view whole, std::string_view behind) const {
    if (decimal_commas_) return true;
    return behind.size() == 1 || behind.size() >= 4 ||
           (whole.size() <= 2 && behind.size() == 2 && is_length_behind());
  }

  /// Degree, percent and minute marks directly behind.
  void take_marks(Token& figure) {
    if (rest().starts_with("%")) {
      figure.is_percent = true;
      figure.text += '%';
      ++at_;
      return;
    }
    const Spelling* const one = spelling();
    if (one && one->meant == "°") {
      at_ += one->typed.size();
      figure.is_degrees = true;
      take_minutes(figure);
    } else if ((one && one->meant == "'") || (!one && rest().starts_with("'"))) {
      at_ += one ? one->typed.size() : 1;
      figure.is_minutes = true;
    }
  }

  /// `30'` behind `1°`.
  void take_minutes(Token& figure) {
    const std::size_t start = at_;
    if (blank_at(line_, at_) == 1) ++at_;
    const std::string_view minutes = take_digits();
    const Spelling* const one = spelling();
    const bool marked = (one && one->meant == "'") || rest().starts_with("'");
    const auto value = read_decimal(minutes);
    if (!marked || !value || *value >= 60 || figure.decimals > 0) {
      at_ = start;
      return;
    }
    at_ += one ? one->typed.size() : 1;
    figure.text += fmt::format("°{}'", minutes);
    figure.value += (figure.value < 0 ? -1 : 1) * *value / 60;
    figure.decimals = 2;
  }

  /// The sign before the figure just read is its own.
  void drop_sign() {
    begin_ = (tokens_.end() - 2)->begin;
    spaced_ = (tokens_.end() - 2)->spaced;
    tokens_.erase(tokens_.end() - 2);
  }

  void read_word() {
    const std::size_t begin = at_;
    while (at_ < line_.size()) {
      const std::size_t letter = letter_at(at_);
      const bool joins = (line_[at_] == '\'' || line_[at_] == '/') && at_ > begin &&
                         letter_at(at_ + 1) > 0 && is_known(begin);
      if (letter == 0 && !joins) break;
      at_ += letter > 0 ? letter : 1;
    }
    // `S0`, `L1`, `R4`, `x3`: one word, unless it is a point or a bearing.
    const std::string_view word = line_.substr(begin, at_ - begin);
    const std::size_t letters = at_;
    const std::string_view digits = take_digits();
    if (!digits.empty() && !is_name(word, digits)) at_ = letters;
    const std::string text(line_.substr(begin, at_ - begin));
    const auto point = point_of(text);
    if (point.empty()) {
      add(Type::word, text);
    } else {
      add(Type::point, point);
    }
  }

  /// From `begin` to the end of the letters behind the mark at `at_` stands a known word: `o/t`.
  bool is_known(std::size_t begin) const {
    std::size_t end = at_ + 1;
    while (letter_at(end) > 0)
      end += letter_at(end);
    return words_.find(folded(line_.substr(begin, end - begin))).has_value();
  }

  bool is_name(std::string_view word, std::string_view digits) const {
    // `S3W`, `s30½°e` are bearings, whatever S3 may be.
    const bool pole = word == "N" || word == "S" || word == "n" || word == "s";
    const Spelling* const mark = spelling();
    const bool own = words_.letter_o() != 0 && rest().starts_with('O');
    const bool goes_on =
        (mark && (mark->meant == "°" || part_of(mark->meant) > 0)) || rest().starts_with('.');
    const bool closes =
        at_ < line_.size() &&
        (own || std::string_view("EWew").find(line_[at_]) != std::string_view::npos) &&
        letter_at(at_ + 1) == 0;
    const bool bearing = pole && (goes_on || closes);
    if (bearing) return false;
    if (words_.find(folded(std::string(word) + std::string(digits)))) return true;
    if (at_ < line_.size() && (line_[at_] == '.' || line_[at_] == ',') && at_ + 1 < line_.size() &&
        is_digit(line_[at_ + 1]))
      return false;
    if (!point_of(std::string(word)).empty()) return false;
    return letter_at(at_) == 0;
  }

  /// The point of the compass that a word is; empty for another.
  std::string point_of(std::string word) const {
    // Also where the page calls something S, `S44E` is a bearing.
    const bool before_figure = at_ < line_.size() && is_digit(line_[at_]);
    if (words_.is_own(word) && !before_figure) return point_spelled(word);
    const bool behind_figure = !tokens_.empty() && tokens_.back().is_figure();
    const bool glued = !spaced_ && behind_figure;
    if (words_.letter_o() != 0 && (word.size() > 1 || behind_figure) &&
        word.find_first_not_of("NSEWO") == std::string::npos)
      std::ranges::replace(word, 'O', words_.letter_o());
    const std::string initials = point_by_initials(word, glued);
    return initials.empty() ? point_spelled(word) : initials;
  }

  /// A name that the page knows begins only where no letter or figure ends.
  bool starts_name() const {
    return (spaced_ || tokens_.empty() || tokens_.back().type == Type::mark) &&
           words_.name_at(line_, at_).length > 0;
  }
  void read_name() {
    const Words::NameHere here = words_.name_at(line_, at_);
    Token& token = add(Type::word, std::string(line_.substr(at_, here.length)));
    token.meaning = Meaning::named;
    token.says = here.name;
    at_ += here.length;
  }

  void read_mark() {
    if (const Spelling* const one = spelling()) {
      add(Type::mark, std::string(one->meant));
      at_ += one->typed.size();
      return;
    }
    const std::size_t length = std::max<std::size_t>(notebook::utf8_length(rest()), 1);
    add(Type::mark, std::string(rest().substr(0, length)));
    at_ += length;
  }

  std::string_view line_;
  const Words& words_;
  bool decimal_commas_;
  Tokens tokens_;
  std::size_t at_ = 0;
  std::size_t begin_ = 0;  ///< of the token that is read
  bool spaced_ = true;     ///< white space stands before it
  bool signed_ = false;
};

}  // namespace

Tokens tokens_of(std::string_view line, const Words& own, bool decimal_commas) {
  return Lexer(line, own, decimal_commas).read();
}

std::string azimuth_text(std::string text, std::uint8_t digits) {
  if (digits < 3) text.insert(0, 3u - digits, '0');
  return text;
}

std::string_view typed(std::string_view line, const Tokens& tokens, std::size_t first,
                       std::size_t last) {
  if (first >= last) return {};
  return line.substr(tokens[first].begin, tokens[last - 1].end - tokens[first].begin);
}

}  // namespace lodebook::fair_copy
