// SPDX-License-Identifier: MIT
#include <algorithm>
#include <lodebook/output/second_look.hpp>
#include <lodebook/output/table.hpp>

namespace lodebook::output {

void SecondLook::add(const notebook::Source& source, const reduction::Page& page) {
  constexpr std::size_t most = 3;
  for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
    if (diagnostic.severity == notebook::Severity::note) continue;
    const auto same_line = std::ranges::find_if(items_, [&](const Item& item) {
      return item.log == log_ && item.diagnostic.place.line == diagnostic.place.line;
    });
    if (same_line != items_.end()) {
      if (same_line->diagnostic.weight >= diagnostic.weight) continue;
      items_.erase(same_line);
    }
    const auto lighter = std::ranges::find_if(
        items_, [&](const Item& item) { return item.diagnostic.weight < diagnostic.weight; });
    if (lighter == items_.end() && items_.size() == most) continue;
    items_.insert(lighter,
                  {std::string(shown_name(source)), std::string(page.station), diagnostic, log_});
    if (items_.size() > most) items_.pop_back();
  }
}

}  // namespace lodebook::output
