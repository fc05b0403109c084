// SPDX-License-Identifier: MIT
// `lodebook help`: on the program, a command, or the log language.
#include <lodebook/cli/commands.hpp>

namespace lodebook::cli {

Outcome help(const CommandLine& line) {
  if (line.words.size() > 1) return refused(words_too_many(Command::help, line.words[1]));
  if (!line.words.empty() && line.words.front() == "log")
    return print(line.blank ? blank_log() : log_card());
  if (line.blank) return refused(blank_without_log());
  if (line.words.empty()) return print(help_of(std::nullopt));
  const CommandSpec* const command = command_named(line.words.front());
  if (command == nullptr) return refused(topic_unknown(line.words.front()));
  return print(help_of(command->command));
}

}  // namespace lodebook::cli
