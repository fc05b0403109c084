// SPDX-License-Identifier: MIT
// Reads a position in whichever writing it is in.
#include <lodebook/earth/position.hpp>

#include <algorithm>
#include <string>
#include <utility>

#include "position_text.hpp"

namespace lodebook::earth {
namespace {

// A comma with a figure touching either side may divide two coordinates only if it is the only
// comma: `44,65, 169,03` has decimal commas.
std::optional<PositionError> decimal_comma_in(const PositionText& text) {
  const Token* suspect = nullptr;
  int commas = 0;
  for (const Token& token : text) {
    if (token.kind != TokenKind::comma) continue;
    ++commas;
    if (suspect == nullptr && is_between_digits(text, &token)) suspect = &token;
  }
  if (commas < 2 || suspect == nullptr) return std::nullopt;
  return fault_in(PositionFault::decimal_comma, suspect[-1], suspect[1]);
}

PositionResult read_once(std::string_view written) {
  const auto split = split_position(written);
  if (const auto* const error = std::get_if<PositionError>(&split)) return *error;
  const auto& text = *std::get_if<PositionText>(&split);
  if (text.size == 0) return PositionError{PositionFault::unreadable, 0, written.size(), {}};
  if (auto error = decimal_comma_in(text)) return *std::move(error);
  if (auto grid = read_grid(text)) return *std::move(grid);
  return read_geographic(text);
}

// The text with points for its decimal commas, or without its thousands marks, if that is a
// position; else empty.
std::string without_decimal_commas(std::string_view text) {
  std::string points(text);
  std::string bare;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool is_decimal = text[i] == ',' && i > 0 && i + 1 < text.size() &&
                            is_digit(text[i - 1]) && is_digit(text[i + 1]);
    if (is_decimal) {
      points[i] = '.';
    } else {
      bare += text[i];
    }
  }
  for (std::string* const candidate : {&points, &bare}) {
    if (std::holds_alternative<WrittenPosition>(read_once(*candidate))) {
      return std::move(*candidate);
    }
  }
  return {};
}

// Metres or a height: a longer figure is none.
constexpr std::size_t longest_accuracy = 6;

bool is_length_unit(std::string_view word) {
  return equal_ignoring_case(word, "M") || equal_ignoring_case(word, "FT");
}

// `44S 169E 8`: what stands before the last figure is a position already. Without letters only
// decimals tell, since the figure may belong to the longitude.
std::optional<PositionError> loose_figure_in(std::string_view written) {
  const auto split = split_position(written);
  const auto* const text = std::get_if<PositionText>(&split);
  if (text == nullptr || text->size < 2) return std::nullopt;
  const bool has_unit = is_length_unit(text->written(text->end()[-1])) && text->size > 2;
  const Token& end = text->end()[-1];
  const Token& last = has_unit ? (&end)[-1] : end;
  if (last.kind != TokenKind::number || last.joined || last.length > longest_accuracy)
    return std::nullopt;
  const Token& before = (&last)[-1];
  const bool comma = before.kind == TokenKind::comma;
  std::string whole(written.substr(0, before.offset + (comma ? 0 : before.length)));
  const bool is_clear = std::all_of(text->begin(), &last, [text](const Token& token) {
    return token.kind != TokenKind::number || text->written(token).find('.') < token.length;
  });
  const bool has_letters = std::any_of(
      text->begin(), &last, [](const Token& token) { return token.kind == TokenKind::word; });
  const auto figures = std::count_if(
      text->begin(), &last, [](const Token& token) { return token.kind == TokenKind::number; });
  // One figure before it, beside that of a zone, may be half a grid reference.
  const bool is_grid = read_grid(*text).has_value();
  if ((!is_clear && !has_letters) || figures < (is_grid ? 3 : 2)) return std::nullopt;
  if (!std::holds_alternative<WrittenPosition>(read_once(whole))) return std::nullopt;
  PositionError error = fault_in(PositionFault::loose_figure, last, end);
  error.meant = std::move(whole);
  return error;
}

}  // namespace

PositionResult read_position(std::string_view text) {
  PositionResult result = read_once(text);
  if (auto* const error = std::get_if<PositionError>(&result)) {
    if (error->fault == PositionFault::decimal_comma) {
      error->meant = without_decimal_commas(text);
    } else if (error->fault != PositionFault::unreadable && error->fault != PositionFault::uneven) {
      return result;
    } else if (auto loose = loose_figure_in(text)) {
      return *std::move(loose);
    }
  }
  return result;
}

}  // namespace lodebook::earth
