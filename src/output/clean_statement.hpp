// SPDX-License-Identifier: MIT
// One statement of a log in canonical notation.
#pragma once

#include <span>
#include <string>

#include <lodebook/notebook/notebook.hpp>

namespace lodebook::output {

/// The statement of one line, given its entries: one, or one for each repeat. Without indentation,
/// remark and comment.
void append_statement(std::string& out, const notebook::Notebook& notebook,
                      std::span<const notebook::Entry> entries);

void append_set_statement(std::string& out, Declination set);
void append_declination_statement(std::string& out, const notebook::DeclinationSetting& setting);
void append_rule_statement(std::string& out, HandRule rule);

}  // namespace lodebook::output
