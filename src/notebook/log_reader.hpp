// SPDX-License-Identifier: MIT
// Reads a log line by line. One class in five files: lines (log_reader), readings
// (reading_reader), stations and places (station_reader), settings (setting_reader), and a
// reading on its own (single_reader).
#pragma once

#include "attitude_reader.hpp"
#include "vocabulary.hpp"

namespace lodebook::notebook {

class LogReader {
 public:
  LogReader(Notebook& notebook, const ReadOptions& options);
  /// Reads the whole log.
  void read();
  /// Reads the first line as one reading on its own (single_reader.cpp).
  SingleReading read_single(ReadAs as);
  /// Read the first line as a position, height or declination on its own (single_reader.cpp).
  std::optional<earth::Position> read_single_position();
  std::optional<Length> read_single_height();
  std::optional<DeclinationSetting> read_single_declination();

 private:
  /// One line's statement: its first word, what stands behind it, and what stands beside it.
  struct Statement {
    std::uint32_t line = 1;
    Span word;
    Span body;  ///< behind the word, trimmed, without remark and comment
    Entry entry;
  };

  // ---- log_reader.cpp
  void read_line(std::uint32_t line);
  /// Reports the first byte of `whole` that no log may hold; false if there is one.
  bool has_sound_bytes(Span whole);
  void read_unsound(Statement& statement);
  void split_beside(Statement& statement, Span whole) const;
  void read_unknown(Statement& statement);
  void dispatch(Statement& statement, Meaning meaning);
  std::string_view text(Span span) const { return notebook_.source.text(span); }
  Span trim(Span span) const;
  template <class What>
  void push(const Statement& statement, What&& what) {
    Entry& entry = notebook_.entries.emplace_back(statement.entry);
    entry.what = std::forward<What>(what);
  }
  void push_unread(const Statement& statement) { push(statement, Unread{}); }
  /// The end of a statement: what is left over is a fault.
  bool finish(Cursor& cursor, std::string_view help = {});

  // ---- reading_reader.cpp
  void read_reading(Statement& statement, KindId kind);
  void read_repeats(Statement& statement, KindId kind);
  void read_attitude(Reading& reading, Cursor& cursor);
  bool read_plane_words(Reading& reading, PlaneAttitude& plane, Cursor& cursor);
  bool read_line_words(Reading& reading, LineAttitude& line, Cursor& cursor);
  bool read_doubtful(Reading& reading, Cursor& cursor);
  bool read_sense(const Reading& reading, Sense& stated, Cursor& cursor);
  void read_sight(Reading& reading, Span body);
  void read_leg(Reading& reading, Span body);
  std::optional<Slope> read_vertical(Cursor& cursor);
  /// Notes a good reading in the notation that the dial does not have; `span` is its bearing.
  void note_notation(const Reading& reading, Span span);
  KindId first_kind(Kind::Type type) const;
  bool has_more(const Statement& statement);
  bool has_second_line();
  Reading new_reading(const Statement& statement, KindId kind);

  // ---- station_reader.cpp
  void read_station(Statement& statement);
  void read_at(Statement& statement);
  void read_landmark(Statement& statement);
  void read_elevation(Statement& statement);
  void read_time(Statement& statement);
  void read_sample(Statement& statement);
  void read_tally(Statement& statement);
  /// Takes the first word of `body` as a name; reports a fault and returns nothing if it cannot be.
  std::optional<Span> take_name(Span& body, std::string_view what);
  /// The next word of `cursor` up to white space, since names and kinds are not made of tokens.
  Span take_word(Cursor& cursor) const;
  /// Reports a second word that belongs to no name; true if there was one.
  bool has_second_word(Span name, Span body, std::initializer_list<std::string_view> keywords);
  /// `POSITION [±METRES]`. `ambiguous` is set if the position must wait for the rest of the log.
  std::optional<GivenPosition> read_position(Span span,
                                             std::optional<earth::WrittenPosition>& zone_s);
  /// A position alone; reports the fault of one that cannot be read.
  std::optional<earth::WrittenPosition> read_coordinates(Span where);
  std::optional<Length> read_height(Cursor& cursor);
  std::optional<Length> read_landmark_height(Span span);
  bool state_once(std::optional<Place>& first, std::string_view what, Span span);
  /// Decides the positions whose zone letter is an S, once all others are known.
  void settle_zones();

  // ---- setting_reader.cpp
  void read_setting(Statement& statement, Keyword keyword);
  void read_kind(Statement& statement);
  void read_short(Statement& statement);

  Notebook& notebook_;
  Vocabulary vocabulary_;
  Faults faults_;
  PairRules rules_;
  std::optional<Notation> dial_;
  bool has_pace_ = false;
  KindId last_kind_ = no_kind;

  // the station being read
  bool in_station_ = false;
  bool notation_noted_ = false;
  bool outside_noted_ = false;
  std::optional<Place> at_;
  std::optional<Place> elevation_;
  std::optional<Place> time_;
  std::unordered_map<NameId, Place> stations_;
  std::unordered_map<NameId, Place> landmarks_;
  std::unordered_map<KindId, Place> declared_kinds_;

  /// A position that waits for the rest of the log.
  struct ZoneS {
    std::size_t entry;
    std::uint32_t line;
    Span span;
    earth::WrittenPosition written;
  };
  std::vector<ZoneS> zones_;
};

/// Reads what `declination` says: `24.6E ±0.4`, `0`, `as-set`. Faults: declination-side,
/// declination-large, declination-model, number, incomplete.
std::optional<DeclinationSetting> read_declination_words(Cursor& cursor);

}  // namespace lodebook::notebook
