// SPDX-License-Identifier: MIT
// Edit distance between short words.
#include <lodebook/notebook/nearest.hpp>

#include <algorithm>
#include <array>
#include <cstddef>

namespace lodebook::notebook {
namespace {

constexpr std::size_t longest = 64;
/// A part of a name with fewer letters is too short to identify it.
constexpr std::size_t shortest_part = 3;

/// The letters U+00C0 to U+017F in lower case without their marks. A space stands for a character
/// that is no letter, or that needs two (Latin-1 Supplement and Latin Extended-A of Unicode).
constexpr std::string_view bare_letters =
    "aaaaaa ceeeeiiiidnooooo ouuuuy  aaaaaa ceeeeiiiidnooooo ouuuuy y"
    "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiii  jjkkklllllll"
    "lllnnnnnnnnnoooooo  rrrrrrssssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";
static_assert(bare_letters.size() == 0x180 - 0xC0);

/// A word in lower case and without the marks of its letters, so that `Akdag` finds `Akdağ`.
struct Folded {
  std::array<char, longest> letters{};
  std::size_t size = 0;

  explicit Folded(std::string_view word) {
    for (std::size_t at = 0; at < word.size(); ++at) {
      const auto byte = static_cast<unsigned char>(word[at]);
      char letter =
          word[at] >= 'A' && word[at] <= 'Z' ? static_cast<char>(word[at] + 32) : word[at];
      if (byte >= 0xC3 && byte <= 0xC5 && at + 1 < word.size()) {
        const auto trail = static_cast<unsigned char>(word[at + 1]);
        const char bare = bare_letters[(byte - 0xC3U) * 64 + (trail & 0x3FU)];
        if (bare != ' ') {
          letter = bare;
          ++at;
        }
      }
      letters[size++] = letter;
    }
  }
  std::string_view text() const { return {letters.data(), size}; }
};

/// The edit distance; both words have at most `longest` letters.
std::size_t distance(std::string_view a, std::string_view b) {
  using Row = std::array<std::size_t, longest + 1>;
  std::array<Row, 3> rows{};  // this letter of `a`, the one before it, the one before that
  Row* current = &rows[0];    // NOLINT(readability-container-data-pointer): the first of three
  Row* previous = &rows[1];
  Row* before = &rows[2];
  for (std::size_t j = 0; j <= b.size(); ++j)
    (*current)[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    Row* const oldest = before;
    before = previous;
    previous = current;
    current = oldest;
    (*current)[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = a[i - 1] == b[j - 1];
      std::size_t least = std::min((*previous)[j], (*current)[j - 1]) + 1;
      least = std::min(least, (*previous)[j - 1] + (same ? 0U : 1U));
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        least = std::min(least, (*before)[j - 2] + 1);
      }
      (*current)[j] = least;
    }
  }
  return (*current)[b.size()];
}

/// How many letters of `word` are wrong if `known` was meant; empty if too many.
std::optional<std::size_t> letters_wrong(std::string_view word, std::string_view known) {
  const std::size_t longer = std::max(word.size(), known.size());
  const std::size_t shorter = std::min(word.size(), known.size());
  if ((longer - shorter) * 3 <= longer) {
    const std::size_t wrong = distance(word, known);
    if (wrong * 3 <= longer) return wrong;
  }
  // The part before a hyphen counts as two wrong letters. Then it finds nothing if it fits two
  // names equally.
  const std::size_t part = known.find('-');
  if (part >= shortest_part && part < known.size() && known.substr(0, part) == word)
    return std::size_t{2};
  return std::nullopt;
}

}  // namespace

std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> known) {
  if (word.empty() || word.size() > longest || known.size() > most_known_words) return std::nullopt;
  const Folded typed(word);
  std::optional<std::string_view> best;
  std::size_t least = longest;
  bool tied = false;
  for (const std::string_view candidate : known) {
    if (candidate.empty() || candidate.size() > longest) continue;
    const auto wrong = letters_wrong(typed.text(), Folded(candidate).text());
    if (!wrong || *wrong > least) continue;
    tied = *wrong == least && best.has_value();
    if (!tied) best = candidate;
    least = *wrong;
  }
  if (tied && least > 1) return std::nullopt;
  return best;
}

}  // namespace lodebook::notebook
