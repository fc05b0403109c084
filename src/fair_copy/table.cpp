// SPDX-License-Identifier: MIT
#include "table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <lodebook/orientation/decimal.hpp>
#include <lodebook/orientation/quadrant.hpp>
#include <utility>

namespace lodebook::fair_copy {

namespace {

struct Name {
  Column column;
  std::string_view names;
};

/// Headings as people write them, folded, parted by commas.
constexpr Name names[] = {
    {Column::station,
     "station,sta,stn,st,stop,site,loc,locality,point,pt,outcrop,waypoint,wp,location"},
    {Column::kind,
     "kind,type,feature,structure,element,what,measurement,feat,surface,feature type,plane type"},
    {Column::strike, "strike,str,strike az,strike azimuth"},
    {Column::dip, "dip,dip deg,dip angle,dip amount,dip °"},
    {Column::side,
     "dip to,dips to,side,dip side,dip quadrant,quad,quadrant,dip "
     "letter,toward,towards,dip_to,dipto"},
    {Column::direction,
     "dip direction,dip dir,dipdir,dip azimuth,dip az,ddir,dip dirn,dir,direction,dip_dir,"
     "dip_direction,dipdirection,azimuth of dip,dip direction deg"},
    {Column::trend, "trend,azimuth,az,bearing,azim"},
    {Column::plunge, "plunge,pl,plg"},
    {Column::rake, "rake,pitch"},
    {Column::facing, "facing,way up,younging,polarity"},
    {Column::sense, "sense,movement,sense of movement"},
    {Column::remark, "remark,remarks,comment,comments,note,notes,description,descr,desc"},
    {Column::latitude, "latitude,lat"},
    {Column::longitude, "longitude,lon,long,lng"},
    {Column::elevation, "elevation,elev,alt,altitude,height,z"},
};

Column column_named(std::string_view heading) {
  const std::string whole = folded(heading);
  for (const std::string_view word : {"remark", "note", "comment"}) {
    if (whole.find(word) != std::string_view::npos) return Column::remark;
  }
  const std::string name = whole.substr(0, whole.find_first_of(",("));
  for (const Name& row : names) {
    for (std::size_t begin = 0; begin <= row.names.size();) {
      const std::size_t end = std::min(row.names.find(',', begin), row.names.size());
      if (row.names.substr(begin, end - begin) == name) return row.column;
      begin = end + 1;
    }
  }
  return Column::other;
}

std::vector<std::string_view> split(std::string_view line, char separator) {
  std::vector<std::string_view> cells;
  const bool blanks = separator == ' ';
  const bool may_quote = separator == ',' || separator == ';';
  std::size_t begin = blanks ? std::min(line.find_first_not_of(" \t"), line.size()) : 0;
  bool quoted = false;
  for (std::size_t at = begin; at <= line.size(); ++at) {
    if (may_quote && at < line.size() && line[at] == '"') quoted = !quoted;
    const bool ends =
        at == line.size() || (!quoted && (blanks ? line.substr(at, 2) == "  " || line[at] == '\t'
                                                 : line[at] == separator));
    if (!ends) continue;
    std::string_view cell = line.substr(begin, at - begin);
    while (cell.starts_with(' '))
      cell.remove_prefix(1);
    while (cell.ends_with(' '))
      cell.remove_suffix(1);
    if (may_quote && cell.size() >= 2 && cell.starts_with('"') && cell.ends_with('"'))
      cell = cell.substr(1, cell.size() - 2);
    cells.push_back(cell);
    if (blanks) {
      while (at + 1 < line.size() && (line[at + 1] == ' ' || line[at + 1] == '\t'))
        ++at;
    }
    begin = at + 1;
  }
  return cells;
}

/// Codes of kinds as they stand in a column of their own. Common practice, no source.
constexpr std::pair<std::string_view, std::string_view> codes[] = {
    {"bd", "bedding"},     {"bp", "bedding"},   {"be", "bedding"},   {"b", "bedding"},
    {"s0", "bedding"},     {"jn", "joint"},     {"jt", "joint"},     {"j", "joint"},
    {"ft", "fault"},       {"flt", "fault"},    {"f", "fault"},      {"fa", "fault"},
    {"sz", "shear"},       {"sh", "shear"},     {"sr", "shear"},     {"vn", "vein"},
    {"v", "vein"},         {"fo", "foliation"}, {"fl", "foliation"}, {"cl", "cleavage"},
    {"ct", "contact"},     {"co", "contact"},   {"cn", "contact"},   {"dk", "dike"},
    {"sc", "schistosity"}, {"li", "lineation"}, {"ln", "lineation"},
};

std::string kind_coded(const std::string& cell, const Page& page) {
  if (page.words.is_own(cell)) return cell;
  const std::string code = folded(cell);
  const auto* const found =
      std::ranges::find(codes, std::string_view(code), [](const auto& one) { return one.first; });
  return found == std::end(codes) ? cell : std::string(found->second);
}

bool is_ditto(std::string_view cell) {
  return cell == "\"" || cell == "''" || cell == "″" || cell == "”" || cell == "〃" ||
         folded(cell) == "do" || folded(cell) == "ditto";
}

/// A longer one is a sentence.
constexpr std::size_t longest_heading = 24;

bool is_attitude(Column column) {
  return column >= Column::strike && column <= Column::rake;
}

void ask(Line& line, std::string_view why) {
  if (line.is_question()) return;
  line.text = fmt::format("ask {}  ; {}", line.text.substr(0, line.text.find("  ; ")), why);
  line.meant.reset();
}

/// `vert.` in place of a figure.
bool starts_upright(std::string_view cell) {
  const std::string lower = folded(cell);
  return lower.starts_with("vert") || lower.starts_with("horiz") || lower == "flat";
}

bool starts_with_figure(std::string_view text) {
  return !text.empty() && ((text[0] >= '0' && text[0] <= '9') || text[0] == '-' || text[0] == '~');
}

}  // namespace

std::optional<Table> Table::headed_by(std::string_view line) {
  if (line.find_first_of("0123456789=") != std::string_view::npos) return std::nullopt;
  for (const char separator : {'\t', ';', '|', ',', '/', ' '}) {
    Table table;
    // A heading with strokes between stands over rows with blanks.
    table.separator_ = separator == '/' ? ' ' : separator;
    int attitudes = 0;
    bool angle = false;
    bool is_prose = false;
    for (const std::string_view cell : split(line, separator)) {
      is_prose = is_prose || cell.size() > longest_heading;
      const Column column = column_named(cell);
      table.headings_.push_back({column, std::string(cell)});
      attitudes += is_attitude(column) ? 1 : 0;
      angle = angle || column == Column::dip || column == Column::plunge || column == Column::rake;
    }
    // Two words with a stroke between are an order of pairs.
    const bool is_order = separator == '/' && table.headings_.size() < 3;
    if (attitudes >= 2 && angle && !is_order && !is_prose) return table;
  }
  return std::nullopt;
}

std::vector<std::string> Table::cells(std::string_view line) const {
  std::vector<std::string> cells;
  for (const std::string_view cell : split(line, separator_)) {
    // A ditto mark stands for what is above it in its column.
    const bool repeats = is_ditto(cell) && cells.size() < above_.size();
    cells.push_back(repeats ? above_[cells.size()] : std::string(cell));
  }
  return cells;
}

bool Table::is_row(const std::vector<std::string>& row) const {
  // With blanks between its columns a row has all that an attitude needs.
  std::size_t needed = 2;
  for (std::size_t i = 0; i < headings_.size() && separator_ == ' '; ++i) {
    const Column column = headings_[i].column;
    const bool counts = is_attitude(column) && column != Column::side;
    if (counts) needed = std::max(needed, i + 1);
    if (counts && i < row.size() && row[i].find_first_of("0123456789") == std::string::npos &&
        !starts_upright(row[i]))
      return false;
  }
  return row.size() >= needed;
}

bool Table::has_stations() const {
  return std::ranges::any_of(
      headings_, [](const Heading& heading) { return heading.column == Column::station; });
}

void Table::pass(std::string_view line) {
  std::vector<std::string> row = cells(line);
  if (is_row(row)) above_ = std::move(row);
}

std::optional<Lines> Table::row(std::string_view line, Page& page) {
  std::vector<std::string> row = cells(line);
  if (!is_row(row)) return std::nullopt;
  const std::string words = in_words(row, page);
  if (words.empty()) return std::nullopt;
  Lines lines;
  add_place(row, page, lines);
  Tokens tokens = tokens_of(words, page.words, separator_ == ';');
  auto readings = readings_of(words, tokens, page);
  if (!readings) return std::nullopt;
  if (const std::string doubt = doubt_of(row, page); !doubt.empty()) {
    for (Line& made : *readings)
      ask(made, doubt);
  }
  std::string remark;
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (!is_counted(i, row[i])) continue;
    const std::string_view name = i < headings_.size() ? std::string_view(headings_[i].name) : "";
    remark +=
        fmt::format("{}{}{}{}", remark.empty() ? "" : ", ", name, name.empty() ? "" : " ", row[i]);
  }
  if (!remark.empty()) {
    std::string& text = readings->back().text;
    text += (text.find("  ; ") == std::string_view::npos ? "  ; " : ", ") + remark;
  }
  lines.insert(lines.end(), readings->begin(), readings->end());
  above_ = std::move(row);
  return lines;
}

bool Table::is_counted(std::size_t column, std::string_view cell) const {
  const bool other = column < headings_.size() && headings_[column].column == Column::other;
  return other && cell.find_first_of("0123456789") != std::string_view::npos;
}

/// A remark that names another kind, or says how often, is about the reading.
std::string Table::doubt_of(const std::vector<std::string>& row, const Page& page) const {
  bool has_kind = false;
  for (std::size_t i = 0; i < row.size() && i < headings_.size(); ++i)
    has_kind = has_kind || (headings_[i].column == Column::kind && !row[i].empty());
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (i < headings_.size() && headings_[i].column != Column::remark) continue;
    for (const Token& token : tokens_of(row[i], page.words, false)) {
      if (!has_kind && token.is(Meaning::kind)) return fmt::format("or is it {}?", token.says);
      if (token.type == Token::Type::word && token.text.size() == 2 && (token.text[0] == 'x') &&
          token.text[1] >= '2')
        return "one, or several alike?";
    }
  }
  return {};
}

std::string Table::in_words(const std::vector<std::string>& row, const Page& page) const {
  std::array<std::string, static_cast<std::size_t>(Column::elevation) + 1> said;
  for (std::size_t i = 0; i < row.size() && i < headings_.size(); ++i) {
    std::string& cell = said[static_cast<std::size_t>(headings_[i].column)];
    if (cell.empty()) cell = row[i];
  }
  const auto cell = [&](Column column) -> const std::string& {
    return said[static_cast<std::size_t>(column)];
  };
  const auto angle = [&](Column column) {
    const std::string lower = folded(cell(column));
    return lower == "vert" || lower == "vertical" ? std::string("90") : cell(column);
  };
  // Words of a column that nobody knows may be about the reading, too.
  for (std::size_t i = 0; i < row.size(); ++i) {
    const bool other = i >= headings_.size() || headings_[i].column == Column::other;
    if (other && !row[i].empty() && !is_counted(i, row[i]))
      said[static_cast<std::size_t>(Column::remark)] += fmt::format(", {}", row[i]);
  }
  std::string& side = said[static_cast<std::size_t>(Column::side)];
  const std::string& direction = cell(Column::direction);
  if (side.empty() && !cell(Column::strike).empty() && !direction.empty()) {
    const auto degrees = read_decimal(direction);
    side = degrees ? std::string(name_of(nearest_eighth(*degrees))) : direction;
  }
  std::string text;
  if (!cell(Column::strike).empty() && !cell(Column::dip).empty()) {
    text = fmt::format("strike {} dip {} {}", cell(Column::strike), angle(Column::dip),
                       cell(Column::side));
  } else if (!cell(Column::direction).empty() && !cell(Column::dip).empty()) {
    text = fmt::format("dip direction {} dip {}", cell(Column::direction), angle(Column::dip));
  } else if (!cell(Column::trend).empty() && !cell(Column::plunge).empty()) {
    text = fmt::format("trend {} plunge {}", cell(Column::trend), angle(Column::plunge));
  } else if (!cell(Column::rake).empty()) {
    text = fmt::format("rake {}", cell(Column::rake));
  } else if (!cell(Column::kind).empty() && !angle(Column::dip).empty()) {
    text = fmt::format("dip {}", angle(Column::dip));
  } else {
    return {};
  }
  const bool figures = starts_with_figure(angle(Column::dip)) ||
                       starts_with_figure(angle(Column::plunge)) ||
                       starts_with_figure(cell(Column::rake));
  if (!figures) return {};
  const std::string& kind = cell(Column::kind);
  std::string line = kind.empty() ? page.kind : kind_coded(kind, page);
  line += " " + text;
  for (const Column column : {Column::facing, Column::sense, Column::remark}) {
    if (!cell(column).empty()) line += (column == Column::remark ? ", " : " ") + cell(column);
  }
  return line;
}

void Table::add_place(const std::vector<std::string>& row, Page& page, Lines& lines) const {
  std::string station;
  std::string latitude;
  std::string longitude;
  std::string elevation;
  for (std::size_t i = 0; i < row.size() && i < headings_.size(); ++i) {
    if (headings_[i].column == Column::station) station = row[i];
    if (headings_[i].column == Column::latitude) latitude = row[i];
    if (headings_[i].column == Column::longitude) longitude = row[i];
    if (headings_[i].column == Column::elevation) elevation = row[i];
  }
  if (station.empty() || folded(station) == folded(page.station)) return;
  page.begin_station(station);
  Line& heading = lines.emplace_back();
  heading.text = "station " + name_text(station);
  if (separator_ == ';') {
    std::ranges::replace(latitude, ',', '.');
    std::ranges::replace(longitude, ',', '.');
    std::ranges::replace(elevation, ',', '.');
  }
  if (!latitude.empty() && !longitude.empty())
    heading.text += fmt::format(" at {}, {}", latitude, longitude);
  if (!elevation.empty()) lines.emplace_back().text = fmt::format("elevation {} m", elevation);
}

}  // namespace lodebook::fair_copy
