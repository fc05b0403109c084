// SPDX-License-Identifier: MIT
// Which command runs, and how it ends.
#include <lodebook/cli/heading.hpp>
#include <lodebook/cli/program.hpp>

#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <exception>
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/temporary.hpp>
#include <new>
#include <string>
#include <variant>
#include <vector>

namespace lodebook::cli {
namespace {

Outcome run_command(const CommandLine& line) {
  switch (*line.command) {
    case Command::reduce:
      return reduce(line);
    case Command::check:
      return check(line);
    case Command::convert:
      return convert(line);
    case Command::declination:
      return declination(line);
    case Command::fix:
      return fix(line);
    case Command::fair_copy:
      return fair_copy(line);
    case Command::summary:
      return summary(line);
    case Command::net:
      return net(line);
    case Command::rose:
      return rose(line);
    case Command::map:
      return map(line);
    case Command::sheet:
      return sheet(line);
    case Command::register_items:
      return register_items(line);
    case Command::explain:
      return explain(line);
    case Command::help:
      break;
  }
  return help(line);
}

Outcome run_line(std::span<const std::string> arguments) {
  auto read = read_command_line(arguments);
  if (const auto* const error = std::get_if<UsageError>(&read)) return refused(*error);
  auto& line = std::get<CommandLine>(read);
  if (line.help) return print(help_of(line.command));
  if (line.version) return print(version_text());
  if (!line.command) {
    tell(help_of(std::nullopt));
    return {.usage = true};
  }
  if (!line.quiet) tell(line.warnings);
  if (!take_heading(line)) return {.io = true};
  Outcome outcome = run_command(line);
  if (line.strict && line.warning_count > 0) outcome.errors = true;
  return outcome;
}

/// Memory may end where nothing may fail: nlohmann::json 3.11 takes some to undo a value.
[[noreturn]] void end_for_good() {
  try {
    if (const std::exception_ptr failure = std::current_exception())
      std::rethrow_exception(failure);
  } catch (const std::bad_alloc&) {
    remove_temporaries();
    tell(out_of_memory());
    ::_exit(Outcome{.io = true}.status());
  } catch (...) {
    // Our own fault.
  }
  std::abort();
}

}  // namespace

Outcome refused(const UsageError& error) {
  tell(error.text);
  return {.usage = true};
}

Outcome print(std::string_view text) {
  Outcome outcome;
  OutputFile screen = OutputFile::standard_output();
  screen.write(text);
  finished(screen, outcome);
  return outcome;
}

int run(std::span<const char* const> arguments) {
  guard_standard_streams();
  handle_signals();
  std::set_terminate(end_for_good);
  // A closed pipe is noticed where we write, so that temporary files are removed; only then does
  // the signal end the program, as its parent expects.
  const auto before = std::signal(SIGPIPE, SIG_IGN);
  Outcome outcome;
  try {
    outcome = run_line(std::vector<std::string>(arguments.begin(), arguments.end()));
  } catch (const std::bad_alloc&) {
    tell(out_of_memory());
    outcome.io = true;
  }
  if (outcome.reader_gone && before != SIG_IGN) {
    std::signal(SIGPIPE, SIG_DFL);
    std::raise(SIGPIPE);
  }
  if (outcome.reader_gone) outcome.io = true;
  return outcome.status();
}

}  // namespace lodebook::cli
