// SPDX-License-Identifier: MIT
// The cells of a table that name a kind, or a sense of movement.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "row.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;

/// Codes of kinds as they stand in a column of their own. Common practice, no source.
constexpr std::pair<std::string_view, std::string_view> codes[] = {
    {"bd", "bedding"},     {"bp", "bedding"},   {"be", "bedding"},   {"b", "bedding"},
    {"s0", "bedding"},     {"jn", "joint"},     {"jt", "joint"},     {"j", "joint"},
    {"ft", "fault"},       {"flt", "fault"},    {"f", "fault"},      {"fa", "fault"},
    {"sz", "shear"},       {"sh", "shear"},     {"sr", "shear"},     {"vn", "vein"},
    {"v", "vein"},         {"fo", "foliation"}, {"fl", "foliation"}, {"cl", "cleavage"},
    {"ct", "contact"},     {"co", "contact"},   {"cn", "contact"},   {"dk", "dike"},
    {"sc", "schistosity"}, {"li", "lineation"}, {"ln", "lineation"},
};

std::string_view code_of(std::string_view cell) {
  const std::string code = folded(cell);
  const auto* const found =
      std::ranges::find(codes, std::string_view(code), [](const auto& one) { return one.first; });
  return found == std::end(codes) ? std::string_view() : found->second;
}

/// A word that may be the name of a kind: letters, and no other meaning.
bool may_be_kind(const Token& token) {
  const bool letters = std::ranges::all_of(token.text, [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           static_cast<unsigned char>(c) >= 0x80;
  });
  return token.is(Meaning::unknown) && token.text.size() >= 2 && letters;
}

/// Says where or what sort of, no more.
bool is_beside(const Token& token) {
  return token.is(Meaning::unknown) || token.is(Meaning::filler) || token.is(Meaning::place) ||
         token.is(Meaning::block) || token.is(Meaning::ordinal) || token.type == Type::point ||
         token.is(Meaning::together) || token.is('-') || token.is('/') || token.is('.');
}

std::string without(std::string_view cell, const Token& token) {
  std::string text(stripped(cell.substr(0, token.begin)));
  const std::string_view behind = stripped(cell.substr(token.end));
  if (!text.empty() && !behind.empty()) text += ' ';
  return text += behind;
}

/// A kind that nobody knows: asked once for the page.
KindCell new_kind(std::string_view cell, const Tokens& tokens, bool is_plane, Page& page) {
  if (!std::ranges::all_of(tokens, is_beside)) return {std::string(cell), {}, {}, false};
  const auto noun = std::find_if(tokens.rbegin(), tokens.rend(), may_be_kind);
  if (noun == tokens.rend()) return {std::string(cell), {}, {}, false};
  const std::string name = folded(noun->text);
  page.want_kind(name, is_plane ? KindType::plane : KindType::line);
  return {name, without(cell, *noun), {}, true};
}

}  // namespace

KindCell kind_in(std::string_view cell, bool is_plane, const TableState& table, Page& page) {
  if (cell.empty()) return {};
  if (page.words.is_own(cell)) {
    const auto own = page.words.find(folded(cell));
    if (own && own->meaning == Meaning::kind) return {std::string(own->says), {}, {}, true};
  }
  if (const std::string_view code = code_of(cell); !code.empty())
    return {std::string(code), {}, {}, true};
  const Tokens tokens = tokens_of(cell, page.words, false);
  const Token* kind = nullptr;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    if (!tokens[i].is(Meaning::kind)) continue;
    const bool differs = kind && kind->says != tokens[i].says;
    // `striae on the vein`
    if (differs && tokens[i - 1].is(Meaning::on) && i + 1 == tokens.size())
      return {std::string(kind->says), {}, std::string(tokens[i].says), true};
    // Of two different kinds nobody knows which is meant.
    if (differs) return {std::string(cell), {}, {}, false};
    if (!kind) kind = &tokens[i];
  }
  if (!kind) return new_kind(cell, tokens, is_plane, page);
  // `slick on 7`: on the plane of that row.
  for (std::size_t i = 0; i + 1 < tokens.size(); ++i) {
    if (!tokens[i].is(Meaning::on) || !tokens[i + 1].is_figure() || i + 2 != tokens.size())
      continue;
    const auto plane = table.kinds.find(tokens[i + 1].text);
    if (plane == table.kinds.end()) break;
    return {std::string(kind->says), {}, plane->second, true};
  }
  const bool plain = std::ranges::all_of(
      tokens, [&](const Token& token) { return token.is(Meaning::kind) || is_beside(token); });
  if (!plain) return {std::string(cell), {}, {}, false};
  // `head scarp`, `minor scarp`: the whole phrase says which.
  const bool is_phrase = is_noun(kind->says) && cell.find(' ') != std::string_view::npos;
  return {std::string(kind->says), is_phrase ? std::string(cell) : without(cell, *kind), {}, true};
}

SenseCell sense_in(std::string_view cell, TableState& table, const Page& page) {
  if (is_unread(cell) || cell == "?") return {};
  const std::string text = folded(cell);
  if (const auto declared = page.sense_letters.find(text); declared != page.sense_letters.end()) {
    if (declared->second.empty()) return {{}, "sense " + std::string(cell), {}};
    return {declared->second, {}, {}};
  }
  if (const auto word = page.words.find(text); word && word->meaning == Meaning::sense)
    return {std::string(word->says), {}, {}};
  constexpr std::pair<std::string_view, std::string_view> plain[] = {
      {"n", "normal"},     {"nf", "normal"},   {"norm", "normal"}, {"d", "dextral"},
      {"dex", "dextral"},  {"dx", "dextral"},  {"s", "sinistral"}, {"sin", "sinistral"},
      {"sx", "sinistral"}, {"rev", "reverse"}, {"rv", "reverse"}};
  const auto* const found =
      std::ranges::find(plain, std::string_view(text), [](const auto& one) { return one.first; });
  if (found != std::end(plain)) {
    table.has_senses = true;
    return {std::string(found->second), {}, {}};
  }
  // Among letters such as S for sinistral it is no right.
  if (text == "r" && table.has_senses) return {"reverse", {}, {}};
  const Tokens tokens = tokens_of(cell, page.words, false);
  const bool says = std::ranges::any_of(tokens, [](const Token& token) {
    return token.is(Meaning::sense) || token.is(Meaning::down) || token.is(Meaning::up) ||
           token.is(Meaning::top_to) || token.is(Meaning::downthrow) || token.is(Meaning::upthrow);
  });
  if (says) return {std::string(cell), {}, {}};
  const std::string question =
      text == "r" ? "'R': reverse, or right-lateral?" : fmt::format("'{}': which sense?", cell);
  return {{}, {}, question};
}

}  // namespace lodebook::fair_copy
