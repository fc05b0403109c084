// SPDX-License-Identifier: MIT
// The words of pictures of groups: legends, titles, footers.
#pragma once

#include <lodebook/output/summary.hpp>

namespace lodebook::drawing {

/// Whether a group has a girdle to draw, with its pole and cone; and where it is no girdle, a mean.
bool has_girdle_to_draw(const reduction::Summary& summary);
bool has_mean_to_draw(const reduction::Summary& summary);

/// A reading: `H1, bedding: N89E 30N as typed, N66.1W 30.0NE from true north`.
std::string words_of(const output::SummaryDocument& document, const reduction::Attitude& attitude);

/// Counts of a group, and its mean or girdle.
std::string figures_of(const output::SummaryDocument& document, const reduction::Summary& summary);

/// A group beside its symbol: its kind and figures.
std::string legend_of(const output::SummaryDocument& document, const reduction::Summary& summary);

/// What one drawing of several is of, by one of its groups: unit and station, before them
/// the kind where the drawing is of one kind, behind them the north where there are several. Empty
/// where there is nothing to tell apart.
std::string panel_title(const output::SummaryDocument& document, const reduction::Group& group,
                        bool with_kind, bool with_north);
/// Whether groups refer to different norths.
bool has_norths(const output::SummaryDocument& document);

/// `Net of day1.txt`, `Net of 3 logs`.
std::string title_of_picture(std::string_view what, const output::SummaryDocument& document);

/// The figures that a picture shows of a group.
using FiguresOf = std::string (*)(const output::SummaryDocument& document,
                                  const reduction::Summary& summary);
/// What all groups add up to, for those who do not see the picture.
std::string describe(const output::SummaryDocument& document, FiguresOf figures);

/// The north that is used, the declination of each log, and what was left out.
void append_frame_words(std::vector<std::string>& lines, const output::SummaryDocument& document);

}  // namespace lodebook::drawing
