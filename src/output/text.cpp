// SPDX-License-Identifier: MIT
// Numbers in their shortest form and in words, bold text, and JSON strings.
#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <iterator>
#include <lodebook/notebook/plain.hpp>
#include <lodebook/notebook/source.hpp>
#include <lodebook/output/diagnostic.hpp>
#include <lodebook/output/text.hpp>
#include <nlohmann/json.hpp>

namespace lodebook::output {
namespace {

/// Of a character that is hidden: at most U+FFFF.
unsigned code_point(std::string_view character) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(character[i]); };
  if (character.size() == 1) return byte(0);
  if (character.size() == 2) return (byte(0) & 0x1FU) << 6U | (byte(1) & 0x3FU);
  return (byte(0) & 0x0FU) << 12U | (byte(1) & 0x3FU) << 6U | (byte(2) & 0x3FU);
}

}  // namespace

void append_shortest(std::string& out, double value) {
  // The smallest doubles need over 300 zeros after the point, the largest as many before it.
  std::array<char, 400> digits;
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value + 0.0,
                                 std::chars_format::fixed);
  out.append(digits.data(), end.ptr);
}

void append_shortest_azimuth(std::string& out, double degrees) {
  if (degrees < 100) out.push_back('0');
  if (degrees < 10) out.push_back('0');
  append_shortest(out, degrees);
}

void append_coordinates(std::string& out, const earth::Position& position) {
  append_figure(out, rounded(std::abs(position.latitude), 5), 5);
  out += position.latitude < 0 ? "S " : "N ";
  append_figure(out, rounded(std::abs(position.longitude), 5), 5);
  out.push_back(position.longitude < 0 ? 'W' : 'E');
}

std::string azimuth_text(double degrees) {
  std::string out;
  append_figure(out, rounded_azimuth(degrees, 1), 1, 3);
  return out;
}

std::string clock_text(const notebook::Time& time) {
  std::string out;
  append_figure(out, time.hour, 0, 2);
  out.push_back(':');
  append_figure(out, time.minute, 0, 2);
  return out;
}

std::string printable(std::string_view text) {
  std::string out;
  append_printable(out, text);
  return out;
}

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return std::to_string(count).append(" ").append(count == 1 ? one : many);
}

std::string shell_quoted(std::string_view text) {
  constexpr std::string_view plain =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_./:+,@%-";
  if (!text.empty() && text.find_first_not_of(plain) == std::string_view::npos)
    return std::string(text);
  std::string quoted = "'";
  for (const char c : text) {
    if (c == '\'') {
      quoted += R"('\'')";
    } else {
      quoted += c;
    }
  }
  return quoted + "'";
}

void append_bold(std::string& out, std::string_view text, bool color) {
  if (color) out += "\x1b[1m";
  append_printable(out, text);
  if (color) out += "\x1b[0m";
}

std::string safe_json(std::string_view json) {
  std::string out;
  // The first bytes of what is_hidden knows and the dump has not escaped: DEL, C1, marks, BOM.
  constexpr std::string_view suspects = "\x7F\xC2\xD8\xE2\xEF";
  for (std::size_t at = 0; at < json.size();) {
    const std::size_t next = std::min(json.find_first_of(suspects, at), json.size());
    out += json.substr(at, next - at);
    at = next;
    if (at == json.size()) break;
    const std::string_view character = json.substr(at, notebook::utf8_length(json.substr(at)));
    if (is_hidden(character)) {
      fmt::format_to(std::back_inserter(out), "\\u{:04x}", code_point(character));
    } else {
      out += character;
    }
    at += character.size();
  }
  return out;
}

bool is_plain_json(std::string_view text) {
  return notebook::is_plain(text, '"', '\\');
}

std::string json_string(std::string_view text) {
  return safe_json(nlohmann::json(notebook::valid_utf8(text)).dump());
}

}  // namespace lodebook::output
