// SPDX-License-Identifier: MIT
// Keeps the settings in force while a log's entries go by.
#pragma once

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::reduction {

/// Changes `settings` where `entry` is a setting; true if it was one.
bool apply(Settings& settings, const notebook::Entry& entry, const notebook::Source& source);

/// The warning that `entry` says something else than the option that stands in for it, if so.
std::optional<notebook::Diagnostic> overridden_option(const notebook::Entry& entry,
                                                      const Options& options);

}  // namespace lodebook::reduction
