// SPDX-License-Identifier: MIT
// Reads a log line by line. One class in fifteen files: lines (log_reader), attitudes
// (reading_reader) and the words behind them (words_reader), sights (sight_reader), legs
// (leg_reader), what readings wait for (question_reader), open questions (ask_reader), headings
// (heading_reader), stations and places (station_reader), positions and heights (position_reader),
// names and words of the log's own (name_reader), settings (setting_reader), advice
// (advice_reader), a reading on its own (single_reader), and a statement read again with a change
// in it (trial).
#pragma once

#include <array>

#include "attitude_reader.hpp"
#include "vocabulary.hpp"

namespace lodebook::notebook {

/// Whether the first pass keeps a statement: settings, also void ones, stations and their places,
/// landmarks, sights and legs.
template <class What>
bool matters_beyond_its_station(const What& what) {
  if constexpr (std::is_same_v<What, Reading>) {
    return std::holds_alternative<Sight>(what.what) || std::holds_alternative<Leg>(what.what);
  }
  if constexpr (std::is_same_v<What, Unread>) return what.setting != VoidSetting::none;
  return !(std::is_same_v<What, Clock> || std::is_same_v<What, Unit> ||
           std::is_same_v<What, Sample> || std::is_same_v<What, Photo> ||
           std::is_same_v<What, Note> || std::is_same_v<What, Tally> ||
           std::is_same_v<What, KindDeclaration> || std::is_same_v<What, ShortDeclaration> ||
           std::is_same_v<What, Bare>);
}

/// Where the next repeat starts: behind a comma that has no digit on one of its sides.
std::size_t repeat_end(std::string_view text, std::size_t at);

/// `x3` at the end of planes or lines: how often the last of them was had, 2 to 99, and the bytes
/// of `body` before it. Once without such a word.
struct Times {
  std::uint8_t count = 1;
  std::uint32_t before = 0;
};
Times times_of(std::string_view body);

/// The word that `typed` was probably meant to be, as advice; none for a known word, which stands
/// where it may not.
std::string near_word(std::string_view typed, std::span<const std::string_view> known);

/// What is lost with a statement of `keyword` that cannot be read.
VoidSetting void_setting(Keyword keyword);

/// A word that may stand behind the figures of a plane.
bool is_plane_word(std::string_view word);

/// Fails with the words that could stand here.
std::nullopt_t fail_word(Cursor& cursor, std::string_view what, std::string_view known);

/// Cuts `whole` at `at` (npos: at its end) into what stands before and from there on.
std::pair<Span, Span> cut(Span whole, std::size_t at);

class LogReader final : private Judge {
 public:
  /// For a first pass, or for one reading on its own.
  LogReader(const Source& source, const ReadOptions& options);
  /// For a second pass over a log that has been looked through.
  explicit LogReader(const Notebook& notebook);
  LogReader(const LogReader&) = delete;
  LogReader& operator=(const LogReader&) = delete;

  /// The names of the headings at the log's head, in the order of their statements; empty where one
  /// cannot be read.
  std::vector<std::string> headings_named();
  /// The first pass: fills in what `notebook` keeps of the whole log.
  void look_through(Notebook& notebook);
  /// The second pass: reads the next block, in the memory of the one before.
  bool read_block(Block& block);
  /// Reads the first line as one reading on its own (single_reader.cpp).
  SingleReading read_single(ReadAs as);
  /// Read the first line as a position, height or declination on its own (single_reader.cpp).
  std::optional<earth::Position> read_single_position();
  std::optional<Length> read_single_height();
  std::optional<DeclinationSetting> read_single_declination();
  /// What was found wrong with it.
  std::vector<Diagnostic> take_diagnostics() { return std::move(own_block_.diagnostics); }

 private:
  /// One line's statement: its first word, what stands behind it, and what stands beside it.
  struct Statement {
    std::uint32_t line = 1;
    std::uint32_t column = 1;
    Span whole;  ///< without remark and comment
    Span word;
    Span body;  ///< behind the word, trimmed
    Span remark;
    Span comment;
    std::uint8_t bytes = 0;  ///< what any byte of its line may mean, see log_reader.cpp
  };

  // ---- log_reader.cpp
  bool is_utf_16() const;
  /// What a first word means. The one before is known still: most lines begin like the last.
  std::optional<Meaning> meaning_of(Span word);
  /// What any byte of a line may mean, in one pass; most lines hold nothing but plain words.
  std::uint8_t meanings_in(Span line) const;
  /// A plain line is one attitude, good or not, since it has no comma: all that the first pass asks
  /// of it, and what most lines are.
  bool is_lone_attitude(std::uint32_t line);
  /// A line's words as they are before remark and comment are cut off, in one pass.
  Statement outline(std::uint32_t line, Span whole) const;
  Span body_of(const Statement& statement) const;
  void read_line(std::uint32_t line) { read_line(line, source_.line(line)); }
  void read_line(std::uint32_t line, Span whole);
  /// Reports the first byte of `whole` that no log may hold; false if there is one.
  bool has_sound_bytes(Span whole);
  void read_unsound(Statement& statement);
  /// Cuts remark and comment off `whole`, and the body behind the word.
  void split_beside(Statement& statement) const;
  /// A quote at `at` begins a name.
  bool opens_name(std::string_view line, std::size_t at) const;
  std::string without_names(std::string_view line) const;
  void dispatch(Statement& statement, Meaning meaning);
  std::string_view text(Span span) const { return source_.text(span); }
  Span trim(Span span) const;
  template <class What>
  void push(const Statement& statement, const What& what) {
    if (!notebook_ && !matters_beyond_its_station(what)) return;
    Entry& entry = block_->entries.emplace_back();
    entry.line = statement.line;
    entry.column = statement.column;
    entry.statement = statement.whole;
    entry.remark = statement.remark;
    entry.comment = statement.comment;
    entry.what = what;
  }
  void push_unread(const Statement& statement, VoidSetting setting = VoidSetting::none) {
    push(statement, Unread{setting});
  }
  /// What a reading on its own may be.
  static constexpr std::string_view alone = "the reading alone";
  /// The end of a statement: what is left over is a fault.
  bool finish(Cursor& cursor, std::string_view help = {}) const;

  // ---- advice_reader.cpp
  /// A line whose first word is not known.
  void read_unknown(Statement& statement);
  std::string advice_on_unknown(const Statement& statement);
  /// What to type for text behind a complete statement; empty where it may be a remark.
  std::string_view advice_on_tail(const Cursor& cursor) const;
  /// Whether `span` is a whole attitude of `kind` from end to end, under the rules in force.
  bool reads_as(KindId kind, Span span);
  /// The kind above, or else bedding or lineation, of which `span` is an attitude.
  std::optional<KindId> kind_that_reads(Span span);
  /// An attitude behind the first word, up to the statement's end.
  std::optional<Span> attitude_within(const Statement& statement);
  /// Warns of a remark behind a reading of `kind` that is one itself.
  void warn_of_remark(const Statement& statement, KindId kind);

  // ---- question_reader.cpp
  /// Whether an attitude may wait for what the log does not say; false only where it cannot, so
  /// that the first pass need not read it.
  bool may_wait(KindId kind, std::string_view body) const;
  /// The log says how bare pairs of such a kind are written.
  bool is_ordered(KindId kind) const;
  /// What a reading with the fault `code` waits for, if anything; `typed` stands at its start.
  std::optional<Question> question_of(KindId kind, Code code, const Cursor& typed) const;
  /// Rejects a good pair that only the order, which is void, would have told apart.
  void doubt_order(Reading& reading, const Cursor& typed);
  /// One past the offset of the void statement that would answer; 0 for none.
  std::uint32_t void_behind(Question question) const;
  /// The last fault is the reading's, which waits for `question`: the first pass counts it, and the
  /// second asks at the first one for all.
  void ask_once(Reading& reading, std::optional<Question> question);
  /// A setting's statement is void: it is as if nothing were stated, until it is again.
  void begin_void(const Statement& statement, VoidSetting setting);
  void end_void(VoidSetting setting);
  std::uint32_t* void_line(VoidSetting setting);
  void forget(VoidSetting setting);
  void count_for_void(VoidSetting setting);

  // ---- heading_reader.cpp
  /// The lines of all heading files, as line 0.
  void read_headings();
  void read_heading(const Statement& statement);
  /// The number of the heading that a statement names, behind `met` others; 0 in a trial.
  std::uint32_t named_heading(std::size_t met) const;
  /// A statement that may not stand in a heading file.
  bool is_barred(Meaning meaning) const;

  // ---- ask_reader.cpp
  /// `ask STATEMENT`: what the statement would have been, not taken.
  void read_ask(const Statement& statement);
  /// What stands behind `ask`, as if it began the line.
  Statement asked(const Statement& statement) const;
  /// Returns the setting that is as if it were not stated.
  VoidSetting read_asked(Statement& asked, Meaning meaning);
  void read_asked_station(const Statement& asked);
  void read_asked_landmark(const Statement& asked);

  // ---- reading_reader.cpp
  void read_reading(Statement& statement, KindId kind);
  void read_repeats(Statement& statement, KindId kind);
  /// Pushes `reading`, the last of its statement, so many times; `faults` were known before it.
  void push_times(const Statement& statement, Reading reading, Span rest, std::uint8_t count,
                  std::size_t faults);
  void count_repeats(const Statement& statement, KindId kind);
  /// One of the readings that commas part.
  struct Repeat {
    Span written;
    std::uint32_t end = 0;  ///< in the body: at the comma behind it, or at the body's end
    /// What a comma cuts off within it (`N62E, 37 NW`), which cannot stand alone; empty if none.
    Span rest;
  };
  Repeat next_repeat(Span body, std::uint32_t at, bool is_plane);
  /// Whether `rest`, behind a comma, can only belong to what stands `before` it.
  bool goes_on(Span before, Span rest, bool is_plane);
  /// A bearing alone, or behind the word strike.
  bool is_strike(Span span);
  void report_comma(Reading& reading, Cursor& cursor, Span rest);
  /// One attitude and its words, with what it waits for; `rest` as in Repeat.
  void read_repeat(Reading& reading, Span rest);
  void read_attitude(Reading& reading, Cursor& cursor);
  bool read_plane_words(Reading& reading, PlaneAttitude& plane, Cursor& cursor);
  bool read_line_words(Reading& reading, LineAttitude& line, Cursor& cursor);
  /// `doubtful`, `about`, or `by` and a name.
  bool read_doubtful(Reading& reading, Cursor& cursor);
  /// Whether all marks of errors belong to figures of `reading`; `about` makes each of them rough.
  bool settle_marks(Reading& reading, Cursor& cursor) const;
  bool read_sense(const Reading& reading, Sense& stated, Cursor& cursor);
  void read_leg(Reading& reading, Span body);

  // ---- sight_reader.cpp
  /// A sight, or with commas its repeats.
  void read_sights(Statement& statement, KindId kind);
  /// The name of what is sighted; what is left of `body` begins with its bearing.
  std::optional<Span> take_target(Span& body);
  /// Where the repeat that begins at `at` ends: at a comma before another bearing.
  std::uint32_t sight_end(Span body, std::uint32_t at);
  /// One bearing on it, and what stands behind.
  void read_sight(Reading& reading, Span typed);
  bool read_sight_words(Reading& reading, Sight& sight, Cursor& cursor);
  bool read_leg_words(Reading& reading, Leg& leg, Cursor& cursor);
  /// `from NAME`, if that stands here; false where the name is at fault.
  bool read_from(NameId& from, Cursor& cursor);
  std::optional<Bearing> read_back(Cursor& cursor);
  std::optional<Slope> read_vertical(Cursor& cursor);
  /// Notes a good reading in the notation that the dial does not have; `span` is its bearing.
  void note_notation(const Reading& reading, Span span);
  /// What stands for any kind of plane or line: one that takes every word behind it.
  KindId any_kind(Kind::Type type) const;
  /// A kind of plane or line.
  bool is_attitude(Meaning meaning) const;
  bool has_more(const Statement& statement);
  bool has_second_line();
  Reading new_reading(const Statement& statement, KindId kind);

  // ---- station_reader.cpp
  /// What comes next belongs to no station above, whatever can be read of this one's heading.
  void begin_station();
  void read_station(Statement& statement);
  void read_at(Statement& statement);
  void read_landmark(Statement& statement);
  void read_elevation(Statement& statement);
  void read_time(Statement& statement);
  void read_sample(Statement& statement);
  void read_tally(Statement& statement);
  /// Where names were first declared, by their numbers.
  using Declared = std::vector<std::optional<Place>>;
  /// The place of an earlier declaration; without one, this is the first and stands at `place`.
  static std::optional<Place> declared_before(Declared& declared, NameId name, Place place);
  const Names& names() const;
  /// The number of a name: a new one in the first pass, the same in the second.
  NameId number_of(std::string_view name);
  /// Takes the first word of `body` as a name, or what stands in quotes there; reports a fault and
  /// returns nothing if it cannot be.
  std::optional<Span> take_name(Span& body, std::string_view what);
  std::optional<Span> take_quoted_name(Span& body, std::string_view what);
  /// The same of one word, whose quotes mean nothing.
  std::optional<Span> take_one_word(Span& body, std::string_view what);
  /// The same at the cursor, which goes on behind it.
  std::optional<Span> take_name(Cursor& cursor, std::string_view what);
  /// The next word of `cursor` up to white space, since names and kinds are not made of tokens.
  Span take_word(Cursor& cursor) const;
  /// Reports further words that belong to no name; true if there were any.
  bool has_second_word(Span name, Span body, std::initializer_list<std::string_view> keywords);
  /// `words` should have been one name; the `second` is shown.
  void report_words(Span words, Span second);
  /// `POSITION [±METRES]`. `zone_s` is set if the position depends on the rest of the log.
  std::optional<GivenPosition> read_position(Span span,
                                             std::optional<earth::WrittenPosition>& zone_s);
  /// Cuts off the end of `span` the word for where its figures came from: behind `from`, or one
  /// that is known. Empty where there is none.
  Span take_origin(Span& span) const;
  /// A position alone; reports the fault of one that cannot be read.
  std::optional<earth::WrittenPosition> read_coordinates(Span where);
  /// All of `cursor`; `help` is for what is left over.
  std::optional<Length> read_height(Cursor& cursor, std::string_view help = {});
  std::optional<Length> read_landmark_height(Span span);
  bool state_once(std::optional<Place>& first, std::string_view what, Span span);
  /// The entry just read has a position whose zone letter is an S.
  void take_zone_s(Span span, const earth::WrittenPosition& written);
  /// For one that nothing decides.
  Diagnostic fault_of_zone(Span position, const earth::WrittenPosition& written) const;
  /// Decides all of them, once all other positions are known.
  void settle_zones(Notebook& notebook);

  // ---- setting_reader.cpp
  void read_setting(Statement& statement, Keyword keyword);
  /// False for a statement that is void.
  bool take_setting(Statement& statement, Keyword keyword);
  bool take_date(const Statement& statement);
  bool take_datum(const Statement& statement);
  void read_kind(Statement& statement);
  void read_short(Statement& statement);

  // ---- trial.cpp
  struct Trial;
  struct EndTrial {
    void operator()(Trial* trial) const;
  };
  Offers accepted(Offers candidates) override;
  std::vector<std::string> accepted_above(std::vector<std::string> settings) override;
  bool may_try() const;
  /// What is wrong with the lines of `text` where this reader stands.
  const std::vector<Diagnostic>& read_again(std::string text);
  /// The first word of what is judged, and a space behind it.
  std::string judged_word() const;
  /// Adds an offer to those kept if it is accepted, alone or with the mend of one more fault.
  void try_out(Offer offer, Offers& kept);
  void keep(Offer offer, Offers& kept);
  /// In place of the repeat that is judged, `whole` runs into neither of those beside it.
  bool stands_apart(std::string_view whole);
  /// Gives the error among the diagnostics from number `first` on, which has no fix, those that
  /// mend a slip of the finger.
  void offer_slips(std::size_t first);

  const Source& source_;
  ReadOptions options_;
  /// Where the first pass has been; none while it is under way.
  const Notebook* notebook_ = nullptr;
  /// One reading on its own is read, which has no place for a remark.
  bool is_single_ = false;
  ReadAs single_as_ = ReadAs::own_form;
  /// A heading file is read.
  bool in_heading_ = false;
  /// Nothing but headings and comments has been read.
  bool at_head_ = true;
  std::size_t headings_met_ = 0;
  /// What is read stands behind `ask`, and nothing of it is taken.
  bool asking_ = false;
  /// What is read now, for `Judge`: a statement, or of repeats that one.
  struct Judged {
    Span word;
    Span body;
    bool is_attitude = false;
    std::uint32_t end = 0;  ///< of the statement, with its other repeats
  };
  Judged judged_;
  unsigned depth_ = 0;  ///< of trials within trials; 0 reads the log itself
  std::unique_ptr<Trial, EndTrial> trial_;
  Names names_;  ///< of the first pass
  std::vector<Kind> kinds_;
  Vocabulary vocabulary_;
  Block own_block_;  ///< of the first pass
  /// Where entries and faults go.
  Block* block_ = &own_block_;
  Faults faults_;
  std::uint32_t reading_count_ = 0;
  std::uint32_t next_line_ = 1;
  bool started_ = false;
  /// Of the second pass: the station whose heading has been read while reading the block before.
  Block ahead_;

  PairRules rules_;
  std::optional<Notation> dial_;
  bool has_pace_ = false;
  /// One past the offsets of the void statements that would hold here; 0 for none. Readings from a
  /// number on wait for what was set and the declination.
  struct VoidLines {
    std::uint32_t set = 0;
    std::uint32_t set_from = 0;
    std::uint32_t declination = 0;
    std::uint32_t declination_from = 0;
    std::uint32_t rule = 0;
    std::uint32_t order = 0;
    std::uint32_t pace = 0;
  };
  VoidLines void_;
  Waiting waits_;  ///< of the first pass
  std::array<bool, question_count> asked_{};
  KindId last_kind_ = no_kind;
  Span last_word_;
  Meaning last_meaning_;

  // the station being read
  bool in_station_ = false;
  bool notation_noted_ = false;
  bool is_about_ = false;  ///< of the reading being read
  bool outside_noted_ = false;
  std::optional<Place> at_;
  std::optional<Place> elevation_;
  std::optional<Place> time_;
  NameId next_name_ = 0;  ///< in the second pass, the first that it has not met
  Declared stations_;
  Declared landmarks_;
  std::unordered_map<KindId, Place> declared_kinds_;

  /// A position that waits for the rest of the log.
  struct WaitingPosition {
    std::size_t entry;
    std::uint32_t offset;
    earth::WrittenPosition written;
  };
  std::vector<WaitingPosition> waiting_;
};

/// Reads what `declination` says: `24.6E ±0.4`, `0`, `as-set`. Faults: declination-side,
/// declination-large, declination-model, number, incomplete.
std::optional<DeclinationSetting> read_declination_words(Cursor& cursor);

}  // namespace lodebook::notebook
