// SPDX-License-Identifier: MIT
// A log written again in canonical notation, uncorrected, with nothing lost.
#pragma once

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::output {

/// The whole log: canonical statements, comments, and verbatim every line that has an error.
/// `options` that stood in for what the log does not say become settings at its head.
void append_clean_log(std::string& out, const notebook::Notebook& notebook,
                      const reduction::Options& options);

}  // namespace lodebook::output
