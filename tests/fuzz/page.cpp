// SPDX-License-Identifier: MIT
// The fair copy of any bytes: nothing of the page is lost, and a copy of the copy is itself.
#include <lodebook/fair_copy/fair_copy.hpp>

#include "target.hpp"

namespace lodebook::fuzz {

void try_input(std::string_view input) {
  const notebook::Source page("fuzz.page", std::string(input));
  const std::string log = fair_copy::copy_page(notebook::read_log(page)).log;
  std::size_t from = 0;
  for (std::uint32_t number = 1; number <= page.line_count(); ++number) {
    const std::string_view line = page.text(page.line(number));
    const std::size_t at = log.find(line, from);
    require(at != std::string::npos, "a line of the page is not in the copy");
    from = at + line.size();
  }
  const notebook::Source copied("fuzz.log", log);
  require(fair_copy::copy_page(notebook::read_log(copied)).log == log,
          "a copy of the copy is another");
}

}  // namespace lodebook::fuzz
