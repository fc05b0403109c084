// SPDX-License-Identifier: MIT
// Extensions, ours and those that GDAL, a browser or a converter of pictures makes of ours.
#include <lodebook/cli/naming.hpp>

#include <algorithm>
#include <array>
#include <lodebook/cli/message.hpp>
#include <vector>

namespace lodebook::cli {
namespace {

/// What says no more than no extension at all.
constexpr std::string_view any_text = "txt";

/// A folder's dots are none of the name's; the name itself may begin with one.
std::size_t place_of_extension(std::string_view file) {
  const std::size_t base = file.rfind('/') + 1;
  const std::size_t dot = file.rfind('.');
  return dot == std::string_view::npos || dot < base ? file.size() : dot;
}

// GDAL warns of a type that a format has not, unless it is told what to do: time of day in most,
// dates in KML. A row without a position has no geometry, which an index does not take. The
// extension alone does not settle the driver where letters are capitals.
constexpr auto table = std::to_array<Conversion>({
    {"gpkg", "geojson", "ogr2ogr -f GPKG -mapFieldType Time=String {to} {from}"},
    {"shp", "geojson",
     "ogr2ogr -f 'ESRI Shapefile' -lco ENCODING=UTF-8 -mapFieldType Time=String {to} {from}"},
    {"kml", "geojson",
     "ogr2ogr -f KML -nln lodebook -mapFieldType Date=String,Time=String {to} {from}"},
    {"kmz", "geojson", "ogr2ogr -f LIBKML -mapFieldType Date=String,Time=String {to} {from}"},
    {"fgb", "geojson", "ogr2ogr -f FlatGeobuf -lco SPATIAL_INDEX=NO {to} {from}"},
    {"gml", "geojson", "ogr2ogr -f GML -nln lodebook -mapFieldType Time=String {to} {from}"},
    {"gpx", "geojson",
     "ogr2ogr -f GPX {to} {from} -dialect SQLite -sql 'SELECT geometry, station AS name, "
     "elevation_m AS ele FROM \"{layer}\" WHERE latitude IS NOT NULL GROUP BY station, latitude, "
     "longitude'"},
    {"dxf", "geojson",
     "ogr2ogr -f DXF {to} {from} -dialect SQLite -sql 'SELECT geometry, station AS Layer FROM "
     "\"{layer}\" WHERE latitude IS NOT NULL'"},
    {"xlsx", "geojson", "ogr2ogr -f XLSX {to} {from}"},
    {"ods", "geojson", "ogr2ogr -f ODS {to} {from}"},
    {"xlsx", "csv", "ogr2ogr -f XLSX -oo AUTODETECT_TYPE=YES {to} {from}"},
    {"ods", "csv", "ogr2ogr -f ODS -oo AUTODETECT_TYPE=YES {to} {from}"},
    {"png", "svg", "rsvg-convert -d 300 -p 300 -f png -o {to} {from}"},
    {"pdf", "svg", "rsvg-convert -f pdf -o {to} {from}"},
    {"ps", "svg", "rsvg-convert -f ps -o {to} {from}"},
    {"eps", "svg", "rsvg-convert -f eps -o {to} {from}"},
    {"pdf", "html", "chromium --headless --print-to-pdf={to} {from}"},
});

bool writes_it(std::span<const std::string_view> extensions, std::string_view extension) {
  return std::ranges::find(extensions, extension) != extensions.end();
}

bool can_convert(const Writes& writes, const Conversion& conversion) {
  const bool needs_layer = conversion.command.find("{layer}") != std::string_view::npos;
  return writes_it(writes.extensions, conversion.from) && !(needs_layer && writes.layer.empty());
}

/// The way to that extension from what `writes` can write, or else from what others write.
const Conversion* conversion_to(std::string_view extension, const Writes& writes) {
  const Conversion* of_others = nullptr;
  for (const Conversion& conversion : table) {
    if (conversion.extension != extension) continue;
    if (can_convert(writes, conversion)) return &conversion;
    if (of_others == nullptr) of_others = &conversion;
  }
  return of_others;
}

/// The commands that write it, and the layer of the first one's GeoJSON.
std::pair<std::vector<std::string_view>, std::string_view> writers_of(std::string_view extension) {
  std::vector<std::string_view> names;
  std::string_view layer;
  for (const CommandSpec& command : commands()) {
    if (!writes_it(command.extensions, extension)) continue;
    names.push_back(command.name);
    if (layer.empty()) layer = command.layer;
  }
  return {names, layer};
}

}  // namespace

std::string extension_of(std::string_view file) {
  std::string extension(file.substr(std::min(place_of_extension(file) + 1, file.size())));
  std::ranges::transform(extension, extension.begin(), [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  });
  return extension;
}

std::string with_extension(std::string_view file, std::string_view extension) {
  return std::string(file.substr(0, place_of_extension(file))).append(".").append(extension);
}

std::span<const Conversion> conversions() {
  return table;
}

std::optional<UsageError> refuse_extension(std::string_view file, const Writes& writes,
                                           bool any_other) {
  const std::string extension = extension_of(file);
  if (extension.empty() || extension == any_text || writes_it(writes.extensions, extension))
    return std::nullopt;
  const Conversion* const conversion = conversion_to(extension, writes);
  if (conversion == nullptr && any_other) return std::nullopt;
  const bool is_ours = conversion != nullptr && can_convert(writes, *conversion);
  if (is_ours) return extension_not_written(file, writes, conversion, {});
  const auto [others, layer] = writers_of(conversion != nullptr ? conversion->from : extension);
  return extension_not_written(file, {writes.who, writes.extensions, layer, writes.takes_format},
                               conversion, others);
}

}  // namespace lodebook::cli
