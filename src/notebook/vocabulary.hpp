// SPDX-License-Identifier: MIT
// The words that can start a statement: keywords, kinds, and those that the log adds.
#pragma once

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::notebook {

enum class Keyword : std::uint8_t {
  station,
  at,
  elevation,
  time,
  unit,
  sample,
  photo,
  note,
  landmark,
  tally,
  area,
  observer,
  instrument,
  date,
  dial,
  set,
  declination,
  rule,
  order,
  pace,
  datum,
  accuracy,
  attraction,
  kind,
  short_word,
  ask,
  heading,
  reading,  ///< a kind, `sight` or `leg`
};

/// What a first word means.
struct Meaning {
  Keyword keyword = Keyword::reading;
  KindId kind = no_kind;
};

/// The words of the language and those that a log adds, compared ignoring case. A word of the log
/// takes precedence over words newer than the first edition, so that old logs read as before.
class Vocabulary {
 public:
  /// Fills `kinds` with the kinds that every log knows.
  explicit Vocabulary(std::vector<Kind>& kinds);

  /// What `word` means, or nothing.
  std::optional<Meaning> find(std::string_view word) const;
  /// Whether `word` may not be given a new meaning, because it is a word of the first edition or of
  /// the log, a point of the rose, or a word inside statements since the first edition.
  bool is_taken(std::string_view word) const;
  void add(std::string_view word, Meaning meaning);
  /// The number of words that the log has added.
  std::size_t added() const { return added_.size(); }

  /// Allows a search without making a std::string.
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view word) const {
      return std::hash<std::string_view>()(word);
    }
  };
  using Meanings = std::unordered_map<std::string, Meaning, Hash, std::equal_to<>>;
  /// The known word that `word` was probably meant to be: mistyped, cut short (`stat`, `stn`), or
  /// with a colon or point behind it.
  std::optional<std::string_view> nearest_to(std::string_view word) const;

 private:
  Meanings added_;
};

}  // namespace lodebook::notebook
