// SPDX-License-Identifier: MIT
// How people write the attitude of a plane or a line, and what it means under a page's settings.
#pragma once

#include <lodebook/notebook/entry.hpp>
#include <optional>

#include "tokens.hpp"

namespace lodebook::fair_copy {

/// A figure, bearing or point as it goes into a statement.
struct Value {
  enum class Type : std::uint8_t { none, figure, bearing, point };
  Type type = Type::none;
  std::string text;  ///< `35`, `N62E`, `NW`
  double degrees = 0;
  std::uint8_t digits = 0;
  bool is_rough = false;

  explicit operator bool() const { return type != Type::none; }
  bool is_lettered() const { return type == Type::bearing || type == Type::point; }
};

/// An attitude as written, before its kind and the page's settings decide what it means.
struct Attitude {
  enum class Form : std::uint8_t {
    pair,        ///< two figures, or a bearing and a figure, in the page's order
    strike_dip,  ///< with words that say so, or with a lettered strike
    towards,     ///< an angle, then the direction it points to
    trend_plunge,
    rake,
    vertical,
    horizontal,
    direction,  ///< a strike or trend alone
    dip,        ///< a dip alone
  };
  Form form = Form::pair;
  Value first;   ///< bearing or trend; of `pair` and `towards` what stands first
  Value second;  ///< dip or plunge; of `pair` and `towards` what stands second
  std::string side;
  /// A current's, from where it flows.
  bool is_from = false;
  /// `to` stands between its two figures, no arrow.
  bool says_to = false;
  /// A word says that its angle is a plunge.
  bool says_plunge = false;
  /// A word says that `first` is a strike.
  bool says_strike = false;
  /// Why it must be asked, in words; empty where nothing is wrong with it.
  std::string problem;
  std::size_t begin = 0;  ///< its tokens
  std::size_t end = 0;
};

/// The attitude that begins at token `at`, or nothing. Figures whose `use` is settled are no part
/// of one. In a list of `directions` each figure stands alone.
std::optional<Attitude> attitude_at(const Tokens& tokens, std::size_t at, bool directions);

/// A typed side further from the dip direction than anybody would say: the language takes it, a
/// person asks. Degrees.
bool is_far(double direction, double side);

/// What decides how a page's readings are meant.
struct Conventions {
  notebook::OrderSetting order;
  bool is_dip_strike = false;
  std::optional<HandRule> rule;
  /// Lines of the page have the end that goes down: `N38E 5SW`.
  bool names_ends = false;
};

/// What a statement says, to be held against what the strict reader makes of it.
struct Meant {
  /// Dip direction, trend or strike, degrees; nothing for one that has none.
  std::optional<double> azimuth;
  /// Dip, plunge or rake.
  std::optional<double> angle;
};

/// An attitude as a statement of the language, without its kind.
struct Statement {
  std::string text;
  Meant meant;
  /// The dip's side as the page's rule gives it, where none is written.
  std::string side;
  /// Why it is a question; empty for a statement that may stand.
  std::string question;
  /// It waits for an answer about the whole page, and stands as typed.
  enum class Wait : std::uint8_t { none, order, rule, kind } waits = Wait::none;
};

Statement plane_statement(const Attitude& attitude, const Conventions& conventions);
/// `bare`: a kind that may have a direction alone.
Statement line_statement(const Attitude& attitude, const Conventions& conventions, bool bare);

}  // namespace lodebook::fair_copy
