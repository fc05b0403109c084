// SPDX-License-Identifier: MIT
// One output of a batch of logs: its format, what each log adds to it, and the file it goes to.
#pragma once

#include <span>
#include <string>
#include <variant>
#include <vector>

#include <lodebook/cli/command_line.hpp>
#include <lodebook/cli/file.hpp>
#include <lodebook/output/fix_csv.hpp>
#include <lodebook/output/fix_geojson.hpp>
#include <lodebook/output/fix_json.hpp>
#include <lodebook/output/fix_rays.hpp>
#include <lodebook/output/fix_report.hpp>
#include <lodebook/output/geojson.hpp>
#include <lodebook/output/json.hpp>
#include <lodebook/output/register_csv.hpp>
#include <lodebook/output/register_geojson.hpp>
#include <lodebook/output/register_json.hpp>
#include <lodebook/output/report.hpp>

namespace lodebook::cli {

/// How a run went; the worst wins.
struct Outcome {
  bool usage = false;        ///< the command line cannot be followed
  bool io = false;           ///< something could not be read or written
  bool errors = false;       ///< errors in a log or reading
  bool reader_gone = false;  ///< whoever read our output has gone, and wants no message

  int status() const { return usage ? 2 : io ? 3 : errors ? 1 : 0; }
};

/// Records whether `file` failed after its last write, and prints what failed.
void finished(const OutputFile& file, Outcome& outcome);

/// What one log adds to a document; it can be made on any thread, whatever is made of other logs.
class LogText {
 public:
  void begin_log(const reduction::Reduction& reduction);
  void page(const notebook::Source& source, const reduction::Page& page);
  void end_log(const reduction::Reduction& reduction);

  /// A whole log.
  void fixed(const notebook::Source& source, const reduction::Fixes& fixes);

 private:
  friend class Document;
  /// The CSV has nothing between logs; the clean log comes from the notebook at once.
  struct Csv {
    output::Columns columns;
  };
  struct CleanLog {};
  using Writer =
      std::variant<Csv, CleanLog, output::JsonWriter, output::GeoJsonWriter, output::StationReport,
                   output::JsonReport, output::LineReport, output::FixReport, output::FixJson,
                   output::FixCsv, output::FixGeoJson, output::FixRays, output::RegisterCsv,
                   output::RegisterJson, output::RegisterGeoJson>;

  explicit LogText(Writer writer) : writer_(std::move(writer)) {}

  Writer writer_;
  /// What no document has taken yet.
  std::string text_;
  bool joined_ = false;
};

/// A table or report on its way out, log by log, in large blocks.
class Document {
 public:
  static Document table(Format format, reduction::North north, output::Columns columns,
                        OutputFile file);
  /// `keep` holds all of it back until `finish`, so that two documents do not mix on one screen.
  static Document report(ReportFormat format, bool color, output::PlanesAs planes, OutputFile file,
                         bool keep);

  /// The positions of `fix`, or its sight lines, of logs that `LogText::fixed` writes.
  static Document fixes(FixFormat format, bool color, OutputFile file);
  static Document rays(OutputFile file);

  /// The samples, photos and notes.
  static Document items(RegisterFormat format, OutputFile file);

  /// Stands before the document, if any log is read.
  void precede(std::string_view text) { text_ = text; }
  /// The text of a log to come.
  LogText blank_log() const { return LogText(blank_); }
  /// Takes what there is of `log` so far, once it is worth a write.
  void follow(LogText& log);
  /// Bytes of `log` that it would take.
  std::size_t held(const LogText& log) const { return keep_ ? 0 : log.text_.size(); }
  /// Takes the rest of `log`. Logs come one after the other.
  void append(LogText& log);
  /// Ends the document and puts its file in place, unless no log was read or the run was refused
  /// half-way. Says what failed.
  void finish(Outcome& outcome);

  const OutputFile& file() const { return file_; }
  /// After `finish`: all of it was written.
  bool is_written() const { return is_written_; }

 private:
  using Csv = LogText::Csv;
  using CleanLog = LogText::CleanLog;
  using Writer = LogText::Writer;

  Document(Writer writer, OutputFile file, bool keep)
      : blank_(writer), writer_(std::move(writer)), file_(std::move(file)), keep_(keep) {}
  void begin();
  void take(LogText& log);
  void flush();

  /// What each log begins with.
  Writer blank_;
  /// What stands around the logs, with their totals.
  Writer writer_;
  OutputFile file_;
  bool keep_;
  bool begun_ = false;
  bool is_written_ = false;
  /// A log has text, so that the next one is kept apart from it.
  bool has_text_ = false;
  std::string text_;
  /// Bytes taken since nothing was left to write.
  std::size_t taken_ = 0;
};

/// The text of a log to come, for each document.
std::vector<LogText> blank_logs(std::span<const Document> documents);

}  // namespace lodebook::cli
