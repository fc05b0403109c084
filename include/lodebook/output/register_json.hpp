// SPDX-License-Identifier: MIT
// Samples, photos and notes as one JSON document.
#pragma once

#include <array>

#include <lodebook/reduction/reduction.hpp>

namespace lodebook::output {

/// Writes the document of `docs/register.schema.json`. Each log is written by a copy of its own:
/// begin_log, page for each of its pages, end_log. The document is begin, the texts of the logs
/// with `between` between them, and end, the copies having been added.
class RegisterJson {
 public:
  static constexpr std::string_view between = ",";

  void begin(std::string& out);
  void begin_log(std::string& out, const reduction::Reduction& reduction);
  void page(std::string& out, const notebook::Source& source, const reduction::Page& page);
  void end_log(std::string& out, const reduction::Reduction& reduction);
  /// The items of a log that `log` has written.
  void add(const RegisterJson& log);
  void end(std::string& out);

 private:
  void append_counts(std::string& out) const;

  bool first_ = true;
  /// By Item::What.
  std::array<std::size_t, 3> counts_{};
};

}  // namespace lodebook::output
