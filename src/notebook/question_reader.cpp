// SPDX-License-Identifier: MIT
// Readings that need something that their log does not state, or states in a void statement. The
// question is asked once, with the number of readings, which the first pass has counted.
#include <algorithm>

#include "log_reader.hpp"
#include "pair_reader.hpp"

namespace lodebook::notebook {

namespace {

using Type = Token::Type;

/// `37 NW`: whether the last word looks like a point of the rose, which may be a side.
bool ends_in_point(std::string_view body) {
  std::size_t begin = body.size();
  while (begin > 0 && is_letter(body[begin - 1]))
    --begin;
  const std::string_view word = body.substr(begin);
  return !word.empty() && word.size() <= 3 &&
         word.find_first_not_of("neswNESW") == std::string_view::npos;
}

/// The second of a pair that begins with a bare figure, with or without a slash; null if there is
/// none.
const Token* second_of_pair(const Cursor& cursor) {
  if (!cursor.is(Type::angle)) return nullptr;
  const std::size_t behind = cursor.is(Type::slash, 1) ? 2 : 1;
  const bool is_pair = cursor.is(Type::angle, behind) || starts_lettered_bearing(cursor, behind);
  return is_pair ? cursor.peek(behind) : nullptr;
}

bool is_bare_pair(const Cursor& cursor) {
  const Token* second = second_of_pair(cursor);
  return second && second->type == Type::angle;
}

/// Whether only the order says which of two bare figures is the bearing.
bool rests_on_order(const Reading& reading) {
  if (const auto* plane = std::get_if<PlaneAttitude>(&reading.what))
    return !plane->side && (plane->form == PlaneAttitude::Form::strike_and_side ||
                            plane->form == PlaneAttitude::Form::strike_by_rule);
  const auto* line = std::get_if<LineAttitude>(&reading.what);
  return line && line->form == LineAttitude::Form::trend_plunge;
}

}  // namespace

bool LogReader::may_wait(KindId kind, std::string_view body) const {
  if (body.starts_with('~')) body.remove_prefix(1);
  if (is_single_ || asking_ || body.empty()) return false;
  const bool is_plane = kinds_[kind].type == Kind::Type::plane;
  const bool may_lack_side = is_plane && !rules_.rule && !ends_in_point(body);
  const auto* const letter = std::find_if_not(body.begin(), body.end(), is_digit);
  const auto digits = letter - body.begin();
  if (digits == 0 || is_ordered(kind)) return may_lack_side;
  if (digits >= 3) return void_order(kind) != 0 || may_lack_side;
  return body.find('>') == std::string_view::npos;
}

bool LogReader::is_ordered(KindId kind) const {
  return kinds_[kind].type == Kind::Type::plane ? rules_.planes != PlaneOrder::unstated
                                                : rules_.lines != LineOrder::unstated;
}

std::optional<Question> LogReader::question_of(KindId kind, Code code, const Cursor& typed) const {
  const bool is_plane = kinds_[kind].type == Kind::Type::plane;
  const bool ordered = is_ordered(kind);
  if (code == Code::dip_side_missing)
    return is_bare_pair(typed) && !ordered ? Question::side_or_order : Question::side;
  const Token* second = second_of_pair(typed);
  if (code != Code::pair_order || ordered || !second) return std::nullopt;
  if (three_digits(*typed.peek())) {
    if (void_order(kind) == 0 || three_digits(*second)) return std::nullopt;
    return is_plane ? Question::side_or_order : Question::order_of_line;
  }
  if (second->type == Type::word || three_digits(*second))
    return is_plane ? Question::dip_first : Question::plunge_first;
  return is_plane ? Question::order_of_plane : Question::order_of_line;
}

void LogReader::doubt_order(Reading& reading, const Cursor& typed) {
  const bool waits = void_order(reading.kind) != 0;
  if (!waits || reading.rejected || !is_bare_pair(typed) || !rests_on_order(reading)) return;
  reading.rejected = true;
  faults_.add(reading.written, wording::pair_order(text(reading.written), {}, {}));
}

std::uint32_t LogReader::void_order(KindId kind) const {
  return kinds_[kind].type == Kind::Type::plane ? void_.plane_order : void_.line_order;
}

std::uint32_t LogReader::void_behind(Question question) const {
  switch (question) {
    case Question::side:
      return void_.rule;
    case Question::side_or_order:
      return void_.plane_order != 0 ? void_.plane_order : void_.rule;
    case Question::pace:
      return void_.pace;
    case Question::dip_first:
    case Question::order_of_plane:
      return void_.plane_order;
    case Question::plunge_first:
    case Question::order_of_line:
      return void_.line_order;
  }
  return 0;
}

void LogReader::ask_once(Reading& reading, std::optional<Question> question) {
  if (!question || asking_) return;
  const std::uint32_t cause = void_behind(*question);
  std::vector<Diagnostic>& faults = block_->diagnostics;
  reading.waits_for = faults.back().code;
  if (!notebook_) {
    if (cause != 0) {
      ++waits_.for_line[cause];
    } else {
      ++waits_.for_answer[static_cast<std::size_t>(*question)];
    }
    return;
  }
  bool& asked = asked_[static_cast<std::size_t>(*question)];
  if (cause != 0 || asked) {
    faults.pop_back();
    return;
  }
  asked = true;
  const std::uint32_t count = notebook_->waiting.for_answer[static_cast<std::size_t>(*question)];
  if (count < 2) return;
  Diagnostic all = wording::readings_wait(*question, count);
  faults.back().message = std::move(all.message);
  faults.back().help = std::move(all.help);
  faults.back().fixes.clear();
  faults.back().weight = all.weight;
}

// ---- statements that are void

std::uint32_t* LogReader::void_line(VoidSetting setting) {
  switch (setting) {
    case VoidSetting::set:
      return &void_.set;
    case VoidSetting::declination:
      return &void_.declination;
    case VoidSetting::rule:
      return &void_.rule;
    case VoidSetting::pace:
      return &void_.pace;
    case VoidSetting::order:
    case VoidSetting::date:
    case VoidSetting::observer:
    case VoidSetting::none:
      break;
  }
  return nullptr;
}

LogReader::OrderScope LogReader::scope_of(VoidSetting setting, std::string_view words) {
  if (setting != VoidSetting::order) return {};
  const std::string said = fold_case(words);
  const auto says = [&](std::string_view word) { return said.find(word) != std::string::npos; };
  const bool planes = says("strike") || says("dip") || says("direction");
  const bool lines = says("trend") || says("plunge");
  return planes == lines ? OrderScope{} : OrderScope{planes, lines};
}

void LogReader::forget(VoidSetting setting, OrderScope scope) {
  switch (setting) {
    case VoidSetting::rule:
      rules_.rule = options_.rule;
      break;
    case VoidSetting::order:
      if (scope.planes) rules_.planes = PlaneOrder::unstated;
      if (scope.lines) rules_.lines = LineOrder::unstated;
      break;
    case VoidSetting::pace:
      has_pace_ = false;
      break;
    default:
      break;
  }
}

void LogReader::count_for_void(VoidSetting setting) {
  const std::uint32_t* const line = void_line(setting);
  const bool all_wait = setting == VoidSetting::set || setting == VoidSetting::declination;
  if (notebook_ || !all_wait || *line == 0) return;
  const std::uint32_t from = setting == VoidSetting::set ? void_.set_from : void_.declination_from;
  if (reading_count_ > from) waits_.for_line[*line] += reading_count_ - from;
}

void LogReader::end_void(VoidSetting setting, std::string_view words) {
  count_for_void(setting);
  set_void(setting, scope_of(setting, words), 0);
}

void LogReader::begin_void(const Statement& statement, VoidSetting setting) {
  begin_void(statement.whole.offset + 1, setting, text(statement.body));
  say_waiting(statement);
}

void LogReader::begin_void(std::uint32_t cause, VoidSetting setting, std::string_view words) {
  count_for_void(setting);
  const OrderScope scope = scope_of(setting, words);
  set_void(setting, scope, cause);
  if (setting == VoidSetting::set) void_.set_from = reading_count_;
  if (setting == VoidSetting::declination) void_.declination_from = reading_count_;
  forget(setting, scope);
}

void LogReader::set_void(VoidSetting setting, OrderScope scope, std::uint32_t cause) {
  if (setting == VoidSetting::order) {
    if (scope.planes) void_.plane_order = cause;
    if (scope.lines) void_.line_order = cause;
  } else if (std::uint32_t* const line = void_line(setting)) {
    *line = cause;
  }
}

void LogReader::say_waiting(const Statement& statement) {
  if (!notebook_ || block_->diagnostics.empty()) return;
  const auto waiting = notebook_->waiting.for_line.find(statement.whole.offset + 1);
  if (waiting == notebook_->waiting.for_line.end()) return;
  const auto meaning = vocabulary_.find(text(statement.word));
  const bool is_short = meaning && meaning->keyword == Keyword::short_word;
  const std::string_view given = text(statement.body);
  const auto stands_for =
      is_short ? vocabulary_.find(given.substr(0, word_length(given))) : std::nullopt;
  const bool of_lines = stands_for && stands_for->keyword != Keyword::reading;
  wording::add_waiting(block_->diagnostics.back(), waiting->second, of_lines ? "line" : "reading",
                       is_short ? "short word" : text(statement.word));
}

}  // namespace lodebook::notebook
