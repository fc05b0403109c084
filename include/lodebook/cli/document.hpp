// SPDX-License-Identifier: MIT
// One output of a batch of logs: its format, and the file it goes to.
#pragma once

#include <string>
#include <variant>

#include <lodebook/cli/command_line.hpp>
#include <lodebook/cli/file.hpp>
#include <lodebook/output/fix_csv.hpp>
#include <lodebook/output/fix_geojson.hpp>
#include <lodebook/output/fix_json.hpp>
#include <lodebook/output/fix_rays.hpp>
#include <lodebook/output/fix_report.hpp>
#include <lodebook/output/geojson.hpp>
#include <lodebook/output/json.hpp>
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

/// Takes note of how `file` fared after its last write, and says what failed.
void finished(const OutputFile& file, Outcome& outcome);

/// A table or report on its way out, a page or log at a time, in large blocks.
class Document {
 public:
  static Document table(Format format, reduction::North north, output::Columns columns,
                        OutputFile file);
  /// `keep` holds all of it back until `finish`, so that two documents do not mix on one screen.
  static Document report(ReportFormat format, bool color, OutputFile file, bool keep);

  /// The positions of `fix`, or its sight lines: a document that `fixed` fills.
  static Document fixes(FixFormat format, bool color, OutputFile file);
  static Document rays(OutputFile file);

  void begin_log(const reduction::Reduction& reduction);
  void page(const notebook::Source& source, const reduction::Page& page);
  void end_log(const reduction::Reduction& reduction);

  /// A whole log.
  void fixed(const notebook::Source& source, const reduction::Fixes& fixes);
  /// Ends the document and puts its file in place, unless no log was read. Says what failed.
  void finish(Outcome& outcome);

  const OutputFile& file() const { return file_; }
  /// After `finish`: all of it was written.
  bool is_written() const { return begun_ && !file_.error(); }

 private:
  /// The CSV has nothing between logs; the clean log comes from the notebook at once.
  struct Csv {
    output::Columns columns;
  };
  struct CleanLog {};
  using Writer =
      std::variant<Csv, CleanLog, output::JsonWriter, output::GeoJsonWriter, output::StationReport,
                   output::JsonReport, output::LineReport, output::FixReport, output::FixJson,
                   output::FixCsv, output::FixGeoJson, output::FixRays>;

  Document(Writer writer, OutputFile file, bool keep)
      : writer_(std::move(writer)), file_(std::move(file)), keep_(keep) {}
  void begin();
  void flush(std::size_t limit);

  Writer writer_;
  OutputFile file_;
  bool keep_;
  bool begun_ = false;
  std::string text_;
};

}  // namespace lodebook::cli
