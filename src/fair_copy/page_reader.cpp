// SPDX-License-Identifier: MIT
#include "page_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "asides.hpp"
#include "series.hpp"

namespace lodebook::fair_copy {

namespace {

/// Bytes; a longer line stands as typed.
constexpr std::size_t longest_typed = 2000;

bool is_blank(std::string_view line) {
  return stripped(line).empty();
}

std::string_view stripped_ends(std::string_view line) {
  const std::size_t begin = line.find_first_not_of(" \t");
  const std::size_t end = line.find_last_not_of(" \t");
  return line.substr(begin, end - begin + 1);
}

bool ends_mark(std::string_view names, std::size_t at, bool placed) {
  if (names[at] == ';') return true;
  if (!placed) return names[at] == ',';
  const bool capital =
      at + 3 < names.size() && names[at + 1] == ' ' && names[at + 2] >= 'A' && names[at + 2] <= 'Z';
  // `39.01 N, W 110.67` goes on.
  return capital && (names[at] == '.' || (names[at] == ',' && names[at + 3] >= 'a'));
}

/// No figure that a reading would have.
bool is_counted(const Tokens& tokens) {
  return std::ranges::none_of(tokens, [](const Token& token) {
    return token.type == Token::Type::bearing || token.is('/') || token.is('>') ||
           (token.is_figure() && (token.is_degrees || token.digits == 3));
  });
}

/// Of a form that one line may have by a slip.
constexpr std::uint32_t several = 3;

/// `N 125 E`, with three digits.
bool has_north_east(std::string_view line) {
  const auto behind_blanks = [&](std::size_t at) {
    return std::min(line.find_first_not_of(' ', at), line.size());
  };
  for (std::size_t at = line.find('N'); at != std::string_view::npos; at = line.find('N', at + 1)) {
    const std::size_t digits = behind_blanks(at + 1);
    const std::size_t end = std::min(line.find_first_not_of("0123456789", digits), line.size());
    const std::size_t letter = behind_blanks(end);
    if (end - digits == 3 && letter < line.size() && line[letter] == 'E') return true;
  }
  return false;
}

/// The first line of a page, where it is no reading: many words, and no form that only readings
/// have.
bool is_title(const Tokens& tokens) {
  constexpr std::ptrdiff_t fewest_words = 4;
  const bool reads = tokens.front().is(Meaning::kind) || tokens.front().is(Meaning::sight) ||
                     tokens.front().is(Meaning::leg) || tokens.front().is(Meaning::strike);
  const bool has_form = std::ranges::any_of(tokens, [](const Token& token) {
    return token.type == Token::Type::bearing || token.is('/') || token.is('>') ||
           token.is(Meaning::metres) || token.is(Meaning::paces) || token.is_degrees;
  });
  const auto words = std::ranges::count_if(
      tokens, [](const Token& token) { return token.type == Token::Type::word; });
  return !reads && !has_form && words >= fewest_words;
}

/// `Stn 2   no GPS under the overhang. From Stn 1 112`: the sentence behind a heading is no part of
/// the reading behind it.
void set_sentence_aside(std::string_view line, Tokens& tokens) {
  const std::size_t reading = first_unsettled(tokens);
  std::size_t begin = 0;
  for (std::size_t i = 1; i < tokens.size() && i <= reading; ++i) {
    if (line[tokens[i - 1].end - 1] == '.' && tokens[i].spaced) begin = i;
  }
  for (std::size_t i = 0; i < begin; ++i) {
    if (tokens[i].use == Token::Use::none) tokens[i].use = Token::Use::aside;
  }
}

/// `bedding lies flat`
bool has_figureless_reading(const Tokens& tokens) {
  const auto has = [&](Meaning meaning) {
    return std::ranges::any_of(tokens, [&](const Token& token) {
      return token.is(meaning) && token.use == Token::Use::none;
    });
  };
  return has(Meaning::kind) && (has(Meaning::horizontal) || has(Meaning::vertical));
}

}  // namespace

PageReader::PageReader(const notebook::Notebook& page)
    : notebook_(page), source_(page.source), strict_(strictly_read(page)) {
  page_.conventions.rule = page.options.rule;
  learn(page_, strict_.front(), notebook_);
  for (StrictLine& line : strict_)
    line.is_good = line.is_good && !hides_reading(line);
  std::uint32_t north_east = 0;
  for (std::uint32_t number = 1; number <= source_.line_count(); ++number)
    north_east += has_north_east(line_of(number)) ? 1U : 0U;
  page_.has_north_east = north_east >= several;
  const auto line = [&](std::uint32_t number) { return line_of(number); };
  for (const std::string& name : names_in_series(line, source_.line_count(), page_.words)) {
    page_.series.insert(name);
    page_.add_name(name);
  }
}

bool PageReader::is_log() const {
  return std::all_of(strict_.begin() + 1, strict_.end(),
                     [](const StrictLine& line) { return line.is_good || line.is_question; });
}

CopiedPage PageReader::read() {
  CopiedPage copied;
  for (std::uint32_t number = 1; number <= source_.line_count(); ++number)
    copied.add(read_line(number));
  copied.ask_about_heading(page_);
  return copied;
}

std::string_view PageReader::line_of(std::uint32_t number) const {
  if (number > source_.line_count()) return {};
  return source_.text(source_.line(number));
}

/// A reading, with more of them in its remark: `fault 280 17 N; 110 20 N`, or with what is left of
/// one: `fault N69W 47 N; N80W N`.
bool PageReader::hides_reading(const StrictLine& line) const {
  const bool reading =
      !line.entries.empty() && std::holds_alternative<notebook::Reading>(line.entries.front().what);
  if (!reading || line.entries.front().remark.empty()) return false;
  Tokens tokens = tokens_of(source_.text(line.entries.front().remark), page_.words, false);
  set_aside(tokens, false);
  const bool only_bearings = std::ranges::all_of(tokens, [](const Token& token) {
    return token.type == Token::Type::bearing || token.type == Token::Type::point ||
           token.is_figure() || token.is(',') || token.is(';');
  });
  if (only_bearings && !tokens.empty() && tokens.front().type == Token::Type::bearing) return true;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    const auto attitude = attitude_at(tokens, i, false);
    using Form = Attitude::Form;
    if (attitude && attitude->first && attitude->second && attitude->form != Form::rake)
      return true;
  }
  return false;
}

Copied PageReader::read_line(std::uint32_t number) {
  Copied copied;
  copied.number = number;
  copied.typed = line_of(number);
  const StrictLine& strict = strict_[number];
  // Nobody types such a line, and a comment could not hold it.
  const bool is_long = copied.typed.size() > longest_typed;
  copied.as_typed = strict.is_good || strict.is_question || is_blank(copied.typed) || is_long;
  if (copied.as_typed) {
    copied.waits = !strict.is_good && !is_blank(copied.typed);
    learn(page_, strict, notebook_);
    if (table_) table_->pass(copied.typed, page_);
    // To the language it is a comment: `# strike,dip,side`.
    if (copied.typed.starts_with('#')) {
      if (auto table = Table::headed_by(copied.typed, page_)) table_ = std::move(table);
    }
    copied.typed_readings = static_cast<std::uint32_t>(
        std::ranges::count_if(strict.entries, [](const notebook::Entry& entry) {
          return std::holds_alternative<notebook::Reading>(entry.what);
        }));
  } else {
    copied.lines = understood(number, copied.typed);
  }
  copied.in_station = page_.in_station;
  return copied;
}

Lines PageReader::understood(std::uint32_t number, std::string_view line) {
  Tokens tokens = tokens_of(line, page_.words, page_.decimal_commas);
  // `E5: joint 085/88 N` at E5.
  const bool at_here = tokens.size() > 2 && tokens[0].is(Meaning::named) && tokens[1].is(':') &&
                       page_.is_here(tokens[0].says);
  if (at_here) tokens[0].use = tokens[1].use = Token::Use::stated;
  const bool opens = number == 1 || is_blank(line_of(number - 1));
  const bool alone = stands_alone(number);
  Tokens used = tokens;
  page_.is_title = number == 1;
  page_.units.learn(line);
  const bool below_landmark = std::exchange(page_.below_landmark, false);
  const bool is_order = !tokens.empty() && tokens.front().is(Meaning::order);
  if (auto lines = is_order ? std::nullopt : in_table(line)) return *std::move(lines);
  if (auto lines = sense_letters_of(line, page_)) return *std::move(lines);
  if (const std::size_t names = begin_of_marks(line, tokens); names > 0)
    return listed_marks(line, names, tokens);
  if (auto lines = settings_of(line, used, page_)) return *lines;
  used = tokens;
  if (auto lines = place_of(line, used, page_, opens, alone))
    return with_rest(*std::move(lines), line, used);
  used = tokens;
  if (number == 1 && !tokens.empty() && is_title(tokens)) return title(line);
  if (auto lines = bearings_of(line, used, page_)) return *lines;
  used = tokens;
  if (auto lines = readings_of(line, used, page_)) return *lines;
  if (below_landmark && !page_.in_station && first_unsettled(used) == used.size())
    return unplaced_landmark(line);
  return kept(line, used, number);
}

/// A heading of columns, or a row below one.
std::optional<Lines> PageReader::in_table(std::string_view line) {
  if (auto table = Table::headed_by(line, page_)) {
    table_ = std::move(table);
    if (!table_->kind().empty()) page_.kind = page_.list_kind = table_->kind();
    return table_->heading(line, page_);
  }
  if (!table_) return std::nullopt;
  const Tokens tokens = tokens_of(line, page_.words, false);
  if (!tokens.empty() && tokens.front().is(Meaning::station) && !table_->has_stations()) {
    table_.reset();
    return std::nullopt;
  }
  return table_->row(line, page_);
}

/// Where the names begin on a line that lists landmarks, or 0: behind `marks`, and before the first
/// station behind `peaks we shoot at:`.
std::size_t PageReader::begin_of_marks(std::string_view line, const Tokens& tokens) const {
  if (tokens.empty()) return 0;
  if (tokens.front().is(Meaning::marks)) return tokens.front().end;
  const std::size_t colon = line.find(':');
  if (page_.in_station || colon == std::string_view::npos) return 0;
  const std::string said = ' ' + folded(line.substr(0, colon)) + ' ';
  constexpr std::array<std::string_view, 8> words_for_marks = {
      " peaks ",   " marks ",   " landmarks ", " targets ",
      " beacons ", " summits ", " hills ",     " trigs "};
  const bool lists = std::ranges::any_of(
      words_for_marks, [&](std::string_view noun) { return said.find(noun) != std::string::npos; });
  const bool has_figure = said.find_first_of("0123456789") != std::string::npos;
  return lists && !has_figure ? colon + 1 : 0;
}

/// `marks: Fire Tower, Grange Hall (cupola)`, `Known: Windmill 39.01 N 110.67 W. Radio mast ...`
Lines PageReader::listed_marks(std::string_view line, std::size_t begin_of_names,
                               const Tokens& tokens) {
  Lines lines;
  const std::string_view names = line.substr(begin_of_names);
  const bool placed = names.find_first_of("0123456789") != std::string_view::npos;
  for (std::size_t begin = 0; begin < names.size();) {
    std::size_t end = begin;
    while (end < names.size() && !ends_mark(names, end, placed))
      ++end;
    const std::string_view name = stripped(names.substr(begin, end - begin));
    begin = end + 1;
    if (name.empty()) continue;
    Tokens used = tokens_of(name, page_.words, page_.decimal_commas);
    const auto place = placed ? place_of(name, used, page_, true, true) : std::nullopt;
    const Lines more = place ? with_rest(*place, name, used) : unplaced_landmark(name);
    lines.insert(lines.end(), more.begin(), more.end());
  }
  return lines.empty() ? kept(line, tokens, 0) : lines;
}
/// Among the landmarks a name without a position: one to be found.
Lines PageReader::unplaced_landmark(std::string_view line) {
  std::string_view name = stripped(line);
  for (const std::string_view mark : {" - ", " – ", ",", "(", "  ", ";", " not ", " is ", " are "})
    name = stripped(name.substr(0, std::min(name.find(mark), name.size())));
  page_.add_mark(std::string(name));
  page_.below_landmark = true;
  Lines lines;
  lines.emplace_back().text = "landmark " + name_text(name);
  const std::string_view rest = stripped(line.substr(line.find(name) + name.size()));
  if (!rest.empty()) lines.back().text += fmt::format("  ; {}", rest);
  return lines;
}

/// Below it stands nothing that belongs to it, or another name with a position.
bool PageReader::stands_alone(std::uint32_t number) const {
  for (std::uint32_t below = number + 1; !is_blank(line_of(below)); ++below) {
    Page page;
    page.words = page_.words;
    Tokens tokens = tokens_of(line_of(below), page.words, page_.decimal_commas);
    const auto lines = place_of(line_of(below), tokens, page, true, true);
    const bool named = lines && (lines->front().text.starts_with("landmark") ||
                                 lines->front().text.starts_with("station"));
    if (named) return true;
    const bool has_figure = std::ranges::any_of(tokens, [](const Token& token) {
      return token.is_figure() || token.type == Token::Type::bearing;
    });
    if (has_figure) return false;
  }
  return true;
}

/// Behind a station's heading, readings on the same line.
Lines PageReader::with_rest(Lines lines, std::string_view line, Tokens& tokens) {
  if (first_unsettled(tokens) == tokens.size() && !has_figureless_reading(tokens)) return lines;
  set_sentence_aside(line, tokens);
  auto more = bearings_of(line, tokens, page_);
  if (!more) more = readings_of(line, tokens, page_);
  if (!more) {
    const std::size_t left = first_unsettled(tokens);
    if (left == tokens.size() || tokens[left].type == Token::Type::point) return lines;
    lines.emplace_back().text =
        fmt::format("ask note {}  ; what is '{}'?", stripped(line), tokens[left].text);
    return lines;
  }
  // The words behind the heading stand with what was read last.
  for (Line& heading : lines)
    heading.text.resize(std::min(heading.text.find("  ; "), heading.text.size()));
  lines.insert(lines.end(), more->begin(), more->end());
  return lines;
}

Lines PageReader::title(std::string_view line) const {
  Lines lines;
  lines.emplace_back().text = fmt::format("area {}", stripped_ends(line));
  lines.back().is_note = true;
  return lines;
}

/// A line that is no reading, or may be one that nobody can read.
Lines PageReader::kept(std::string_view line, const Tokens& tokens, std::uint32_t number) const {
  Lines lines;
  Line& note = lines.emplace_back();
  const std::string_view text = stripped(line).empty() ? line : stripped_ends(line);
  const bool mean = !tokens.empty() && tokens.front().is(Meaning::mean);
  std::size_t left = first_unsettled(tokens);
  while (left < tokens.size() && tokens[left].type == Token::Type::point)
    left = first_unsettled(tokens, left + 1);
  const bool repeats =
      std::ranges::any_of(tokens, [](const Token& token) { return token.is(Meaning::kind); }) &&
      std::ranges::any_of(tokens, [](const Token& token) {
        return token.is(Meaning::ditto) || token.is(Meaning::same);
      });
  if (repeats) {
    note.text = fmt::format("ask note {}  ; which reading is repeated?", text);
    return lines;
  }
  // What a page begins with is its title, whatever it counts.
  const bool title = number == 1 && !page_.in_station && is_counted(tokens);
  if (mean || title || left == tokens.size()) {
    note.is_note = true;
    note.text = fmt::format("{} {}", number == 1 && !page_.in_station ? "area" : "note", text);
    return lines;
  }
  note.text = fmt::format("ask note {}  ; what is '{}'?", text, tokens[left].text);
  return lines;
}

}  // namespace lodebook::fair_copy
