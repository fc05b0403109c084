// SPDX-License-Identifier: MIT
#include "items.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include <lodebook/orientation/quadrant.hpp>

#include "asides.hpp"
#include "facing.hpp"
#include "plausible.hpp"

namespace lodebook::fair_copy {

namespace {

using Type = Token::Type;
using Use = Token::Use;

class Settler {
 public:
  Settler(FoundItems found, std::string_view line, const Tokens& tokens, Page& page)
      : found_(std::move(found)), line_(line), tokens_(tokens), page_(page) {}

  Lines settled() {
    settle_kinds();
    share_strangeness();
    for (Item& item : found_.items)
      settle(item);
    share_facing();
    share_sense();
    if (const std::size_t left = first_unsettled(tokens_); left < tokens_.size())
      ask(fmt::format("what is '{}'?", tokens_[left].text));
    if (has_loose_mark()) ask("which figure is missing?");
    const bool paced =
        std::ranges::any_of(tokens_, [](const Token& token) { return token.is(Meaning::paces); });
    if (paced) ask("is this a leg?");
    if (const Token* const word = loose_word()) ask(fmt::format("'{}' of what?", word->text));
    if (!may_stand_bare(page_, found_.items.back().kind) && has_column())
      ask("which columns are these?");
    return lines();
  }

 private:
  void ask(std::string question) {
    if (found_.question.empty()) found_.question = std::move(question);
  }
  void ask_kind(std::string question) {
    ask(std::move(question));
    found_.kind_in_doubt = true;
  }

  /// A kind behind the first attitude, where none stands before it, is its own.
  void settle_kinds() {
    const Item& first = found_.items.front();
    const bool unnamed =
        !first.has_own_kind && first.kind_question.empty() && !is_noun(found_.kind);
    if (found_.has_new_kind && unnamed && found_.items.size() == 1) {
      found_.items.front().kind = found_.kind;
      found_.items.front().has_own_kind = true;
      kind_behind_ = true;
    }
  }

  /// What nobody knows the kind of, the rest of its list has.
  void share_strangeness() {
    for (std::size_t i = 1; i < found_.items.size(); ++i) {
      const Item& before = found_.items[i - 1];
      Item& item = found_.items[i];
      if (item.kind_question.empty() && !item.has_own_kind && before.kind == item.kind)
        item.kind_question = before.kind_question;
    }
  }

  void settle(Item& item) {
    if (item.kind.empty()) {
      item.kind = "bedding";
      ask_kind("of which kind is it?");
    }
    // Marks that are read by a rake, that lie on a named plane, or stand beside a fault are its.
    if (item.kind == "striation" && (item.attitude.form == Attitude::Form::rake ||
                                     !item.on.empty() || found_.items.front().kind == "fault"))
      item.kind = "slickenline";
    const bool rake = item.attitude.form == Attitude::Form::rake;
    // A question says of which plane.
    if (rake && !item.attitude.problem.empty() && item.kind == "slickenline" && item.on.empty() &&
        &item == &found_.items.front() && page_.last.kind == page_.plane_kind)
      item.on = page_.plane_kind;
    const bool plane = is_plane(page_, item.kind);
    item.statement =
        plane ? plane_statement(item.attitude, page_.conventions)
              : line_statement(item.attitude, page_.conventions, may_stand_bare(page_, item.kind));
    const bool names_end = !plane && !item.attitude.side.empty() && item.statement.question.empty();
    if (names_end) page_.conventions.names_ends = true;
    settle_facing(item);
    if (!plane && !item.facing.empty()) ask("a line does not face");
    if (plane && !item.on.empty() && found_.on.empty()) ask("a plane does not lie on another");
    settle_sense(item);
    if (!item.kind_question.empty()) {
      if (item.statement.question.empty()) item.statement.question = item.kind_question;
      if (!item.has_own_kind) found_.kind_in_doubt = true;
    }
    if (item.statement.question.empty())
      item.statement.question = implausible(page_, item.kind, item.attitude, item.statement);
    if (found_.question.empty()) remember(page_, item.kind, item.statement);
  }

  void settle_facing(Item& item) {
    if (item.facing.empty()) item.facing = found_.facing_ahead;
    if (item.youngs.empty()) item.youngs = found_.youngs_ahead;
    if (item.youngs.empty()) return;
    const std::string youngs = "youngs " + item.youngs;
    if (item.facing.empty()) {
      item.facing = youngs;
    } else if (item.facing != facing_by_younging(item.statement.meant.azimuth, item.youngs)) {
      ask(fmt::format("{}, or {}?", item.facing, youngs));
    }
  }

  void settle_sense(Item& item) {
    // Beside a fault and its striae the blocks are the fault's.
    const auto is_plane = [&](const Item& one) {
      return type_of(page_, one.kind) == KindType::plane;
    };
    if (!is_plane(item) && std::ranges::any_of(found_.items, is_plane)) return;
    if (found_.block_side.empty() ||
        (found_.is_top && item.kind != "fault" && item.kind != "shear"))
      return;
    const auto& direction = item.statement.meant.azimuth;
    const bool written = !item.attitude.side.empty() ||
                         item.attitude.form == Attitude::Form::towards ||
                         item.statement.text.find('>') != std::string_view::npos;
    if (!direction) return ask("which side does it dip to, and which went down?");
    if (!written) {
      ask(fmt::format("does it dip {}, and is '{}' a block?", name_of(nearest_eighth(*direction)),
                      found_.block_side));
    }
    const double off =
        std::abs(std::remainder(degrees_of(*point_named(found_.block_side)) - *direction, 360.0));
    if (off > 67.5 && off < 112.5)
      return ask(fmt::format("is '{}' the hanging wall?", found_.block_side));
    const bool hanging = off <= 67.5;
    if (found_.is_top) {
      item.sense = hanging ? "normal" : "reverse";
      return;
    }
    item.sense = hanging == found_.block_down ? "normal" : "reverse";
  }

  /// A word of sense behind a list, likewise.
  void share_sense() {
    if (!found_.says_sense || found_.items.size() < 2) return;
    const Item& last = found_.items.back();
    if (last.sense.empty()) return;
    for (Item& item : found_.items) {
      if (!item.sense.empty() || item.kind != last.kind) continue;
      if (found_.all) {
        item.sense = last.sense;
      } else if (item.statement.question.empty()) {
        item.statement.question = fmt::format("{} as well?", last.sense);
      }
    }
  }

  /// A word of facing behind a list is the last one's; of the others it is asked.
  void share_facing() {
    if (found_.ditto_behind && page_.last.kind_behind && !found_.items.front().has_own_kind) {
      // The mark stands under the kind.
      kind_behind_ = true;
    } else if (found_.ditto_behind && found_.items.size() == 1) {
      if (found_.items.back().facing.empty()) found_.items.back().facing = page_.last.facing;
      if (found_.items.back().sense.empty()) found_.items.back().sense = page_.last.sense;
    }
    if (found_.facing_of == FoundItems::none || found_.items.size() < 2) return;
    for (std::size_t i = 0; i < found_.facing_of; ++i) {
      if (found_.all) {
        found_.items[i].facing = found_.items[found_.facing_of].facing;
      } else if (found_.items[i].kind == found_.items[found_.facing_of].kind &&
                 found_.items[i].statement.question.empty()) {
        found_.items[i].statement.question =
            fmt::format("{} as well?", found_.items[found_.facing_of].facing);
      }
    }
  }

  Lines lines() {
    Lines lines;
    const std::string remark = unstated(line_, tokens_);
    for (const Item& item : found_.items) {
      if (auto declared = declaration_of(page_, item.kind)) lines.push_back(*std::move(declared));
      Line& line = lines.emplace_back();
      const std::string& own = item.statement.question;
      const std::string& question = own.empty() ? found_.question : own;
      const auto waited =
          page_.wanted_kinds.contains(item.kind) ? Statement::Wait::kind : item.statement.waits;
      const bool waits = question.empty() && waited != Statement::Wait::none;
      if (!question.empty()) line.text = "ask ";
      line.text += item.kind + " " + item.statement.text;
      if (!question.empty() && !item.statement.side.empty()) line.text += " " + item.statement.side;
      if (!item.on.empty()) line.text += " on " + item.on;
      if (!item.facing.empty())
        line.text += (item.facing == "unknown" ? " facing " : " ") + item.facing;
      if (!item.sense.empty()) line.text += " " + item.sense;
      if (item.about) line.text += " about";
      if (item.doubtful) line.text += " doubtful";
      if (item.times > 1) line.text += fmt::format(" x{}", item.times);
      if (!question.empty()) {
        line.text += "  ; " + question;
      } else if (&item == &found_.items.back() && !remark.empty()) {
        line.text += "  ; " + remark;
      }
      line.readings = item.times;
      if (question.empty() && !waits) line.meant = item.statement.meant;
      line.waits = waits ? waited : Statement::Wait::none;
    }
    const Item& last = found_.items.back();
    if (found_.kind_in_doubt) return lines;
    page_.last = {last.kind, last.attitude, last.facing, last.sense, kind_behind_};
    page_.kind = last.kind;
    if (found_.items.front().has_own_kind && !found_.ditto) page_.list_kind.clear();
    if (is_plane(page_, last.kind)) page_.plane_kind = last.kind;
    return lines;
  }

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

  /// A degree mark without its figure, or a stroke with nothing before it: `/53 to the S`.
  bool has_loose_mark() const {
    for (std::size_t i = 0; i < tokens_.size(); ++i) {
      const bool mark = tokens_[i].type == Type::mark && tokens_[i].text == "°";
      if (mark && (i == 0 || !tokens_[i - 1].is_figure())) return true;
      const bool opens = i == 0 || tokens_[i - 1].is(';') || tokens_[i - 1].is(',');
      if (tokens_[i].is('/') && opens) return true;
    }
    return false;
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

  FoundItems found_;
  std::string_view line_;
  const Tokens& tokens_;
  Page& page_;
  bool kind_behind_ = false;
};

}  // namespace

Lines settled(FoundItems found, std::string_view line, const Tokens& tokens, Page& page) {
  return Settler(std::move(found), line, tokens, page).settled();
}

}  // namespace lodebook::fair_copy
