// SPDX-License-Identifier: MIT
// `heading FILE`: the lines of another file, read as line 0 before those of the log.
#include "log_reader.hpp"

namespace lodebook::notebook {

std::vector<std::string> LogReader::headings_named() {
  std::vector<std::string> names;
  const std::uint32_t lines = is_utf_16() ? 0 : source_.line_count();
  for (std::uint32_t line = 1; line <= lines; ++line) {
    Statement statement = outline(line, source_.line(line));
    faults_.start(line);
    if (!has_sound_bytes(source_.line(line))) continue;
    split_beside(statement);
    if (statement.whole.empty()) continue;
    const auto meaning = vocabulary_.find(text(statement.word));
    if (!meaning || meaning->keyword != Keyword::heading) break;
    Span body = statement.body;
    const auto name = take_name(body, "the heading");
    names.emplace_back(name && body.empty() ? text(*name) : std::string_view());
  }
  return names;
}

void LogReader::read_headings() {
  in_heading_ = true;
  for (std::uint32_t heading = 1; heading <= source_.heading_count(); ++heading) {
    for (std::uint32_t line = 1; line <= source_.heading_line_count(heading); ++line)
      read_line(0, source_.heading_line(heading, line));
  }
  in_heading_ = false;
}

bool LogReader::is_barred(Meaning meaning) const {
  switch (meaning.keyword) {
    case Keyword::reading:
    case Keyword::station:
    case Keyword::at:
    case Keyword::elevation:
    case Keyword::time:
    case Keyword::unit:
    case Keyword::sample:
    case Keyword::photo:
    case Keyword::note:
    case Keyword::tally:
    case Keyword::ask:
    case Keyword::heading:
      return true;
    default:
      return false;
  }
}

void LogReader::read_heading(const Statement& statement) {
  if (!at_head_) {
    faults_.add(statement.word, wording::heading_misplaced());
    return push_unread(statement);
  }
  const std::size_t met = headings_met_++;
  Span body = statement.body;
  const auto name = take_name(body, "the heading");
  if (!name) return push_unread(statement);
  const Tokens tokens(source_.text(), body);
  Cursor cursor(source_.text(), tokens, faults_);
  if (!finish(cursor, "a name of several words stands in quotes")) return push_unread(statement);
  const std::uint32_t number = named_heading(met);
  const std::string fault = number == 0 ? std::string() : source_.heading_fault(number);
  if (fault.empty()) return push(statement, HeadingUse{number});
  faults_.add(*name, wording::heading(fault));
  push_unread(statement);
}

std::uint32_t LogReader::named_heading(std::size_t met) const {
  for (std::uint32_t number = 1; number <= source_.heading_count(); ++number) {
    if (source_.is_heading_named(number) && met-- == 0) return number;
  }
  return 0;
}

namespace {

/// Whether the text of a heading file still fits behind that of the log.
bool has_room(const Source& source, const HeadingFile& file) {
  return source.text().size() + file.text.size() < Source::max_size - 1;
}

/// Adds the headings of `options`, and those that the log names.
void add_headings(Source& source, const ReadOptions& options) {
  const std::vector<std::string> names = LogReader(source, {}).headings_named();
  for (const HeadingFile& file : options.headings) {
    if (has_room(source, file)) source.add_heading(file.name, file.text, false);
  }
  for (const std::string& name : names) {
    HeadingFile file;
    if (name.empty()) {
      file.fault = "it has no name";
    } else if (!options.open_heading) {
      file.fault = "no file may be opened here";
    } else {
      file = options.open_heading(name);
    }
    if (file.fault.empty() && !has_room(source, file)) file.fault = "the log is too large";
    if (file.fault.empty()) {
      source.add_heading(std::move(file.name), file.text, true);
    } else {
      source.add_missing_heading(std::move(file.fault));
    }
  }
}

}  // namespace

Notebook read_log(Source source, const ReadOptions& options) {
  if (source.heading_count() == 0) add_headings(source, options);
  Notebook notebook{std::move(source), {options.rule, options.order}, {}, {}, {}, {}, {}, 0, 1};
  LogReader(notebook.source, notebook.options).look_through(notebook);
  return notebook;
}

}  // namespace lodebook::notebook
