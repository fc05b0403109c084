// SPDX-License-Identifier: MIT
#include "vocabulary.hpp"

#include <lodebook/notebook/nearest.hpp>
#include <lodebook/orientation/quadrant.hpp>

#include <algorithm>
#include <array>
#include <span>

#include "tokens.hpp"

namespace lodebook::notebook {

namespace {

constexpr std::array<std::pair<std::string_view, Keyword>, 25> keywords = {{
    {"station", Keyword::station},
    {"at", Keyword::at},
    {"elevation", Keyword::elevation},
    {"time", Keyword::time},
    {"unit", Keyword::unit},
    {"sample", Keyword::sample},
    {"photo", Keyword::photo},
    {"note", Keyword::note},
    {"landmark", Keyword::landmark},
    {"tally", Keyword::tally},
    {"area", Keyword::area},
    {"observer", Keyword::observer},
    {"instrument", Keyword::instrument},
    {"date", Keyword::date},
    {"dial", Keyword::dial},
    {"set", Keyword::set},
    {"declination", Keyword::declination},
    {"rule", Keyword::rule},
    {"order", Keyword::order},
    {"pace", Keyword::pace},
    {"datum", Keyword::datum},
    {"accuracy", Keyword::accuracy},
    {"attraction", Keyword::attraction},
    {"kind", Keyword::kind},
    {"short", Keyword::short_word},
}};

/// Words newer than the first edition of the language. A log may give them another meaning.
constexpr std::array<std::pair<std::string_view, Keyword>, 2> newer_keywords = {{
    {"ask", Keyword::ask},
    {"heading", Keyword::heading},
}};

struct KnownKind {
  std::string_view name;
  Kind::Type type;
  bool has_sense = false;
  bool is_arrow = false;
  bool folds = false;
  bool two_ended = false;
};
/// Beds, their contacts, and the planes that strain makes in them are folded, by the same folds or
/// by later ones. Joints, veins, dikes and faults cut the rock, and are not folded.
constexpr std::array<KnownKind, 20> known_kinds = {{
    {"bedding", Kind::Type::plane, false, false, true},
    {"foliation", Kind::Type::plane, false, false, true},
    {"cleavage", Kind::Type::plane, false, false, true},
    {"schistosity", Kind::Type::plane, false, false, true},
    {"joint", Kind::Type::plane},
    {"fault", Kind::Type::plane, true},
    {"shear", Kind::Type::plane, true},
    {"vein", Kind::Type::plane},
    {"dike", Kind::Type::plane},
    {"contact", Kind::Type::plane, false, false, true},
    {"axial-plane", Kind::Type::plane, false, false, true},
    {"lineation", Kind::Type::line},
    {"slickenline", Kind::Type::line, true},
    {"fold-axis", Kind::Type::line},
    {"intersection", Kind::Type::line},
    {"stretching", Kind::Type::line},
    {"flute", Kind::Type::line, false, true},
    {"current", Kind::Type::line, false, true},
    {"sight", Kind::Type::sight},
    {"leg", Kind::Type::leg},
}};

/// Kinds newer than the first edition. Their numbers follow those of the older ones.
constexpr std::array<KnownKind, 4> newer_kinds = {{
    {"striation", Kind::Type::line, false, false, false, true},
    {"groove", Kind::Type::line, false, false, false, true},
    {"crest", Kind::Type::line, false, false, false, true},
    {"alignment", Kind::Type::line, false, false, false, true},
}};

/// Words with a meaning inside statements.
constexpr std::array<std::string_view, 18> inner_words = {
    "rake",       "to",       "on",         "from",    "back",    "due",
    "horizontal", "vertical", "overturned", "upright", "facing",  "doubtful",
    "south-end",  "slope",    "normal",     "reverse", "dextral", "sinistral"};

/// The words of the language's first edition, which are the same for every log.
const Vocabulary::Meanings& language() {
  static const Vocabulary::Meanings words = [] {
    Vocabulary::Meanings all;
    for (const auto& [word, keyword] : keywords)
      all.emplace(std::string(word), Meaning{keyword, no_kind});
    KindId id = 0;
    for (const KnownKind& known : known_kinds)
      all.emplace(std::string(known.name), Meaning{Keyword::reading, id++});
    all.emplace("dyke", all.at("dike"));
    return all;
  }();
  return words;
}

/// What newer words mean, unless a log gives them a meaning of its own.
const Vocabulary::Meanings& newer_language() {
  static const Vocabulary::Meanings words = [] {
    Vocabulary::Meanings all;
    for (const auto& [word, keyword] : newer_keywords)
      all.emplace(std::string(word), Meaning{keyword, no_kind});
    KindId id = known_kinds.size();
    for (const KnownKind& known : newer_kinds)
      all.emplace(std::string(known.name), Meaning{Keyword::reading, id++});
    return all;
  }();
  return words;
}

/// The fewest letters of a shortened word; with fewer, too many words fit.
constexpr std::size_t shortest_cut = 3;

/// `stat` for `station`.
bool is_beginning(std::string_view word, std::string_view known) {
  return known.size() > word.size() && equals_word(known.substr(0, word.size()), word);
}

/// `stn` for `station`: its first and last letter, and some of those between, in order.
bool is_contraction(std::string_view word, std::string_view known) {
  if (word.front() != known.front() || word.back() != known.back()) return false;
  std::size_t at = 0;
  for (const char letter : known) {
    if (at < word.size() && letter == word[at]) ++at;
  }
  return at == word.size();
}

/// The one of `known` that `fits`, if no other does.
template <class Fits>
std::optional<std::string_view> only_one(const std::vector<std::string_view>& known, Fits fits) {
  const auto found = std::find_if(known.begin(), known.end(), fits);
  if (found == known.end() || std::find_if(found + 1, known.end(), fits) != known.end())
    return std::nullopt;
  return *found;
}

}  // namespace

Vocabulary::Vocabulary(std::vector<Kind>& kinds) {
  for (const std::span<const KnownKind> list :
       {std::span<const KnownKind>(known_kinds), std::span<const KnownKind>(newer_kinds)}) {
    for (const KnownKind& known : list) {
      kinds.push_back({std::string(known.name), known.type, known.has_sense, known.is_arrow,
                       known.folds, known.two_ended});
    }
  }
}

std::optional<Meaning> Vocabulary::find(std::string_view word) const {
  const auto look_up = [this](std::string_view folded) -> std::optional<Meaning> {
    if (const auto known = language().find(folded); known != language().end()) return known->second;
    if (const auto added = added_.find(folded); added != added_.end()) return added->second;
    if (const auto newer = newer_language().find(folded); newer != newer_language().end())
      return newer->second;
    return std::nullopt;
  };
  // The words of the language are short, and plain ASCII.
  std::array<char, 16> folded;
  const bool plain = std::ranges::all_of(word, [](char c) { return c >= ' ' && c <= '~'; });
  if (!plain || word.size() > folded.size()) return look_up(fold_case(word));
  std::ranges::transform(word, folded.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c + ('a' - 'A')) : c;
  });
  return look_up({folded.data(), word.size()});
}

bool Vocabulary::is_taken(std::string_view word) const {
  const std::string folded = fold_case(word);
  const auto added = added_.find(folded);
  const bool is_stated = added != added_.end() && added->second.asked_at == 0;
  return language().contains(folded) || is_stated || point_named(folded).has_value() ||
         std::find(inner_words.begin(), inner_words.end(), folded) != inner_words.end();
}

void Vocabulary::add(std::string_view word, Meaning meaning) {
  added_.insert_or_assign(fold_case(word), meaning);
  ++additions_;
}

std::optional<std::string_view> Vocabulary::nearest_to(std::string_view word) const {
  const std::size_t count = language().size() + newer_language().size() + added_.size();
  if (count > most_known_words) return std::nullopt;
  std::vector<std::string_view> known;
  known.reserve(count);
  for (const Meanings* words : {&language(), &newer_language(), &added_}) {
    for (const auto& [name, meaning] : *words)
      known.push_back(name);
  }
  std::sort(known.begin(), known.end());
  while (!word.empty() && (word.back() == ':' || word.back() == '.'))
    word.remove_suffix(1);
  if (const auto near = nearest(word, known)) return near;
  const std::string cut = fold_case(word);
  if (cut.size() < shortest_cut) return std::nullopt;
  const auto begins = [&](std::string_view name) { return is_beginning(cut, name); };
  const auto contracts = [&](std::string_view name) { return is_contraction(cut, name); };
  // Words of the first edition and of the log come before newer ones.
  std::vector<std::string_view> older = known;
  std::erase_if(older,
                [](std::string_view name) { return newer_language().contains(std::string(name)); });
  for (const auto* words : {&older, &known}) {
    if (const auto one = only_one(*words, begins)) return one;
    if (const auto one = only_one(*words, contracts)) return one;
  }
  return std::nullopt;
}

}  // namespace lodebook::notebook
