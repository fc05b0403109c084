// SPDX-License-Identifier: MIT
// Reads a position in whichever writing it is in.
#include <lodebook/earth/position.hpp>

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

}  // namespace

PositionResult read_position(std::string_view text) {
  PositionResult result = read_once(text);
  if (auto* const error = std::get_if<PositionError>(&result);
      error != nullptr && error->fault == PositionFault::decimal_comma) {
    error->meant = without_decimal_commas(text);
  }
  return result;
}

}  // namespace lodebook::earth
