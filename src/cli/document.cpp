// SPDX-License-Identifier: MIT
// The formats behind one face, and their text in large blocks. What is written depends on the logs
// alone, not on how they came here.
#include <lodebook/cli/document.hpp>

#include <lodebook/output/clean_log.hpp>
#include <lodebook/output/csv.hpp>
#include <utility>

namespace lodebook::cli {
namespace {

constexpr std::size_t block = 1 << 18;

}  // namespace

Document Document::table(Format format, reduction::North north, output::Columns columns,
                         OutputFile file) {
  switch (format) {
    case Format::json:
      return {output::JsonWriter(north, columns), std::move(file), false};
    case Format::geojson:
      return {output::GeoJsonWriter(columns), std::move(file), false};
    case Format::log:
      return {CleanLog(), std::move(file), false};
    case Format::csv:
      break;
  }
  return {Csv{columns}, std::move(file), false};
}

Document Document::report(ReportFormat format, bool color, output::PlanesAs planes, OutputFile file,
                          bool keep) {
  switch (format) {
    case ReportFormat::json:
      return {output::JsonReport(), std::move(file), keep};
    case ReportFormat::lines:
      return {output::LineReport(), std::move(file), keep};
    case ReportFormat::text:
      break;
  }
  return {output::StationReport(color, planes), std::move(file), keep};
}

Document Document::fixes(FixFormat format, bool color, OutputFile file) {
  switch (format) {
    case FixFormat::json:
      return {output::FixJson(), std::move(file), false};
    case FixFormat::csv:
      return {output::FixCsv(), std::move(file), false};
    case FixFormat::geojson:
      return {output::FixGeoJson(), std::move(file), false};
    case FixFormat::text:
      break;
  }
  return {output::FixReport(color), std::move(file), false};
}

Document Document::rays(OutputFile file) {
  return {output::FixRays(), std::move(file), false};
}

Document Document::items(RegisterFormat format, OutputFile file) {
  switch (format) {
    case RegisterFormat::json:
      return {output::RegisterJson(), std::move(file), false};
    case RegisterFormat::geojson:
      return {output::RegisterGeoJson(), std::move(file), false};
    case RegisterFormat::csv:
      break;
  }
  return {output::RegisterCsv(), std::move(file), false};
}

void Document::begin() {
  if (std::exchange(begun_, true)) return;
  std::visit(
      [&](auto& writer) {
        if constexpr (std::is_same_v<std::remove_reference_t<decltype(writer)>, Csv>) {
          output::append_csv_header(text_, writer.columns);
        } else if constexpr (requires { writer.begin(text_); }) {
          writer.begin(text_);
        }
      },
      writer_);
}

void LogText::begin_log(const reduction::Reduction& reduction) {
  std::visit(
      [&](auto& writer) {
        if constexpr (std::is_same_v<std::remove_reference_t<decltype(writer)>, CleanLog>) {
          output::append_clean_log(text_, reduction.notebook(), reduction.options());
        } else if constexpr (requires { writer.begin_log(text_, reduction); }) {
          writer.begin_log(text_, reduction);
        }
      },
      writer_);
}

void LogText::page(const notebook::Source& source, const reduction::Page& page) {
  std::visit(
      [&](auto& writer) {
        using Kind = std::remove_reference_t<decltype(writer)>;
        if constexpr (std::is_same_v<Kind, Csv>) {
          output::append_csv(text_, writer.columns, source, page);
        } else if constexpr (requires { writer.page(text_, source, page); }) {
          writer.page(text_, source, page);
        }
      },
      writer_);
}

void LogText::end_log(const reduction::Reduction& reduction) {
  std::visit(
      [&](auto& writer) {
        if constexpr (requires { writer.end_log(text_, reduction); })
          writer.end_log(text_, reduction);
      },
      writer_);
}

void LogText::fixed(const notebook::Source& source, const reduction::Fixes& fixes) {
  std::visit(
      [&](auto& writer) {
        if constexpr (requires { writer.log(text_, source, fixes); })
          writer.log(text_, source, fixes);
      },
      writer_);
}

void Document::follow(LogText& log) {
  if (keep_ || log.text_.size() < block) return;
  take(log);
  flush();
}

void Document::append(LogText& log) {
  take(log);
  std::visit(
      [&](auto& writer) {
        using Kind = std::remove_reference_t<decltype(writer)>;
        if constexpr (requires { writer.add(writer); }) writer.add(std::get<Kind>(log.writer_));
      },
      writer_);
  if (keep_ || taken_ < block) return;
  flush();
  taken_ = 0;
}

void Document::take(LogText& log) {
  begin();
  if (log.text_.empty()) return;
  if (!std::exchange(log.joined_, true) && std::exchange(has_text_, true)) {
    std::visit(
        [&](const auto& writer) {
          if constexpr (requires { writer.between; }) text_ += writer.between;
        },
        writer_);
  }
  taken_ += log.text_.size();
  if (text_.empty()) {
    text_.swap(log.text_);
  } else {
    text_ += log.text_;
    log.text_.clear();
  }
}

void Document::flush() {
  file_.write(text_);
  text_.clear();
}

void Document::finish(Outcome& outcome) {
  if (!begun_ || outcome.usage) return;
  std::visit(
      [&](auto& writer) {
        if constexpr (requires { writer.end(text_); }) writer.end(text_);
      },
      writer_);
  file_.write(text_);
  file_.commit();
  finished(file_, outcome);
  is_written_ = !file_.error();
}

std::vector<LogText> blank_logs(std::span<const Document> documents) {
  std::vector<LogText> logs;
  for (const Document& document : documents)
    logs.push_back(document.blank_log());
  return logs;
}

void finished(const OutputFile& file, Outcome& outcome) {
  if (file.reader_gone()) {
    outcome.reader_gone = true;
  } else if (file.error()) {
    tell(cannot_write(file.shown(), file.error()));
    outcome.io = true;
  }
}

}  // namespace lodebook::cli
