// SPDX-License-Identifier: MIT
#include "reading_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "blocks.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

}  // namespace

bool ReadingWords::take_blocks() {
  const auto block = block_at(tokens_, at_);
  if (!block) return false;
  found_.block_side = block->side;
  found_.block_down = block->is_down;
  take(block->length);
  if (is_question(0)) {
    ask("is the sense doubtful?");
    take();
  }
  return true;
}

bool ReadingWords::take_top() {
  if (!is_point(at_ + 1)) return false;
  found_.block_side = tokens_[at_ + 1].text;
  found_.is_top = true;
  take(2);
  return true;
}

bool ReadingWords::take_word() {
  const Token& token = here();
  if (token.type == Type::mark && token.text == "x" && at_ + 1 < tokens_.size() &&
      tokens_[at_ + 1].is_figure())
    return take_times(tokens_[at_ + 1].text, 2);
  if (token.type != Type::word) return false;
  switch (token.meaning) {
    case Meaning::facing:
      return take_facing(std::string(token.says), 1);
    case Meaning::youngs:
      return take_youngs();
    case Meaning::way_up:
      ask("which way up is it?");
      break;
    case Meaning::sense:
      return take_sense(std::string(token.says));
    case Meaning::top_to:
      return take_top();
    case Meaning::rough:
    case Meaning::doubt:
      return take_doubt();
    case Meaning::dip:
      return take_side();
    case Meaning::contrary:
    case Meaning::either:
      if (token.meaning == Meaning::either || !found_.items.empty() || is_beside_figure())
        ask(fmt::format("'{}': what is meant?", token.text));
      break;
    case Meaning::mean:
      ask("a mean of what stands here?");
      break;
    case Meaning::all:
      found_.all = !found_.items.empty();
      break;
    default:
      if (token.text.size() >= 2 && (token.text[0] == 'x' || token.text[0] == 'X'))
        return take_times(token.text.substr(1), 1);
      return false;
  }
  take();
  return true;
}

bool ReadingWords::is_beside_figure() const {
  return at_ + 1 < tokens_.size() && tokens_[at_ + 1].use == Use::none &&
         (tokens_[at_ + 1].is_figure() || tokens_[at_ + 1].type == Type::bearing);
}

bool ReadingWords::is_question(std::size_t ahead) const {
  return is_free(at_ + ahead) && is(at_ + ahead, Meaning::doubt) &&
         tokens_[at_ + ahead].text.starts_with('?');
}

bool ReadingWords::take_sense(const std::string& said) {
  if (is_question(1)) ask("of which reading is the sense, and is it sure?");
  const bool apart = at_ > 0 && is(at_ - 1, ',');
  take();
  if (found_.items.empty()) {
    sense_ahead_ = said;
    return true;
  }
  // Behind a fault and its striae, and a comma, it is the fault's.
  const auto slips = [](const Item& item) { return item.kind == "fault" || item.kind == "shear"; };
  const auto fault = std::ranges::find_if(found_.items.rbegin(), found_.items.rend(), slips);
  const bool is_line = type_of(page_, found_.items.back().kind) != KindType::plane;
  Item& item = apart && is_line && fault != found_.items.rend() ? *fault : found_.items.back();
  if (!item.sense.empty() && item.sense != said) ask(fmt::format("{} or {}?", item.sense, said));
  item.sense = said;
  found_.says_sense = true;
  return true;
}

bool ReadingWords::take_facing(const std::string& said, std::size_t length) {
  if (found_.items.empty()) {
    if (!found_.facing_ahead.empty()) ask("facing is said twice");
    found_.facing_ahead = said;
  } else if (!found_.items.back().facing.empty()) {
    ask("facing is said twice");
  } else {
    found_.items.back().facing = said;
  }
  take(length);
  note_facing();
  return true;
}

void ReadingWords::note_facing() {
  if (is_question(0)) {
    ask("is the facing doubtful, or the reading?");
    take();
  }
  if (!found_.items.empty() && found_.facing_of == FoundItems::none)
    found_.facing_of = found_.items.size() - 1;
}

bool ReadingWords::take_youngs() {
  const std::size_t k = is(at_ + 1, Meaning::toward) ? 2 : 1;
  if (is_point(at_ + k)) {
    std::string& youngs = found_.items.empty() ? found_.youngs_ahead : found_.items.back().youngs;
    if (!youngs.empty() && youngs != tokens_[at_ + k].text) ask("which way does it young?");
    youngs = tokens_[at_ + k].text;
    take(k + 1);
    note_facing();
    return true;
  }
  if (is_question(1)) {
    take();
    return take_facing("unknown", 1);
  }
  ask("which way does it young?");
  take();
  return true;
}

bool ReadingWords::take_side() {
  const std::size_t k = is(at_ + 1, Meaning::toward) ? 2 : 1;
  if (!is_point(at_ + k) || found_.items.empty()) return false;
  Attitude& attitude = found_.items.back().attitude;
  const std::string& side = tokens_[at_ + k].text;
  if (!attitude.side.empty() && attitude.side != side)
    ask(fmt::format("does it dip {} or {}?", attitude.side, side));
  const bool may_have =
      attitude.form == Attitude::Form::pair || attitude.form == Attitude::Form::strike_dip;
  if (!may_have) return false;
  attitude.side = side;
  take(k + 1);
  return true;
}

bool ReadingWords::take_doubt() {
  // `mud cracks say upright`
  if (here().is(Meaning::rough) && folded(here().text) == "say") return false;
  const bool mark = here().text.starts_with('?');
  // On a word that is no kind and no figure it may be about that word alone.
  if (mark && !here().spaced && at_ > 0 && tokens_[at_ - 1].type == Type::word &&
      tokens_[at_ - 1].meaning == Meaning::unknown)
    ask(fmt::format("'{}?': is the reading doubtful?", tokens_[at_ - 1].text));
  if (found_.items.empty()) {
    doubtful_ = true;
  } else if (here().is(Meaning::rough) &&
             (is(at_ - 1, Meaning::metres) || is(at_ - 1, Meaning::unit))) {
    tokens_[at_].use = Use::aside;  // `throw 2 m approx.`
    ++at_;
    return true;
  } else {
    Item& item = found_.items.back();
    (here().is(Meaning::rough) ? item.about : item.doubtful) = true;
  }
  take();
  return true;
}

bool ReadingWords::take_times(const std::string& digits, std::size_t length) {
  const bool number = !digits.empty() && digits.size() <= 2 &&
                      std::ranges::all_of(digits, [](char c) { return c >= '0' && c <= '9'; });
  if (!number || found_.items.empty()) return false;
  found_.items.back().times = static_cast<unsigned>(std::stoi(digits));
  if (found_.items.back().times < 2) ask("how many times?");
  take(length);
  return true;
}

}  // namespace lodebook::fair_copy
