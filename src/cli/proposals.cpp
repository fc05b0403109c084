// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <lodebook/cli/proposals.hpp>

namespace lodebook::cli {
namespace {

using notebook::Diagnostic;

constexpr std::size_t largest_log = 1 << 20;  // bytes

/// `'joint N50E 80 SE' and 'joint N48E 82 SE'?`
std::string help_of(const fair_copy::Proposal& proposal) {
  std::string help;
  for (const std::string& statement : proposal.statements)
    help += fmt::format("{}'{}'", help.empty() ? "" : " and ", statement);
  return help + '?';
}

/// The line becomes its statements, each as far indented as it was.
notebook::Fix fix_of(const notebook::Source& source, const fair_copy::Proposal& proposal) {
  const notebook::Span line = source.line(proposal.line);
  const std::string_view typed = source.text(line);
  const std::string_view indent =
      typed.substr(0, std::min(typed.find_first_not_of(" \t"), typed.size()));
  notebook::Fix fix{line, {}};
  for (const std::string& statement : proposal.statements)
    fix.text += fmt::format("{}{}{}", fix.text.empty() ? "" : "\n", indent, statement);
  return fix;
}

}  // namespace

const std::vector<fair_copy::Proposal>& Proposals::all() {
  if (!all_) {
    all_.emplace();
    if (log_.source.own_text().size() <= largest_log) all_ = fair_copy::proposals(log_);
  }
  return *all_;
}

void Proposals::attach(std::vector<Diagnostic>& diagnostics) {
  std::uint32_t done = 0;
  for (Diagnostic& diagnostic : diagnostics) {
    if (diagnostic.severity != notebook::Severity::error || diagnostic.place.heading != 0) continue;
    const std::uint32_t line = diagnostic.place.line;
    const auto proposal = std::ranges::lower_bound(all(), line, {}, &fair_copy::Proposal::line);
    if (proposal == all().end() || proposal->line != line) continue;
    const bool is_first = done != line;
    diagnostic.help = is_first ? help_of(*proposal) : std::string();
    diagnostic.fixes.clear();
    if (is_first) diagnostic.fixes.push_back(fix_of(log_.source, *proposal));
    done = line;
  }
}

}  // namespace lodebook::cli
