// SPDX-License-Identifier: MIT
// `lodebook rose`: roses of strikes and trends.
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/gather.hpp>
#include <lodebook/drawing/rose.hpp>
#include <lodebook/drawing/svg.hpp>

namespace lodebook::cli {

Outcome rose(const CommandLine& line) {
  return show_groups(Command::rose, line, [&](const output::SummaryDocument& document) {
    if (!line.quiet && !drawing::shows_on_rose(document)) tell(nothing_on_rose());
    std::string text;
    drawing::append_svg_file(text, drawing::rose_picture(document, line.bin_degrees));
    return text;
  });
}

}  // namespace lodebook::cli
