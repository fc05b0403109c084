// SPDX-License-Identifier: MIT
// The geomagnetic field at a station, computed ahead of the station's turn. It is a tenth of the
// cost of a long log, and does not depend on other stations.
#pragma once

#include <optional>

#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/notebook/notebook.hpp>

namespace lodebook::reduction {

/// Where and when: what the field depends on.
struct PlaceAndDate {
  earth::Position position;
  double height_m = 0;
  notebook::Date date;

  friend bool operator==(const PlaceAndDate&, const PlaceAndDate&) = default;
};

/// The models' field at a place and date; no field where the models do not cover them.
struct KnownField {
  PlaceAndDate at;
  std::optional<earth::MagneticField> field;
};

std::optional<earth::MagneticField> field_of(const PlaceAndDate& at);

/// Follows a log's blocks and works out what field each is most likely to ask for.
class FieldAhead {
 public:
  /// `notebook` must outlive this.
  explicit FieldAhead(const notebook::Notebook& notebook) : notebook_(notebook) {}

  /// The field where the block states a position, at its first reading; nothing without a date.
  /// Blocks come in the order of the log.
  std::optional<KnownField> of(const notebook::Block& block);

 private:
  const notebook::Notebook& notebook_;
  std::optional<notebook::Date> date_;  ///< in force
};

}  // namespace lodebook::reduction
