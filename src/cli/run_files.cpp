// SPDX-License-Identifier: MIT
#include <lodebook/cli/run_files.hpp>

#include <unistd.h>

#include <algorithm>
#include <utility>

namespace lodebook::cli {

RunFiles::RunFiles(const CommandLine& line, bool writes_to_standard_output,
                   std::span<const std::string> beside)
    : heading_(line.heading) {
  const std::string standard_output = "standard output";
  std::size_t on_standard_output = writes_to_standard_output ? 1 : 0;
  if (writes_to_standard_output) add(identity_of(STDOUT_FILENO), standard_output);
  for (const std::optional<std::string>* named : {&line.output, &line.report, &line.rays}) {
    const std::optional<std::string>& name = *named;
    if (!name) continue;
    if (*name != standard_stream) {
      add(identity_of(*name), *name);
    } else if (++on_standard_output > 1) {
      if (!twice_) twice_ = standard_output;
    } else {
      add(identity_of(STDOUT_FILENO), standard_output);
    }
  }
  for (const std::string& name : beside)
    add(identity_of(name), name);
}

void RunFiles::add(std::optional<FileIdentity> identity, std::string name) {
  if (!identity) return;
  const bool is_twice = std::ranges::find(outputs_, *identity, &Known::identity) != outputs_.end();
  if (is_twice && !twice_) twice_ = name;
  outputs_.push_back({std::move(*identity), std::move(name)});
}

std::optional<UsageError> RunFiles::refuse(std::span<const std::string> inputs) const {
  if (std::ranges::count(inputs, standard_stream) > 1) return stdin_twice();
  if (twice_) return outputs_are_one(*twice_);
  for (const std::string& input : inputs) {
    if (auto error = refuse_input(input)) return error;
  }
  return heading_ ? refuse_input(*heading_) : std::nullopt;
}

std::optional<UsageError> RunFiles::refuse_input(const std::string& input) const {
  const auto identity = input == standard_stream ? identity_of(STDIN_FILENO) : identity_of(input);
  if (!identity) return std::nullopt;
  if (identity == identity_of(STDERR_FILENO)) return UsageError{};  // it would go into the input
  const auto same = std::ranges::find(outputs_, *identity, &Known::identity);
  if (same == outputs_.end()) return std::nullopt;
  return file_is_both(typed_name(input), same->name);
}

}  // namespace lodebook::cli
