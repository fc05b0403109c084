// SPDX-License-Identifier: MIT
// A log as one page to read, print and keep: self-contained HTML.
#pragma once

#include <lodebook/drawing/map.hpp>
#include <lodebook/output/notation.hpp>
#include <lodebook/output/second_look.hpp>
#include <lodebook/reduction/attitudes.hpp>
#include <lodebook/reduction/reduction.hpp>
#include <optional>
#include <string>
#include <unordered_set>
#include <vector>

namespace lodebook::drawing {

/// Writes the page of one log: begin_log, page for each page, end_log, then append_html. The
/// reduction must live until end_log.
///
/// The page holds the settings, what most deserves a second look, every reading as typed and as
/// corrected, the checks and the faults, a net, roses and the map, and cautions: all that the text
/// report says. It is well-formed as HTML and as XML. It loads nothing from outside, and its policy
/// forbids that. It is complete without the script, which marks a reading of the table in the
/// pictures.
class Sheet {
 public:
  /// `map` is that of the log, after its last page.
  explicit Sheet(const Map& map, output::PlanesAs planes = output::PlanesAs::strike);

  void begin_log(const reduction::Reduction& reduction);
  void page(const notebook::Source& source, const reduction::Page& page);
  void end_log();
  void append_html(std::string& out) const;

 private:
  void append_contents(std::string& out) const;
  void append_pictures(std::string& out) const;
  void append_cautions(std::string& out) const;
  bool has_cautions() const { return caution_ || map_; }

  /// Nothing where no place is known, or they are too far apart; and why.
  std::optional<Picture> map_;
  std::string no_map_;
  std::vector<std::string> not_on_map_;
  /// The `source` of each reading that the map shows.
  std::unordered_set<std::string> on_map_;
  output::PlanesAs planes_;
  const reduction::Reduction* reduction_ = nullptr;
  reduction::Attitudes attitudes_;
  output::SecondLook second_look_;
  bool caution_ = false;

  std::string title_;
  // Parts of the page.
  std::string heading_;
  std::string contents_;
  std::string look_;
  std::string stations_;
};

}  // namespace lodebook::drawing
