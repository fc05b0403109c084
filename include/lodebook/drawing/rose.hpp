// SPDX-License-Identifier: MIT
// Roses: how often each strike or trend was read.
#pragma once

#include <lodebook/drawing/picture.hpp>
#include <lodebook/output/summary.hpp>

namespace lodebook::drawing {

/// A rose for each group: of strikes, which are axes, in both halves; of trends, which are arrows.
/// Bins are `bin_degrees` wide, a divisor of 180, the first from north on; a petal's area goes by
/// its count. Every reading is a tick on the rim. The mean is drawn, with the arc that holds it
/// with 95 % confidence, where it means something.
Picture rose_picture(const output::SummaryDocument& document, int bin_degrees);

/// Whether there is a strike or trend to draw, so that a rose shows more than its rim.
bool shows_on_rose(const output::SummaryDocument& document);

}  // namespace lodebook::drawing
