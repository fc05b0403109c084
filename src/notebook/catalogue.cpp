// SPDX-License-Identifier: MIT
// The pages of `lodebook explain`, put in the order of Code.
#include <lodebook/notebook/catalogue.hpp>

#include <algorithm>
#include <array>

#include "pages_fixes.hpp"
#include "pages_log.hpp"
#include "pages_readings.hpp"
#include "pages_stations.hpp"

namespace lodebook::notebook {

namespace {

constexpr auto all_pages = [] {
  std::array<CodePage, code_count> all{};
  auto* next = all.begin();
  for (const std::span<const CodePage> part :
       {std::span<const CodePage>(pages::of_readings), std::span<const CodePage>(pages::of_fixes),
        std::span<const CodePage>(pages::of_stations), std::span<const CodePage>(pages::of_log)})
    next = std::copy(part.begin(), part.end(), next);
  return all;
}();

constexpr bool in_order() {
  for (std::size_t i = 0; i < all_pages.size(); ++i) {
    if (static_cast<std::size_t>(all_pages[i].code) != i) return false;
    if (all_pages[i].name.empty() || all_pages[i].example.empty()) return false;
  }
  return true;
}
static_assert(in_order(), "pages stand in the order of Code");

}  // namespace

std::span<const CodePage> catalogue() {
  return all_pages;
}

const CodePage* page_named(std::string_view name) {
  const auto same = [](char a, char b) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
    return lower(a) == lower(b);
  };
  const auto* const found =
      std::find_if(all_pages.begin(), all_pages.end(), [&](const CodePage& page) {
        return std::equal(page.name.begin(), page.name.end(), name.begin(), name.end(), same);
      });
  return found == all_pages.end() ? nullptr : &*found;
}

std::string_view name_of(Code code) {
  return all_pages[static_cast<std::size_t>(code)].name;
}

std::string_view name_of(Severity severity) {
  switch (severity) {
    case Severity::error:
      return "error";
    case Severity::warning:
      return "warning";
    case Severity::note:
      break;
  }
  return "note";
}

}  // namespace lodebook::notebook
