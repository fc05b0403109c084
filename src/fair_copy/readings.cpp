// SPDX-License-Identifier: MIT
// Lines with attitudes of planes and lines, as people write them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/quadrant.hpp>

#include "asides.hpp"
#include "blocks.hpp"
#include "facing.hpp"
#include "items.hpp"
#include "page_line.hpp"
#include "places.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class ReadingLine : PageLine {
 public:
  ReadingLine(std::string_view line, Tokens& tokens, Page& page) : PageLine(line, tokens, page) {}

  std::optional<Lines> read() {
    set_aside(tokens_, false);
    join_unseen_facing(line_, tokens_);
    if (!tokens_.empty() && tokens_.front().is(Meaning::mean)) return std::nullopt;
    for (at_ = 0; at_ < tokens_.size();)
      step();
    if (found_.items.empty()) repeat_reading();
    if (found_.items.empty()) {
      keep_heading_kind();
      return std::nullopt;
    }
    found_.question = std::move(question_);
    return settled(std::move(found_), line_, tokens_, page_);
  }

 private:
  /// `bedding ditto`, without a figure: the whole reading again?
  void repeat_reading() {
    const bool again = repeats_form_ && page_.last.attitude && page_.last.kind == found_.kind;
    if (!again || first_unsettled(tokens_) < tokens_.size()) return;
    Item& item = found_.items.emplace_back();
    item.kind = found_.kind;
    item.has_own_kind = true;
    item.attitude = *page_.last.attitude;
    item.facing = page_.last.facing;
    item.sense = page_.last.sense;
    ask("the same reading again?");
  }

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
    if (take_on() || take_kind() || take_kind_behind() || take_ditto() || take_blocks() ||
        take_attitude() || take_word())
      return;
    if (here().is('-') && is_first() && at_ == 0) found_.ditto = true;
    ++at_;
  }

  /// `on bedding`, `in the fault`, `on it`: the plane of a line. A plane's place stays in the
  /// remark.
  bool take_on() {
    if (!here().is(Meaning::on)) return false;
    std::size_t k = at_ + 1;
    while (is(k, Meaning::filler) || is(k, Meaning::ditto))
      ++k;
    const bool of_plane = found_.has_new_kind && is_plane(page_, found_.kind);
    if (is(k, Meaning::kind) && (of_plane || !is_plane(page_, tokens_[k].says))) {
      at_ = k + 1;
      return true;
    }
    if (is(k, Meaning::kind)) {
      set_on(std::string(tokens_[k].says));
      take(k + 1 - at_);
      return true;
    }
    // `on it`, `on this`
    const std::string said = folded(here().text);
    const bool same = said.ends_with(" it") || said.ends_with(" this") || said.ends_with(" same");
    if (!same || page_.plane_kind.empty()) return false;
    set_on(page_.plane_kind);
    take();
    return true;
  }

  bool take_kind() {
    if (!here().is(Meaning::kind)) return false;
    const bool known = !found_.kind.empty() || !found_.items.empty();
    if (known && is_in_place(tokens_, at_)) return false;
    const std::string kind(here().says);
    const bool pending = found_.has_new_kind;
    // `intersection bedding x cleavage`: of the two planes.
    // `flutes, flow to 128`: the same thing again.
    const bool same = pending && may_stand_bare(page_, found_.kind) && kind == "current";
    if (!(pending && found_.kind == "intersection") && !same) found_.kind = kind;
    found_.has_new_kind = true;
    is_thrust_ = folded(here().text).starts_with("thrust");
    take();
    take_question_mark();
    return true;
  }

  /// `74/170 (J1)`, `74/170, 71/166 (both J1)`: the kind of what stands before it.
  bool take_kind_behind() {
    if (!here().is('(') || found_.items.empty()) return false;
    const std::size_t k = is(at_ + 1, Meaning::all) ? at_ + 2 : at_ + 1;
    if (!is(k, Meaning::kind) || !is(k + 1, ')')) return false;
    for (auto item = found_.items.rbegin(); item != found_.items.rend(); ++item) {
      if (item->has_own_kind) break;
      item->kind = tokens_[k].says;
      item->has_own_kind = true;
      item->is_strange = false;
      if (k == at_ + 1) break;
    }
    take(k + 2 - at_);
    return true;
  }

  void set_on(std::string plane) {
    if (found_.items.empty() || found_.has_new_kind || is_plane(page_, found_.items.back().kind)) {
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
    const bool bare = may_stand_bare(page_, current_kind());
    // A point alone under such a kind only where nothing else stands between.
    const auto attitude = attitude_at(tokens_, at_, bare);
    if (!attitude) return false;
    for (std::size_t i = attitude->begin; i < attitude->end; ++i)
      tokens_[i].use = Use::stated;
    // `vein 59@112, FW 60@111`: a word that nobody knows where a kind may stand.
    const bool named = found_.has_new_kind || (found_.items.empty() && found_.ditto);
    const bool strange = !named && has_strange_word(tokens_, behind_last_, at_);
    Item& item = found_.items.emplace_back();
    item.is_strange = strange;
    item.attitude = *attitude;
    item.kind = current_kind();
    // With a side it is a plane, below whatever line it stands.
    if (found_.kind.empty() && !item.attitude.side.empty() && !page_.plane_kind.empty() &&
        !is_plane(page_, item.kind))
      item.kind = page_.plane_kind;
    item.has_own_kind = !found_.kind.empty() || found_.ditto;
    item.on = std::exchange(found_.on, {});
    item.doubtful = std::exchange(doubtful_, false);
    // Below a line on a plane another such line, or the next plane?
    if (!item.has_own_kind && page_.list_kind.empty() && page_.last.kind == "slickenline") {
      item.kind = page_.plane_kind;
      ask_kind("of the plane, or of a line in it?");
    }
    if (std::exchange(is_thrust_, false)) item.sense = "reverse";
    if (std::exchange(repeats_form_, false)) repeat_form(item);
    found_.has_new_kind = false;
    ask_unit(*attitude);
    at_ = behind_last_ = attitude->end;
    take_question_mark();
    if (doubtful_) found_.items.back().doubtful = std::exchange(doubtful_, false);
    return true;
  }

  /// `flow 3.2 buckets`: a figure, and a word that may be its unit.
  void ask_unit(const Attitude& attitude) {
    const Value& only = attitude.first;
    const bool alone = attitude.form == Attitude::Form::direction &&
                       only.type == Value::Type::figure && only.digits < 3;
    if (!alone) return;
    const bool unknown = is(attitude.end, Meaning::unknown);
    if (unknown) ask(fmt::format("what is '{}'?", tokens_[attitude.end].text));
    if (!unknown && only.text.find('.') != std::string::npos)
      ask(fmt::format("what is '{}'?", only.text));
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
      case Meaning::way_up:
        ask("which way up is it?");
        break;
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
    return is_free(at_ + ahead) && is(at_ + ahead, Meaning::doubt) &&
           tokens_[at_ + ahead].text.starts_with('?');
  }

  bool take_facing(const std::string& said, std::size_t length) {
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

  void note_facing() {
    if (is_question(0)) {
      ask("is the facing doubtful, or the reading?");
      take();
    }
    if (!found_.items.empty() && found_.facing_of == FoundItems::none)
      found_.facing_of = found_.items.size() - 1;
  }

  /// `youngs SE`, `yg to the SE`, `youngs ?`
  bool take_youngs() {
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
    // `mud cracks say upright`
    if (here().is(Meaning::rough) && folded(here().text) == "say") return false;
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
    // A noun of the trade is often no more than talk of the rock.
    const bool noun = kind && is_noun(kind->says);
    const bool ends = colon && tokens_.size() > 1 && kind == &tokens_[tokens_.size() - 2];
    const bool heads = first || ends || (kind && words <= most_words);
    if (heads && (!noun || colon || words == 1)) {
      page_.kind = page_.list_kind = page_.last.kind = kind->says;
    } else if (colon || (unknown && words > 0 && words <= most_words)) {
      // Over a list of something else the kind above ends.
      page_.kind = page_.list_kind = page_.last.kind = std::string();
    }
  }

  FoundItems found_;
  std::size_t behind_last_ = 0;  ///< the attitude read last
  bool repeats_form_ = false;
  bool doubtful_ = false;
  bool is_thrust_ = false;
};

}  // namespace

std::optional<Lines> readings_of(std::string_view line, Tokens& tokens, Page& page) {
  return ReadingLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
