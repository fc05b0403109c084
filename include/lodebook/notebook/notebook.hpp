// SPDX-License-Identifier: MIT
// A log that has been read: its entries, names, kinds and every fault of the language.
#pragma once

#include <unordered_map>

#include <lodebook/notebook/diagnostic.hpp>
#include <lodebook/notebook/entry.hpp>

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
};

/// Names of stations and landmarks, compared ignoring case and kept as first written.
class Names {
 public:
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

/// A whole log. Entries are in the order of the text, diagnostics in that of their places.
struct Notebook {
  Source source;
  std::vector<Entry> entries;
  std::vector<Diagnostic> diagnostics;
  Names names;
  std::vector<Kind> kinds;
  /// Number of readings, rejected ones included.
  std::uint32_t reading_count = 0;
};

/// Bytes of a line that is read; a longer one is a fault.
inline constexpr std::uint32_t longest_line = 64 * 1024;

/// What stands in for a log's own words while it is read.
struct ReadOptions {
  std::optional<ThumbRule> rule;
};

/// Reads a log. Never fails: every fault becomes a diagnostic and reading goes on at the next line
/// or the next repeat. Cost is linear in the text.
Notebook read_log(Source source, const ReadOptions& options = {});

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
