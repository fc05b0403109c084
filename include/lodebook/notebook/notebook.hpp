// SPDX-License-Identifier: MIT
// A log that has been read: its entries, names and kinds, and block by block all of its readings
// and every fault of the language.
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
  /// A line that points somewhere, such as a current, and is no mere axis.
  bool is_arrow = false;
  /// A plane that is commonly folded, so that a girdle of its poles may show a fold axis.
  bool folds = false;
  /// A line whose two ends are alike: its bearing is an axis.
  bool two_ended = false;
};

/// Names of stations and landmarks, compared ignoring case and kept as first written.
class Names {
 public:
  /// Reserves memory for about so many names.
  void expect(std::size_t count) { by_folded_.reserve(count); }
  NameId intern(std::string_view name);
  /// The name's number, or no_name.
  NameId find(std::string_view name) const;
  const std::string& shown(NameId id) const { return shown_[id]; }
  std::size_t size() const { return shown_.size(); }

 private:
  std::unordered_map<std::string, NameId> by_folded_;
  std::vector<std::string> shown_;
};

/// `text` with the letters of the Latin, Greek and Cyrillic scripts in lower case, for comparison.
std::string fold_case(std::string_view text);

/// `name` as a log has it: in double quotes where it would not be one word otherwise.
std::string typed_name(std::string_view name);

/// A file whose lines stand before a log's first, or why it may not be read.
struct HeadingFile {
  std::string name;   ///< as messages show it
  std::string text;   ///< in UTF-8, if it is right
  std::string fault;  ///< empty where the text is there
};

/// What stands in for a log's own words while it is read.
struct ReadOptions {
  std::optional<HandRule> rule;
  OrderSetting order = {};
  /// Before those that the log itself names.
  std::vector<HeadingFile> headings = {};
  /// Opens a file that the log names; without it none is opened.
  std::function<HeadingFile(std::string_view)> open_heading = {};
};

/// Where a position with the zone letter S lies, judged by the other positions of its log.
enum class ZoneS : std::uint8_t { band, south, unclear };

/// A log after the first pass: everything in it that matters beyond its own station.
struct Notebook {
  Source source;
  ReadOptions options;
  /// Settings, also void ones, stations and their places, landmarks, sights and legs, in the order
  /// of the text. All else, above all the many attitudes of planes and lines, matters at its
  /// station only, where a BlockReader reads it.
  std::vector<Entry> entries;
  Names names;
  std::vector<Kind> kinds;
  /// By the offset of the position.
  std::map<std::uint32_t, ZoneS> zones;
  Waiting waiting;
  /// Number of readings, attitudes and rejected ones included.
  std::uint32_t reading_count = 0;
  /// Line of the first reading; without one, the line behind the last.
  std::uint32_t first_reading_line = 1;
};

/// Makes the first pass over a log. Headings that `source` has already are those of the log. Never
/// fails: what cannot be understood is left to the
/// BlockReader to report. Cost is linear in the text.
Notebook read_log(Source source, const ReadOptions& options = {});

/// A station block, or what stands before the first station, with everything in it.
struct Block {
  /// False for the block before the first station.
  bool is_station = false;
  /// Line of the station's heading, and the lines of the block.
  std::uint32_t first_line = 1;
  std::uint32_t last_line = 1;
  /// In the order of the text; a station's heading comes first.
  std::vector<Entry> entries;
  /// Every fault of the language, in the order of their places.
  std::vector<Diagnostic> diagnostics;
};

class LogReader;

/// Reads a log block by block. Every fault becomes a diagnostic, and reading goes on at the next
/// line or the next repeat. Cost is linear in the text; memory is one block's.
class BlockReader {
 public:
  /// `notebook` must outlive the reader.
  explicit BlockReader(const Notebook& notebook);
  ~BlockReader();
  BlockReader(const BlockReader&) = delete;
  BlockReader& operator=(const BlockReader&) = delete;

  /// The next block, in the memory of the one before; false after the last. A log always has at
  /// least one block, the one before its first station.
  bool next(Block& block);

 private:
  std::unique_ptr<LogReader> reader_;
};

/// Where in a reading of `source` a fault is shown: the word behind `keyword` (`back`, `slope`,
/// `vertical`, `to`), the first word where `keyword` is empty, or else the whole reading.
Span find_word(const Source& source, Span reading, std::string_view keyword);

/// A reading on its own, for conversion between notations.
struct SingleReading {
  std::variant<std::monostate, Bearing, PlaneAttitude, LineAttitude> what;
  std::vector<Diagnostic> diagnostics;
  bool doubtful = false;
};
enum class ReadAs : std::uint8_t { own_form, bearing, plane, line };

/// Reads the whole of `source` (one line) as one reading: a bearing, a pair with a side (a plane),
/// a pair whose first is a bearing (a line, or a plane with a rule), `A > B` with `as`; a kind may
/// stand first. On a fault `what` is empty and `diagnostics` says why.
SingleReading read_single(const Source& source, ReadAs as, const ReadOptions& options = {});

/// Reads a declination as a log does (`24.6E`, `0`, `12°30'W`); on a fault nothing, and one
/// diagnostic is added.
std::optional<DeclinationSetting> read_declination(const Source& source,
                                                   std::vector<Diagnostic>& diagnostics);

/// Reads the whole of `source` (one line) as a position. A zone letter S that may be the band or
/// "south" is a fault, as there is no log to settle it. On a fault nothing, and one diagnostic is
/// added.
std::optional<earth::Position> read_position(const Source& source,
                                             std::vector<Diagnostic>& diagnostics);

/// Reads the whole of `source` (one line) as a height, `812`, `-430 m` or `2664 ft`; on a fault
/// nothing, and one diagnostic is added.
std::optional<Length> read_height(const Source& source, std::vector<Diagnostic>& diagnostics);

}  // namespace lodebook::notebook
