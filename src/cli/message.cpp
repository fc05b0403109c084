// SPDX-License-Identifier: MIT
// All wording of the outer layer. As in diagnostics, the message states and the help advises.
#include <lodebook/cli/message.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/text.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <lodebook/cli/file.hpp>
#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/notebook/catalogue.hpp>
#include <lodebook/notebook/nearest.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <optional>

namespace lodebook::cli {
namespace {

UsageError usage(std::string_view message, std::string_view help) {
  return {fmt::format("lodebook: {}\nhelp: {}\n", message, help)};
}

std::string joined(const std::vector<std::string_view>& words) {
  return fmt::format("{}", fmt::join(words, ", "));
}

/// The one known word that `word` begins, or the nearest.
std::optional<std::string_view> meant(std::string_view word,
                                      const std::vector<std::string_view>& known) {
  std::optional<std::string_view> longer;
  bool several = false;
  for (const std::string_view candidate : known) {
    if (word.empty() || !candidate.starts_with(word)) continue;
    several = longer.has_value();
    longer = candidate;
  }
  return longer && !several ? longer : notebook::nearest(word, known);
}

std::string dashed(const OptionSpec& option) {
  return fmt::format("--{}", option.long_name);
}

std::string value_shown(const OptionSpec& option) {
  if (option.choices.empty()) return std::string(option.value);
  return fmt::format("{}", fmt::join(option.choices, "|"));
}

/// `csv, json and log`, with `last` before the last one and `sign` before each.
std::string listed(std::span<const std::string_view> words, std::string_view sign,
                   std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? last : ", ";
    text += sign;
    text += words[i];
  }
  return text;
}

/// A name that cannot be mistaken for something else on the line, and that sends no control
/// character to a terminal.
std::string named(std::string_view name) {
  std::string shown;
  output::append_printable(shown, name);
  return shown;
}

/// What stands between the columns of a header that has no comma; 0 for nothing.
char other_separator(std::string_view header) {
  const std::size_t at = header.find_first_of(";\t");
  return at == std::string_view::npos ? '\0' : header[at];
}

}  // namespace

UsageError command_unknown(std::string_view word, bool is_file) {
  const std::string message = fmt::format("'{}' is not a command", named(word));
  if (is_file)
    return usage(message, fmt::format("lodebook reduce {}", named(output::shell_quoted(word))));
  std::vector<std::string_view> known;
  for (const CommandSpec& command : commands())
    known.push_back(command.name);
  const auto nearest = meant(word, known);
  return usage(message, nearest ? fmt::format("lodebook {}?", *nearest)
                                : fmt::format("the commands are {}", joined(known)));
}

UsageError option_unknown(std::string_view option, Command command) {
  const std::string_view typed = option.substr(0, option.find('='));
  const std::string message = fmt::format("unknown option {}", named(typed));
  const std::string_view command_name = spec_of(command).name;
  if (typed.starts_with("--")) {
    std::vector<std::string_view> known;
    for (const OptionSpec& spec : options()) {
      if (spec.belongs_to(command)) known.push_back(spec.long_name);
    }
    if (const auto nearest = meant(typed.substr(2), known))
      return usage(message, fmt::format("--{}?", *nearest));
  }
  return usage(message, fmt::format("lodebook help {} lists the options", command_name));
}

UsageError option_of_others(const OptionSpec& option, Command command) {
  std::vector<std::string_view> owners;
  for (const CommandSpec& spec : commands()) {
    if (option.belongs_to(spec.command)) owners.push_back(spec.name);
  }
  return usage(fmt::format("{} does not take {}", spec_of(command).name, dashed(option)),
               fmt::format("{} is an option of {}", dashed(option), joined(owners)));
}

UsageError value_missing(const OptionSpec& option) {
  return usage(fmt::format("{} needs a value", dashed(option)),
               fmt::format("{} {}", dashed(option), value_shown(option)));
}

UsageError value_unwanted(const OptionSpec& option) {
  return usage(fmt::format("{} takes no value", dashed(option)),
               fmt::format("{} alone", dashed(option)));
}

UsageError value_unknown(const OptionSpec& option, std::string_view value) {
  const std::vector<std::string_view> known(option.choices.begin(), option.choices.end());
  const auto nearest = meant(value, known);
  return usage(fmt::format("{} does not take '{}'", dashed(option), named(value)),
               fmt::format("{} {}{}", dashed(option), nearest ? *nearest : value_shown(option),
                           nearest ? "?" : ""));
}

UsageError option_twice(const OptionSpec& option) {
  return usage(fmt::format("{} is given twice", dashed(option)), "give it once");
}

UsageError order_twice(bool of_planes) {
  return usage(fmt::format("--order says twice how {} are written", of_planes ? "planes" : "lines"),
               "one order for planes, one for lines");
}

UsageError set_is_no_angle(std::string_view value) {
  return usage(fmt::format("--set does not take '{}'", named(value)),
               "an angle, such as --set 0 or --set 12.5E");
}

UsageError attribute_key_impossible(std::string_view word) {
  return usage(fmt::format("--attributes does not take '{}'", named(word)),
               "a key such as spacing: small letters, digits, _ and -; commas between several");
}

UsageError attribute_is_column(std::string_view key) {
  return usage(fmt::format("--attributes: the table already has a column '{}'", key),
               "leave it out, or give the remarks another key");
}

UsageError grouping_unknown(std::string_view word) {
  return usage(fmt::format("--by does not take '{}'", named(word)),
               "--by unit, --by station, or --by unit,station");
}

UsageError kind_unknown(std::string_view kind, const std::vector<std::string>& known) {
  const std::vector<std::string_view> words(known.begin(), known.end());
  const auto nearest = meant(kind, words);
  std::string help = known.empty() ? "the logs have no planes and no lines"
                                   : fmt::format("the logs have {}", named(joined(words)));
  if (nearest) help = fmt::format("'{}'? {}", named(*nearest), help);
  return usage(fmt::format("there is no '{}' in the logs", named(kind)), help);
}

UsageError elevation_outside_models(std::string_view value) {
  return usage(fmt::format("--elevation does not take '{}'", named(value)),
               fmt::format("the geomagnetic models cover {} to {} metres",
                           figure_text(earth::lowest_field_height_m, 0),
                           figure_text(earth::highest_field_height_m, 0)));
}

UsageError jobs_out_of_range(std::string_view value, std::size_t most) {
  return usage(fmt::format("--jobs does not take '{}'", named(value)),
               fmt::format("a whole number from 1 to {}", most));
}

UsageError command_missing() {
  return usage("there is no command", "lodebook reduce LOG..., or another command");
}

UsageError logs_missing(Command command) {
  const std::string_view name = spec_of(command).name;
  return usage(fmt::format("{} needs a log", name),
               fmt::format("lodebook {} day3.txt, or - for standard input", name));
}

UsageError words_too_many(Command command, std::string_view word) {
  const CommandSpec& spec = spec_of(command);
  return usage(fmt::format("'{}' is one word too many", named(word)),
               fmt::format("lodebook {} {}", spec.name, spec.words));
}

UsageError stdin_twice() {
  return usage("- (standard input) is given twice, but can be read only once", "give it once");
}

UsageError two_places_for_report() {
  return usage("check writes one report, but both --output and --report name a file for it",
               "give one of the two");
}

UsageError watch_of_no_file(std::string_view log) {
  return usage(fmt::format("--watch needs a file that can be read again, and {} is none",
                           log == standard_stream ? "standard input" : named(log)),
               "lodebook check --watch day3.txt");
}

UsageError watch_without_report() {
  return usage("--watch prints reports, and --quiet prints none",
               "leave one of the two out, or name a file: lodebook check -q --watch day3.txt -o "
               "report.txt");
}

UsageError clean_log_of_many() {
  return usage("--format log takes one log, so that no setting passes from one log to the next",
               "one log at a time: lodebook reduce --format log day3.txt");
}

UsageError page_missing() {
  return usage("fair-copy needs a page",
               "lodebook fair-copy page.txt -o day3.txt, or - for standard input");
}

UsageError fair_copy_of_many() {
  return usage("fair-copy takes one page",
               "one page at a time: lodebook fair-copy page.txt -o day3.txt");
}

UsageError sheet_of_many() {
  return usage("sheet takes one log", "one log at a time: lodebook sheet day3.txt -o day3.html");
}

UsageError map_too_wide(std::string_view places, bool of_many) {
  return usage(fmt::format("{}, and one map shows 1900 km at most", named(places)),
               of_many ? "a map of each: lodebook map day3.txt -o day3.svg"
                       : "is a position mistyped? lodebook check shows where the stations are");
}

UsageError sidecar_without_file() {
  return usage("--sidecar needs an output file", "lodebook reduce day3.txt -o day3.csv --sidecar");
}

UsageError sidecar_without_csv() {
  return usage("--sidecar is for CSV only",
               "-o day3.csv, without another --format; a GIS reads GeoJSON as it is");
}

UsageError sidecar_without_extension(std::string_view file, std::string_view extension) {
  const std::string better = output::shell_quoted(with_extension(file, extension));
  return usage(fmt::format("--sidecar needs an output that ends in .{}, and {} does not", extension,
                           named(file)),
               fmt::format("-o {}: a GIS looks at the extension", named(better)));
}

UsageError extension_not_written(std::string_view file, const Writes& writes,
                                 const Conversion* conversion,
                                 const std::vector<std::string_view>& others) {
  std::string help =
      fmt::format("{} writes {}", writes.who, listed(writes.extensions, ".", " and "));
  const std::string extension = extension_of(file);
  const std::string_view source = conversion != nullptr ? conversion->from : extension;
  const std::string from = output::shell_quoted(with_extension(file, source));
  if (!others.empty()) {
    help += fmt::format("; {} {} .{}", listed(others, "", " and "),
                        others.size() == 1 ? "writes" : "write", source);
  }
  if (conversion != nullptr) {
    if (others.empty()) {
      const std::string_view option = writes.who.starts_with("--") ? writes.who : "-o";
      help += fmt::format("; first {} {}, then", option, from);
    }
    help +=
        fmt::format(": {}", fmt::format(fmt::runtime(conversion->command), fmt::arg("from", from),
                                        fmt::arg("to", output::shell_quoted(file)),
                                        fmt::arg("layer", writes.layer)));
  } else if (others.empty() && writes.takes_format) {
    help += "; a file with another extension needs --format";
  }
  return usage(fmt::format("{} does not write .{}", writes.who, named(extension)), named(help));
}

UsageError file_is_both(std::string_view input, std::string_view output) {
  if (input == output) {
    return usage(fmt::format("{} is both input and output", named(input)), "write to another file");
  }
  return usage(
      fmt::format("{} and {} are one file, both input and output", named(input), named(output)),
      "write to another file");
}

UsageError outputs_are_one(std::string_view name) {
  return usage(fmt::format("two outputs would be written to {}", named(name)),
               "give them two names");
}

UsageError csv_file_missing(std::string_view column) {
  return usage("--column needs a CSV file", fmt::format("lodebook convert --column {} FILE.csv",
                                                        named(output::shell_quoted(column))));
}

UsageError csv_files_many() {
  return usage("--column takes one CSV file", "one file at a time");
}

UsageError column_unknown(std::string_view column, std::string_view file,
                          const std::vector<std::string>& columns) {
  const std::vector<std::string_view> known(columns.begin(), columns.end());
  const auto nearest = meant(column, known);
  std::string help;
  const char separator = columns.size() == 1 ? other_separator(columns.front()) : '\0';
  if (columns.empty()) {
    help = "the first line of the file must name the columns";
  } else if (separator != '\0') {
    return usage(fmt::format("the columns of {} are separated by {}, not by commas", named(file),
                             separator == ';' ? "semicolons" : "tabs"),
                 "save it with commas between the columns, and a point for decimals");
  } else {
    help = fmt::format("the columns are {}", named(joined(known)));
    if (nearest) help = fmt::format("'{}'? {}", named(*nearest), help);
  }
  return usage(fmt::format("no column '{}' in {}", named(column), named(file)), help);
}

UsageError quote_it(std::string_view reading) {
  return usage(fmt::format("'{}' is one reading in several arguments", named(reading)),
               fmt::format("quote it: lodebook convert {}", named(output::shell_quoted(reading))));
}

UsageError north_without_declination() {
  return usage("--north true needs a declination",
               "add --declination, such as --declination 24.6E");
}

UsageError declination_without_place() {
  return usage(
      "--declination model needs a place and a date, and a single reading has neither",
      "lodebook declination '44.69S 169.01E' 2026-02-14 gives the figure for --declination");
}

UsageError grid_without_place() {
  return usage("--north grid needs a position, and a single reading has none",
               "put the reading into a log, under a station with a position");
}

UsageError position_missing() {
  return usage("declination needs a position",
               "lodebook declination 44.6891S 169.0144E, for example");
}

UsageError year_or_northing(std::string_view words) {
  const std::size_t space = words.find_last_of(' ');
  const std::string_view year = words.substr(space + 1);
  return usage(
      fmt::format("'{}' may be the end of the position or the year", named(year)),
      fmt::format("quote the position: lodebook declination {}, or lodebook declination {} {}.0",
                  named(output::shell_quoted(words)),
                  named(output::shell_quoted(words.substr(0, space))), named(year)));
}

UsageError code_unknown(std::string_view code) {
  std::vector<std::string_view> known;
  for (const notebook::CodePage& page : notebook::catalogue())
    known.push_back(page.name);
  const auto nearest = meant(code, known);
  return usage(fmt::format("'{}' is not the code of a diagnostic", named(code)),
               nearest ? fmt::format("lodebook explain {}?", *nearest)
                       : std::string("lodebook explain lists all codes"));
}

UsageError topic_unknown(std::string_view topic) {
  std::vector<std::string_view> known = {"log"};
  for (const CommandSpec& command : commands())
    known.push_back(command.name);
  const auto nearest = meant(topic, known);
  return usage(fmt::format("there is no help on '{}'", named(topic)),
               nearest ? fmt::format("lodebook help {}?", *nearest)
                       : fmt::format("lodebook help takes one of {}", joined(known)));
}

UsageError blank_without_log() {
  return usage("--blank goes with 'lodebook help log'", "lodebook help log --blank");
}

std::string cannot_read(std::string_view name, std::error_code error) {
  return fmt::format("lodebook: cannot read {}: {}\n", named(name), error.message());
}

std::string cannot_write(std::string_view name, std::error_code error) {
  return fmt::format("lodebook: cannot write {}: {}\n", named(name), error.message());
}

std::string reading_log(std::size_t log, std::size_t logs) {
  return fmt::format("reading log {} of {} ...", log, logs);
}

std::string waiting_for(const std::vector<std::string>& logs) {
  return fmt::format(
      "waiting for {} to be saved; Ctrl-C ends\n",
      logs.size() == 1 ? named(logs.front()) : fmt::format("one of {} logs", logs.size()));
}

std::string faults_counted(std::string_view log, std::size_t errors, std::size_t warnings) {
  if (errors + warnings == 0) return {};
  const std::string of_errors = output::counted(errors, "error", "errors");
  const std::string of_warnings = output::counted(warnings, "warning", "warnings");
  const std::string both = errors == 0     ? of_warnings
                           : warnings == 0 ? of_errors
                                           : of_errors + " and " + of_warnings;
  return fmt::format("{}: {}; lodebook check says which\n", named(log), both);
}

std::string few_to_contour(std::size_t groups, std::size_t fewest) {
  if (groups == 0) return {};
  return fmt::format(
      "lodebook: warning: {} fewer than {} surfaces or lines, so contours say little\n",
      groups == 1 ? "one net has" : fmt::format("{} nets have", groups), fewest);
}

std::string nothing_on_map() {
  return "lodebook: warning: nothing to draw: no station and no landmark has a position\n"
         "help: type a position behind a station, such as 'station H1 at 44.6891S 169.0144E'\n";
}

std::string nothing_on_net() {
  return "lodebook: warning: nothing to draw: no usable plane or line\n";
}

std::string nothing_on_rose() {
  return "lodebook: warning: nothing to draw: no usable strike or trend\n";
}

std::string not_on_map(std::string_view what) {
  return fmt::format("lodebook: warning: not drawn: {}\n", named(what));
}

std::string converted_to_magnetic() {
  return "lodebook: warning: no declination, so the results refer to magnetic north (read - set)\n";
}

std::string quote_unclosed(std::string_view file, std::uint32_t line) {
  return fmt::format(
      "lodebook: {}:{}: a cell opens with a quote that is never closed\n"
      "help: everything after it counts as that one cell and stays as typed\n",
      named(file), line);
}

std::string_view out_of_memory() {
  return "lodebook: out of memory\n";
}

std::string version_text() {
  std::string text = "lodebook " LODEBOOK_VERSION "\n";
  for (const auto& [model, from, until] : earth::field_models()) {
    text += fmt::format("geomagnetic model {}, {} to {}\n", earth::name_of(model),
                        figure_text(from, 0), figure_text(until, 0));
  }
  return text;
}

void tell(std::string_view message) {
  OutputFile stream = OutputFile::standard_error();
  stream.write(message);
}

}  // namespace lodebook::cli
