// SPDX-License-Identifier: MIT
// `lodebook declination`: which words are the position and which the date, and what the models say.
#include <algorithm>
#include <ctime>
#include <lodebook/cli/batch.hpp>
#include <lodebook/cli/commands.hpp>
#include <lodebook/cli/words.hpp>
#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/notebook/date.hpp>
#include <lodebook/notebook/wording.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/field.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

using notebook::Diagnostic;
using notebook::Source;

/// No writing of a position has more words.
constexpr std::size_t longest_position = 24;

/// The words, sorted into what they are to be read as.
struct Asked {
  Source position;
  std::optional<Source> date;
};

/// A time, and how it is shown.
struct When {
  std::string shown;
  double year = 0;
};

bool is_position(std::string_view text) {
  return std::holds_alternative<earth::WrittenPosition>(earth::read_position(text));
}

/// The decimal year of a date or year.
std::optional<double> read_year(std::string_view text) {
  if (const auto date = notebook::read_date(text)) return notebook::decimal_year(*date);
  return notebook::read_decimal_year(text);
}

bool has_space(std::string_view text) {
  return text.find_first_of(" \t") != std::string_view::npos;
}

/// A word that is a date in all likelihood, if perhaps not a good one. A bare number may as well
/// belong to a position.
bool is_date_like(std::string_view word) {
  if (notebook::read_date(word) || !notebook::meant_date(word).empty()) return true;
  const auto year = notebook::read_decimal_year(word);
  return year && earth::field_covers_year(*year);
}

/// Figures with a stroke or a point between them, such as 3/4/1978.
bool has_date_marks(std::string_view word) {
  return !word.empty() && word[0] >= '0' && word[0] <= '9' &&
         word.find_first_of("-/.") != std::string_view::npos;
}

Source position_of(std::span<const std::string> words) {
  return {words.size() == 1 ? "argument 1" : "arguments", joined(words)};
}

Asked apart(std::span<const std::string> words) {
  return {position_of(words.first(words.size() - 1)),
          Source("argument " + std::to_string(words.size()), words.back())};
}

/// The word after a position and a date, if there is one.
const std::string* word_too_many(std::span<const std::string> words) {
  for (std::size_t i = 1; i + 1 < words.size() && i <= longest_position; ++i) {
    if (read_year(words[i]) && is_position(joined(words.first(i)))) return &words[i + 1];
  }
  return nullptr;
}

/// The last word is the date if it reads as one and the rest as a position. Where neither way
/// reads, the one that was probably meant is taken, so that its fault is shown.
std::variant<Asked, UsageError> sort_words(std::span<const std::string> words) {
  if (words.empty()) return position_missing();
  if (words.size() == 1) return Asked{position_of(words), std::nullopt};
  const std::string& last = words.back();
  const bool front_reads = is_position(joined(words.first(words.size() - 1)));
  const bool is_date = front_reads && read_year(last);
  const bool whole_reads = !is_blank(last) && is_position(joined(words));
  // Quotes have said where the position ends.
  const bool quoted = words.size() == 2 && has_space(words.front());
  if (is_date && whole_reads && !quoted) return year_or_northing(joined(words));
  if (is_date) return apart(words);
  if (whole_reads) return Asked{position_of(words), std::nullopt};
  if (const std::string* const word = word_too_many(words))
    return words_too_many(Command::declination, *word);
  if (is_date_like(last) || (front_reads && (quoted || is_blank(last) || has_date_marks(last))))
    return apart(words);
  return Asked{position_of(words), std::nullopt};
}

When today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  const notebook::Date date{static_cast<std::uint16_t>(local.tm_year + 1900),
                            static_cast<std::uint8_t>(local.tm_mon + 1),
                            static_cast<std::uint8_t>(local.tm_mday)};
  return {notebook::iso_date(date), notebook::decimal_year(date)};
}

/// Reads positions and dates, and gathers what is wrong with them.
class Reader {
 public:
  explicit Reader(bool color) : color_(color) {}

  std::optional<earth::Position> position(const Source& source) {
    std::vector<Diagnostic> diagnostics;
    const auto read = notebook::read_position(source, diagnostics);
    for (const Diagnostic& diagnostic : diagnostics)
      output::append_diagnostic(faults_, source, diagnostic, color_);
    return read;
  }

  std::optional<When> when(const std::optional<Source>& source) {
    if (!source) {
      When now = today();
      const Source shown("today", now.shown);
      return within_models(shown, std::move(now));
    }
    const std::string_view typed = source->text();
    if (const auto year = read_year(typed))
      return within_models(*source, {std::string(typed), *year});
    add(*source, notebook::wording::date(typed, notebook::meant_date(typed)));
    return std::nullopt;
  }

  const std::string& faults() const { return faults_; }

 private:
  std::optional<When> within_models(const Source& source, When when) {
    if (earth::field_covers_year(when.year)) return when;
    add(source, notebook::wording::date_outside_models(source.text()));
    return std::nullopt;
  }

  void add(const Source& source, Diagnostic diagnostic) {
    diagnostic.place = source.place(1, source.line(1));
    output::append_diagnostic(faults_, source, diagnostic, color_);
  }

  bool color_;
  std::string faults_;
};

std::vector<std::string> cautions_of(const earth::MagneticField& field) {
  switch (field.needle()) {
    case earth::Needle::steady:
      break;
    case earth::Needle::sluggish:
      return {notebook::wording::sluggish_needle(field.horizontal_nt()).message};
    case earth::Needle::useless:
      return {notebook::wording::no_compass(field.horizontal_nt(), false).message};
  }
  return {};
}

output::FieldAnswer answer_for(const earth::Position& position, double elevation_m, When when) {
  // Neither is missing, as the year lies within the models.
  const auto field = *earth::magnetic_field(position, elevation_m, when.year);
  const double change = *earth::declination_change(position, elevation_m, when.year);
  return {position,
          elevation_m,
          std::move(when.shown),
          earth::name_of(field.model()),
          field.declination().degrees_east(),
          field.declination_sigma(),
          change,
          field.magnetic_inclination(),
          field.horizontal_nt(),
          field.total_nt(),
          cautions_of(field)};
}

}  // namespace

Outcome declination(const CommandLine& line) {
  const auto sorted = sort_words(line.words);
  if (const auto* const error = std::get_if<UsageError>(&sorted)) return refused(*error);
  const auto& asked = std::get<Asked>(sorted);
  Reader reader(is_colored(line, OutputFile::standard_error()));
  const auto position = reader.position(asked.position);
  const auto when = reader.when(asked.date);
  if (!line.quiet) tell(reader.faults());
  if (!position || !when) return {.errors = true};

  const output::FieldAnswer answer = answer_for(*position, line.elevation_m, *when);
  std::string text;
  if (line.answer_format == AnswerFormat::json) {
    output::append_field_json(text, answer);
  } else {
    output::append_field_text(text, answer);
  }
  return print(text);
}

}  // namespace lodebook::cli
