// SPDX-License-Identifier: MIT
// Puts random readings on a page, line by line, in one hand, and keeps what they mean.
#pragma once

#include <optional>

#include "fair_copy/hand.hpp"
#include "fair_copy/page_words.hpp"
#include "fair_copy/random_pages.hpp"

namespace lodebook::test {

class PageWriter {
 public:
  PageWriter(const Hand& hand, Draw& draw) : hand_(hand), draw_(draw), pen_(hand, draw) {}

  /// Area, date, dial, declination, rule, orders, pace, landmarks.
  void heading();
  /// A station with its readings; `leads_on`: another one follows.
  void station(bool leads_on);
  RandomPage finished() { return std::move(page_); }

 private:
  /// A reading's figures as typed, and as the language says them; a mistake means nothing.
  struct Figures {
    std::string typed;
    std::optional<std::string> meant;
    bool stands_alone = true;
  };
  /// What stands behind figures, as typed and as the language says it.
  struct Tail {
    std::string typed;
    std::string meant;
  };

  /// Ends the line being written, with `text` at its end.
  void line(std::string_view text = "");
  void means(std::string_view statement);
  void put(std::string_view kind, const Figures& figures, const Tail& tail = {});

  void date();
  void declination();
  void orders();
  void landmarks();
  void marks_to_be_found();
  std::string position();

  void station_heading();
  void planes_by_line();
  void planes_by_heading();
  void table_header();
  void table_row(const KindWords& kind, bool ditto);
  void table();
  void list_of_planes(const KindWords& kind, bool may_be_many);
  void one_plane(const KindWords& kind, const Figures& figures);
  void repeated_facing(const KindWords& kind);
  void line_reading();
  void rake();
  void sights();
  void leg();
  void some_notes();

  Surface near();
  Figures plane_figures(const KindWords& kind);
  Figures good_plane(Surface surface);
  Figures mistaken_plane(Surface surface);
  Tail tail(const KindWords& kind, bool may_face);
  std::string remark();
  std::string kind_word(const KindWords& kind);
  double half(double whole) { return hand_.has_halves && draw_.one_in(3) ? whole + 0.5 : whole; }

  const Hand& hand_;
  Draw& draw_;
  Pen pen_;
  RandomPage page_;
  std::uint32_t line_ = 1;
  int station_ = 0;
  /// What stands before the marks of a line of sights; nothing where the page has no sights.
  std::optional<std::string_view> sight_word_;
  /// What this station's planes lie near.
  Surface about_;
  /// Facing on the line above, which a mark of its own repeats.
  std::string_view facing_above_;
};

}  // namespace lodebook::test
