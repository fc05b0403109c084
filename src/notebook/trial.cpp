// SPDX-License-Identifier: MIT
// Reads a statement again with a change in it, so that no help offers what the reader would refuse.
#include <algorithm>

#include "log_reader.hpp"

namespace lodebook::notebook {

namespace {

/// A change may show a second fault, whose fix is then added. A third is one too many.
constexpr unsigned deepest = 2;
/// More offers are too many to read at a glance.
constexpr std::size_t most_offers = 4;

bool is_error(const Diagnostic& diagnostic) {
  return diagnostic.severity == Severity::error;
}

/// A fix that leaves a line without its plunge is no fix.
bool is_refused(const Diagnostic& diagnostic) {
  return is_error(diagnostic) || diagnostic.code == Code::plunge_missing;
}

/// `text`, which begins at `offset` of its log, with the fix made.
std::string with(std::string_view text, std::uint32_t offset, const Fix& fix) {
  std::string changed(text);
  return changed.replace(fix.span.offset - offset, fix.span.length, fix.text);
}

bool lies_in(Span part, Span whole) {
  return part.offset >= whole.offset && part.end() <= whole.end();
}

/// The most changes that are tried for slips. A statement seldom needs more.
constexpr std::size_t most_slips = 12;

/// What may belong in place of the character at `at`, if that is no letter, digit or space:
/// nothing, or a space. For the letter O beside a digit: a zero.
std::vector<std::string_view> slips_for(std::string_view typed, std::size_t at,
                                        std::size_t length) {
  const char before = at > 0 ? typed[at - 1] : ' ';
  const char behind = at + length < typed.size() ? typed[at + length] : ' ';
  const char c = typed[at];
  const bool beside_digit = is_digit(before) || is_digit(behind);
  if ((c == 'O' || c == 'o') && beside_digit) return {"0"};
  // A single decimal point belongs to its figure.
  const std::size_t begin = typed.find_last_not_of("0123456789.", at) + 1;
  const std::size_t end = std::min(typed.find_first_not_of("0123456789.", at), typed.size());
  const bool is_point = c == '.' && std::ranges::count(typed.substr(begin, end - begin), '.') == 1;
  if (is_point && beside_digit) return {};
  if (is_letter(c) || is_digit(c) || space_length(typed.substr(at)) > 0) return {};
  if (before == ' ' || behind == ' ' || (is_digit(before) && is_digit(behind))) return {"", " "};
  return {" ", ""};
}

/// `text` with one space in place of several.
std::string squeezed(std::string text) {
  const auto both_spaces = [](char a, char b) { return a == ' ' && b == ' '; };
  text.erase(std::unique(text.begin(), text.end(), both_spaces), text.end());
  return text;
}

/// `typed` with the word `doubtful` in place of question marks: a doubt is typed on purpose.
std::string doubted(std::string_view typed) {
  std::string said(typed);
  std::erase(said, '?');
  said.erase(said.find_last_not_of(' ') + 1);
  return said + " doubtful";
}

/// A longer statement is not shown completely because of one word.
constexpr std::size_t longest_shown = 40;

}  // namespace

/// Another reader, which reads the text that `source` has at the time.
struct LogReader::Trial {
  Source source{"", ""};
  LogReader reader{source, {}};
  bool knows_words = true;
};

void LogReader::EndTrial::operator()(Trial* trial) const {
  delete trial;
}

bool LogReader::may_try() const {
  // The first pass drops its faults, so nobody would see its offers.
  return (notebook_ || is_single_ || depth_ > 0) && depth_ < deepest && !asking_;
}

const std::vector<Diagnostic>& LogReader::read_again(std::string text) {
  if (!trial_) trial_.reset(new Trial);
  LogReader& again = trial_->reader;
  if (!trial_->knows_words || again.vocabulary_.added() != vocabulary_.added()) {
    again.kinds_ = kinds_;
    again.vocabulary_ = vocabulary_;
    again.declared_kinds_ = declared_kinds_;
  }
  const std::size_t words = vocabulary_.added();
  trial_->source = Source({}, std::move(text));
  again.depth_ = depth_ + 1;
  again.last_word_ = {};
  again.last_kind_ = last_kind_;
  again.rules_ = rules_;
  again.void_ = void_;
  again.has_pace_ = has_pace_;
  again.dial_.reset();
  again.in_station_ = true;
  again.at_.reset();
  again.elevation_.reset();
  again.time_.reset();
  again.names_ = Names();
  again.stations_.clear();
  again.landmarks_.clear();
  again.waiting_.clear();
  again.reading_count_ = 0;
  again.own_block_.entries.clear();
  again.own_block_.diagnostics.clear();
  if (is_single_) {
    again.read_single(single_as_);
  } else {
    for (std::uint32_t line = 1; line <= trial_->source.line_count(); ++line)
      again.read_line(line);
  }
  trial_->knows_words = again.vocabulary_.added() == words;
  return again.own_block_.diagnostics;
}

std::string LogReader::judged_word() const {
  std::string word(text(judged_.word));
  if (!word.empty()) word += ' ';
  return word;
}

bool LogReader::stands_apart(std::string_view whole) {
  if (!judged_.is_attitude || is_single_) return true;
  const std::string_view log = source_.text();
  // The repeats before and behind it, each up to its own comma.
  const std::size_t first = judged_.word.end();
  const std::string_view before = log.substr(first, judged_.body.offset - first);
  const std::string_view behind = log.substr(judged_.body.end(), judged_.end - judged_.body.end());
  std::size_t repeats = whole.find(", ") == std::string_view::npos ? 1 : 2;
  std::string text = judged_word();
  if (const std::size_t comma = before.find_last_of(','); comma != std::string_view::npos) {
    const std::size_t begin = before.substr(0, comma).find_last_of(',');
    text += before.substr(begin == std::string_view::npos ? 0 : begin + 1);
    ++repeats;
  }
  text += whole;
  if (const std::size_t comma = behind.find(','); comma != std::string_view::npos) {
    text += behind.substr(0, behind.find(',', comma + 1));
    ++repeats;
  }
  if (repeats == 1) return true;
  read_again(std::move(text));
  return trial_->reader.reading_count_ == repeats;
}

void LogReader::keep(Offer offer, Offers& kept) {
  const bool known = std::ranges::any_of(
      kept, [&](const Offer& other) { return squeezed(other.whole) == squeezed(offer.whole); });
  if (!stands_apart(offer.whole)) return;
  if (known || offer.whole == text(judged_.body) || kept.size() >= most_offers) return;
  // A space or a mark alone tells a reader nothing.
  const std::string& part = offer.fix.text;
  const bool says_something = part.size() > 1 && space_length(part) == 0 && part.back() != ' ';
  const bool is_whole = judged_.is_attitude && offer.whole.size() <= longest_shown;
  offer.shown = is_whole || !says_something ? offer.whole : part;
  kept.push_back(std::move(offer));
}

void LogReader::try_out(Offer offer, Offers& kept) {
  const std::string word = judged_word();
  offer.whole = with(text(judged_.body), judged_.body.offset, offer.fix);
  const auto& faults = read_again(word + offer.whole);
  const auto errors = std::ranges::count_if(faults, is_refused);
  if (errors == 0) return keep(std::move(offer), kept);
  if (errors > 1) return;
  const auto begin = static_cast<std::uint32_t>(word.size());
  // A copy, because `keep` may run another trial, which overwrites the faults.
  const std::vector<Fix> fixes = std::ranges::find_if(faults, is_refused)->fixes;
  for (const Fix& fix : fixes) {
    // A fix that turns the rest into a remark only hides the fault.
    if (fix.span.offset < begin || fix.text == remark_mark) continue;
    Offer both;
    both.whole = with(offer.whole, begin, fix);
    both.fix = {judged_.body, both.whole};
    keep(std::move(both), kept);
  }
}

Offers LogReader::accepted(Offers candidates) {
  Offers kept;
  if (!may_try()) return kept;
  for (Offer& candidate : candidates) {
    if (lies_in(candidate.fix.span, judged_.body)) try_out(std::move(candidate), kept);
  }
  return kept;
}

void LogReader::offer_slips(std::size_t first) {
  auto& faults = block_->diagnostics;
  const auto error =
      std::find_if(faults.begin() + static_cast<std::ptrdiff_t>(first), faults.end(), is_error);
  // Slips are not tried in a trial.
  const bool has_room = may_try() && depth_ == 0;
  if (!has_room || error == faults.end() || !error->fixes.empty()) return;
  const std::string_view typed = text(judged_.body);
  if (typed.find('?') != std::string_view::npos) {
    *error =
        wording::with_slips(std::move(*error), accepted({in_place(judged_.body, doubted(typed))}));
    return;
  }
  Offers kept;
  std::size_t tried = 0;
  for (std::size_t at = 0; at < typed.size() && tried < most_slips;) {
    const std::size_t length = column_length(typed.substr(at));
    const Span here{judged_.body.offset + static_cast<std::uint32_t>(at),
                    static_cast<std::uint32_t>(length)};
    for (const std::string_view slip : slips_for(typed, at, length)) {
      ++tried;
      const Offers offers = accepted({in_place(here, std::string(slip))});
      // Only the change alone: together with a second fix it would be a guess.
      if (offers.empty() || offers.front().fix.span.length != here.length) continue;
      kept.push_back(offers.front());
      break;
    }
    at += length;
  }
  kept.resize(std::min(kept.size(), most_offers));
  *error = wording::with_slips(std::move(*error), kept);
}

std::vector<std::string> LogReader::accepted_above(std::vector<std::string> settings) {
  if (!may_try() || is_single_) return {};
  const std::string statement = judged_word().append(text(judged_.body));
  std::erase_if(settings, [&](const std::string& setting) {
    return std::ranges::any_of(read_again(setting + '\n' + statement), is_refused);
  });
  return settings;
}

}  // namespace lodebook::notebook
