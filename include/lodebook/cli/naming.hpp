// SPDX-License-Identifier: MIT
// What an output may be called: the extensions that are written, and the way to others.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace lodebook::cli {

/// The extension of a file's name, in lower case and without its point; empty where it has none,
/// as `day`, `maps.d/day` or `-`.
std::string extension_of(std::string_view file);

/// `file` with another extension, or with its first one: `day.csv` for `day.kml` and for `day`.
std::string with_extension(std::string_view file, std::string_view extension);

/// A format that others write of one of ours, and the command for it.
struct Conversion {
  std::string_view extension;
  /// The extension of what it is made of.
  std::string_view from;
  /// With `{from}` and `{to}` for the two files, and `{layer}` for the layer of a GeoJSON.
  std::string_view command;
};

/// All of them; of one extension, the usual one first.
std::span<const Conversion> conversions();

/// Who wants to write to a file, and what it can write there.
struct Writes {
  /// A command or option, as messages call it.
  std::string_view who;
  std::span<const std::string_view> extensions;
  /// The layer of its GeoJSON.
  std::string_view layer = {};
  /// --format can name another.
  bool takes_format = false;
};

struct UsageError;

/// Refuses a name whose extension says that something else is in the file than `writes` can write.
/// `.txt` may be any text. With `any_other`, where the format is stated or is a text, only those
/// that `conversions` knows.
std::optional<UsageError> refuse_extension(std::string_view file, const Writes& writes,
                                           bool any_other);

}  // namespace lodebook::cli
