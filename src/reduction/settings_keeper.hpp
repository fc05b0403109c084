// SPDX-License-Identifier: MIT
// Keeps the settings in force while the entries of a log pass.
#pragma once

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::reduction {

/// Changes `settings` where `entry` is a setting; true if it was one.
bool apply(Settings& settings, const notebook::Entry& entry, const notebook::Source& source);

/// The warning that `entry` differs from the option that stands in for it, if it does.
std::optional<notebook::Diagnostic> overridden_option(const notebook::Entry& entry,
                                                      const Options& options);

}  // namespace lodebook::reduction
