// SPDX-License-Identifier: MIT
// Lines of the clean log: which are written anew, which verbatim, and what stands between them.
#include <algorithm>
#include <lodebook/notebook/longest_line.hpp>
#include <lodebook/output/clean_log.hpp>
#include <span>

#include "clean_statement.hpp"

namespace lodebook::output {
namespace {

using namespace notebook;

template <class What>
bool is(const Entry& entry) {
  return std::holds_alternative<What>(entry.what);
}

/// A setting of this kind is stated before the first reading, so that the option never counted.
template <class Setting>
bool stated_first(const Notebook& notebook) {
  return std::ranges::any_of(notebook.entries, [&](const Entry& entry) {
    return is<Setting>(entry) && entry.line < notebook.first_reading_line;
  });
}

/// A statement that belongs to the station above it, and is indented under it.
bool is_indented(const Entry& entry) {
  return is<Reading>(entry) || is<At>(entry) || is<Elevation>(entry) || is<Clock>(entry) ||
         is<Unit>(entry) || is<Sample>(entry) || is<Photo>(entry) || is<Note>(entry);
}

class CleanLog {
 public:
  CleanLog(std::string& out, const Notebook& notebook, const reduction::Options& options)
      : out_(out), notebook_(notebook), options_(options), start_(out.size()) {}

  void append() {
    BlockReader blocks(notebook_);
    Block block;
    while (blocks.next(block))
      append_block(block);
  }

 private:
  void append_block(const Block& block) {
    faulty_lines_.clear();
    for (const Diagnostic& diagnostic : block.diagnostics) {
      if (diagnostic.severity == Severity::error) faulty_lines_.push_back(diagnostic.place.line);
    }
    // A text that was not read must never be written as if it had been.
    for (const Entry& entry : block.entries) {
      const auto* reading = std::get_if<Reading>(&entry.what);
      if (reading && reading->rejected) faulty_lines_.push_back(entry.line);
    }
    std::ranges::sort(faulty_lines_);
    const std::span<const Entry> entries = block.entries;
    const std::uint32_t last = std::min(block.last_line, notebook_.source.line_count());
    std::size_t from = 0;
    for (std::uint32_t line = block.first_line; line <= last; ++line) {
      std::size_t to = from;
      while (to < entries.size() && entries[to].line == line)
        ++to;
      if (to == from) {
        blank_ = true;
      } else {
        append_line(line, entries.subspan(from, to - from));
      }
      from = to;
    }
  }

  void append_line(std::uint32_t line, std::span<const Entry> entries) {
    const Entry& first = entries.front();
    if (!is<Bare>(first) && !options_written_) {
      options_written_ = true;
      append_options();
    }
    if (is<StationHeading>(first)) {
      blank_ = true;
      in_station_ = true;
    }
    begin_line();
    const std::size_t start = out_.size();
    const bool verbatim =
        is<Bare>(first) || is<Unread>(first) || std::ranges::binary_search(faulty_lines_, line);
    if (!verbatim) append_anew(entries);
    // A line that would be too long to be read again stays as typed.
    if (verbatim || out_.size() - start > longest_line) {
      out_.resize(start);
      const std::string_view typed = notebook_.source.text(notebook_.source.line(line));
      // At a log's head a byte order mark would be taken off, and what stands behind it be read.
      if (start == start_ && typed.starts_with(byte_order_mark)) out_.push_back('\n');
      out_ += typed;
    }
    out_.push_back('\n');
  }

  void append_anew(std::span<const Entry> entries) {
    const Entry& first = entries.front();
    if (in_station_ && is_indented(first)) out_ += "  ";
    append_statement(out_, notebook_, entries);
    // Behind a space its # would begin a comment.
    const bool is_hash = notebook_.source.text(first.remark).starts_with('#');
    append_beside(is_hash ? ";" : "; ", first.remark);
    append_beside("", first.comment);
  }

  /// Settings that only the command line stated, so that the log means the same without it.
  void append_options() {
    if (options_.set && !stated_first<SetSetting>(notebook_)) {
      begin_line();
      append_set_statement(out_, *options_.set);
      out_.push_back('\n');
    }
    if (options_.declination && !stated_first<DeclinationSetting>(notebook_)) {
      begin_line();
      append_declination_statement(out_, *options_.declination);
      out_.push_back('\n');
    }
    if (options_.rule && !stated_first<RuleSetting>(notebook_)) {
      begin_line();
      append_rule_statement(out_, *options_.rule);
      out_.push_back('\n');
    }
  }

  /// Runs of blank lines become one; none stands at the log's head or end.
  void begin_line() {
    if (blank_ && out_.size() > start_) out_.push_back('\n');
    blank_ = false;
  }

  void append_beside(std::string_view mark, Span text) {
    if (text.empty()) return;
    out_ += "  ";
    out_ += mark;
    out_ += notebook_.source.text(text);
  }

  std::string& out_;
  const Notebook& notebook_;
  const reduction::Options& options_;
  std::size_t start_;
  std::vector<std::uint32_t> faulty_lines_;
  bool blank_ = false;
  bool in_station_ = false;
  bool options_written_ = false;
};

}  // namespace

void append_clean_log(std::string& out, const Notebook& notebook,
                      const reduction::Options& options) {
  const std::size_t start = out.size();
  CleanLog(out, notebook, options).append();
  // Nothing in it could be read, or there is nothing in it.
  if (out.size() == start) out += notebook.source.text();
}

}  // namespace lodebook::output
