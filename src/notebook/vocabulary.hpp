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
  /// For a word that the log only asks for, the offset plus one of that statement; otherwise 0.
  std::uint32_t asked_at = 0;
};

/// The words of the language and those that a log adds, compared ignoring case. A word of the log
/// takes precedence over words newer than the first edition, so that old logs read as before.
class Vocabulary {
 public:
  /// Fills `kinds` with the kinds that every log knows.
  explicit Vocabulary(std::vector<Kind>& kinds);

  /// What `word` means, or nothing.
  std::optional<Meaning> find(std::string_view word) const;
  /// Whether `word` may not be given a new meaning, because it is a word of the first edition or
  /// one that the log has stated, a point of the rose, or a word inside statements since the first
  /// edition.
  bool is_taken(std::string_view word) const;
  /// Gives a word that is not taken a meaning.
  void add(std::string_view word, Meaning meaning);
  /// How often the log has added a word.
  std::size_t added() const { return additions_; }

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
  std::size_t additions_ = 0;
};

}  // namespace lodebook::notebook
