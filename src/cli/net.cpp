// SPDX-License-Identifier: MIT
// `lodebook net`: planes and lines on an equal-area net.
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/gather.hpp>
#include <lodebook/drawing/net.hpp>
#include <lodebook/drawing/svg.hpp>

namespace lodebook::cli {

Outcome net(const CommandLine& line) {
  return show_groups(Command::net, line, [&](const output::SummaryDocument& document) {
    if (!line.quiet) {
      if (!drawing::shows_on_net(document)) tell(nothing_on_net());
      if (line.contours)
        tell(few_to_contour(drawing::groups_too_small_to_contour(document),
                            drawing::fewest_to_contour));
    }
    std::string text;
    drawing::append_svg_file(
        text, drawing::net_picture(document, {line.poles, line.circles, line.contours}));
    return text;
  });
}

}  // namespace lodebook::cli
