// SPDX-License-Identifier: MIT
// The one loop over logs, behind every command that reads some.
#include <lodebook/cli/batch.hpp>

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace lodebook::cli {
namespace {

using notebook::Source;

struct Known {
  FileIdentity identity;
  std::string_view name;
};

std::error_code read_log_text(const std::string& name, Encoding encoding, std::string& text) {
  if (const std::error_code error = read_file(name, Source::max_size, text)) return error;
  if (encoding == Encoding::windows_1252) text = notebook::utf8_from_windows_1252(text);
  if (text.size() > Source::max_size) return std::make_error_code(std::errc::file_too_large);
  return {};
}

}  // namespace

std::optional<UsageError> refuse(const CommandLine& line, std::span<const std::string> inputs,
                                 bool writes_to_standard_output,
                                 std::span<const std::string> beside) {
  if (std::ranges::count(inputs, standard_stream) > 1) return stdin_twice();

  std::vector<Known> outputs;
  const auto add = [&](std::optional<FileIdentity> identity, std::string_view name) {
    if (!identity) return true;
    const bool twice = std::ranges::find(outputs, *identity, &Known::identity) != outputs.end();
    outputs.push_back({std::move(*identity), name});
    return !twice;
  };
  std::size_t on_standard_output = writes_to_standard_output ? 1 : 0;
  if (writes_to_standard_output) add(identity_of(1), "standard output");
  for (const std::optional<std::string>* named : {&line.output, &line.report, &line.rays}) {
    const std::optional<std::string>& name = *named;
    if (!name) continue;
    if (*name == standard_stream) {
      if (++on_standard_output > 1) return outputs_are_one("standard output");
      add(identity_of(1), "standard output");
    } else if (!add(identity_of(*name), *name)) {
      return outputs_are_one(*name);
    }
  }
  for (const std::string& name : beside) {
    if (!add(identity_of(name), name)) return outputs_are_one(name);
  }
  for (const std::string& input : inputs) {
    const auto identity = input == standard_stream ? identity_of(0) : identity_of(input);
    if (!identity) continue;
    const auto same = std::ranges::find(outputs, *identity, &Known::identity);
    if (same != outputs.end()) return file_is_both(typed_name(input), same->name);
  }
  return std::nullopt;
}

reduction::Options options_of(const CommandLine& line) {
  reduction::Options options;
  options.north = line.north.value_or(reduction::North::geographic);
  options.repeats = line.repeats;
  options.grid_columns = line.grid;
  options.declination = line.declination;
  options.set = line.set;
  options.rule = line.rule;
  return options;
}

void read_logs(const CommandLine& line, Outcome& outcome,
               const std::function<bool(const notebook::Notebook&)>& take) {
  for (const std::string& word : line.words) {
    std::string text;
    if (const std::error_code error = read_log_text(word, line.encoding, text)) {
      tell(cannot_read(typed_name(word), error));
      outcome.io = true;
      continue;
    }
    if (!take(notebook::read_log(Source(typed_name(word), std::move(text)), {line.rule}))) return;
  }
}

void judge(const CommandLine& line, const reduction::Counts& counts, Outcome& outcome) {
  if (counts.errors > 0 || (line.strict && counts.warnings > 0)) outcome.errors = true;
}

void reduce_logs(const CommandLine& line, const reduction::Options& options,
                 const LogVisitor& visitor, Outcome& outcome) {
  reduction::Page page;
  read_logs(line, outcome, [&](const notebook::Notebook& notebook) {
    reduction::Reduction reduction(notebook, options);
    visitor.begin_log(reduction);
    while (reduction.next(page)) {
      if (!visitor.page(notebook.source, page)) return false;
    }
    visitor.end_log(reduction);
    judge(line, reduction.counts(), outcome);
    return true;
  });
}

void reduce_logs(const CommandLine& line, std::span<Document> documents, Outcome& outcome) {
  LogVisitor visitor;
  visitor.begin_log = [&](const reduction::Reduction& reduction) {
    for (Document& document : documents)
      document.begin_log(reduction);
  };
  visitor.page = [&](const Source& source, const reduction::Page& page) {
    for (Document& document : documents)
      document.page(source, page);
    return documents.empty() || !documents.front().file().reader_gone();
  };
  visitor.end_log = [&](const reduction::Reduction& reduction) {
    for (Document& document : documents)
      document.end_log(reduction);
  };
  reduce_logs(line, options_of(line), visitor, outcome);
}

bool is_colored(const CommandLine& line, const OutputFile& file) {
  if (line.color != Color::automatic) return line.color == Color::always;
  const char* const no_color = std::getenv("NO_COLOR");
  if (no_color != nullptr && *no_color != '\0') return false;
  const char* const terminal = std::getenv("TERM");
  if (terminal != nullptr && std::string_view(terminal) == "dumb") return false;
  return file.is_terminal();
}

}  // namespace lodebook::cli
