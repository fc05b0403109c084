// SPDX-License-Identifier: MIT
// What a line of headings says of the rows below it.
#include <fmt/format.h>

#include <algorithm>

#include "spelling.hpp"
#include "table.hpp"

namespace lodebook::fair_copy {

namespace {

/// A longer one is a sentence.
constexpr std::size_t longest_heading = 24;

bool is_of_attitude(Column column) {
  return is_angle(column) || is_bearing(column) || column == Column::side;
}

}  // namespace

bool Table::has(Column column) const {
  return std::ranges::any_of(headings_, [&](const Heading& heading) {
    return heading.column == column || heading.second == column;
  });
}

/// Of several columns of that name the first.
void Table::turn(Column from, Column to) {
  if (has(to)) return;
  const auto found = std::ranges::find(headings_, from, &Heading::column);
  if (found != headings_.end()) found->column = to;
}

/// What stands in a second column of a name goes into the remark.
void Table::drop_repeats() {
  for (auto later = headings_.begin(); later != headings_.end(); ++later) {
    const bool repeats =
        std::find_if(headings_.begin(), later, [&](const Heading& earlier) {
          return earlier.column == later->column || earlier.second == later->column;
        }) != later;
    if (repeats && later->column != Column::remark) later->column = Column::other;
  }
}

bool Table::take_as_leg() {
  const bool ends =
      has(Column::to) || (has(Column::station) && (has(Column::back) || has(Column::slope)));
  const bool is_sight = has(Column::to) && !has(Column::distance) && !has(Column::dip) &&
                        !has(Column::plunge) && !has(Column::kind) && headings_.size() > 2;
  if (!is_sight && (!has(Column::distance) || !ends)) return false;
  if (is_sight && !has(Column::station) && !has(Column::back) && !has(Column::slope)) return false;
  for (const Column column : {Column::strike, Column::direction, Column::trend})
    turn(column, Column::bearing);
  for (const Column column : {Column::dip, Column::plunge})
    turn(column, Column::slope);
  if (!has(Column::bearing)) return false;
  drop_repeats();
  return is_leg_ = true;
}

bool Table::take_as_attitude() {
  if (has(Column::rake)) {
    for (Heading& heading : headings_) {
      if (heading.column == Column::station && folded(heading.name) == "from" && !has(Column::end))
        heading.column = Column::end;
    }
  }
  turn(Column::to, Column::side);
  // Beside the side, or a dip direction, a direction is the strike's.
  const auto bare = std::ranges::find_if(headings_, [](const Heading& heading) {
    const std::string name = folded(heading.name);
    return heading.column == Column::direction && (name == "direction" || name == "dir");
  });
  const auto directions = std::ranges::count(headings_, Column::direction, &Heading::column);
  if (bare != headings_.end() && !has(Column::strike) && (has(Column::side) || directions > 1))
    bare->column = Column::strike;
  if (!has(Column::set)) turn(Column::surface, Column::kind);
  if (has(Column::plunge)) turn(Column::bearing, Column::trend);
  drop_repeats();
  for (Heading& heading : headings_) {
    if (heading.second != Column::to) continue;
    heading.column = Column::other;
    heading.second.reset();
  }
  const bool named = has(Column::strike) || has(Column::direction) || has(Column::trend);
  int parts = 0;
  bool angle = false;
  for (Heading& heading : headings_) {
    const bool needless = heading.column == Column::bearing && named && !heading.second;
    const bool of_leg = heading.column == Column::back || heading.column == Column::distance ||
                        heading.column == Column::slope || heading.column == Column::to;
    const bool endless = heading.column == Column::end && !has(Column::rake);
    const bool looks = heading.column == Column::surface;
    if (needless || of_leg || endless || looks) heading.column = Column::other;
    parts += (is_of_attitude(heading.column) ? 1 : 0) + (heading.second ? 1 : 0);
    angle = angle || is_angle(heading.column) || (heading.second && is_angle(*heading.second));
  }
  return parts >= 2 && angle;
}

/// Else it is prose, or the order of pairs.
bool Table::is_heading() const {
  std::size_t known = 0;
  std::size_t pairs = 0;
  bool is_prose = false;
  for (const Heading& heading : headings_) {
    known += heading.column == Column::other ? 0U : 1U;
    pairs += heading.second ? 1U : 0U;
    is_prose = is_prose || heading.name.size() > longest_heading;
    const bool strange =
        heading.column == Column::other &&
        (heading.name.size() != 1 && (heading.name.size() != 2 || !is_letter(heading.name[0])));
    is_prose = is_prose || (separator_ == Separator::blank && strange);
  }
  const bool tight = separator_ == Separator::tab || separator_ == Separator::bar;
  const bool has_more = has(Column::kind) || has(Column::index) || has(Column::set) ||
                        has(Column::station) || has(Column::remark) || tight;
  const std::size_t least =
      separator_ == Separator::stroke || separator_ == Separator::blank ? 3 : 2;
  return !is_prose && headings_.size() >= least &&
         (pairs == 0 || (has_more && known > pairs) || (tight && headings_.size() > pairs));
}

/// `fault tables: no | strike | ...`, `Joints | strike | dip`, `rake of striae`
void Table::name_kinds(std::string_view line, const Words& words) {
  const auto kind_in_words = [&](std::string_view text) {
    for (const Token& token : tokens_of(text, words, false)) {
      if (token.is(Meaning::kind)) return std::string(token.says);
    }
    return std::string();
  };
  state_.kind = kind_in_words(line.substr(0, line.find(headings_.front().name)));
  const bool has_column = has(Column::kind) || has(Column::set);
  for (const Heading& heading : headings_) {
    // `Joints`, `remarks, joints all`; not `cont m`.
    const auto whole = words.find(folded(heading.name));
    const bool names =
        (heading.column == Column::other && whole && whole->meaning == Meaning::kind) ||
        (heading.column == Column::remark && heading.name.find(',') != std::string::npos);
    if (names && !has_column && state_.kind.empty()) state_.kind = kind_in_words(heading.name);
    const bool of_line = heading.column == Column::rake || heading.column == Column::trend ||
                         heading.column == Column::plunge;
    if (of_line && state_.rake_kind.empty()) state_.rake_kind = kind_in_words(heading.name);
  }
  if (state_.rake_kind == "striation") state_.rake_kind = "slickenline";
}

std::optional<Table> Table::headed_by(std::string_view line, const Page& page) {
  if (has_digit(line) || line.find('=') != std::string_view::npos) return std::nullopt;
  for (const Separator separator :
       {Separator::tab, Separator::semicolon, Separator::bar, Separator::comma, Separator::stroke,
        Separator::blanks, Separator::blank}) {
    Table table(headings_in(line, separator, page.words), separator);
    for (Heading& heading : table.headings_)
      heading.span = in_letters(line, heading.span);
    if (!table.is_heading()) continue;
    if (!table.take_as_leg() && !table.take_as_attitude()) continue;
    table.name_kinds(line, page.words);
    return table;
  }
  return std::nullopt;
}

Lines Table::heading(std::string_view line, Page& page) const {
  Lines lines;
  lines.emplace_back().text = fmt::format("note {}", stripped(line));
  lines.back().is_note = true;
  // `strike (RHR)`
  for (const Token& token : tokens_of(line, page.words, false)) {
    if (!token.is(Meaning::rule) || page.conventions.rule) continue;
    page.conventions.rule = token.says == "right" ? HandRule::right : HandRule::left;
    lines.emplace_back().text = fmt::format("rule {}", token.says);
  }
  return lines;
}

/// Below the headings a row of their units; nothing for another.
std::optional<Lines> Table::units_row(std::string_view line) {
  if (has_rows_ || has_digit(line)) return std::nullopt;
  const std::vector<Cell> cells = cells_in(line, separator_);
  if (cells.size() > headings_.size() || cells.size() < 2) return std::nullopt;
  const auto unit_in = [](const Cell& cell) {
    std::string text = cell.text;
    std::erase_if(text, [](char c) { return c == '(' || c == ')' || c == '[' || c == ']'; });
    return unit_named(text);
  };
  std::size_t units = 0;
  for (const Cell& cell : cells) {
    if (!cell.text.empty() && unit_in(cell) == Unit::none) return std::nullopt;
    units += cell.text.empty() ? 0U : 1U;
  }
  if (units == 0) return std::nullopt;
  for (const Cell& cell : cells) {
    const std::size_t column = separator_ == Separator::blanks
                                   ? aligned_with(in_letters(line, cell.span))
                                   : static_cast<std::size_t>(&cell - cells.data());
    if (column < headings_.size() && !cell.text.empty()) headings_[column].unit = unit_in(cell);
  }
  Lines lines;
  lines.emplace_back().text = fmt::format("note {}", stripped(line));
  lines.back().is_note = true;
  return lines;
}

}  // namespace lodebook::fair_copy
