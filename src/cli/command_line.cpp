// SPDX-License-Identifier: MIT
// The option parser: the only file that includes CLI11.
#include <lodebook/cli/command_line.hpp>

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <charconv>
#include <lodebook/cli/arrange.hpp>
#include <lodebook/cli/words.hpp>
#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/notebook/attributes.hpp>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/table.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

using Values = std::array<std::vector<std::string>, option_count>;

/// An option as CLI11 spells it: `-o,--output`.
std::string names_of(const OptionSpec& spec) {
  if (spec.short_name == 0) return fmt::format("--{}", spec.long_name);
  return fmt::format("-{},--{}", spec.short_name, spec.long_name);
}

void add_options(CLI::App& app, std::optional<Command> command) {
  app.set_help_flag();  // ours is an option like any other
  for (const OptionSpec& option : options()) {
    const OptionSpec spec = as_taken_by(command, option);
    if (command ? !spec.belongs_to(*command)
                : spec.option != Option::help && spec.option != Option::version)
      continue;
    if (spec.takes_value()) {
      app.add_option(names_of(spec))
          ->description(std::string(spec.help))
          ->option_text(std::string(spec.value))
          ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    } else {
      app.add_flag(names_of(spec))->description(std::string(spec.help));
    }
  }
}

/// Reads the options of `arranged` into `values`; a flag has one value for each time it stands.
std::optional<UsageError> parse(const Arranged& arranged, Values& values) {
  const std::optional<Command> command =
      arranged.command ? std::optional(arranged.command->command) : std::nullopt;
  CLI::App app;
  add_options(app, command);
  app.allow_extras();
  try {
    app.parse(std::vector<std::string>(arranged.options.rbegin(), arranged.options.rend()));
  } catch (const CLI::ParseError& error) {
    return UsageError{fmt::format("lodebook: {}\n", error.what())};
  }
  const std::vector<std::string> unknown = app.remaining();
  if (!unknown.empty()) {
    const std::string_view typed = unknown.front();
    if (!command) return command_missing();
    const OptionSpec* const others = typed.starts_with("--")
                                         ? option_named(typed.substr(2, typed.find('=') - 2))
                                         : option_lettered(typed[1]);
    return others != nullptr ? option_of_others(*others, *command)
                             : option_unknown(typed, *command);
  }
  for (const CLI::Option* option : app.get_options()) {
    const OptionSpec& spec = *option_named(option->get_lnames().front());
    values[static_cast<std::size_t>(spec.option)] = option->results();
    if (spec.takes_value() && !spec.repeatable && option->count() > 1) return option_twice(spec);
  }
  return std::nullopt;
}

/// Reads an option of words into `field`, whose enumeration has their order.
template <class Field>
bool settle(const Values& values, const OptionSpec& spec, Field& field,
            std::optional<UsageError>& error) {
  const std::vector<std::string>& typed = values[static_cast<std::size_t>(spec.option)];
  if (typed.empty()) return true;
  const auto found = std::ranges::find(spec.choices, typed.front());
  if (found == spec.choices.end()) {
    error = value_unknown(spec, typed.front());
    return false;
  }
  const auto index = found - spec.choices.begin();
  if constexpr (requires { field.reset(); }) {
    field = static_cast<typename Field::value_type>(index);
  } else {
    field = static_cast<Field>(index);
  }
  return true;
}
template <class Field>
bool settle(const Values& values, Option option, Field& field, std::optional<UsageError>& error) {
  return settle(values, spec_of(option), field, error);
}

/// Reads the angle of --declination or --set as a log would.
std::optional<notebook::DeclinationSetting> read_angle(const Values& values, Option option,
                                                       CommandLine& line,
                                                       std::optional<UsageError>& error) {
  const std::vector<std::string>& typed = values[static_cast<std::size_t>(option)];
  if (typed.empty()) return std::nullopt;
  const notebook::Source source(fmt::format("--{}", spec_of(option).long_name), typed.front());
  std::vector<notebook::Diagnostic> diagnostics;
  auto read = notebook::read_declination(source, diagnostics);
  std::string text;
  for (const notebook::Diagnostic& diagnostic : diagnostics) {
    output::append_diagnostic(text, source, diagnostic, false);
    if (diagnostic.severity == notebook::Severity::warning) ++line.warning_count;
  }
  if (!read) {
    error = UsageError{text};
    return std::nullopt;
  }
  line.warnings += text;
  return read;
}

/// Reads the height of --elevation as a log would, and refuses one that no model is for.
std::optional<UsageError> read_elevation(const std::vector<std::string>& typed, double& metres) {
  if (typed.empty()) return std::nullopt;
  const notebook::Source source("--elevation", typed.front());
  std::vector<notebook::Diagnostic> diagnostics;
  const auto height = notebook::read_height(source, diagnostics);
  if (!height) {
    UsageError error;
    for (const notebook::Diagnostic& diagnostic : diagnostics)
      output::append_diagnostic(error.text, source, diagnostic, false);
    return error;
  }
  constexpr double metres_per_pace = 1;  // a height has no paces
  metres = height->metres(metres_per_pace);
  if (!earth::field_covers_height(metres)) return elevation_outside_models(typed.front());
  return std::nullopt;
}

/// Reads how pairs are written: once for planes, and once for lines.
std::optional<UsageError> read_orders(const std::vector<std::string>& typed,
                                      notebook::OrderSetting& order) {
  using notebook::LineOrder;
  using notebook::PlaneOrder;
  const OptionSpec& spec = spec_of(Option::order);
  constexpr int of_planes = 4;
  for (const std::string& word : typed) {
    const auto found = std::ranges::find(spec.choices, word);
    if (found == spec.choices.end()) return value_unknown(spec, word);
    const auto number = static_cast<int>(found - spec.choices.begin()) + 1;  // behind unstated
    const bool is_plane = number <= of_planes;
    const bool is_twice =
        is_plane ? order.planes != PlaneOrder::unstated : order.lines != LineOrder::unstated;
    if (is_twice) return order_twice(is_plane);
    if (is_plane) {
      order.planes = static_cast<PlaneOrder>(number);
    } else {
      order.lines = static_cast<LineOrder>(number - of_planes);
    }
  }
  return std::nullopt;
}

/// Reads how many logs are wanted at once.
std::optional<UsageError> read_jobs(const std::vector<std::string>& typed,
                                    std::optional<std::size_t>& jobs) {
  if (typed.empty()) return std::nullopt;
  const std::string& word = typed.front();
  std::size_t number = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), number);
  const bool is_number = read.ec == std::errc() && read.ptr == word.data() + word.size();
  if (!is_number || number < 1 || number > most_jobs) return jobs_out_of_range(word, most_jobs);
  jobs = number;
  return std::nullopt;
}

/// Reads what groups share, from words with commas between them.
std::optional<UsageError> read_grouping(const std::vector<std::string>& typed,
                                        reduction::Grouping& grouping) {
  if (typed.empty()) return std::nullopt;
  for (const std::string& word : split_at_commas(typed.front())) {
    bool* const wanted = word == "unit"      ? &grouping.by_unit
                         : word == "station" ? &grouping.by_station
                                             : nullptr;
    if (wanted == nullptr) return grouping_unknown(word);
    *wanted = true;
  }
  return std::nullopt;
}

/// Reads the keys of attributes, from words with commas between them.
std::optional<UsageError> read_attributes(const std::vector<std::string>& typed,
                                          std::vector<std::string>& keys) {
  if (typed.empty()) return std::nullopt;
  keys = split_at_commas(typed.front());
  const output::Columns columns = output::columns(true);
  for (std::size_t i = 0; i < keys.size(); ++i) {
    if (!notebook::is_attribute_key(keys[i])) return attribute_key_impossible(keys[i]);
    const auto before = std::span(keys).first(i);
    const bool is_taken =
        std::ranges::find(columns, keys[i], &output::Column::name) != columns.end();
    if (is_taken || std::ranges::find(before, keys[i]) != before.end())
      return attribute_is_column(keys[i]);
  }
  return std::nullopt;
}

/// Refuses outputs by their names before anything is read, and has the extension of --output stand
/// for the format where none is stated.
std::optional<UsageError> settle_outputs(const CommandLine& line, Values& values) {
  constexpr std::array<std::string_view, 2> ray_files = {"geojson", "json"};
  constexpr std::array<std::string_view, 2> report_files = {"txt", "json"};
  const auto typed = [&](Option option) -> std::vector<std::string>& {
    return values[static_cast<std::size_t>(option)];
  };
  if (!typed(Option::output).empty()) {
    const CommandSpec& command = spec_of(*line.command);
    const OptionSpec format = as_taken_by(line.command, spec_of(Option::format));
    const bool takes_format = format.belongs_to(*line.command);
    const std::string& file = typed(Option::output).front();
    // A report is a text, whatever it is called, and a converted column leaves a file what it was.
    const bool any_other = !typed(Option::format).empty() || line.command == Command::check ||
                           !typed(Option::column).empty();
    if (auto error = refuse_extension(
            file, {command.name, command.extensions, command.layer, takes_format}, any_other))
      return error;
    const auto extension = std::ranges::find(command.extensions, extension_of(file));
    if (takes_format && typed(Option::format).empty() && extension != command.extensions.end())
      typed(Option::format)
          .emplace_back(
              format.choices[static_cast<std::size_t>(extension - command.extensions.begin())]);
  }
  for (const std::string& file : typed(Option::rays)) {
    if (auto error = refuse_extension(file, {"--rays", ray_files}, false)) return error;
  }
  for (const std::string& file : typed(Option::report)) {
    if (auto error = refuse_extension(file, {"--report", report_files}, true)) return error;
  }
  return std::nullopt;
}

std::optional<std::string> first_of(const std::vector<std::string>& values) {
  return values.empty() ? std::nullopt : std::optional(values.front());
}

/// Turns what was typed into what is meant.
std::optional<UsageError> interpret(const Values& values, CommandLine& line) {
  const auto typed = [&](Option option) -> const std::vector<std::string>& {
    return values[static_cast<std::size_t>(option)];
  };
  const auto given = [&](Option option) { return !typed(option).empty(); };

  std::optional<UsageError> error;
  std::optional<int> shape;
  std::optional<std::size_t> bin;
  const OptionSpec format = as_taken_by(line.command, spec_of(Option::format));
  const bool settled =
      line.command == Command::declination ? settle(values, format, line.answer_format, error)
      : line.command == Command::fix       ? settle(values, format, line.fix_format, error)
      : line.command == Command::summary   ? settle(values, format, line.summary_format, error)
      : line.command == Command::register_items
          ? settle(values, format, line.register_format, error)
          : settle(values, format, line.format, error);
  if (!settled) return error;
  if (!settle(values, Option::north, line.north, error) ||
      !settle(values, Option::rule, line.rule, error) ||
      !settle(values, Option::repeats, line.repeats, error) ||
      !settle(values, Option::bin, bin, error) ||
      !settle(values, Option::notation, line.planes, error) ||
      !settle(values, Option::to, line.to, error) || !settle(values, Option::as, shape, error) ||
      !settle(values, Option::report_format, line.report_format, error) ||
      !settle(values, Option::encoding, line.encoding, error) ||
      !settle(values, Option::color, line.color, error))
    return error;
  if (shape) line.as = static_cast<notebook::ReadAs>(*shape + 1);  // behind own_form

  if (bin) {
    const std::string_view width = spec_of(Option::bin).choices[*bin];
    line.bin_degrees = static_cast<int>(*read_decimal(width));
  }
  error = read_grouping(typed(Option::by), line.grouping);
  if (error) return error;
  for (const std::string& value : typed(Option::kind)) {
    for (std::string& word : split_at_commas(value))
      line.selection.kinds.push_back(std::move(word));
  }

  line.declination = read_angle(values, Option::declination, line, error);
  if (error) return error;
  if (const auto set = read_angle(values, Option::set, line, error)) {
    if (set->from != notebook::DeclinationSetting::From::stated || set->sigma != 0)
      return set_is_no_angle(typed(Option::set).front());
    line.set = set->declination;
  }
  if (error) return error;

  error = read_elevation(typed(Option::elevation), line.elevation_m);
  if (error) return error;

  error = read_attributes(typed(Option::attributes), line.attributes);
  if (error) return error;

  error = read_orders(typed(Option::order), line.order);
  if (error) return error;

  error = read_jobs(typed(Option::jobs), line.jobs);
  if (error) return error;

  line.output = first_of(typed(Option::output));
  line.heading = first_of(typed(Option::heading));
  line.rays = first_of(typed(Option::rays));
  line.sidecar = given(Option::sidecar);
  line.report = first_of(typed(Option::report));
  line.columns = typed(Option::column);
  line.grid = given(Option::grid);
  line.selection.without_suspect = given(Option::without_suspect);
  line.poles = given(Option::poles);
  line.circles = given(Option::circles);
  line.contours = given(Option::contours);
  line.watch = given(Option::watch);
  line.strict = given(Option::strict);
  line.quiet = given(Option::quiet);
  line.blank = given(Option::blank);
  line.help = given(Option::help);
  line.version = given(Option::version);
  return std::nullopt;
}

static_assert(static_cast<int>(reduction::North::grid) == 2 &&
              static_cast<int>(HandRule::left) == 1 &&
              static_cast<int>(reduction::Repeats::mean) == 1 &&
              static_cast<int>(notebook::Notation::quadrant) == 1 &&
              static_cast<int>(output::PlanesAs::direction) == 1 &&
              static_cast<int>(notebook::PlaneOrder::dip_strike) == 4 &&
              static_cast<int>(notebook::LineOrder::plunge_trend) == 2 &&
              static_cast<int>(notebook::ReadAs::line) == 3);

}  // namespace

std::variant<CommandLine, UsageError> read_command_line(std::span<const std::string> arguments) {
  auto arranged = arrange(arguments);
  if (auto* const error = std::get_if<UsageError>(&arranged)) return std::move(*error);
  auto& sorted = std::get<Arranged>(arranged);
  Values values;
  if (auto error = parse(sorted, values)) return std::move(*error);
  CommandLine line;
  if (sorted.command != nullptr) line.command = sorted.command->command;
  line.words = std::move(sorted.words);
  if (auto error = settle_outputs(line, values)) return std::move(*error);
  if (auto error = interpret(values, line)) return std::move(*error);
  return line;
}

std::string help_of(std::optional<Command> command) {
  CLI::App app;
  app.get_formatter()->column_width(26);
  app.get_formatter()->label("OPTIONS", "OPTION...");
  app.get_formatter()->label("SUBCOMMAND", "COMMAND");
  add_options(app, command);
  if (command) {
    const CommandSpec& spec = spec_of(*command);
    app.name(fmt::format("lodebook {} {}", spec.name, spec.words));
    app.description(std::string(spec.summary) + '\n');
    app.footer(std::string(spec.footer));
    return app.help();
  }
  app.name("lodebook");
  app.description("Clean, correct and check a field geologist's station log.\n");
  app.footer(
      "`lodebook help COMMAND` says more about a command, and `lodebook help log` shows\n"
      "on one page what you can type into a log.");
  for (const CommandSpec& spec : commands()) {
    app.add_subcommand(std::string(spec.name), std::string(spec.summary))->group("Commands");
  }
  return app.help();
}

}  // namespace lodebook::cli
