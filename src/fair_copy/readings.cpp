// SPDX-License-Identifier: MIT
// Lines with attitudes of planes and lines, as people write them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/quadrant.hpp>

#include "asides.hpp"
#include "facing.hpp"
#include "list_heading.hpp"
#include "places.hpp"
#include "reading_words.hpp"
#include "slips.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class ReadingLine : ReadingWords {
 public:
  ReadingLine(std::string_view line, Tokens& tokens, Page& page)
      : ReadingWords(line, tokens, page) {}

  std::optional<Lines> read() {
    set_aside(tokens_, false);
    join_unseen_facing(line_, tokens_);
    if (!tokens_.empty() && tokens_.front().is(Meaning::mean)) return std::nullopt;
    put_kind_before_rake();
    put_kind_before_vertical();
    for (at_ = 0; at_ < tokens_.size();)
      step();
    if (found_.items.empty()) repeat_reading();
    if (found_.items.empty()) {
      if (auto slip = slip_of_striae(found_.kind, tokens_, page_)) return slip;
      keep_heading_kind(tokens_, page_);
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

  /// `pitch of striae 35`
  void put_kind_before_rake() {
    for (std::size_t i = 0; i + 2 < tokens_.size(); ++i) {
      if (tokens_[i].is(Meaning::rake) && tokens_[i + 1].text == "of" &&
          tokens_[i + 2].is(Meaning::kind) && !is_plane(page_, tokens_[i + 2].says))
        std::swap(tokens_[i], tokens_[i + 2]);
    }
  }

  /// `vertical joints strike 040`
  void put_kind_before_vertical() {
    for (std::size_t i = 0; i + 1 < tokens_.size(); ++i) {
      if (tokens_[i].is(Meaning::vertical) && tokens_[i + 1].is(Meaning::kind))
        std::swap(tokens_[i], tokens_[i + 1]);
    }
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
    const bool ends = here().is('-') && here().spaced && at_ + 1 == tokens_.size();
    const std::string& said = page_.last.facing.empty() ? page_.last.sense : page_.last.facing;
    if (ends && !found_.items.empty() && !said.empty()) {
      found_.ditto_behind = true;
      ask(fmt::format("does the dash repeat '{}'?", said));
    }
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
    const std::string said = folded(typed(at_, at_ + 1));
    const bool same = said.ends_with(" it") || said.ends_with(" this") || said.ends_with(" same") ||
                      said.ends_with(" one");
    // `on this face`
    const bool names = is(at_ + 1, Meaning::unknown);
    if (!same || of_plane || names || page_.plane_kind.empty()) return false;
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
    // `pc bottom bed: 155`: where it stands.
    const bool bare = pending && may_stand_bare(page_, found_.kind);
    const bool same = bare && kind == "current";
    is_bed_of_bare_ = bare && kind == "bedding";
    if (!(pending && found_.kind == "intersection") && !same && !is_bed_of_bare_)
      found_.kind = kind;
    found_.has_new_kind = true;
    sense_of_kind_ = std::exchange(sense_ahead_, {});
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
      item->kind_question.clear();
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
    const bool in_list = !found_.items.empty() && !found_.has_new_kind;
    const bool below_vertical =
        in_list && found_.items.back().attitude.form == Attitude::Form::vertical;
    const bool says_strike = below_vertical && found_.items.back().attitude.says_strike;
    Item& item = found_.items.emplace_back();
    if (strange) item.kind_question = "which kind is it?";
    if (std::exchange(is_bed_of_bare_, false) && attitude->second)
      item.kind_question = "which kind is it?";
    item.attitude = *attitude;
    // `vertical joints strike 040, 044`
    if (below_vertical && attitude->form == Attitude::Form::direction) {
      item.attitude.form = Attitude::Form::vertical;
      item.attitude.says_strike = says_strike;
    }
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
      item.kind_question = "of the plane, or of a line in it?";
    }
    if (std::exchange(is_thrust_, false)) item.sense = "reverse";
    take_sense_ahead(item);
    if (std::exchange(repeats_form_, false)) repeat_form(item);
    found_.has_new_kind = false;
    ask_unit(*attitude);
    at_ = behind_last_ = attitude->end;
    take_question_mark();
    if (doubtful_) found_.items.back().doubtful = std::exchange(doubtful_, false);
    return true;
  }

  /// `normal faults: 105/61, 098/64`
  void take_sense_ahead(Item& item) {
    if (!sense_ahead_.empty()) ask("of which reading is the sense?");
    if (sense_of_kind_.empty()) return;
    if (item.kind != "fault" && item.kind != "shear") ask("of which reading is the sense?");
    item.sense = sense_of_kind_;
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

  std::size_t behind_last_ = 0;  ///< the attitude read last
  bool repeats_form_ = false;
  bool is_bed_of_bare_ = false;  ///< a bed is named behind such a kind
  bool is_thrust_ = false;
  std::string sense_of_kind_;  ///< of each reading of this kind
};

}  // namespace

std::optional<Lines> readings_of(std::string_view line, Tokens& tokens, Page& page) {
  return ReadingLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
