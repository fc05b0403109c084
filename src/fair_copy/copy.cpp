// SPDX-License-Identifier: MIT
#include <lodebook/fair_copy/fair_copy.hpp>

#include "copied_page.hpp"
#include "page_reader.hpp"

namespace lodebook::fair_copy {

Copy copy_page(const notebook::Source& page) {
  PageReader reader(page);
  if (reader.is_log() || is_copy(page)) return {std::string(page.own_text()), {}};
  CopiedPage copied = reader.read();
  copied.hold_to_strict(page);
  return {copied.text(), copied.tally()};
}

}  // namespace lodebook::fair_copy
