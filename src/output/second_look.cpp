// SPDX-License-Identifier: MIT
#include <algorithm>
#include <lodebook/output/second_look.hpp>
#include <lodebook/output/table.hpp>
#include <utility>

namespace lodebook::output {
namespace {

constexpr std::size_t most = 3;

}  // namespace

void SecondLook::add(const notebook::Source& source, const reduction::Page& page) {
  for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
    if (diagnostic.severity == notebook::Severity::note) continue;
    const auto same_line = std::ranges::find_if(items_, [&](const Item& item) {
      return on_one_line(item.diagnostic.place, diagnostic.place);
    });
    if (same_line != items_.end()) {
      if (same_line->diagnostic.weight >= diagnostic.weight) continue;
      items_.erase(same_line);
    }
    if (items_.size() == most && items_.back().diagnostic.weight >= diagnostic.weight) continue;
    insert({std::string(shown_name(source.name_of(diagnostic.place))), std::string(page.station),
            diagnostic});
  }
}

void SecondLook::add(const SecondLook& log) {
  for (const Item& item : log.items_)
    insert(item);
}

void SecondLook::insert(Item item) {
  const auto lighter = std::ranges::find_if(
      items_, [&](const Item& other) { return other.diagnostic.weight < item.diagnostic.weight; });
  items_.insert(lighter, std::move(item));
  if (items_.size() > most) items_.pop_back();
}

}  // namespace lodebook::output
