// SPDX-License-Identifier: MIT
// What the other cells of a row say of its reading.
#include <fmt/format.h>

#include <algorithm>

#include "row.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

/// It says how, how sure, or of what where no column does.
bool is_telling(const Token& token, bool has_kind) {
  if (token.type != Type::word) return false;
  switch (token.meaning) {
    case Meaning::kind:
      return !has_kind;
    case Meaning::facing:
    case Meaning::youngs:
    case Meaning::sense:
    case Meaning::downthrow:
    case Meaning::upthrow:
    case Meaning::up:
    case Meaning::down:
    case Meaning::top_to:
    case Meaning::doubt:
    case Meaning::rough:
    case Meaning::either:
    case Meaning::contrary:
    case Meaning::mean:
    case Meaning::strike:
    case Meaning::dip:
    case Meaning::rake:
    case Meaning::plunge:
    case Meaning::trend:
      return true;
    default:
      return false;
  }
}

bool names_kind(const Row& row) {
  return !row.peek(Column::kind).empty() || !row.peek(Column::set).empty();
}

/// It may hold another reading, or say something of this one.
bool is_about(const Field& field, bool has_kind, const Words& words) {
  const Tokens tokens = tokens_of(field.text, words, false);
  const bool has_words =
      std::ranges::any_of(tokens, [](const Token& token) { return token.type == Type::word; });
  if (!has_words) return field.column == Column::remark;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const bool pair = tokens[i].is_figure() && i + 2 < tokens.size() && tokens[i + 2].is_figure() &&
                      (tokens[i + 1].is('/') || tokens[i + 1].is('>'));
    if (pair || tokens[i].type == Type::bearing || tokens[i].is_degrees ||
        is_telling(tokens[i], has_kind))
      return true;
  }
  return false;
}

}  // namespace

std::string take_spoken(Row& row, const Words& words) {
  const bool has_kind = names_kind(row);
  std::string spoken;
  for (Field& field : row.fields()) {
    const bool text =
        field.column == Column::remark || (field.column == Column::other && !has_digit(field.text));
    if (!text || field.is_used || field.text.empty() || !is_about(field, has_kind, words)) continue;
    field.is_used = true;
    // No cell that speaks is a ditto mark.
    std::erase(field.text, '"');
    spoken = both(std::move(spoken), field.text);
  }
  return spoken;
}

std::string doubt_in(const Row& row, const Words& words) {
  const bool has_kind = names_kind(row);
  for (const Field& field : row.fields()) {
    if (field.heading && field.column != Column::remark) continue;
    for (const Token& token : tokens_of(field.text, words, false)) {
      if (!has_kind && token.is(Meaning::kind)) return fmt::format("or is it {}?", token.says);
      if (token.type == Type::word && token.text.size() == 2 && token.text[0] == 'x' &&
          token.text[1] >= '2')
        return "one, or several alike?";
    }
  }
  return {};
}

std::optional<Lines> mean_in(const Row& row, const Words& words) {
  const std::string_view kind = row.peek(Column::kind);
  const Tokens tokens = tokens_of(kind, words, false);
  if (tokens.empty() || !tokens.front().is(Meaning::mean)) return std::nullopt;
  Lines lines;
  lines.emplace_back().text = fmt::format("note {}", row.rest());
  lines.back().is_note = true;
  return lines;
}

const Field* unplaced_point(const Row& row, const Words& words) {
  for (const Field& field : row.fields()) {
    if (field.is_used || field.column != Column::other || !field.heading) continue;
    const Tokens tokens = tokens_of(field.text, words, false);
    if (tokens.size() == 1 && tokens.front().type == Type::point) return &field;
  }
  return nullptr;
}

void ask_about_columns(const Row& row, TableState& table, const Words& words, Lines& lines) {
  for (const Field& field : row.fields()) {
    if (field.is_used || field.column != Column::other || !field.heading) continue;
    const Tokens tokens = tokens_of(field.text, words, false);
    const std::string& name = field.heading->name;
    const bool bearing = tokens.size() == 1 && tokens.front().type == Type::bearing;
    if (!bearing || std::ranges::find(table.asked, name) != table.asked.end()) continue;
    table.asked.push_back(name);
    lines.emplace_back().text =
        fmt::format("ask note {} {}  ; what does the column '{}' hold?", name, field.text, name);
  }
}

}  // namespace lodebook::fair_copy
