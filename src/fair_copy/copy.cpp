// SPDX-License-Identifier: MIT
#include <lodebook/fair_copy/fair_copy.hpp>

#include <algorithm>
#include <utility>

#include "copied_page.hpp"
#include "page_reader.hpp"

namespace lodebook::fair_copy {

Copy copy_page(const notebook::Notebook& page) {
  PageReader reader(page);
  if (reader.is_log() || is_copy(page.source)) return {std::string(page.source.own_text()), {}};
  CopiedPage copied = reader.read();
  copied.hold_to_strict(page);
  return {copied.text(), copied.tally()};
}

namespace {

/// Every word that nobody knows stands in a statement too: the line that it replaces is gone.
bool keeps_words(const Copied& line, const Words& words) {
  return std::ranges::all_of(tokens_of(line.typed, words, false), [&](const Token& token) {
    return !token.is(Meaning::unknown) || std::ranges::any_of(line.lines, [&](const Line& made) {
      return folded(made.text).find(folded(token.text)) != std::string::npos;
    });
  });
}

}  // namespace

std::vector<Proposal> proposals(const notebook::Notebook& log) {
  std::vector<Proposal> proposals;
  PageReader reader(log);
  if (reader.is_log() || is_copy(log.source)) return proposals;
  CopiedPage copied = reader.read();
  copied.hold_to_strict(log);
  for (const Copied& line : copied.lines()) {
    const bool stands =
        line.as_typed || line.lines.empty() || !keeps_words(line, reader.words()) ||
        std::ranges::any_of(line.lines, [](const Line& made) {
          return made.is_question() || made.is_note || made.waits != Statement::Wait::none;
        });
    if (stands) continue;
    Proposal& proposal = proposals.emplace_back();
    proposal.line = line.number;
    for (const Line& made : line.lines)
      proposal.statements.push_back(made.text);
  }
  return proposals;
}

}  // namespace lodebook::fair_copy
