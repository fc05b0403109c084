// SPDX-License-Identifier: MIT
// The files of headings: one that the command line names, which may be any, and those that a log
// names, which lie in its folder.
#pragma once

#include <string_view>

#include <lodebook/cli/command_line.hpp>

namespace lodebook::cli {

/// A heading is not larger, bytes.
inline constexpr std::size_t largest_heading = std::size_t{1} << 20;

/// Reads the heading that the command line names, if it names one. Says why that cannot be read.
bool take_heading(CommandLine& line);

/// Why no file of that name may be opened for the log in the file `log`; empty where one may.
std::string_view heading_refusal(std::string_view log, std::string_view named);

/// Opens the heading `named` by the log in the file `log`. Never one outside the log's folder, and
/// nothing but a regular file, also behind links.
notebook::HeadingFile open_heading(const std::string& log, std::string_view named,
                                   notebook::Encoding encoding);

}  // namespace lodebook::cli
