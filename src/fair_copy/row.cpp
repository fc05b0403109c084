// SPDX-License-Identifier: MIT
#include "row.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace lodebook::fair_copy {

const Field* Row::find(Column column) const {
  const Field* empty = nullptr;
  for (const Field& field : fields_) {
    if (field.column != column) continue;
    if (!field.text.empty()) return &field;
    if (!empty) empty = &field;
  }
  return empty;
}

bool Row::has(Column column) const {
  return find(column) != nullptr;
}

std::string_view Row::peek(Column column) const {
  const Field* const field = find(column);
  return field ? std::string_view(field->text) : std::string_view();
}

std::string Row::take(Column column) {
  const Field* const field = find(column);
  if (!field) return {};
  fields_[static_cast<std::size_t>(field - fields_.data())].is_used = true;
  return field->text;
}

Unit Row::unit_of(Column column) const {
  const Field* const field = find(column);
  return field && field->heading ? field->heading->unit : Unit::none;
}

bool Row::is_angle_named(Column column) const {
  const Field* const field = find(column);
  return field && field->heading && field->heading->is_angle;
}

std::string Row::rest() const {
  std::string text;
  for (const Field& field : fields_) {
    if (field.is_used || field.text.empty()) continue;
    const bool named = field.heading && !field.heading->name.empty() &&
                       field.column != Column::remark && field.column != Column::kind;
    text = both(std::move(text),
                named ? fmt::format("{} {}", field.heading->name, field.text) : field.text);
  }
  return text;
}

std::string both(std::string first, std::string_view second) {
  if (second.empty()) return first;
  if (!first.empty()) first += ", ";
  return first += second;
}

void add_remark(Line& line, std::string_view remark) {
  if (remark.empty()) return;
  line.text += line.text.find("  ; ") == std::string::npos ? "  ; " : ", ";
  line.text += remark;
}

void ask(Line& line, std::string_view why) {
  if (line.is_question()) return;
  line.text = fmt::format("ask {}  ; {}", line.text.substr(0, line.text.find("  ; ")), why);
  line.meant.reset();
}

}  // namespace lodebook::fair_copy
