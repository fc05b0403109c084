// SPDX-License-Identifier: MIT
#include <lodebook/output/register_json.hpp>
#include <lodebook/output/table.hpp>

#include "json_pieces.hpp"
#include "register_table.hpp"
#include "row_json.hpp"

namespace lodebook::output {

void RegisterJson::begin(std::string& out) {
  constexpr int version = 1;
  out += "{\"format\":\"lodebook-register\",";
  append_member(out, "version", version);
  out += "\n\"logs\":[";
}

void RegisterJson::begin_log(std::string& out, const reduction::Reduction& reduction) {
  out += "\n{";
  append_member(out, "file", notebook::valid_utf8(shown_name(reduction.notebook().source)));
  out += "\n\"items\":[";
}

void RegisterJson::page(std::string& out, const notebook::Source& source,
                        const reduction::Page& page) {
  Pen pen(out);
  for (const reduction::Item& item : page.items) {
    pen += first_ ? "\n" : ",\n";
    first_ = false;
    append_row_object(pen, register_columns(), RegisterRow{source, page, item});
    ++counts_[static_cast<std::size_t>(item.what)];
  }
}

void RegisterJson::end_log(std::string& out, const reduction::Reduction&) {
  out += "],\n";
  append_counts(out);
}

void RegisterJson::add(const RegisterJson& log) {
  for (std::size_t i = 0; i < counts_.size(); ++i)
    counts_[i] += log.counts_[i];
}

void RegisterJson::end(std::string& out) {
  out += "],\n";
  append_counts(out);
  out.push_back('\n');
}

void RegisterJson::append_counts(std::string& out) const {
  Pen pen(out);
  append_name(pen, "counts");
  pen.push_back('{');
  append_count(pen, "samples", counts_[static_cast<std::size_t>(reduction::Item::What::sample)]);
  append_count(pen, "photos", counts_[static_cast<std::size_t>(reduction::Item::What::photo)]);
  append_count(pen, "notes", counts_[static_cast<std::size_t>(reduction::Item::What::note)]);
  pen.back() = '}';
  pen.push_back('}');
}

}  // namespace lodebook::output
