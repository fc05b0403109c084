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

/// The length of `text` up to its first white space, `;` or end.
std::size_t word_length(std::string_view text);

/// The offset of the comma that ends the repeat which begins at `at`, or the size of `text`. A
/// comma between two digits is a decimal comma, and ends no repeat.
std::size_t repeat_end(std::string_view text, std::size_t at);

/// `x3` behind a plane or line: how often it was read, 2 to 99, or 1 without such a word. `before`:
/// the number of bytes of `body` before that word.
struct Times {
  std::uint8_t count = 1;
  std::uint32_t before = 0;
};
Times times_of(std::string_view body);

/// Advice with the known word that `typed` was probably meant to be. Empty if there is none, and
/// for a known word, which only stands in the wrong place.
std::string near_word(std::string_view typed, std::span<const std::string_view> known);

/// The setting that is lost if a statement of `keyword` cannot be read.
VoidSetting void_setting(Keyword keyword);

/// Whether `word` may stand behind the figures of a plane.
bool is_plane_word(std::string_view word);

/// Reports the word at the cursor. `known` names the words that may stand there.
std::nullopt_t fail_word(Cursor& cursor, std::string_view what, std::string_view known);

/// Cuts `whole` in two before its byte `at`; npos stands for its end.
std::pair<Span, Span> cut(Span whole, std::size_t at);

class LogReader final : private Judge {
 public:
  /// For a first pass, or for one reading on its own.
  LogReader(const Source& source, const ReadOptions& options);
  /// For the second pass over a log, after look_through.
  explicit LogReader(const Notebook& notebook);
  LogReader(const LogReader&) = delete;
  LogReader& operator=(const LogReader&) = delete;

  /// The file names of the `heading` statements at the start of the log, in their order. A
  /// statement that cannot be read gives an empty name.
  std::vector<std::string> headings_named();
  /// The first pass: fills in what `notebook` keeps of the whole log.
  void look_through(Notebook& notebook);
  /// The second pass: reads the next block into `block` and uses its memory again. False after the
  /// last block.
  bool read_block(Block& block);
  /// Reads the first line as one reading on its own (single_reader.cpp).
  SingleReading read_single(ReadAs as);
  /// Read the first line as a position, height or declination on its own (single_reader.cpp).
  std::optional<earth::Position> read_single_position();
  std::optional<Length> read_single_height();
  std::optional<DeclinationSetting> read_single_declination();
  /// The faults of a first pass, or of a reading on its own.
  std::vector<Diagnostic> take_diagnostics() { return std::move(own_block_.diagnostics); }

 private:
  /// The statement of one line: its first word, the body behind the word, its remark and its
  /// comment.
  struct Statement {
    std::uint32_t line = 1;
    std::uint32_t column = 1;
    Span whole;  ///< without remark and comment
    Span word;
    Span body;  ///< behind the word, trimmed
    Span remark;
    Span comment;
    std::uint8_t bytes = 0;  ///< which special bytes its line has, see log_reader.cpp
  };

  // ---- log_reader.cpp
  bool is_utf_16() const;
  /// What a first word means. The last word is remembered, because most lines begin like the line
  /// before.
  std::optional<Meaning> meaning_of(Span word);
  /// Which special bytes a line has. Most lines have none.
  std::uint8_t meanings_in(Span line) const;
  /// Whether a line is a single attitude, good or not: plain text that begins with a kind and has
  /// no comma. Most lines are like this, and the first pass need only count them.
  bool is_lone_attitude(std::uint32_t line);
  /// The first word and the whole of a line, before remark and comment are cut off.
  Statement outline(std::uint32_t line, Span whole) const;
  Span body_of(const Statement& statement) const;
  void read_line(std::uint32_t line) { read_line(line, source_.line(line)); }
  void read_line(std::uint32_t line, Span whole);
  /// False if the line is too long or has a byte that no log may have. Reports the first such
  /// fault.
  bool has_sound_bytes(Span whole);
  void read_unsound(Statement& statement);
  /// Cuts remark and comment off `whole`, and finds the word and the body.
  void split_beside(Statement& statement) const;
  /// Whether a quote at `at` begins a name.
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
  /// Help where more than one reading was typed.
  static constexpr std::string_view alone = "the reading alone";
  /// Whether the statement ends here. If not, reports what is left over; `help` may be empty.
  bool finish(Cursor& cursor, std::string_view help = {}) const;

  // ---- advice_reader.cpp
  /// A line whose first word is not known.
  void read_unknown(Statement& statement);
  std::string advice_on_unknown(const Statement& statement);
  /// Help for text behind a complete statement. Empty if the text may be a remark.
  std::string_view advice_on_tail(const Cursor& cursor) const;
  /// Whether all of `span` is a complete attitude of `kind` under the rules in force.
  bool reads_as(KindId kind, Span span);
  /// The first of these that reads `span` as an attitude: the kind above, bedding, lineation.
  std::optional<KindId> kind_that_reads(Span span);
  /// An attitude behind the first word, up to the statement's end.
  std::optional<Span> attitude_within(const Statement& statement);
  /// Warns if the remark behind a reading of `kind` is a reading itself.
  void warn_of_remark(const Statement& statement, KindId kind);

  // ---- question_reader.cpp
  /// A quick test whether an attitude may need something that the log does not state. If it is
  /// false, the first pass need not read the attitude.
  bool may_wait(KindId kind, std::string_view body) const;
  /// Whether the order of bare pairs is stated for such a kind.
  bool is_ordered(KindId kind) const;
  /// What a reading with the fault `code` waits for, if anything. `typed` is at its start.
  std::optional<Question> question_of(KindId kind, Code code, const Cursor& typed) const;
  /// Rejects a pair that was read without a fault, if its order depends on a statement that is
  /// void.
  void doubt_order(Reading& reading, const Cursor& typed);
  /// The offset plus one of the void order that pairs of this kind wait for; 0 if there is none.
  std::uint32_t void_order(KindId kind) const;
  /// The offset plus one of the void statement that would answer; 0 if there is none.
  std::uint32_t void_behind(Question question) const;
  /// The last fault is that of `reading`, which waits for `question`. The first pass counts such
  /// readings. The second pass asks once for all of them, at the first.
  void ask_once(Reading& reading, std::optional<Question> question);
  /// The statement of a setting is void: the setting counts as not stated until the next valid
  /// statement.
  void begin_void(const Statement& statement, VoidSetting setting);
  /// The same for one that is void because of another statement, whose offset plus one is `cause`;
  /// `words` are the statement's own.
  void begin_void(std::uint32_t cause, VoidSetting setting, std::string_view words);
  /// The last fault is that of `statement`: adds how many readings wait for it.
  void say_waiting(const Statement& statement);
  void end_void(VoidSetting setting, std::string_view words = {});
  /// Which pairs an order is about, by its words; both, where they do not say.
  struct OrderScope {
    bool planes = true;
    bool lines = true;
  };
  static OrderScope scope_of(VoidSetting setting, std::string_view words);
  void set_void(VoidSetting setting, OrderScope scope, std::uint32_t cause);
  std::uint32_t* void_line(VoidSetting setting);
  void forget(VoidSetting setting, OrderScope scope);
  void count_for_void(VoidSetting setting);

  // ---- heading_reader.cpp
  /// Reads the lines of all heading files, as line 0.
  void read_headings();
  void read_heading(const Statement& statement);
  /// The number of the heading file that a statement names, after `met` other statements; 0 in a
  /// trial.
  std::uint32_t named_heading(std::size_t met) const;
  /// Whether such a statement may not stand in a heading file.
  bool is_barred(Meaning meaning) const;

  // ---- ask_reader.cpp
  /// `ask STATEMENT`: an open question, see ask_reader.cpp. The statement has no effect.
  void read_ask(const Statement& statement);
  /// What stands behind `ask`, as if it began the line.
  Statement asked(const Statement& statement) const;
  /// A statement that begins with a word that stands behind `ask` itself: no error of its own.
  void read_waiting(const Statement& statement, Meaning meaning);
  /// Reads `asked`, the statement in question of `statement`, without effect and without faults.
  /// Returns the setting that from here on counts as not stated.
  VoidSetting read_without_effect(const Statement& statement, Statement& asked,
                                  std::optional<Meaning> meaning);
  VoidSetting read_asked(Statement& asked, Meaning meaning);
  void read_asked_station(const Statement& asked);
  void read_asked_landmark(const Statement& asked);

  // ---- reading_reader.cpp
  void read_reading(Statement& statement, KindId kind);
  void read_repeats(Statement& statement, KindId kind);
  /// Pushes `reading`, the last of its statement, `count` times. `faults` is the number of
  /// diagnostics before it was read.
  void push_times(const Statement& statement, Reading reading, Span rest, std::uint8_t count,
                  std::size_t faults);
  void count_repeats(const Statement& statement, KindId kind);
  /// One of the readings of a statement, which commas separate.
  struct Repeat {
    Span written;
    std::uint32_t end = 0;  ///< in the body: at the comma behind it, or at the body's end
    /// The part of it behind a comma that cannot stand alone (`N62E, 37 NW`); empty if there is
    /// none.
    Span rest;
  };
  Repeat next_repeat(Span body, std::uint32_t at, bool is_plane);
  /// Whether `rest`, behind a comma, can only continue what stands `before` it.
  bool goes_on(Span before, Span rest, bool is_plane);
  /// Whether `span` is a bearing alone, or one behind the word `strike`.
  bool is_strike(Span span);
  void report_comma(Reading& reading, Cursor& cursor, Span rest);
  /// Reads one attitude with the words behind it, and finds out what it waits for. `rest` as in
  /// Repeat.
  void read_repeat(Reading& reading, Span rest);
  void read_attitude(Reading& reading, Cursor& cursor);
  bool read_plane_words(Reading& reading, PlaneAttitude& plane, Cursor& cursor);
  bool read_line_words(Reading& reading, LineAttitude& line, Cursor& cursor);
  /// `doubtful`, `about`, or `by` and a name.
  bool read_doubtful(Reading& reading, Cursor& cursor);
  /// Whether the norths named in `reading` are norths: a log's own word is none.
  bool settle_norths(Reading& reading, Cursor& cursor) const;
  /// The same, and whether every `~` and `±` belongs to a figure of `reading`; reports what does
  /// not. The word `about` makes every figure rough.
  bool settle_marks(Reading& reading, Cursor& cursor) const;
  bool read_sense(const Reading& reading, Sense& stated, Cursor& cursor);
  void read_leg(Reading& reading, Span body);

  // ---- sight_reader.cpp
  /// A sight, or several readings of it with commas between them.
  void read_sights(Statement& statement, KindId kind);
  /// Takes the name of the target off `body`, which then begins with the bearing. If it cannot,
  /// reports the fault and returns nothing.
  std::optional<Span> take_target(Span& body);
  /// Where the repeat that begins at `at` ends: at a comma before another bearing.
  std::uint32_t sight_end(Span body, std::uint32_t at);
  /// One bearing of a sight, and the words behind it.
  void read_sight(Reading& reading, Span typed);
  bool read_sight_words(Reading& reading, Sight& sight, Cursor& cursor);
  bool read_leg_words(Reading& reading, Leg& leg, Cursor& cursor);
  /// Reads `from NAME`, if it stands here. False if the name is faulty.
  bool read_from(NameId& from, Cursor& cursor);
  std::optional<Bearing> read_back(Cursor& cursor);
  std::optional<Slope> read_vertical(Cursor& cursor);
  /// Adds a note at `span`, once per station, if a reading is in the notation that the dial does
  /// not have.
  void note_notation(const Reading& reading, Span span);
  /// A kind of this type that takes every word behind it, for readings without a kind.
  KindId any_kind(Kind::Type type) const;
  /// Whether it is a kind of plane or line.
  bool is_attitude(Meaning meaning) const;
  bool has_more(const Statement& statement);
  bool has_second_line();
  Reading new_reading(const Statement& statement, KindId kind);

  // ---- station_reader.cpp
  /// Ends the station above, even if the heading of the next one cannot be read.
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
  /// The place of an earlier declaration. If there is none, this is the first, and `place` is kept.
  static std::optional<Place> declared_before(Declared& declared, NameId name, Place place);
  const Names& names() const;
  /// The number of a name: a new one in the first pass, the same in the second.
  NameId number_of(std::string_view name);
  /// Takes the first word of `body`, or the text in quotes there, as a name. If it cannot be one,
  /// reports the fault and returns nothing.
  std::optional<Span> take_name(Span& body, std::string_view what);
  std::optional<Span> take_quoted_name(Span& body, std::string_view what);
  /// The same for one word; quotes have no meaning in it.
  std::optional<Span> take_one_word(Span& body, std::string_view what);
  /// The same at the cursor, which moves behind the name.
  std::optional<Span> take_name(Cursor& cursor, std::string_view what);
  /// The next word of `cursor` up to white space. Names and kinds may have characters that words of
  /// tokens do not have.
  Span take_word(Cursor& cursor) const;
  /// Reports further words behind a name that should be one word. True if there are any.
  bool has_second_word(Span name, Span body, std::initializer_list<std::string_view> keywords);
  /// Reports `words`, which should be one name. The fault points to `second`.
  void report_words(Span words, Span second);
  /// `POSITION [±METRES]`. `zone_s` is set if the position depends on the rest of the log.
  std::optional<GivenPosition> read_position(Span span,
                                             std::optional<earth::WrittenPosition>& zone_s);
  /// Cuts the source of the figures off the end of `span`: a word behind `from`, or a known word
  /// such as `map`. Empty if there is none.
  Span take_origin(Span& span) const;
  /// A position alone; reports the fault of one that cannot be read.
  std::optional<earth::WrittenPosition> read_coordinates(Span where);
  /// Reads the rest of `cursor` as a height. `help` is used if something is left over.
  std::optional<Length> read_height(Cursor& cursor, std::string_view help = {});
  std::optional<Length> read_landmark_height(Span span);
  bool state_once(std::optional<Place>& first, std::string_view what, Span span);
  /// The last entry has a position with the zone letter S. The first pass keeps it for later; the
  /// second settles it.
  void take_zone_s(Span span, const earth::WrittenPosition& written);
  /// The fault of a zone letter S that the log does not decide.
  Diagnostic fault_of_zone(Span position, const earth::WrittenPosition& written) const;
  /// Decides all zone letters S, once all other positions are known.
  void settle_zones(Notebook& notebook);

  // ---- setting_reader.cpp
  void read_setting(Statement& statement, Keyword keyword);
  /// False for a statement that is void.
  bool take_setting(Statement& statement, Keyword keyword);
  bool take_date(const Statement& statement);
  bool take_datum(const Statement& statement);
  void read_kind(Statement& statement);
  void read_short(Statement& statement);
  /// For the words that a statement gives; 0 if it does not stand behind `ask`.
  std::uint32_t asked_at(const Statement& statement) const;

  // ---- trial.cpp
  struct Trial;
  struct EndTrial {
    void operator()(Trial* trial) const;
  };
  Offers accepted(Offers candidates) override;
  std::vector<std::string> accepted_above(std::vector<std::string> settings) override;
  bool may_try() const;
  /// The faults of the lines of `text`, read with the settings in force here.
  const std::vector<Diagnostic>& read_again(std::string text);
  /// The first word of the statement that is judged, with a space behind it.
  std::string judged_word() const;
  /// Adds `offer` to `kept` if it is accepted, alone or together with the fix of one more fault.
  void try_out(Offer offer, Offers& kept);
  void keep(Offer offer, Offers& kept);
  /// Whether `whole`, in place of the repeat that is judged, stays apart from its neighbours.
  bool stands_apart(std::string_view whole);
  /// If the first error among the diagnostics from number `first` on has no fix, adds those that
  /// correct a typing slip.
  void offer_slips(std::size_t first);

  const Source& source_;
  ReadOptions options_;
  /// The result of the first pass; null during that pass.
  const Notebook* notebook_ = nullptr;
  /// One reading is read on its own. It has no remark and no log around it.
  bool is_single_ = false;
  ReadAs single_as_ = ReadAs::own_form;
  /// A heading file is being read.
  bool in_heading_ = false;
  /// Nothing but headings and comments has been read.
  bool at_head_ = true;
  std::size_t headings_met_ = 0;
  /// What is being read stands behind `ask`, and has no effect.
  bool asking_ = false;
  /// What is being read, for `Judge`: a statement, or one of its repeats.
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
  /// In the second pass, the beginning of the next block: its heading is read at the end of the
  /// block before.
  Block ahead_;

  PairRules rules_;
  std::optional<Notation> dial_;
  bool has_pace_ = false;
  /// The offsets plus one of the void statements that would be in force here; 0 for none. Readings
  /// from the numbers `set_from` and `declination_from` on wait for these two.
  struct VoidLines {
    std::uint32_t set = 0;
    std::uint32_t set_from = 0;
    std::uint32_t declination = 0;
    std::uint32_t declination_from = 0;
    std::uint32_t rule = 0;
    std::uint32_t plane_order = 0;
    std::uint32_t line_order = 0;
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
  bool is_about_ = false;  ///< `about` stands behind the reading being read
  bool outside_noted_ = false;
  std::optional<Place> at_;
  std::optional<Place> elevation_;
  std::optional<Place> time_;
  NameId next_name_ = 0;  ///< in the second pass, the first that it has not read yet
  Declared stations_;
  Declared landmarks_;
  std::unordered_map<KindId, Place> declared_kinds_;

  /// A position with the zone letter S, which the rest of the log decides.
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
