// SPDX-License-Identifier: MIT
#include "copied_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "verify.hpp"

namespace lodebook::fair_copy {

namespace {

constexpr std::string_view mark_of_copies = "# page ";

std::string counted(std::uint32_t count, std::string_view what) {
  return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

std::string_view indent(const Copied& copied, const Line& line) {
  std::string_view said = line.text;
  if (line.is_question()) said.remove_prefix(4);
  return copied.in_station && !said.starts_with("station ") ? "  " : "";
}

bool has_readings(const Copied& copied) {
  return std::ranges::any_of(copied.lines, [](const Line& line) { return line.readings > 0; });
}

bool waits(const Line& line) {
  return line.waits != Statement::Wait::none;
}

/// The strict reader takes the line as it is meant.
bool is_right(const Line& line, const StrictLine& read) {
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

}  // namespace

bool is_copy(const notebook::Source& page) {
  for (std::uint32_t number = 1; number <= page.line_count(); ++number) {
    std::string_view line = page.text(page.line(number));
    line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
    if (!line.starts_with(mark_of_copies)) continue;
    line.remove_prefix(mark_of_copies.size());
    const std::size_t digits = line.find_first_not_of("0123456789");
    if (digits > 0 && digits != std::string_view::npos && line[digits] == ':') return true;
  }
  return false;
}

void CopiedPage::add(Copied line) {
  if (!first_ && (line.in_station || has_readings(line))) first_ = lines_.size();
  lines_.push_back(std::move(line));
}

std::uint32_t CopiedPage::waiting(Statement::Wait what) const {
  std::uint32_t count = 0;
  for (const Copied& copied : lines_) {
    for (const Line& line : copied.lines) {
      if (line.waits == what) count += line.readings;
    }
  }
  return count;
}

std::uint32_t CopiedPage::waiting_for_kind(const std::string& kind) const {
  std::uint32_t count = 0;
  for (const Copied& copied : lines_) {
    for (const Line& line : copied.lines) {
      if (waits(line) && line.text.starts_with(kind + " ")) count += line.readings;
    }
  }
  return count;
}

bool CopiedPage::is_asked(std::string_view setting) const {
  return std::ranges::any_of(lines_, [&](const Copied& copied) {
    return std::ranges::any_of(copied.lines, [&](const Line& line) {
      return line.is_question() && std::string_view(line.text).substr(4).starts_with(setting);
    });
  });
}

void CopiedPage::ask_about_heading(const Page& page) {
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
  for (const std::string& kind : page.wanted_kinds) {
    if (const auto count = waiting_for_kind(kind); count > 0)
      ask(fmt::format("kind {} {}  ; {} need{} it", kind, word_of(type_of(page, kind)),
                      counted(count, "reading"), count == 1 ? "s" : ""));
  }
  const bool any = std::ranges::any_of(lines_, has_readings);
  if (any && !page.has_set && !is_asked("set ")) ask("set 0  ; what was turned into the dial?");
  if (any && !page.has_declination && !is_asked("declination "))
    ask(page.has_set ? "declination as-set  ; or what was it?"
                     : "declination model  ; or what was it?");
  if (questions.lines.empty()) return;
  const std::size_t place = first_.value_or(lines_.size());
  lines_.insert(lines_.begin() + static_cast<std::ptrdiff_t>(place), std::move(questions));
}

std::string CopiedPage::text() const {
  std::string text;
  for (const Copied& copied : lines_) {
    if (copied.as_typed) {
      text += copied.typed;
      text += '\n';
      continue;
    }
    text += fmt::format("{}{}: {}\n", mark_of_copies, copied.number,
                        copied.number == 0 ? "the heading" : copied.typed);
    for (const Line& line : copied.lines)
      text += fmt::format("{}{}\n", indent(copied, line), line.text);
  }
  return text;
}

void CopiedPage::hold_to_strict(const notebook::Notebook& page) {
  // A statement that becomes a question may take from another what it stood on.
  constexpr int passes = 2;
  for (int pass = 0; pass < passes && asks_what_fails(page); ++pass) {
  }
}

bool CopiedPage::asks_what_fails(const notebook::Notebook& page) {
  notebook::Source copy("copy", text());
  copy.take_headings(page.source);
  const std::vector<StrictLine> strict =
      strictly_read(notebook::read_log(std::move(copy), page.options));
  bool fails = false;
  std::size_t number = 1;
  for (Copied& copied : lines_) {
    ++number;  // as typed, or the comment
    if (copied.as_typed) continue;
    for (Line& line : copied.lines) {
      const StrictLine& read = strict[number++];
      if (line.is_question() || waits(line) || is_right(line, read)) continue;
      const bool has_remark = line.text.find("  ; ") != std::string::npos;
      line.text = "ask " + line.text;
      if (!read.fault.empty() && !has_remark) line.text += "  ; " + read.fault;
      fails = true;
    }
  }
  return fails;
}

Tally CopiedPage::tally() const {
  Tally tally;
  for (const Copied& copied : lines_) {
    (copied.waits ? tally.asked : tally.taken) += copied.typed_readings;
    if (copied.waits && copied.typed_readings == 0) ++tally.other_questions;
    for (const Line& line : copied.lines) {
      if (line.readings > 0) {
        (line.is_question() || waits(line) ? tally.asked : tally.taken) += line.readings;
      } else if (line.is_question()) {
        ++(copied.number > 0 ? tally.other_questions : tally.questions);
      }
      if (line.is_note) ++tally.notes;
    }
  }
  return tally;
}

}  // namespace lodebook::fair_copy
