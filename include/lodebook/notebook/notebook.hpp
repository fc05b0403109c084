// SPDX-License-Identifier: MIT
// A log that has been read: its entries, names and kinds. All its readings, and every fault of the
// language, are read block by block.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <unordered_map>

#include <lodebook/notebook/diagnostic.hpp>
#include <lodebook/notebook/entry.hpp>
#include <lodebook/notebook/waiting.hpp>

namespace lodebook::notebook {

/// A kind of reading: `bedding`, `lineation`, ... `sight` and `leg`.
struct Kind {
  enum class Type : std::uint8_t { plane, line, sight, leg };
  std::string name;
  Type type = Type::plane;
  /// Takes a sense of movement (normal, reverse, dextral, sinistral).
  bool has_sense = false;
  /// A line with a direction, such as a current: its two ends differ.
  bool is_arrow = false;
  /// A plane that is commonly folded, so that a girdle of its poles may show a fold axis.
  bool folds = false;
  /// A line without a direction whose two ends are equivalent, such as a groove: its bearing is an
  /// axis.
  bool two_ended = false;
};

/// Names of stations and landmarks, compared ignoring case and kept as first written.
class Names {
 public:
  /// Reserves memory for about `count` names.
  void expect(std::size_t count) { by_folded_.reserve(count); }
  /// The number of `name`; a new name gets a new number.
  NameId intern(std::string_view name);
  /// The name's number, or no_name.
  NameId find(std::string_view name) const;
  /// The name as first written.
  const std::string& shown(NameId id) const { return shown_[id]; }
  std::size_t size() const { return shown_.size(); }

 private:
  std::unordered_map<std::string, NameId> by_folded_;
  std::vector<std::string> shown_;
};

/// `text` with the letters of the Latin, Greek and Cyrillic scripts in lower case, for comparison.
std::string fold_case(std::string_view text);

/// `name` as it is typed in a log: in double quotes if it is not a single word.
std::string typed_name(std::string_view name);

/// A file whose lines are read before the first line of a log, or the reason why it cannot be read.
struct HeadingFile {
  std::string name;   ///< as messages show it
  std::string text;   ///< meant to be UTF-8; the reader reports other bytes
  std::string fault;  ///< why it cannot be read; empty if it can
};

/// Settings from outside the log. What the log itself states takes precedence.
struct ReadOptions {
  std::optional<HandRule> rule;
  OrderSetting order = {};
  /// Heading files to read before those that the log names.
  std::vector<HeadingFile> headings = {};
  /// Opens a heading file that the log names. If it is empty, no file is opened.
  std::function<HeadingFile(std::string_view)> open_heading = {};
};

/// What the zone letter S of a position means: the latitude band S or "south". The other positions
/// of the log decide.
enum class ZoneS : std::uint8_t { band, south, unclear };

/// A log after the first pass: everything in it that matters beyond its own station.
struct Notebook {
  Source source;
  ReadOptions options;
  /// Settings (also void ones), stations and their places, landmarks, sights and legs, in the order
  /// of the text. Everything else, mostly attitudes of planes and lines, matters only at its own
  /// station, where a BlockReader reads it.
  std::vector<Entry> entries;
  Names names;
  std::vector<Kind> kinds;
  /// The meaning of each zone letter S, by the offset of its position.
  std::map<std::uint32_t, ZoneS> zones;
  Waiting waiting;
  /// Number of readings, attitudes and rejected ones included.
  std::uint32_t reading_count = 0;
  /// Line of the first reading; if there is none, one more than the last line.
  std::uint32_t first_reading_line = 1;
};

/// Makes the first pass over a log. If `source` has headings already, no others are added. Never
/// fails: the BlockReader reports what cannot be read. The cost is linear in the text.
Notebook read_log(Source source, const ReadOptions& options = {});

/// Everything in one station block, or before the first station.
struct Block {
  /// False for the block before the first station.
  bool is_station = false;
  /// First and last line of the block, from 1. The first is the heading of the station.
  std::uint32_t first_line = 1;
  std::uint32_t last_line = 1;
  /// In the order of the text; a station's heading comes first.
  std::vector<Entry> entries;
  /// Every fault of the language, in the order of the text.
  std::vector<Diagnostic> diagnostics;
};

class LogReader;

/// Reads a log block by block. Every fault becomes a diagnostic, and reading goes on at the next
/// line or the next repeat. The cost is linear in the text; only one block is in memory.
class BlockReader {
 public:
  /// `notebook` must outlive the reader.
  explicit BlockReader(const Notebook& notebook);
  ~BlockReader();
  BlockReader(const BlockReader&) = delete;
  BlockReader& operator=(const BlockReader&) = delete;

  /// Reads the next block into `block` and uses its memory again. False after the last block. A log
  /// always has at least one block: the one before its first station.
  bool next(Block& block);

 private:
  std::unique_ptr<LogReader> reader_;
};

/// The part of a reading of `source` that a fault points to: the word behind `keyword` (`back`,
/// `slope`, `vertical`, `to`), the first word if `keyword` is empty, or the whole reading if there
/// is no such word.
Span find_word(const Source& source, Span reading, std::string_view keyword);

/// A reading on its own, for conversion between notations.
struct SingleReading {
  std::variant<std::monostate, Bearing, PlaneAttitude, LineAttitude> what;
  std::vector<Diagnostic> diagnostics;
  bool doubtful = false;
};
/// What a reading on its own is read as. With `own_form` its form decides.
enum class ReadAs : std::uint8_t { own_form, bearing, plane, line };

/// Reads the whole of `source` (one line) as one reading. With `own_form`, one bearing or figure is
/// a bearing, a pair with a side or under a rule is a plane, and any other pair is a line; `A > B`
/// is a fault, because it may be either. A kind may stand first, and then decides. On a fault
/// `what` is empty and `diagnostics` says why.
SingleReading read_single(const Source& source, ReadAs as, const ReadOptions& options = {});

/// Reads the whole of `source` (one line) as a declination, as in a log: `24.6E`, `0`, `12°30'W`.
/// On a fault the result is empty, and one diagnostic is added.
std::optional<DeclinationSetting> read_declination(const Source& source,
                                                   std::vector<Diagnostic>& diagnostics);

/// Reads the whole of `source` (one line) as a position. A zone letter S that may be the band or
/// "south" is a fault, because there is no log to decide it. On a fault the result is empty, and
/// one diagnostic is added.
std::optional<earth::Position> read_position(const Source& source,
                                             std::vector<Diagnostic>& diagnostics);

/// Reads the whole of `source` (one line) as a height: `812`, `-430 m` or `2664 ft`. On a fault the
/// result is empty, and one diagnostic is added.
std::optional<Length> read_height(const Source& source, std::vector<Diagnostic>& diagnostics);

}  // namespace lodebook::notebook
