// SPDX-License-Identifier: MIT
// The one loop over logs, used by every command that reads some.
#include <lodebook/cli/batch.hpp>

#include <sched.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <lodebook/cli/ahead.hpp>
#include <lodebook/cli/heading.hpp>
#include <lodebook/cli/progress.hpp>
#include <lodebook/cli/proposals.hpp>
#include <lodebook/cli/stage.hpp>
#include <lodebook/output/table.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

using notebook::Source;

std::error_code read_log_text(const std::string& name, Encoding encoding, std::string& text) {
  if (const std::error_code error = read_file(name, Source::max_size, text)) return error;
  if (encoding == Encoding::windows_1252) text = notebook::utf8_from_windows_1252(text);
  if (text.size() > Source::max_size) return std::make_error_code(std::errc::file_too_large);
  return {};
}

/// As many as this process may use of the machine's processors.
std::size_t usual_jobs() {
  cpu_set_t processors;
  CPU_ZERO(&processors);
  if (::sched_getaffinity(0, sizeof processors, &processors) != 0) return 1;
  return std::clamp<std::size_t>(static_cast<std::size_t>(CPU_COUNT(&processors)), 1, most_jobs);
}

bool is_dumb_terminal() {
  const char* const terminal = std::getenv("TERM");
  return terminal != nullptr && std::string_view(terminal) == "dumb";
}

/// Somebody waits at a terminal, on which nothing else appears meanwhile.
bool is_waited_for(const CommandLine& line, std::span<const Document> documents) {
  const auto on_terminal = [](const Document& document) { return document.file().is_terminal(); };
  const bool is_typed = ::isatty(STDIN_FILENO) == 1 &&
                        std::ranges::find(line.words, standard_stream) != line.words.end();
  return !line.quiet && !is_typed && !is_dumb_terminal() &&
         OutputFile::standard_error().is_terminal() && std::ranges::none_of(documents, on_terminal);
}

/// Bytes of text that a log may have made ahead of its turn before it waits for that.
constexpr std::size_t most_held = std::size_t{64} << 20;
/// And once it has come: little enough to be still in the processor's cache, enough for any
/// document to take some.
constexpr std::size_t most_in_turn = std::size_t{1} << 20;

/// A log that has been read, or why it cannot be or may not be.
struct ReadLog {
  std::unique_ptr<LogPart> part;
  std::error_code error = {};
  std::optional<UsageError> refusal = {};
  /// The headings that it names.
  std::vector<std::string> headings = {};
};

/// Reads the log `name` and makes its part, unless the run writes to a heading of it.
void make_part(const CommandLine& line, const RunFiles& files, const std::string& name,
               ReadLog& read, const GoOn& go_on) {
  std::string text;
  read.error = read_log_text(name, line.encoding, text);
  if (read.error) return;
  notebook::ReadOptions options;
  options.rule = line.rule;
  options.headings = line.headings;
  options.open_heading = [&](std::string_view named) {
    notebook::HeadingFile file = open_heading(name, named, line.encoding);
    if (!heading_refusal(name, named).empty()) return file;
    if (!read.refusal) read.refusal = files.refuse_input(file.name);
    read.headings.push_back(file.name);
    return file;
  };
  const auto notebook =
      notebook::read_log(Source(typed_name(name), std::move(text), line.encoding), options);
  if (!read.refusal) read.part->make(notebook, go_on);
}

void run_batch(const CommandLine& line, RunFiles& files, std::size_t jobs,
               std::span<const Document> documents, const BlankPart& blank, Outcome& outcome) {
  Progress progress(line.words.size(), is_waited_for(line, documents));
  const auto make_ahead = [&](std::size_t log,
                              Ahead<ReadLog>::Turn& turn) -> std::optional<ReadLog> {
    const std::string& name = line.words[log];
    if (!is_regular_file(name)) return std::nullopt;
    ReadLog read{.part = blank()};
    LogPart& part = *read.part;
    std::size_t may_hold = most_held;
    make_part(line, files, name, read, [&] {
      if (part.held() < may_hold) return turn.is_wanted();
      bool goes_on = false;
      may_hold = most_in_turn;
      return turn.ask([&] { goes_on = part.follow(); }) && goes_on;
    });
    return read;
  };
  Ahead<ReadLog> ahead(line.words.size(), jobs, make_ahead);
  for (const std::string& name : line.words) {
    progress.next_log();
    std::optional<ReadLog> read = ahead.next();
    if (!read) {
      read = ReadLog{.part = blank()};
      make_part(line, files, name, *read, [&] { return read->part->follow(); });
    }
    files.headings.insert(files.headings.end(), read->headings.begin(), read->headings.end());
    if (read->refusal) {
      progress.tell(read->refusal->text);
      outcome.usage = true;
      return;
    }
    if (read->error) {
      progress.tell(cannot_read(typed_name(name), read->error));
      outcome.io = true;
      continue;
    }
    const bool goes_on = read->part->take();
    progress.tell(read->part->message);
    outcome.errors = outcome.errors || read->part->is_faulty;
    if (!goes_on) return;
  }
}

/// A log whose part is nothing but what `make` does to the outputs.
class PartInTurn final : public LogPart {
 public:
  explicit PartInTurn(const MakeInTurn& make) : make_(make) {}
  void make(const notebook::Notebook& notebook, const GoOn&) override { make_(notebook, *this); }

 private:
  const MakeInTurn& make_;
};

/// A log's rows or report, for each document.
class ReducedLog final : public LogPart {
 public:
  ReducedLog(const CommandLine& line, const reduction::Options& options,
             std::span<Document> documents, bool read_ahead, FaultsTold told)
      : line_(line),
        options_(options),
        documents_(documents),
        read_ahead_(read_ahead),
        told_(told),
        texts_(blank_logs(documents)) {}

  void make(const notebook::Notebook& notebook, const GoOn& go_on) override {
    if (read_ahead_ && notebook.source.text().size() >= worth_a_thread)
      return make_read_ahead(notebook, go_on);
    reduction::Reduction reduction(notebook, options_);
    reduce(reduction, go_on);
  }
  bool follow() override {
    for (std::size_t i = 0; i < texts_.size(); ++i)
      documents_[i].follow(texts_[i]);
    return is_wanted();
  }
  std::size_t held() const override {
    std::size_t bytes = 0;
    for (std::size_t i = 0; i < texts_.size(); ++i)
      bytes += documents_[i].held(texts_[i]);
    return bytes;
  }
  bool take() override {
    for (std::size_t i = 0; i < texts_.size(); ++i)
      documents_[i].append(texts_[i]);
    return is_wanted();
  }

 private:
  /// Bytes of a log from which on a thread is worth its start.
  static constexpr std::size_t worth_a_thread = 1 << 20;

  struct ReadAhead {
    notebook::Block block;
    std::optional<reduction::KnownField> field;
  };

  /// The same, its blocks being read on a thread of their own, which works out the field at each
  /// too: either thread then has about as much to do. Pages are not handed on between
  /// threads: they are several times as large, and to move them takes longer than to reduce them.
  void make_read_ahead(const notebook::Notebook& notebook, const GoOn& go_on) {
    notebook::BlockReader reader(notebook);
    reduction::FieldAhead fields(notebook);
    Stage<ReadAhead> blocks([&](ReadAhead& read) {
      if (!reader.next(read.block)) return false;
      read.field = fields.of(read.block);
      return true;
    });
    reduction::Reduction reduction(
        notebook, options_,
        [&](notebook::Block& block, std::optional<reduction::KnownField>& field) {
          ReadAhead* const read = blocks.next();
          if (!read) return false;
          std::swap(block, read->block);
          field = read->field;
          return true;
        });
    reduce(reduction, go_on);
  }

  void reduce(reduction::Reduction& reduction, const GoOn& go_on) {
    for (LogText& text : texts_)
      text.begin_log(reduction);
    Proposals proposals(reduction.notebook());
    reduction::Page page;
    while (reduction.next(page)) {
      proposals.attach(page.diagnostics);
      for (LogText& text : texts_)
        text.page(reduction.notebook().source, page);
      if (!go_on()) return;
    }
    for (LogText& text : texts_)
      text.end_log(reduction);
    if (told_ == FaultsTold::counted) return note_faults(*this, line_, reduction);
    is_faulty = cli::is_faulty(line_, reduction.counts());
  }
  bool is_wanted() const { return documents_.empty() || !documents_.front().file().reader_gone(); }

  const CommandLine& line_;
  const reduction::Options& options_;
  std::span<Document> documents_;
  bool read_ahead_;
  FaultsTold told_;
  std::vector<LogText> texts_;
};

}  // namespace

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

void run_logs(const CommandLine& line, RunFiles& files, std::span<const Document> documents,
              const BlankPart& blank, Outcome& outcome) {
  run_batch(line, files, line.jobs.value_or(usual_jobs()), documents, blank, outcome);
}

void run_logs_in_turn(const CommandLine& line, RunFiles& files, const MakeInTurn& make,
                      Outcome& outcome) {
  run_batch(
      line, files, 1, {}, [&] { return std::make_unique<PartInTurn>(make); }, outcome);
}

bool is_faulty(const CommandLine& line, const reduction::Counts& counts) {
  return counts.errors > 0 || (line.strict && counts.warnings > 0);
}

void note_faults(LogPart& part, const CommandLine& line, const reduction::Reduction& reduction) {
  const reduction::Counts& counts = reduction.counts();
  part.is_faulty = is_faulty(line, counts);
  if (line.quiet) return;
  part.message = faults_counted(output::shown_name(reduction.notebook().source), counts.errors,
                                counts.warnings);
}

void reduce_logs(const CommandLine& line, RunFiles& files, std::span<Document> documents,
                 Outcome& outcome, FaultsTold told) {
  const reduction::Options options = options_of(line);
  // One log has all the processors to itself.
  const bool read_ahead = line.words.size() == 1 && line.jobs.value_or(usual_jobs()) > 1;
  run_logs(
      line, files, documents,
      [&] { return std::make_unique<ReducedLog>(line, options, documents, read_ahead, told); },
      outcome);
}

bool takes_sequences(const OutputFile& file) {
  return !is_dumb_terminal() && file.is_terminal();
}

bool is_colored(const CommandLine& line, const OutputFile& file) {
  if (line.color != Color::automatic) return line.color == Color::always;
  const char* const no_color = std::getenv("NO_COLOR");
  if (no_color != nullptr && *no_color != '\0') return false;
  return takes_sequences(file);
}

}  // namespace lodebook::cli
