// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

std::size_t name_end(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size() && text[at] != ',' && text[at] != ';' && text[at] != '>' &&
         space_length(text.substr(at)) == 0) {
    ++at;
  }
  return at;
}

/// Bytes of the word of letters at the start of `text`; 0 if it is one of `keywords`. One letter
/// may be a hemisphere, and two before digits a grid square: 0 for these too.
std::size_t word_before(std::string_view text, std::initializer_list<std::string_view> keywords) {
  std::size_t letters = 0;
  while (letters < text.size() && (is_letter(text[letters]) || text[letters] == '-' ||
                                   static_cast<unsigned char>(text[letters]) >= 0x80)) {
    ++letters;
  }
  const std::string_view word = text.substr(0, letters);
  const bool is_word = letters > 1 && is_letter(text[0]) &&
                       (letters == text.size() || space_length(text.substr(letters)) > 0);
  const bool is_keyword =
      std::any_of(keywords.begin(), keywords.end(),
                  [word](std::string_view keyword) { return equals_word(word, keyword); });
  return is_word && !is_keyword ? letters : 0;
}

}  // namespace

const Names& LogReader::names() const {
  return notebook_ ? notebook_->names : names_;
}

NameId LogReader::number_of(std::string_view name) {
  if (!notebook_) return names_.intern(name);
  const Names& all = notebook_->names;
  // Most names come in the same order as in the first pass.
  const bool is_next = next_name_ < all.size() && all.shown(next_name_) == name;
  const NameId number = is_next ? next_name_ : all.find(name);
  if (number == next_name_) ++next_name_;
  return number;
}

std::optional<Place> LogReader::declared_before(Declared& declared, NameId name, Place place) {
  if (name >= declared.size()) declared.resize(name + 1);
  std::optional<Place> first = declared[name];
  if (!first) declared[name] = place;
  return first;
}

std::optional<Span> LogReader::take_name(Span& body, std::string_view what) {
  return text(body).starts_with('"') ? take_quoted_name(body, what) : take_one_word(body, what);
}

std::optional<Span> LogReader::take_name(Cursor& cursor, std::string_view what) {
  Span rest = cursor.rest();
  const auto name = take_name(rest, what);
  cursor.skip_to(rest.offset);
  return name;
}

std::optional<Span> LogReader::take_quoted_name(Span& body, std::string_view what) {
  const std::string_view rest = text(body);
  const std::size_t length = quoted_length(rest);
  if (length == 0) {
    const Offers offers = accepted({in_place({body.end(), 0}, "\"")});
    faults_.add(body, wording::name_unclosed(offers));
    return std::nullopt;
  }
  const Span inner = trim({body.offset + 1, static_cast<std::uint32_t>(length) - 2});
  const Span whole{body.offset, static_cast<std::uint32_t>(length)};
  if (inner.empty()) {
    faults_.add(whole, wording::name_missing(what));
    return std::nullopt;
  }
  if (length < rest.size() && !starts_with_space(rest, length)) {
    const Span behind{whole.end(), static_cast<std::uint32_t>(column_length(rest.substr(length)))};
    faults_.add(behind, wording::name_touched(accepted({in_place({whole.end(), 0}, " ")})));
    return std::nullopt;
  }
  body = trim({whole.end(), body.length - whole.length});
  return inner;
}

std::optional<Span> LogReader::take_one_word(Span& body, std::string_view what) {
  const std::string_view rest = text(body);
  const std::size_t end = name_end(rest);
  const Span name{body.offset, static_cast<std::uint32_t>(end)};
  if (rest.empty()) {
    faults_.add(body, wording::name_missing(what));
    return std::nullopt;
  }
  const bool forbidden = end < rest.size() && space_length(rest.substr(end)) == 0;
  if (forbidden && end > 0) {
    const Span bad{body.offset + static_cast<std::uint32_t>(end), 1};
    Offers candidates = {in_place(bad, "")};
    if (!starts_with_space(rest, end + 1)) candidates.push_back(in_place(bad, " "));
    faults_.add(bad, wording::name_mark(text(bad), accepted(std::move(candidates))));
    return std::nullopt;
  }
  if (end == 0 || rest[0] == '#') {
    const Span bad{body.offset, static_cast<std::uint32_t>(std::max<std::size_t>(end, 1))};
    faults_.add(bad, wording::name_character(text(bad)));
    return std::nullopt;
  }
  body = trim({name.end(), body.length - name.length});
  return name;
}

Span LogReader::take_word(Cursor& cursor) const {
  const Span rest = cursor.rest();
  const std::string_view whole = text(rest);
  std::uint32_t length = 0;
  while (length < rest.length && space_length(whole.substr(length)) == 0)
    ++length;
  cursor.skip_to(rest.offset + length);
  return {rest.offset, length};
}

bool LogReader::has_second_word(Span name, Span body,
                                std::initializer_list<std::string_view> keywords) {
  const std::size_t letters = word_before(text(body), keywords);
  if (letters == 0) return false;
  const std::string_view word = text(body).substr(0, letters);
  std::string_view first = text(name);
  const Span second{body.offset, static_cast<std::uint32_t>(letters)};
  const bool has_colon = first.size() > 1 && first.ends_with(':');
  if (has_colon) first.remove_suffix(1);
  if (has_colon && text(body).find_first_of("0123456789") == std::string_view::npos) {
    const Span colon{name.end() - 1, body.offset - name.end() + 1};
    faults_.add(second, wording::name_with_remark(word, accepted({in_place(colon, "  ; ")})));
    return true;
  }
  Span words = name;
  for (Span rest = body; word_before(text(rest), keywords) > 0;) {
    words.length =
        rest.offset + static_cast<std::uint32_t>(word_before(text(rest), keywords)) - words.offset;
    rest = trim({words.end(), body.end() - words.end()});
  }
  report_words(words, second);
  return true;
}

void LogReader::report_words(Span words, Span second) {
  std::string name(text(words));
  if (const std::size_t colon = name.find(": "); colon != std::string::npos) name.erase(colon, 1);
  const Offers offers = accepted({in_place(words, typed_name(name))});
  std::string joined = std::move(name);
  std::replace(joined.begin(), joined.end(), ' ', '-');
  faults_.add(second, wording::name_of_two_words(text(second), joined, offers));
}

std::uint32_t LogReader::asked_at(const Statement& statement) const {
  return asking_ ? statement.whole.offset + 1 : 0;
}

void LogReader::read_kind(Statement& statement) {
  Span body = statement.body;
  const auto name = take_one_word(body, "the kind");
  if (!name) return push_unread(statement);
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  const bool plane = cursor.is_word("plane");
  const bool axis = cursor.is_word("axis");
  if (!plane && !axis && !cursor.is_word("line")) {
    const std::string_view kind = text(*name);
    fail_word(cursor, fmt::format("kind '{}'", kind),
              fmt::format("'kind {0} plane', 'kind {0} line' or 'kind {0} axis'", kind));
    return push_unread(statement);
  }
  cursor.skip();
  if (!finish(cursor)) return push_unread(statement);
  if (const auto known = vocabulary_.find(text(*name))) {
    const auto first = declared_kinds_.find(known->kind);
    if (first != declared_kinds_.end() &&
        fold_case(kinds_[known->kind].name) == fold_case(text(*name))) {
      faults_.add(*name, wording::already_stated("a kind of that name", first->second));
      return push_unread(statement);
    }
  }
  if (vocabulary_.is_taken(text(*name))) {
    faults_.add(*name, wording::word_taken(text(*name)));
    return push_unread(statement);
  }
  if (kinds_.size() == most_kinds) {
    faults_.add(*name, wording::kinds_full(text(*name), most_kinds));
    return push_unread(statement);
  }
  const auto id = static_cast<KindId>(kinds_.size());
  Kind kind{std::string(text(*name)), plane ? Kind::Type::plane : Kind::Type::line};
  kind.two_ended = axis;
  kinds_.push_back(std::move(kind));
  vocabulary_.add(text(*name), {Keyword::reading, id, asked_at(statement)});
  if (asking_) return;
  declared_kinds_.emplace(id, source_.place(statement.line, *name));
  push(statement, KindDeclaration{id});
}

void LogReader::read_short(Statement& statement) {
  Span body = statement.body;
  const auto word = take_one_word(body, "the short word");
  if (!word) return push_unread(statement);
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  const Span meaning_span = take_word(cursor);
  const std::string_view meant = text(meaning_span);
  auto meaning = vocabulary_.find(meant);
  if (!meaning) {
    const auto near = vocabulary_.nearest_to(meant);
    const std::string advice = near ? std::string(*near) + "?" : "short b bedding";
    faults_.add(meaning_span, meant.empty() ? wording::incomplete("'short'", "value", advice)
                                            : wording::unknown_word(meant, advice));
    return push_unread(statement);
  }
  if (!finish(cursor)) return push_unread(statement);
  if (vocabulary_.is_taken(text(*word))) {
    faults_.add(*word, wording::word_taken(text(*word)));
    return push_unread(statement);
  }
  if (meaning->asked_at == 0) meaning->asked_at = asked_at(statement);
  vocabulary_.add(text(*word), *meaning);
  if (!asking_) push(statement, ShortDeclaration{*word, meaning_span});
}

}  // namespace lodebook::notebook
