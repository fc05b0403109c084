// SPDX-License-Identifier: MIT
// A scanner over CSV text that copies nothing.
#include <lodebook/cli/csv_cells.hpp>
#include <lodebook/notebook/source.hpp>

namespace lodebook::cli {
namespace {

using notebook::byte_order_mark;

bool is_line_end(char c) {
  return c == '\n' || c == '\r';
}

}  // namespace

CsvRows::CsvRows(std::string_view text) : text_(text) {
  if (text_.starts_with(byte_order_mark)) at_ = line_begin_ = byte_order_mark.size();
}

void CsvRows::step_over_line_end() {
  at_ += text_.substr(at_).starts_with("\r\n") ? 2U : 1U;
  ++line_;
  line_begin_ = at_;
}

CsvCell CsvRows::next_cell() {
  CsvCell cell{at_, at_, line_, line_begin_, false};
  const auto ends_here = [&] {
    return at_ >= text_.size() || text_[at_] == ',' || is_line_end(text_[at_]);
  };
  if (at_ < text_.size() && text_[at_] == '"') {
    bool closed = false;
    for (++at_; at_ < text_.size() && !closed;) {
      if (is_line_end(text_[at_])) {
        step_over_line_end();
      } else if (text_.substr(at_).starts_with("\"\"")) {
        at_ += 2;
      } else {
        closed = text_[at_] == '"';
        ++at_;
      }
    }
    if (!closed && unclosed_line_ == 0) unclosed_line_ = cell.line;
    cell.quoted = closed && ends_here();
  }
  while (!ends_here())
    ++at_;
  cell.end = at_;
  return cell;
}

bool CsvRows::next(std::vector<CsvCell>& cells) {
  cells.clear();
  if (at_ >= text_.size()) return false;
  for (;;) {
    cells.push_back(next_cell());
    if (at_ >= text_.size()) return true;
    if (text_[at_] != ',') {
      step_over_line_end();
      return true;
    }
    ++at_;
  }
}

std::string value_of(std::string_view text, const CsvCell& cell) {
  const std::string_view raw = text.substr(cell.begin, cell.end - cell.begin);
  if (!cell.quoted) return std::string(raw);
  std::string value;
  for (std::size_t i = 1; i + 1 < raw.size(); ++i) {
    value += raw[i];
    if (raw[i] == '"') ++i;
  }
  return value;
}

void append_cell(std::string& out, std::string_view value, bool quoted) {
  if (!quoted && value.find_first_of(",\"\r\n") == std::string_view::npos) {
    out += value;
    return;
  }
  out += '"';
  for (const char c : value) {
    out += c;
    if (c == '"') out += c;
  }
  out += '"';
}

}  // namespace lodebook::cli
