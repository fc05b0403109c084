// SPDX-License-Identifier: MIT
// `lodebook summary`: what the planes and lines of whole logs add up to.
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/gather.hpp>
#include <utility>

namespace lodebook::cli {

Outcome summary(const CommandLine& line) {
  const SummaryFormat format = line.summary_format.value_or(SummaryFormat::text);
  return show_groups(Command::summary, line, [&](const output::SummaryDocument& document) {
    std::string text;
    switch (format) {
      case SummaryFormat::text:
        output::append_summary_text(
            text, document, !line.output && is_colored(line, OutputFile::standard_output()));
        break;
      case SummaryFormat::json:
        output::append_summary_json(text, document);
        break;
      case SummaryFormat::csv:
        output::append_summary_csv(text, document);
        break;
    }
    return text;
  });
}

}  // namespace lodebook::cli
