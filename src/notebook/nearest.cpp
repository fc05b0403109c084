// SPDX-License-Identifier: MIT
// Edit distance between short words.
#include <lodebook/notebook/nearest.hpp>

#include <algorithm>
#include <array>
#include <cstddef>

namespace lodebook::notebook {
namespace {

constexpr std::size_t longest = 64;

constexpr char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// Both words have at most `longest` letters.
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
      const bool same = lower(a[i - 1]) == lower(b[j - 1]);
      std::size_t least = std::min((*previous)[j], (*current)[j - 1]) + 1;
      least = std::min(least, (*previous)[j - 1] + (same ? 0U : 1U));
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
          lower(a[i - 2]) == lower(b[j - 1])) {
        least = std::min(least, (*before)[j - 2] + 1);
      }
      (*current)[j] = least;
    }
  }
  return (*current)[b.size()];
}

}  // namespace

std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> known) {
  if (word.empty() || word.size() > longest || known.size() > most_known_words) return std::nullopt;
  std::optional<std::string_view> best;
  std::size_t least = longest;
  bool tied = false;
  for (const std::string_view candidate : known) {
    if (candidate.empty() || candidate.size() > longest) continue;
    const std::size_t longer = std::max(word.size(), candidate.size());
    const std::size_t shorter = std::min(word.size(), candidate.size());
    if ((longer - shorter) * 3 > longer) continue;
    const std::size_t wrong = distance(word, candidate);
    if (wrong * 3 > longer || wrong > least) continue;
    tied = wrong == least && best.has_value();
    if (!tied) best = candidate;
    least = wrong;
  }
  if (tied && least > 1) return std::nullopt;
  return best;
}

}  // namespace lodebook::notebook
