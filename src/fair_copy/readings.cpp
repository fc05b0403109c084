// SPDX-License-Identifier: MIT
// Lines with attitudes of planes and lines, as people write them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/quadrant.hpp>

#include "asides.hpp"
#include "blocks.hpp"
#include "items.hpp"
#include "page_line.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class ReadingLine : PageLine {
 public:
  ReadingLine(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read() {
    set_aside(tokens_, false);
    if (!tokens_.empty() && tokens_.front().is(Meaning::mean)) return std::nullopt;
    for (at_ = 0; at_ < tokens_.size();)
      step();
    if (found_.items.empty()) {
      keep_heading_kind();
      return std::nullopt;
    }
    found_.question = std::move(question_);
    return settled(std::move(found_), line_, tokens_, page_);
  }

 private:
  /// What stands below is not of that kind either, without its own word for it.
  void ask_kind(std::string question) {
    ask(std::move(question));
    found_.kind_in_doubt = true;
  }
  bool is_first() const { return found_.items.empty() && found_.kind.empty(); }

  void step() {
    if (here().use != Use::none) {
      ++at_;
      return;
    }
    if (take_kind() || take_ditto() || take_blocks() || take_attitude() || take_word()) return;
    if (here().is('-') && is_first() && at_ == 0) found_.ditto = true;
    const bool is_other = here().type == Type::word && here().meaning == Meaning::unknown;
    if (is_other && is_first() && !found_.ditto) found_.unknown_first = true;
    ++at_;
  }

  bool take_kind() {
    if (here().is(Meaning::on)) {
      const std::size_t skip = is(at_ + 1, Meaning::filler) || is(at_ + 1, Meaning::ditto) ? 2 : 1;
      if (is(at_ + skip, Meaning::kind)) {
        set_on(std::string(tokens_[at_ + skip].says));
        take(skip + 1);
        return true;
      }
      // `on it`, `on this`
      const std::string said = folded(here().text);
      if (here().end - here().begin > 2 && !page_.plane_kind.empty()) {
        set_on(page_.plane_kind);
        take();
        return true;
      }
      return false;
    }
    if (!here().is(Meaning::kind)) return false;
    const std::string kind(here().says);
    const bool pending = found_.has_new_kind;
    // `intersection bedding x cleavage`: of the two planes.
    // `flutes, flow to 128`: the same thing again.
    const bool same = pending && may_stand_bare(found_.kind) && kind == "current";
    if (!(pending && found_.kind == "intersection") && !same) found_.kind = kind;
    found_.has_new_kind = true;
    is_thrust_ = folded(here().text).starts_with("thrust");
    if (found_.items.empty()) found_.unknown_first = false;
    take();
    take_question_mark();
    return true;
  }

  void set_on(std::string plane) {
    if (found_.items.empty() || found_.has_new_kind ||
        type_of(page_, found_.items.back().kind) == KindType::plane) {
      found_.on = std::move(plane);
    } else {
      found_.items.back().on = std::move(plane);
    }
  }

  /// `fault?`
  void take_question_mark() {
    if (at_ < tokens_.size() && here().is(Meaning::doubt) && here().text == "?" && !here().spaced) {
      doubtful_ = true;
      take();
    }
  }

  bool take_ditto() {
    if (!here().is(Meaning::ditto)) return false;
    if (is_first()) {
      found_.ditto = true;
    } else if (found_.has_new_kind) {
      repeats_form_ = true;
    } else if (!found_.items.empty()) {
      found_.ditto_behind = true;
      if (at_ + 1 < tokens_.size() && tokens_[at_ + 1].is_figure())
        ask("what does the ditto mark repeat?");
    }
    take();
    return true;
  }

  /// `W side down`, `down to the E`, `downthrow E`: which block of a fault moved where.
  bool take_blocks() {
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

  /// `top to SW`: where the hanging wall of a shear went.
  bool take_top() {
    if (!is_point(at_ + 1)) return false;
    found_.block_side = tokens_[at_ + 1].text;
    found_.is_top = true;
    take(2);
    return true;
  }

  bool take_attitude() {
    const bool bare = may_stand_bare(current_kind());
    // A point alone under such a kind only where nothing else stands between.
    const auto attitude = attitude_at(tokens_, at_, bare);
    if (!attitude) return false;
    for (std::size_t i = attitude->begin; i < attitude->end; ++i)
      tokens_[i].use = Use::stated;
    // `vein 59@112, FW 60@111`: a word that nobody knows where a kind may stand.
    const bool strange = !found_.items.empty() && !found_.has_new_kind && at_ > 0 &&
                         tokens_[at_ - 1].is(Meaning::unknown);
    Item& item = found_.items.emplace_back();
    item.is_strange = strange;
    item.attitude = *attitude;
    item.kind = current_kind();
    // With a side it is a plane, below whatever line it stands.
    if (found_.kind.empty() && !item.attitude.side.empty() && !page_.plane_kind.empty() &&
        type_of(page_, item.kind) == KindType::line)
      item.kind = page_.plane_kind;
    item.has_own_kind = !found_.kind.empty() || found_.ditto;
    item.on = std::exchange(found_.on, {});
    item.doubtful = std::exchange(doubtful_, false);
    if (found_.unknown_first && !item.has_own_kind) ask_kind("which kind is it?");
    // Below a line on a plane another such line, or the next plane?
    if (!item.has_own_kind && page_.list_kind.empty() && page_.last.kind == "slickenline") {
      item.kind = page_.plane_kind;
      ask_kind("of the plane, or of a line in it?");
    }
    if (std::exchange(is_thrust_, false)) item.sense = "reverse";
    if (std::exchange(repeats_form_, false)) repeat_form(item);
    found_.has_new_kind = false;
    at_ = attitude->end;
    take_question_mark();
    if (doubtful_) found_.items.back().doubtful = std::exchange(doubtful_, false);
    return true;
  }

  std::string current_kind() const {
    if (!found_.kind.empty()) return found_.kind;
    if (found_.ditto && !page_.last.kind.empty()) return page_.last.kind;
    return page_.list_kind.empty() ? page_.kind : page_.list_kind;
  }

  /// `joint ditto, strike 024` behind a vertical one.
  void repeat_form(Item& item) {
    const bool vertical =
        page_.last.attitude && page_.last.attitude->form == Attitude::Form::vertical;
    if (vertical && item.attitude.form == Attitude::Form::direction) {
      item.attitude.form = Attitude::Form::vertical;
    } else {
      ask("what does the ditto mark repeat?");
    }
  }

  bool take_word() {
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
      case Meaning::sense:
        if (found_.items.empty() || is_question(1))
          ask("of which reading is the sense, and is it sure?");
        if (!found_.items.empty()) {
          found_.items.back().sense = token.says;
          found_.says_sense = true;
        }
        take();
        return true;
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

  bool is_beside_figure() const {
    return at_ + 1 < tokens_.size() && tokens_[at_ + 1].use == Use::none &&
           (tokens_[at_ + 1].is_figure() || tokens_[at_ + 1].type == Type::bearing);
  }
  bool is_question(std::size_t ahead) const {
    return is(at_ + ahead, Meaning::doubt) && tokens_[at_ + ahead].text.starts_with('?');
  }

  bool take_facing(const std::string& said, std::size_t length) {
    if (is_question(length)) {
      ask("is the facing doubtful, or the reading?");
      ++length;
    }
    if (found_.items.empty()) {
      found_.facing_ahead = said;
    } else if (!found_.items.back().facing.empty()) {
      ask("facing is said twice");
    } else {
      found_.items.back().facing = said;
      if (found_.facing_of == FoundItems::none) found_.facing_of = found_.items.size() - 1;
    }
    take(length);
    return true;
  }

  /// `youngs SE`, `yg to the SE`, `youngs ?`
  bool take_youngs() {
    const std::size_t k = is(at_ + 1, Meaning::toward) ? 2 : 1;
    if (is_point(at_ + k)) {
      const std::string said = "youngs " + tokens_[at_ + k].text;
      return take_facing(said, k + 1);
    }
    if (is_question(1)) {
      take();
      return take_facing("facing unknown", 1);
    }
    ask("which way does it young?");
    take();
    return true;
  }

  /// `dips NW`, behind an attitude without its side.
  bool take_side() {
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

  bool take_doubt() {
    const bool mark = here().text.starts_with('?');
    // On a word that is no kind and no figure it may be about that word alone.
    if (mark && !here().spaced && at_ > 0 && tokens_[at_ - 1].type == Type::word &&
        tokens_[at_ - 1].meaning == Meaning::unknown)
      ask(fmt::format("'{}?': is the reading doubtful?", tokens_[at_ - 1].text));
    if (found_.items.empty()) {
      doubtful_ = true;
    } else {
      found_.items.back().doubtful = true;
    }
    take();
    return true;
  }

  bool take_times(const std::string& digits, std::size_t length) {
    const bool number = !digits.empty() && digits.size() <= 2 &&
                        std::ranges::all_of(digits, [](char c) { return c >= '0' && c <= '9'; });
    if (!number || found_.items.empty()) return false;
    found_.items.back().times = static_cast<unsigned>(std::stoi(digits));
    if (found_.items.back().times < 2) ask("how many times?");
    take(length);
    return true;
  }

  /// `joints:`, `x-beds, three sets:`: the kind of what stands below.
  void keep_heading_kind() {
    std::size_t words = 0;
    bool unknown = false;
    const Token* kind = nullptr;
    for (const Token& token : tokens_) {
      if (token.type != Type::word || token.is(Meaning::ordinal)) continue;
      ++words;
      if (token.is(Meaning::kind)) kind = &token;
      unknown = unknown || token.is(Meaning::unknown);
    }
    constexpr std::size_t most_words = 3;
    const bool colon = !tokens_.empty() && tokens_.back().is(':');
    const bool first = kind && !tokens_.empty() && kind == &tokens_.front();
    if (first || (kind && words <= most_words)) {
      page_.kind = page_.list_kind = page_.last.kind = kind->says;
    } else if (colon || (unknown && words > 0 && words <= most_words)) {
      // Over a list of something else the kind above ends.
      page_.kind = page_.list_kind = page_.last.kind = std::string();
    }
  }

  FoundItems found_;
  bool repeats_form_ = false;
  bool doubtful_ = false;
  bool is_thrust_ = false;
};

}  // namespace

std::optional<Lines> readings_of(std::string_view line, Tokens& tokens, Page& page) {
  return ReadingLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
