// SPDX-License-Identifier: MIT
#include "target.hpp"

#include <cstdio>
#include <cstdlib>

#include <lodebook/output/diagnostic.hpp>

namespace lodebook::fuzz {

void require(bool holds, std::string_view what) {
  if (holds) return;
  std::fprintf(stderr, "what must hold does not: %.*s\n", static_cast<int>(what.size()),
               what.data());
  std::abort();
}

void require_none(std::string_view fault) {
  require(fault.empty(), fault);
}

Choice choice_of(std::string_view input) {
  Choice choice;
  if (input.empty()) return choice;
  choice.bits = static_cast<unsigned char>(input.back() ^ '\n');
  input.remove_suffix(1);
  const auto flag = [&](unsigned bit) { return ((choice.bits >> bit) & 1U) != 0; };
  choice.text = flag(7) ? notebook::utf8_from_windows_1252(input) : std::string(input);

  reduction::Options& options = choice.options;
  constexpr reduction::North norths[] = {reduction::North::geographic, reduction::North::grid,
                                         reduction::North::magnetic, reduction::North::geographic};
  options.north = norths[choice.bits & 3U];
  options.grid_columns = flag(1);
  if (flag(2)) options.repeats = reduction::Repeats::mean;
  if (flag(3) || flag(4)) {
    auto& setting = options.declination.emplace();
    using From = notebook::DeclinationSetting::From;
    setting.from = !flag(4) ? From::stated : flag(3) ? From::as_set : From::model;
    if (setting.from == From::stated) {
      setting.declination = *Declination::east(24.6);
      setting.sigma = 0.4;
    }
  }
  if (flag(5)) options.set = *Declination::west(12.5);
  if (flag(6)) options.rule = HandRule::left;
  return choice;
}

void require_printable(std::string_view text, std::string_view what) {
  std::string lines(text);
  std::erase_if(lines, [](char c) { return c == '\n' || c == '\t'; });
  std::string shown;
  output::append_printable(shown, lines);
  require(shown == lines, std::string(what) + " holds what a terminal would obey");
}

std::vector<std::vector<std::string>> cells_of_csv(std::string_view text) {
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row(1);
  bool quoted = false;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    std::string& cell = row.back();
    if (quoted && c == '"' && text.substr(at + 1, 1) == "\"") {
      cell.push_back('"');
      ++at;
    } else if (c == '"') {
      require(quoted || cell.empty(), "a quote within a cell without quotes");
      quoted = !quoted;
      if (!quoted) {
        const std::string_view next = text.substr(at + 1, 1);
        require(next == "," || next == "\n", "text behind a cell's closing quote");
      }
    } else if (quoted || (c != ',' && c != '\n')) {
      require(quoted || c != '\r', "a carriage return in a cell without quotes");
      cell.push_back(c);
    } else if (c == ',') {
      row.emplace_back();
    } else {
      rows.push_back(std::move(row));
      require(rows.back().size() == rows.front().size(), "a row of CSV with more or fewer cells");
      row.assign(1, "");
    }
  }
  require(!quoted && row.size() == 1 && row[0].empty(), "CSV that ends within a row");
  require(!rows.empty(), "CSV without a header");
  return rows;
}

void require_no_formula(const std::vector<std::vector<std::string>>& rows) {
  for (const auto& row : rows) {
    for (const std::string& cell : row) {
      const bool number = cell.find_first_not_of("-0123456789.") == cell.npos;
      require(number || std::string_view("=+-@\t\r").find(cell[0]) == std::string_view::npos,
              "a cell that a spreadsheet runs");
    }
  }
}

}  // namespace lodebook::fuzz
