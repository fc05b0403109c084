// SPDX-License-Identifier: MIT
// The known word that a mistyped one was meant to be.
#include <array>
#include <catch.hpp>
#include <lodebook/notebook/nearest.hpp>
#include <string>
#include <vector>

namespace lodebook::notebook {
namespace {

constexpr std::array<std::string_view, 9> known = {
    "bedding", "joint", "fault", "vein", "sight", "lineation", "station", "slickenline", "unit"};

std::string near(std::string_view word) {
  return std::string(nearest(word, known).value_or("-"));
}

TEST_CASE("one letter missing, added, changed or swapped") {
  CHECK(near("beding") == "bedding");
  CHECK(near("beddding") == "bedding");
  CHECK(near("bedxing") == "bedding");
  CHECK(near("bedidng") == "bedding");
  CHECK(near("edding") == "bedding");
  CHECK(near("beddingg") == "bedding");
  CHECK(near("ebdding") == "bedding");
  CHECK(near("bedding") == "bedding");
}

TEST_CASE("case does not count, and the answer is as known") {
  CHECK(near("BEDING") == "bedding");
  CHECK(near("Joimt") == "joint");
}

TEST_CASE("marks on letters do not count") {
  constexpr std::array<std::string_view, 4> names = {"Akdağ-summit", "Çamlık", "Łysica",
                                                     "Ørnfjell"};
  CHECK(nearest("Akdag-summit", names) == std::optional<std::string_view>("Akdağ-summit"));
  CHECK(nearest("camlik", names) == std::optional<std::string_view>("Çamlık"));
  CHECK(nearest("Lysica", names) == std::optional<std::string_view>("Łysica"));
  CHECK(nearest("ornfjel", names) == std::optional<std::string_view>("Ørnfjell"));
}

TEST_CASE("the first part of a name with a hyphen will do, where only one begins so") {
  constexpr std::array<std::string_view, 2> one = {"Akdağ-summit", "Trig-Dome"};
  CHECK(nearest("Akdag", one) == std::optional<std::string_view>("Akdağ-summit"));
  CHECK(nearest("TRIG", one) == std::optional<std::string_view>("Trig-Dome"));
  CHECK(nearest("Tr", one) == std::nullopt);
  constexpr std::array<std::string_view, 2> two = {"Akdağ-summit", "Akdağ-col"};
  CHECK(nearest("Akdag", two) == std::nullopt);
}

TEST_CASE("at most a third of the letters may be wrong") {
  CHECK(near("slikenlne") == "slickenline");  // two of eleven
  CHECK(near("slkenlne") == "slickenline");   // three of eleven
  CHECK(near("slkenln") == "-");              // four of eleven
  CHECK(near("joimp") == "-");                // two of five
  CHECK(near("vain") == "vein");
  CHECK(near("vn") == "-");
  CHECK(near("xyz") == "-");
  CHECK(near("") == "-");
}

TEST_CASE("of equally near words the first where one letter is wrong, else nothing") {
  constexpr std::array<std::string_view, 2> pair = {"vein", "veil"};
  CHECK(nearest("vei", pair) == std::optional<std::string_view>("vein"));
  constexpr std::array<std::string_view, 2> far = {"abcdefghi", "abcdefgjk"};
  CHECK(nearest("abcdefg", far) == std::nullopt);
}

TEST_CASE("the result is a view from the known words") {
  CHECK(nearest("beding", known)->data() == known[0].data());
}

TEST_CASE("among very many words nothing is looked for") {
  const std::vector<std::string_view> most(most_known_words, "bedding");
  CHECK(nearest("beding", most) == std::optional<std::string_view>("bedding"));
  const std::vector<std::string_view> more(most_known_words + 1, "bedding");
  CHECK(nearest("beding", more) == std::nullopt);
}

TEST_CASE("very long words are not compared") {
  const std::string longest(64, 'a');
  const std::string longer(65, 'a');
  const std::array<std::string_view, 2> words = {longest, longer};
  CHECK(nearest(longest, words) == std::optional<std::string_view>(longest));
  CHECK(nearest(longer, words) == std::nullopt);
  CHECK(nearest("x", std::span<const std::string_view>()) == std::nullopt);
}

}  // namespace
}  // namespace lodebook::notebook
