// SPDX-License-Identifier: MIT
// What the command line asks for.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

#include <lodebook/cli/message.hpp>
#include <lodebook/cli/option_table.hpp>
#include <lodebook/output/notation.hpp>
#include <lodebook/reduction/attitudes.hpp>

namespace lodebook::cli {

// The order of each enumeration is that of the option's words in the option table.
enum class Format : std::uint8_t { csv, json, geojson, log };
enum class FixFormat : std::uint8_t { text, json, csv, geojson };
enum class RegisterFormat : std::uint8_t { csv, json, geojson };
enum class SummaryFormat : std::uint8_t { text, json, csv };
enum class AnswerFormat : std::uint8_t { text, json };
enum class ReportFormat : std::uint8_t { text, json, lines };
using notebook::Encoding;
enum class Color : std::uint8_t { automatic, always, never };

/// The most logs at once.
inline constexpr std::size_t most_jobs = 256;

/// A command line that has been understood. What is missing was not typed.
struct CommandLine {
  /// Nothing where only options stand.
  std::optional<Command> command;
  /// Logs, readings, a position and a date, a code or a topic.
  std::vector<std::string> words;

  std::optional<std::string> output;
  std::optional<Format> format;
  AnswerFormat answer_format = AnswerFormat::text;  ///< of `declination`
  std::optional<FixFormat> fix_format;              ///< of `fix`
  std::optional<SummaryFormat> summary_format;      ///< of `summary`
  std::optional<RegisterFormat> register_format;    ///< of `register`
  std::optional<std::string> rays;
  bool sidecar = false;
  std::optional<reduction::North> north;
  std::optional<notebook::DeclinationSetting> declination;
  std::optional<Declination> set;
  std::optional<HandRule> rule;
  std::optional<std::string> heading;
  /// What it holds, once it has been read.
  std::vector<notebook::HeadingFile> headings;
  bool grid = false;
  /// Of the remarks, each a column of the table.
  std::vector<std::string> attributes;
  reduction::Repeats repeats = reduction::Repeats::each;
  reduction::Grouping grouping;
  reduction::Selection selection;
  bool poles = false;
  bool circles = false;
  bool contours = false;
  int bin_degrees = 10;
  output::PlanesAs planes = output::PlanesAs::strike;
  notebook::Notation to = notebook::Notation::azimuth;
  /// Of pairs of bare numbers.
  notebook::OrderSetting order;
  notebook::ReadAs as = notebook::ReadAs::own_form;
  std::vector<std::string> columns;
  double elevation_m = 0;
  std::optional<std::string> report;
  ReportFormat report_format = ReportFormat::text;
  std::optional<std::size_t> jobs;  ///< logs at once, 1 to `most_jobs`
  bool watch = false;
  bool strict = false;
  Encoding encoding = Encoding::utf_8;
  Color color = Color::automatic;
  bool quiet = false;
  bool blank = false;
  bool help = false;
  bool version = false;

  /// Faults of --declination and --set that do not stop the run.
  std::string warnings;
  std::size_t warning_count = 0;
};

/// Reads the arguments behind the program's name.
std::variant<CommandLine, UsageError> read_command_line(std::span<const std::string> arguments);

/// The help of one command, or of the program.
std::string help_of(std::optional<Command> command);

}  // namespace lodebook::cli
