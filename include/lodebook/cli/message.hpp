// SPDX-License-Identifier: MIT
// What the program says about the command line and about files: all wording of the outer layer.
#pragma once

#include <string>
#include <string_view>
#include <system_error>
#include <vector>

#include <lodebook/cli/naming.hpp>
#include <lodebook/cli/option_table.hpp>

namespace lodebook::cli {

/// A command line that cannot be followed: the whole message, ready to be written.
struct UsageError {
  std::string text;
};

// ---- the command line
UsageError command_unknown(std::string_view word, bool is_file);
UsageError option_unknown(std::string_view option, Command command);
UsageError option_of_others(const OptionSpec& option, Command command);
UsageError value_missing(const OptionSpec& option);
UsageError value_unwanted(const OptionSpec& option);
UsageError value_unknown(const OptionSpec& option, std::string_view value);
UsageError option_twice(const OptionSpec& option);
UsageError order_twice(bool of_planes);
UsageError set_is_no_angle(std::string_view value);
UsageError attribute_key_impossible(std::string_view word);
UsageError attribute_is_column(std::string_view key);
UsageError grouping_unknown(std::string_view word);
/// No log has a plane or line of that kind; `known` are those that they have.
UsageError kind_unknown(std::string_view kind, const std::vector<std::string>& known);
UsageError elevation_outside_models(std::string_view value);
/// The number of logs at once is not one from 1 to `most`.
UsageError jobs_out_of_range(std::string_view value, std::size_t most);
UsageError command_missing();
UsageError logs_missing(Command command);
UsageError words_too_many(Command command, std::string_view word);
UsageError stdin_twice();
UsageError two_places_for_report();
/// `log` is standard input, or no regular file.
UsageError watch_of_no_file(std::string_view log);
UsageError watch_without_report();
UsageError clean_log_of_many();
UsageError sheet_of_many();
UsageError page_missing();
UsageError fair_copy_of_many();
/// `places` are two that lie so far apart that no map shows them truly.
UsageError map_too_wide(std::string_view places, bool of_many);
UsageError sidecar_without_file();
UsageError sidecar_without_csv();
/// `extension` is the one that a GIS would need instead.
UsageError sidecar_without_extension(std::string_view file, std::string_view extension);
/// A name with an extension that `writes` does not write. `conversion`, if any, leads to it from
/// what `writes` can write, or else from what the commands `others` write.
UsageError extension_not_written(std::string_view file, const Writes& writes,
                                 const Conversion* conversion,
                                 const std::vector<std::string_view>& others);
UsageError file_is_both(std::string_view input, std::string_view output);
UsageError outputs_are_one(std::string_view name);
UsageError csv_file_missing(std::string_view column);
UsageError csv_files_many();
UsageError column_unknown(std::string_view column, std::string_view file,
                          const std::vector<std::string>& columns);
UsageError quote_it(std::string_view reading);
UsageError north_without_declination();
/// A reading on its own has neither a place nor a date.
UsageError declination_without_place();
UsageError grid_without_place();
UsageError position_missing();
/// `words` can be a position, or a position that ends before the last of them, which is a year.
UsageError year_or_northing(std::string_view words);
UsageError code_unknown(std::string_view code);
UsageError topic_unknown(std::string_view topic);
UsageError blank_without_log();

// ---- files
std::string cannot_read(std::string_view name, std::error_code error);
std::string cannot_write(std::string_view name, std::error_code error);

// ---- other
/// How far a run is; one line without its end.
std::string reading_log(std::size_t log, std::size_t logs);
/// All logs have been read, and the next reading comes when one of them is saved.
std::string waiting_for(const std::vector<std::string>& logs);
/// The quotes of a CSV cell that begins in `line` are never closed.
std::string quote_unclosed(std::string_view file, std::uint32_t line);
/// What a log has that its report would explain; empty where it has nothing.
std::string faults_counted(std::string_view log, std::size_t errors, std::size_t warnings);
/// So many groups have under `fewest` surfaces or lines, too few for contours; empty for none.
std::string few_to_contour(std::size_t groups, std::size_t fewest);
/// No place is known, so that a map has nothing to show.
std::string nothing_on_map();
/// No reading is left that a net or a rose could show.
std::string nothing_on_net();
std::string nothing_on_rose();
/// What a map leaves out, and why.
std::string not_on_map(std::string_view what);
/// Without a declination, corrected readings refer to magnetic north.
std::string converted_to_magnetic();
/// Needs no memory.
std::string_view out_of_memory();
/// What `--version` prints: the version alone on the first line, then the models that are built in.
std::string version_text();

/// Writes a message to the error stream at once. A stream that takes nothing is ignored: there is
/// nowhere left to say so.
void tell(std::string_view message);

}  // namespace lodebook::cli
