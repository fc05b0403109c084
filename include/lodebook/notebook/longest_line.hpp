// SPDX-License-Identifier: MIT
// How long a line of a log may be.
#pragma once

#include <cstddef>

namespace lodebook::notebook {

/// Bytes without the line's end; a longer line is not read (`line-length`).
inline constexpr std::size_t longest_line = 64 * 1024;

}  // namespace lodebook::notebook
