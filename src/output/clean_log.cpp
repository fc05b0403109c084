// SPDX-License-Identifier: MIT
// Lines of the clean log: which are written anew, which verbatim, and what stands between them.
#include <algorithm>
#include <lodebook/notebook/longest_line.hpp>
#include <lodebook/output/clean_log.hpp>
#include <span>
#include <utility>

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
    std::span<const Entry> entries = block.entries;
    if (!block.is_station) {
      const auto own = std::ranges::find_if(entries, [](const Entry& one) { return one.line > 0; });
      headings_ = entries.first(static_cast<std::size_t>(own - entries.begin()));
      entries = entries.subspan(headings_.size());
      for (std::uint32_t i = 1; i <= notebook_.source.heading_count(); ++i) {
        if (!notebook_.source.is_heading_named(i)) append_heading(block, i);
      }
    }
    block_ = &block;
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

  /// The lines of a heading, in place of what names it.
  void append_heading(const Block& block, std::uint32_t number) {
    const Source& source = notebook_.source;
    for (const Entry& entry : headings_) {
      const Place place = source.place(0, place_of(entry));
      if (place.heading != number) continue;
      bool faulty = false;
      bool barred = false;
      for (const Diagnostic& fault : block.diagnostics) {
        if (fault.severity != Severity::error || !on_one_line(fault.place, place)) continue;
        faulty = true;
        barred = barred || fault.code == Code::heading;
      }
      // What may stand in no heading would mean something in a log.
      if (barred) {
        begin_line();
        out_ += "# ";
      }
      append_line(source.text(source.line_of(place)), std::span(&entry, 1), faulty);
    }
  }
  static Span place_of(const Entry& entry) {
    return !entry.statement.empty() || entry.comment.empty() ? entry.statement : entry.comment;
  }

  void append_line(std::uint32_t line, std::span<const Entry> entries) {
    if (const auto* use = std::get_if<HeadingUse>(&entries.front().what))
      return append_heading(*block_, use->heading);
    append_line(notebook_.source.text(notebook_.source.line(line)), entries,
                std::ranges::binary_search(faulty_lines_, line));
  }

  void append_line(std::string_view typed, std::span<const Entry> entries, bool faulty) {
    const Entry& first = entries.front();
    const bool begins = !is<Bare>(first) && !std::exchange(begun_, true);
    if (begins || is<StationHeading>(first) || is<Reading>(first)) append_options();
    if (is<StationHeading>(first)) {
      blank_ = true;
      in_station_ = true;
    }
    pass(first);
    begin_line();
    const std::size_t start = out_.size();
    const bool verbatim = is<Bare>(first) || is<Unread>(first) || faulty;
    if (!verbatim) append_anew(entries);
    // A line that would be too long to be read again stays as typed.
    if (verbatim || out_.size() - start > longest_line) {
      out_.resize(start);
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

  /// Settings that only the command line states here, so that the log means the same without it.
  void append_options() {
    const auto append = [this](bool& counts, const auto& stated, auto append_statement) {
      if (!std::exchange(counts, false) || !stated) return;
      begin_line();
      append_statement(out_, *stated);
      out_.push_back('\n');
    };
    append(set_counts_, options_.set, append_set_statement);
    append(declination_counts_, options_.declination, append_declination_statement);
    append(rule_counts_, options_.rule, append_rule_statement);
  }

  /// An option counts until the log says the same, and again behind a void statement.
  void pass(const Entry& entry) {
    const auto* unread = std::get_if<Unread>(&entry.what);
    const VoidSetting lost = unread ? unread->setting : VoidSetting::none;
    if (is<SetSetting>(entry) || lost == VoidSetting::set) set_counts_ = unread;
    if (is<DeclinationSetting>(entry) || lost == VoidSetting::declination)
      declination_counts_ = unread;
    if (is<RuleSetting>(entry) || lost == VoidSetting::rule) rule_counts_ = unread;
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
  const Block* block_ = nullptr;
  std::span<const Entry> headings_;  ///< the entries of all heading files
  bool blank_ = false;
  bool in_station_ = false;
  bool begun_ = false;
  // An option counts for the next reading, and no statement of the clean log says so yet.
  bool set_counts_ = !stated_first<notebook::SetSetting>(notebook_);
  bool declination_counts_ = !stated_first<notebook::DeclinationSetting>(notebook_);
  bool rule_counts_ = !stated_first<notebook::RuleSetting>(notebook_);
};

}  // namespace

void append_clean_log(std::string& out, const Notebook& notebook,
                      const reduction::Options& options) {
  const std::size_t start = out.size();
  CleanLog(out, notebook, options).append();
  // Nothing in it could be read, or there is nothing in it.
  if (out.size() == start) out += notebook.source.own_text();
}

}  // namespace lodebook::output
