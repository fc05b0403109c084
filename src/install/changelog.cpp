// SPDX-License-Identifier: MIT
#include "changelog.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <optional>
#include <stdexcept>

namespace lodebook::install {
namespace {

constexpr std::array<std::string_view, 12> months = {
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};
constexpr std::array<std::string_view, 7> weekdays = {"Sun", "Mon", "Tue", "Wed",
                                                      "Thu", "Fri", "Sat"};

std::string_view month_of(const notebook::Date& date) {
  return months[date.month - 1U];
}

std::string_view weekday_of(const notebook::Date& date) {
  const std::chrono::sys_days day = std::chrono::year(date.year) / date.month / date.day;
  return weekdays[std::chrono::weekday(day).c_encoding()];
}

}  // namespace

Release latest_release(std::string_view changes) {
  constexpr std::string_view mark = "\n## ";
  const std::size_t begin = changes.find(mark);
  if (begin == std::string_view::npos) throw std::runtime_error("the changes name no release");
  changes.remove_prefix(begin + mark.size());
  const std::string_view heading = changes.substr(0, changes.find('\n'));
  const std::size_t comma = std::min(heading.find(", "), heading.size());
  const auto date =
      comma < heading.size() ? notebook::read_date(heading.substr(comma + 2)) : std::nullopt;
  if (!date) throw std::runtime_error("a release without its date: " + std::string(heading));
  return {std::string(heading.substr(0, comma)), *date};
}

std::string manual_date(const notebook::Date& date) {
  return fmt::format("{} {}, {}", month_of(date), date.day, date.year);
}

std::string debian_changelog(const Release& release, std::string_view package_version,
                             std::string_view maintainer) {
  return fmt::format(
      "lodebook ({}) unstable; urgency=medium\n"
      "\n"
      "  * Package of lodebook {}; changelog.gz says what is in it.\n"
      "\n"
      " -- {}  {}, {:02} {} {} 00:00:00 +0000\n",
      package_version, release.version, maintainer, weekday_of(release.date), release.date.day,
      month_of(release.date).substr(0, 3), release.date.year);
}

}  // namespace lodebook::install
