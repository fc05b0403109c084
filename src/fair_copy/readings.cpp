// SPDX-License-Identifier: MIT
// Lines with attitudes of planes and lines, as people write them.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <lodebook/orientation/quadrant.hpp>

#include "asides.hpp"
#include "page.hpp"
#include "plausible.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

/// One attitude of a line, with what is said of it.
struct Item {
  std::string kind;
  std::string on;
  Attitude attitude;
  Statement statement;
  std::string facing;
  std::string sense;
  bool doubtful = false;
  unsigned times = 1;
  /// The kind stands on this line, or a ditto mark for it.
  bool has_own_kind = false;
  /// An unknown word stands before it.
  bool is_strange = false;
};

class ReadingLine {
 public:
  ReadingLine(std::string_view line, Tokens& tokens, Page& page)
      : line_(line), tokens_(tokens), page_(page) {}

  std::optional<Lines> read() {
    set_aside(tokens_, false);
    if (!tokens_.empty() && tokens_.front().is(Meaning::mean)) return std::nullopt;
    for (at_ = 0; at_ < tokens_.size();)
      step();
    if (items_.empty()) {
      keep_heading_kind();
      return std::nullopt;
    }
    settle_kinds();
    for (Item& item : items_)
      settle(item);
    share_facing();
    share_sense();
    if (const std::size_t left = first_unsettled(tokens_); left < tokens_.size())
      ask(fmt::format("what is '{}'?", tokens_[left].text));
    if (const Token* const word = loose_word()) ask(fmt::format("'{}' of what?", word->text));
    if (!may_stand_bare(items_.back().kind) && has_column()) ask("which columns are these?");
    return lines();
  }

 private:
  /// A word that wants a figure and has none: `strikes  dips 18 to S`.
  const Token* loose_word() const {
    for (const Token& token : tokens_) {
      const bool wants = token.is(Meaning::strike) || token.is(Meaning::dip) ||
                         token.is(Meaning::trend) || token.is(Meaning::plunge) ||
                         token.is(Meaning::rake) || token.is(Meaning::direction);
      if (wants && token.use == Use::none) return &token;
    }
    return nullptr;
  }

  /// Three figures side by side, such as those of a table without its heading.
  bool has_column() const {
    for (std::size_t i = 0; i + 2 < tokens_.size(); ++i) {
      const auto plain = [&](std::size_t k) {
        return tokens_[k].is_figure() && tokens_[k].use != Use::aside && !tokens_[k].has_sign;
      };
      if (plain(i) && plain(i + 1) && plain(i + 2) && tokens_[i + 1].spaced &&
          tokens_[i + 2].spaced)
        return true;
    }
    return false;
  }

  const Token& here() const { return tokens_[at_]; }
  bool is(Meaning meaning, std::size_t ahead) const {
    return at_ + ahead < tokens_.size() && tokens_[at_ + ahead].is(meaning);
  }
  bool is_point(std::size_t ahead) const {
    return at_ + ahead < tokens_.size() && tokens_[at_ + ahead].type == Type::point;
  }
  void ask(std::string question) {
    if (question_.empty()) question_ = std::move(question);
  }
  /// What stands below is not of that kind either, without its own word for it.
  void ask_kind(std::string question) {
    ask(std::move(question));
    kind_in_doubt_ = true;
  }
  void take(std::size_t count = 1) {
    for (; count > 0 && at_ < tokens_.size(); --count)
      tokens_[at_++].use = Use::stated;
  }
  bool is_first() const { return items_.empty() && kind_.empty(); }

  void step() {
    if (here().use != Use::none) {
      ++at_;
      return;
    }
    if (take_kind() || take_ditto() || take_blocks() || take_attitude() || take_word()) return;
    if (here().is('-') && is_first() && at_ == 0) ditto_ = true;
    const bool is_other = here().type == Type::word && here().meaning == Meaning::unknown;
    if (is_other && is_first() && !ditto_) unknown_first_ = true;
    ++at_;
  }

  bool take_kind() {
    if (here().is(Meaning::on)) {
      const std::size_t skip = is(Meaning::filler, 1) || is(Meaning::ditto, 1) ? 2 : 1;
      if (is(Meaning::kind, skip)) {
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
    const bool pending = has_new_kind_;
    // `intersection bedding x cleavage`: of the two planes.
    // `flutes, flow to 128`: the same thing again.
    const bool same = pending && may_stand_bare(kind_) && kind == "current";
    if (!(pending && kind_ == "intersection") && !same) kind_ = kind;
    has_new_kind_ = true;
    is_thrust_ = folded(here().text).starts_with("thrust");
    if (items_.empty()) unknown_first_ = false;
    take();
    take_question_mark();
    return true;
  }

  void set_on(std::string plane) {
    if (items_.empty() || has_new_kind_ || type_of(page_, items_.back().kind) == KindType::plane) {
      on_ = std::move(plane);
    } else {
      items_.back().on = std::move(plane);
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
      ditto_ = true;
    } else if (has_new_kind_) {
      repeats_form_ = true;
    } else if (!items_.empty()) {
      ditto_behind_ = true;
      if (at_ + 1 < tokens_.size() && tokens_[at_ + 1].is_figure())
        ask("what does the ditto mark repeat?");
    }
    take();
    return true;
  }

  /// `W side down`, `down to the E`, `downthrow E`: which block of a fault moved where.
  bool take_blocks() {
    std::string side;
    bool down = true;
    std::size_t length = 0;
    if (is_point(0)) {
      std::size_t k = 1;
      const bool block = is(Meaning::block, k);
      while (is(Meaning::block, k))
        ++k;
      const bool said = is(Meaning::down, k) || is(Meaning::up, k) || is(Meaning::downthrow, k) ||
                        is(Meaning::upthrow, k);
      if (!said || (!block && k > 1)) return false;
      side = here().text;
      down = is(Meaning::down, k) || is(Meaning::downthrow, k);
      length = k + 1;
    } else if (here().is(Meaning::downthrow) || here().is(Meaning::upthrow) ||
               here().is(Meaning::down)) {
      const std::size_t k = is(Meaning::toward, 1) ? 2 : 1;
      if (!is_point(k)) return false;
      down = !here().is(Meaning::upthrow);
      side = tokens_[at_ + k].text;
      length = k + 1;
      if (is(Meaning::block, length)) ++length;
    } else {
      return false;
    }
    block_side_ = side;
    block_down_ = down;
    take(length);
    if (at_ < tokens_.size() && here().is(Meaning::doubt) && here().text.starts_with('?')) {
      ask("is the sense doubtful?");
      take();
    }
    return true;
  }

  /// `top to SW`: where the hanging wall of a shear went.
  bool take_top() {
    if (!is_point(1)) return false;
    block_side_ = tokens_[at_ + 1].text;
    is_top_ = true;
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
    const bool strange =
        !items_.empty() && !has_new_kind_ && at_ > 0 && tokens_[at_ - 1].is(Meaning::unknown);
    Item& item = items_.emplace_back();
    item.is_strange = strange;
    item.attitude = *attitude;
    item.kind = current_kind();
    // With a side it is a plane, below whatever line it stands.
    if (kind_.empty() && !item.attitude.side.empty() && !page_.plane_kind.empty() &&
        type_of(page_, item.kind) == KindType::line)
      item.kind = page_.plane_kind;
    item.has_own_kind = !kind_.empty() || ditto_;
    item.on = std::exchange(on_, {});
    item.doubtful = std::exchange(doubtful_, false);
    if (unknown_first_ && !item.has_own_kind) ask_kind("which kind is it?");
    // Below a line on a plane another such line, or the next plane?
    if (!item.has_own_kind && page_.list_kind.empty() && page_.last.kind == "slickenline") {
      item.kind = page_.plane_kind;
      ask_kind("of the plane, or of a line in it?");
    }
    if (std::exchange(is_thrust_, false)) item.sense = "reverse";
    if (std::exchange(repeats_form_, false)) repeat_form(item);
    has_new_kind_ = false;
    at_ = attitude->end;
    take_question_mark();
    if (doubtful_) items_.back().doubtful = std::exchange(doubtful_, false);
    return true;
  }

  std::string current_kind() const {
    if (!kind_.empty()) return kind_;
    if (ditto_ && !page_.last.kind.empty()) return page_.last.kind;
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
        if (items_.empty() || is_question(1)) ask("of which reading is the sense, and is it sure?");
        if (!items_.empty()) {
          items_.back().sense = token.says;
          says_sense_ = true;
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
        if (token.meaning == Meaning::either || !items_.empty() || is_beside_figure())
          ask(fmt::format("'{}': what is meant?", token.text));
        break;
      case Meaning::mean:
        ask("a mean of what stands here?");
        break;
      case Meaning::all:
        all_ = !items_.empty();
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
    return is(Meaning::doubt, ahead) && tokens_[at_ + ahead].text.starts_with('?');
  }

  bool take_facing(const std::string& said, std::size_t length) {
    if (is_question(length)) {
      ask("is the facing doubtful, or the reading?");
      ++length;
    }
    if (items_.empty()) {
      facing_ahead_ = said;
    } else if (!items_.back().facing.empty()) {
      ask("facing is said twice");
    } else {
      items_.back().facing = said;
      if (facing_of_ == npos) facing_of_ = items_.size() - 1;
    }
    take(length);
    return true;
  }

  /// `youngs SE`, `yg to the SE`, `youngs ?`
  bool take_youngs() {
    const std::size_t k = is(Meaning::toward, 1) ? 2 : 1;
    if (is_point(k)) {
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
    const std::size_t k = is(Meaning::toward, 1) ? 2 : 1;
    if (!is_point(k) || items_.empty()) return false;
    Attitude& attitude = items_.back().attitude;
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
    if (items_.empty()) {
      doubtful_ = true;
    } else {
      items_.back().doubtful = true;
    }
    take();
    return true;
  }

  bool take_times(const std::string& digits, std::size_t length) {
    const bool number = !digits.empty() && digits.size() <= 2 &&
                        std::ranges::all_of(digits, [](char c) { return c >= '0' && c <= '9'; });
    if (!number || items_.empty()) return false;
    items_.back().times = static_cast<unsigned>(std::stoi(digits));
    if (items_.back().times < 2) ask("how many times?");
    take(length);
    return true;
  }

  /// A kind behind the first attitude, where none stands before it, is its own.
  void settle_kinds() {
    const bool unnamed = !items_.front().has_own_kind && !unknown_first_;
    if (has_new_kind_ && unnamed && items_.size() == 1) {
      items_.front().kind = kind_;
      items_.front().has_own_kind = true;
      kind_behind_ = true;
      question_.clear();
    }
  }

  void settle(Item& item) {
    if (item.kind.empty()) {
      item.kind = "bedding";
      ask_kind("of which kind is it?");
    }
    // Marks that are read by a rake, or that lie on a named plane, are a fault's.
    if (item.kind == "striation" &&
        (item.attitude.form == Attitude::Form::rake || !item.on.empty()))
      item.kind = "slickenline";
    const bool plane = type_of(page_, item.kind) == KindType::plane;
    item.statement =
        plane ? plane_statement(item.attitude, page_.conventions)
              : line_statement(item.attitude, page_.conventions, may_stand_bare(item.kind));
    if (!facing_ahead_.empty() && item.facing.empty()) item.facing = facing_ahead_;
    if (!plane && !item.facing.empty()) ask("a line does not face");
    if (plane && !item.on.empty() && on_.empty()) ask("a plane does not lie on another");
    settle_sense(item);
    if (item.is_strange && item.statement.question.empty())
      item.statement.question = "which kind is it?";
    if (item.statement.question.empty())
      item.statement.question = implausible(page_, item.kind, item.attitude, item.statement);
    remember(page_, item.kind, item.statement);
  }

  void settle_sense(Item& item) {
    if (block_side_.empty() || (is_top_ && item.kind != "fault" && item.kind != "shear")) return;
    const auto& direction = item.statement.meant.azimuth;
    const bool written = !item.attitude.side.empty() ||
                         item.attitude.form == Attitude::Form::towards ||
                         item.statement.text.find('>') != std::string::npos;
    if (!direction) return ask("which side does it dip to, and which went down?");
    if (!written) {
      item.statement.text += fmt::format(" {}", name_of(nearest_eighth(*direction)));
      ask(fmt::format("does it dip {}, and is '{}' a block?", name_of(nearest_eighth(*direction)),
                      block_side_));
    }
    const double off =
        std::abs(std::remainder(degrees_of(*point_named(block_side_)) - *direction, 360.0));
    if (off > 67.5 && off < 112.5)
      return ask(fmt::format("is '{}' the hanging wall?", block_side_));
    const bool hanging = off <= 67.5;
    if (is_top_) {
      item.sense = hanging ? "normal" : "reverse";
      return;
    }
    item.sense = hanging == block_down_ ? "normal" : "reverse";
  }

  /// A word of sense behind a list, likewise.
  void share_sense() {
    if (!says_sense_ || items_.size() < 2) return;
    const Item& last = items_.back();
    for (Item& item : items_) {
      if (!item.sense.empty() || item.kind != last.kind) continue;
      if (all_) {
        item.sense = last.sense;
      } else if (item.statement.question.empty()) {
        item.statement.question = fmt::format("{} as well?", last.sense);
      }
    }
  }

  /// A word of facing behind a list is the last one's; of the others it is asked.
  void share_facing() {
    if (ditto_behind_ && page_.last.kind_behind && !items_.front().has_own_kind) {
      // The mark stands under the kind.
      kind_behind_ = true;
    } else if (ditto_behind_ && items_.size() == 1) {
      if (items_.back().facing.empty()) items_.back().facing = page_.last.facing;
      if (items_.back().sense.empty()) items_.back().sense = page_.last.sense;
    }
    if (facing_of_ == npos || items_.size() < 2) return;
    for (std::size_t i = 0; i < facing_of_; ++i) {
      if (all_) {
        items_[i].facing = items_[facing_of_].facing;
      } else if (items_[i].kind == items_[facing_of_].kind &&
                 items_[i].statement.question.empty()) {
        items_[i].statement.question = fmt::format("{} as well?", items_[facing_of_].facing);
      }
    }
  }

  Lines lines() {
    Lines lines;
    const std::string remark = unstated(line_, tokens_);
    for (const Item& item : items_) {
      Line& line = lines.emplace_back();
      const std::string& own = item.statement.question;
      const std::string& question = own.empty() ? question_ : own;
      const bool waits = question.empty() && item.statement.waits != Statement::Wait::none;
      if (!question.empty()) line.text = "ask ";
      line.text += item.kind + " " + item.statement.text;
      if (!item.on.empty()) line.text += " on " + item.on;
      if (!item.facing.empty())
        line.text += (item.facing == "unknown" ? " facing " : " ") + item.facing;
      if (!item.sense.empty()) line.text += " " + item.sense;
      if (item.doubtful) line.text += " doubtful";
      if (item.times > 1) line.text += fmt::format(" x{}", item.times);
      if (!question.empty()) {
        line.text += "  ; " + question;
      } else if (&item == &items_.back() && !remark.empty()) {
        line.text += "  ; " + remark;
      }
      line.readings = item.times;
      if (question.empty() && !waits) line.meant = item.statement.meant;
      line.waits = waits ? item.statement.waits : Statement::Wait::none;
    }
    const Item& last = items_.back();
    if (kind_in_doubt_) return lines;
    page_.last = {last.kind, last.attitude, last.facing, last.sense, kind_behind_};
    page_.kind = last.kind;
    if (items_.front().has_own_kind && !ditto_) page_.list_kind.clear();
    if (type_of(page_, last.kind) == KindType::plane) page_.plane_kind = last.kind;
    return lines;
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

  static constexpr std::size_t npos = static_cast<std::size_t>(-1);

  std::string_view line_;
  Tokens& tokens_;
  Page& page_;
  std::size_t at_ = 0;
  std::vector<Item> items_;
  std::string kind_;  ///< on this line
  std::string on_;
  std::string facing_ahead_;
  std::string question_;
  std::string block_side_;
  bool block_down_ = false;
  bool is_top_ = false;
  std::size_t facing_of_ = npos;
  bool has_new_kind_ = false;  ///< no attitude of it yet
  bool ditto_ = false;         ///< a mark for the kind
  bool ditto_behind_ = false;
  bool repeats_form_ = false;
  bool doubtful_ = false;
  bool unknown_first_ = false;
  bool all_ = false;
  bool is_thrust_ = false;
  bool says_sense_ = false;
  bool kind_in_doubt_ = false;
  bool kind_behind_ = false;
};

}  // namespace

std::optional<Lines> readings_of(std::string_view line, Tokens& tokens, Page& page) {
  return ReadingLine(line, tokens, page).read();
}

}  // namespace lodebook::fair_copy
