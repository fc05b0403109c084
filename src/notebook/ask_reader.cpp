// SPDX-License-Identifier: MIT
// `ask STATEMENT`: an open question. The statement has no effect, but stays visible: as rejected
// rows, as the block of a station, as the name of a landmark, as a setting that counts as not
// stated, or as a word with which only such statements begin.
#include <algorithm>
#include <tuple>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

/// A date or observer that cannot be read leaves the one above in force; an open one does not.
VoidSetting open_setting(Keyword keyword) {
  if (keyword == Keyword::date) return VoidSetting::date;
  if (keyword == Keyword::observer) return VoidSetting::observer;
  return void_setting(keyword);
}

}  // namespace

LogReader::Statement LogReader::asked(const Statement& statement) const {
  Statement inner = statement;
  do {
    const std::string_view rest = text(inner.body);
    std::size_t length = 0;
    while (length < rest.size() && !starts_with_space(rest, length))
      ++length;
    std::tie(inner.word, inner.body) = cut(inner.body, length);
    inner.body = trim(inner.body);
    const auto meaning = vocabulary_.find(text(inner.word));
    if (!meaning || meaning->keyword != Keyword::ask) break;
  } while (!inner.word.empty());
  return inner;
}

void LogReader::read_ask(const Statement& statement) {
  Statement inner = asked(statement);
  if (inner.word.empty()) {
    faults_.add(statement.word,
                wording::incomplete("'ask'", "statement", "such as 'ask bedding N62E 37NW'"));
    return push_unread(statement);
  }
  const std::uint32_t readings = reading_count_;
  const VoidSetting lost =
      read_without_effect(statement, inner, vocabulary_.find(text(inner.word)));
  faults_.start(statement.line, reading_count_ > readings ? readings : no_reading);
  faults_.add({inner.word.offset, inner.whole.end() - inner.word.offset},
              wording::unanswered(text(statement.remark)));
  begin_void(inner, lost);
}

void LogReader::read_waiting(const Statement& statement, Meaning meaning) {
  Statement inner = statement;
  const std::uint32_t readings = reading_count_;
  const VoidSetting lost = read_without_effect(statement, inner, meaning);
  if (!notebook_) waits_.for_line[meaning.asked_at] += std::max(1U, reading_count_ - readings);
  begin_void(meaning.asked_at, lost, text(inner.body));
}

VoidSetting LogReader::read_without_effect(const Statement& statement, Statement& asked,
                                           std::optional<Meaning> meaning) {
  const std::size_t entries = block_->entries.size();
  const std::size_t faults = block_->diagnostics.size();
  const std::uint32_t readings = reading_count_;
  asking_ = true;
  const VoidSetting lost = meaning ? read_asked(asked, *meaning) : VoidSetting::none;
  if (reading_count_ == readings && block_->entries.size() == entries) push_unread(statement, lost);
  asking_ = false;

  const auto first = block_->diagnostics.begin() + static_cast<std::ptrdiff_t>(faults);
  block_->diagnostics.erase(
      std::remove_if(first, block_->diagnostics.end(),
                     [](const auto& fault) { return fault.code != Code::reading_outside_station; }),
      block_->diagnostics.end());
  for (std::size_t i = entries; i < block_->entries.size(); ++i) {
    if (auto* reading = std::get_if<Reading>(&block_->entries[i].what)) {
      reading->rejected = true;
      reading->waits_for = Code::unanswered;
    }
  }
  return lost;
}

VoidSetting LogReader::read_asked(Statement& asked, Meaning meaning) {
  switch (meaning.keyword) {
    case Keyword::reading:
      read_reading(asked, meaning.kind);
      return VoidSetting::none;
    case Keyword::station:
      read_asked_station(asked);
      return VoidSetting::none;
    case Keyword::landmark:
      read_asked_landmark(asked);
      return VoidSetting::none;
    case Keyword::kind:
      read_kind(asked);
      return VoidSetting::none;
    case Keyword::short_word:
      read_short(asked);
      return VoidSetting::none;
    default:
      return open_setting(meaning.keyword);
  }
}

void LogReader::read_asked_station(const Statement& asked) {
  begin_station();
  StationHeading heading;
  Span body = asked.body;
  if (const auto name = take_name(body, "the station")) {
    heading.name = number_of(text(*name));
    declared_before(stations_, heading.name, source_.place(asked.line, *name));
  }
  push(asked, heading);
}

/// Declares the name, so that sights to it are not at fault.
void LogReader::read_asked_landmark(const Statement& asked) {
  Landmark landmark;
  Span body = asked.body;
  const auto name = take_name(body, "the landmark");
  if (!name) return;
  landmark.name = number_of(text(*name));
  if (declared_before(landmarks_, landmark.name, source_.place(asked.line, *name))) return;
  push(asked, landmark);
}

}  // namespace lodebook::notebook
