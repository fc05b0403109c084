// SPDX-License-Identifier: MIT
#include "fair_copy/reduced_rows.hpp"

#include <algorithm>
#include <cmath>

#include <lodebook/notebook/notebook.hpp>
#include <lodebook/reduction/reduction.hpp>

namespace lodebook::test {
namespace {

Taken taken_from(const reduction::Row& row) {
  Taken taken;
  taken.line = row.entry->line;
  taken.rejected = row.status == reduction::Status::rejected;
  taken.doubtful = row.reading->doubtful;
  taken.kind = row.kind->name;
  taken.target = notebook::fold_case(row.target);
  taken.facing = row.facing;
  taken.sense = row.sense;
  taken.as_read = row.as_read;
  taken.dip = row.dip;
  taken.plunge = row.plunge;
  taken.rake = row.rake;
  taken.back_bearing = row.back_bearing;
  taken.distance_m = row.distance_m;
  taken.correction = row.correction;
  taken.written = row.written;
  return taken;
}

bool is_near(const std::optional<double>& a, const std::optional<double>& b) {
  return a.has_value() == b.has_value() && (!a || std::abs(*a - *b) < 1e-6);
}

bool is_near_on_circle(const std::optional<double>& a, const std::optional<double>& b,
                       double circle) {
  return a.has_value() == b.has_value() && (!a || std::abs(std::remainder(*a - *b, circle)) < 1e-6);
}

/// A station may be called `14` or `Stop-14`.
bool is_same_name(const std::string& a, const std::string& b) {
  return a == b || (!a.empty() && !b.empty() && (a.ends_with("-" + b) || b.ends_with("-" + a)));
}

}  // namespace

ReducedLog reduced_rows(const std::string& log) {
  const notebook::Notebook book = notebook::read_log(notebook::Source("day.txt", log));
  reduction::Options options;
  options.north = reduction::North::geographic;
  reduction::Reduction reduction(book, options);
  ReducedLog reduced;
  for (reduction::Page page; reduction.next(page);) {
    for (const reduction::Row& row : page.rows)
      reduced.rows.push_back(taken_from(row));
    for (const notebook::Diagnostic& diagnostic : page.diagnostics) {
      if (diagnostic.severity == notebook::Severity::error)
        reduced.error_lines.push_back(diagnostic.place.line);
    }
  }
  return reduced;
}

bool is_same(const Taken& a, const Taken& b) {
  if (a.rejected || b.rejected || a.doubtful != b.doubtful || a.kind != b.kind) return false;
  if (a.facing != b.facing || a.sense != b.sense || !is_same_name(a.target, b.target)) return false;
  // A vertical plane has two strikes, unless its side was typed.
  const bool is_vertical = a.dip && *a.dip > 89.99;
  return is_near_on_circle(a.as_read, b.as_read, is_vertical ? 180 : 360) &&
         is_near_on_circle(a.back_bearing, b.back_bearing, 360) && is_near(a.dip, b.dip) &&
         is_near(a.plunge, b.plunge) && is_near(a.rake, b.rake) &&
         is_near(a.distance_m, b.distance_m);
}

std::string shown(const Taken& taken) {
  return std::to_string(taken.line) + ": " + taken.kind + " " + taken.written;
}

}  // namespace lodebook::test
