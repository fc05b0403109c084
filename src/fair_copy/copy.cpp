// SPDX-License-Identifier: MIT
// From a page to its copy: each line to its reader, the questions about the heading, and what the
// strict reader says of it all.
#include <lodebook/fair_copy/fair_copy.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "asides.hpp"
#include "table.hpp"
#include "verify.hpp"

namespace lodebook::fair_copy {

namespace {

constexpr std::string_view mark_of_copies = "# page ";
/// Bytes; a longer line stands as typed.
constexpr std::size_t longest_typed = 2000;

/// A line of the page and what became of it.
struct Copied {
  std::uint32_t number = 0;  ///< on the page, from 1; 0 for the questions about the heading
  std::string_view typed;
  bool as_typed = true;
  Lines lines;
  bool in_station = false;
};

class Copier {
 public:
  explicit Copier(const notebook::Source& source)
      : source_(source), notebook_(notebook::read_log(source)), strict_(strictly_read(notebook_)) {}

  Copy copy() {
    Copy copy;
    for (StrictLine& line : strict_)
      line.is_good = line.is_good && !hides_reading(line);
    const bool good = std::ranges::all_of(strict_, &StrictLine::is_good);
    if (good || is_copy()) {
      copy.log = source_.own_text();
      return copy;
    }
    for (std::uint32_t number = 1; number <= source_.line_count(); ++number)
      read_line(number);
    ask_about_heading();
    for (int pass = 0; pass < 2 && !hold_to_strict(); ++pass) {
    }
    copy.log = text();
    copy.tally = tally();
    return copy;
  }

 private:
  std::string_view line_of(std::uint32_t number) const {
    if (number > source_.line_count()) return {};
    return source_.text(source_.line(number));
  }
  static bool is_blank(std::string_view line) { return stripped(line).empty(); }

  /// A reading, with more of them in its remark: `fault 280 17 N; 110 20 N`.
  bool hides_reading(const StrictLine& line) const {
    const bool reading = !line.entries.empty() &&
                         std::holds_alternative<notebook::Reading>(line.entries.front().what);
    if (!reading || line.entries.front().remark.empty()) return false;
    Tokens tokens = tokens_of(source_.text(line.entries.front().remark), page_.words, false);
    set_aside(tokens, false);
    for (std::size_t i = 0; i < tokens.size(); ++i) {
      const auto attitude = attitude_at(tokens, i, false);
      using Form = Attitude::Form;
      if (attitude && attitude->first && attitude->second && attitude->form != Form::rake)
        return true;
    }
    return false;
  }

  /// It has lines of a page above what was made of them.
  bool is_copy() const {
    for (std::uint32_t number = 1; number <= source_.line_count(); ++number) {
      std::string_view line = line_of(number);
      while (line.starts_with(' '))
        line.remove_prefix(1);
      if (!line.starts_with(mark_of_copies)) continue;
      line.remove_prefix(mark_of_copies.size());
      const std::size_t digits = line.find_first_not_of("0123456789");
      if (digits > 0 && digits != std::string_view::npos && line[digits] == ':') return true;
    }
    return false;
  }

  void read_line(std::uint32_t number) {
    Copied& copied = copied_.emplace_back();
    copied.number = number;
    copied.typed = line_of(number);
    const StrictLine& strict = strict_[number - 1];
    // Nobody types such a line, and a comment could not hold it.
    const bool is_long = copied.typed.size() > longest_typed;
    if (strict.is_good || is_blank(copied.typed) || is_long) {
      if (is_long && !strict.is_good) ++long_lines_;
      learn(page_, strict, notebook_);
      if (table_) table_->pass(copied.typed);
      for (const notebook::Entry& entry : strict.entries) {
        if (std::holds_alternative<notebook::Reading>(entry.what)) ++typed_readings_;
      }
      copied.in_station = page_.in_station;
      note_first(copied);
      return;
    }
    copied.as_typed = false;
    copied.lines = understood(number, copied.typed);
    copied.in_station = page_.in_station;
    note_first(copied);
  }

  /// Before the first station, or the first reading, stand the questions about the heading.
  void note_first(const Copied& copied) {
    const bool reading =
        std::ranges::any_of(copied.lines, [](const Line& line) { return line.readings > 0; });
    if (!first_ && (page_.in_station || reading)) first_ = copied_.size() - 1;
  }

  Lines understood(std::uint32_t number, std::string_view line) {
    const Tokens tokens = tokens_of(line, page_.words, page_.decimal_commas);
    const bool opens = number == 1 || is_blank(line_of(number - 1));
    const bool alone = stands_alone(number);
    Tokens used = tokens;
    page_.is_title = number == 1;
    const bool below_landmark = std::exchange(page_.below_landmark, false);
    if (auto lines = in_table(line)) return *std::move(lines);
    if (!tokens.empty() && tokens.front().is(Meaning::marks)) return listed_marks(line, tokens);
    if (auto lines = settings_of(line, used, page_)) return *lines;
    used = tokens;
    if (auto lines = place_of(line, used, page_, opens, alone))
      return with_rest(*std::move(lines), line, used);
    used = tokens;
    if (auto lines = bearings_of(line, used, page_)) return *lines;
    used = tokens;
    if (auto lines = readings_of(line, used, page_)) return *lines;
    if (below_landmark && !page_.in_station && first_unsettled(used) == used.size())
      return unplaced_landmark(line);
    return kept(line, used, number);
  }

  /// A heading of columns, or a row below one.
  std::optional<Lines> in_table(std::string_view line) {
    if (auto table = Table::headed_by(line)) {
      table_ = std::move(table);
      Lines lines;
      lines.emplace_back().text = fmt::format("note {}", stripped_ends(line));
      lines.back().is_note = true;
      for (const Token& token : tokens_of(line, page_.words, false)) {
        if (token.is(Meaning::kind)) page_.kind = page_.list_kind = token.says;
      }
      return lines;
    }
    if (!table_) return std::nullopt;
    const Tokens tokens = tokens_of(line, page_.words, false);
    if (!tokens.empty() && tokens.front().is(Meaning::station) && !table_->has_stations()) {
      table_.reset();
      return std::nullopt;
    }
    return table_->row(line, page_);
  }

  /// `marks: Fire Tower, Grange Hall (cupola)`, `Known: Windmill 39.01 N 110.67 W. Radio mast ...`
  Lines listed_marks(std::string_view line, const Tokens& tokens) {
    Lines lines;
    const std::string_view names = line.substr(tokens.front().end);
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
  static bool ends_mark(std::string_view names, std::size_t at, bool placed) {
    if (names[at] == ';') return true;
    if (!placed) return names[at] == ',';
    const bool capital = at + 2 < names.size() && names[at + 2] >= 'A' && names[at + 2] <= 'Z';
    return names[at] == '.' && names[at + 1] == ' ' && capital;
  }

  /// Among the landmarks a name without a position: one to be found.
  Lines unplaced_landmark(std::string_view line) {
    std::string_view name = stripped(line);
    for (const std::string_view mark :
         {" - ", " – ", ",", "(", "  ", ";", " not ", " is ", " are "})
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
  bool stands_alone(std::uint32_t number) const {
    const std::string_view next = line_of(number + 1);
    if (is_blank(next)) return true;
    Page page;
    page.words = page_.words;
    Tokens tokens = tokens_of(next, page.words, page_.decimal_commas);
    const auto lines = place_of(next, tokens, page, true, true);
    const bool named = lines && (lines->front().text.starts_with("landmark") ||
                                 lines->front().text.starts_with("station"));
    return named || std::ranges::none_of(tokens, [](const Token& token) {
             return token.is_figure() || token.type == Token::Type::bearing;
           });
  }

  /// Behind a station's heading, readings on the same line.
  Lines with_rest(Lines lines, std::string_view line, Tokens& tokens) {
    if (first_unsettled(tokens) == tokens.size()) return lines;
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
    lines.front().text.resize(std::min(lines.front().text.find("  ; "), lines.front().text.size()));
    lines.insert(lines.end(), more->begin(), more->end());
    return lines;
  }

  /// A line that is no reading, or may be one that nobody can read.
  Lines kept(std::string_view line, const Tokens& tokens, std::uint32_t number) const {
    Lines lines;
    Line& note = lines.emplace_back();
    const std::string_view text = stripped(line).empty() ? line : stripped_ends(line);
    const bool mean = !tokens.empty() && tokens.front().is(Meaning::mean);
    std::size_t left = first_unsettled(tokens);
    while (left < tokens.size() && tokens[left].type == Token::Type::point)
      left = first_unsettled(tokens, left + 1);
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

  /// No figure that a reading would have.
  static bool is_counted(const Tokens& tokens) {
    return std::ranges::none_of(tokens, [](const Token& token) {
      return token.type == Token::Type::bearing || token.is('/') || token.is('>') ||
             (token.is_figure() && (token.is_degrees || token.digits == 3));
    });
  }

  static std::string_view stripped_ends(std::string_view line) {
    const std::size_t begin = line.find_first_not_of(" \t");
    const std::size_t end = line.find_last_not_of(" \t");
    return line.substr(begin, end - begin + 1);
  }

  // ---- the heading

  std::uint32_t waiting(Statement::Wait what) const {
    std::uint32_t count = 0;
    for (const Copied& copied : copied_) {
      for (const Line& line : copied.lines) {
        if (line.waits == what) count += line.readings;
      }
    }
    return count;
  }

  void ask_about_heading() {
    Copied questions;
    questions.as_typed = false;
    const auto ask = [&](std::string text) {
      questions.lines.emplace_back().text = "ask " + std::move(text);
    };
    if (const auto count = waiting(Statement::Wait::order); count > 0)
      ask(fmt::format("order direction/dip  ; or strike/dip? {} need{} it", counted(count, "pair"),
                      count == 1 ? "s" : ""));
    if (const auto count = waiting(Statement::Wait::rule); count > 0)
      ask(fmt::format("rule right  ; or left? {} need{} it", counted(count, "plane"),
                      count == 1 ? "s" : ""));
    const bool has_readings = std::ranges::any_of(copied_, [](const Copied& copied) {
      return std::ranges::any_of(copied.lines, [](const Line& line) { return line.readings > 0; });
    });
    if (has_readings && !page_.has_set && !asked("set "))
      ask("set 0  ; what was turned into the dial?");
    if (has_readings && !page_.has_declination && !asked("declination "))
      ask(page_.has_set ? "declination as-set  ; or what was it?"
                        : "declination model  ; or what was it?");
    questions_ = static_cast<std::uint32_t>(questions.lines.size());
    if (questions.lines.empty()) return;
    const std::size_t place = std::min(first_.value_or(copied_.size()), copied_.size());
    copied_.insert(copied_.begin() + static_cast<std::ptrdiff_t>(place), std::move(questions));
  }

  bool asked(std::string_view setting) const {
    return std::ranges::any_of(copied_, [&](const Copied& copied) {
      return std::ranges::any_of(copied.lines, [&](const Line& line) {
        return line.text.starts_with("ask " + std::string(setting));
      });
    });
  }

  static std::string counted(std::uint32_t count, std::string_view what) {
    return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
  }

  // ---- what the strict reader says

  std::string text() const {
    std::string text;
    for (const Copied& copied : copied_) {
      if (copied.as_typed) {
        text += copied.typed;
        text += '\n';
        continue;
      }
      text += fmt::format("{}{}: {}\n", mark_of_copies, copied.number,
                          copied.number == 0 ? "the heading" : copied.typed);
      for (const Line& line : copied.lines)
        text += indent(copied, line) + line.text + '\n';
    }
    return text;
  }

  static std::string indent(const Copied& copied, const Line& line) {
    std::string_view said = line.text;
    if (line.is_question()) said.remove_prefix(4);
    return copied.in_station && !said.starts_with("station ") ? "  " : "";
  }

  /// Turns into a question what the strict reader refuses, or takes for something else. True if
  /// there was nothing.
  bool hold_to_strict() {
    notebook::Source copy("copy", text());
    copy.take_headings(source_);
    const notebook::Notebook written = notebook::read_log(std::move(copy));
    const std::vector<StrictLine> strict = strictly_read(written);
    bool all_good = true;
    std::size_t number = 0;
    for (Copied& copied : copied_) {
      ++number;
      if (copied.as_typed) continue;
      for (Line& line : copied.lines) {
        const StrictLine& read = strict[number++];
        const bool may_fail = line.is_question() || line.waits != Statement::Wait::none;
        if (may_fail || is_right(line, read)) continue;
        line.text.insert(0, "ask ");
        all_good = false;
      }
    }
    return all_good;
  }

  static bool is_right(const Line& line, const StrictLine& read) {
    if (!read.is_good) return false;
    if (!line.meant) return true;
    std::uint32_t readings = 0;
    for (const notebook::Entry& entry : read.entries) {
      const auto* reading = std::get_if<notebook::Reading>(&entry.what);
      if (!reading) continue;
      ++readings;
      if (!agrees(*reading, *line.meant)) return false;
    }
    return readings > 0;
  }

  Tally tally() const {
    Tally tally;
    tally.taken = typed_readings_;
    tally.questions = questions_;
    tally.other_questions = long_lines_;
    for (const Copied& copied : copied_) {
      for (const Line& line : copied.lines) {
        const bool waits = line.waits != Statement::Wait::none;
        if (line.readings > 0) {
          (line.is_question() || waits ? tally.asked : tally.taken) += line.readings;
        } else if (line.is_question() && copied.number > 0) {
          ++tally.other_questions;
        }
        if (line.is_note) ++tally.notes;
      }
    }
    return tally;
  }

  const notebook::Source& source_;
  notebook::Notebook notebook_;
  std::vector<StrictLine> strict_;
  Page page_;
  std::vector<Copied> copied_;
  std::optional<Table> table_;
  std::optional<std::size_t> first_;
  std::uint32_t typed_readings_ = 0;
  std::uint32_t questions_ = 0;
  std::uint32_t long_lines_ = 0;
};

}  // namespace

Copy copy_page(const notebook::Source& page) {
  return Copier(page).copy();
}

}  // namespace lodebook::fair_copy
