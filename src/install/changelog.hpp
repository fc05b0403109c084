// SPDX-License-Identifier: MIT
// The latest release, from the page of changes.
#pragma once

#include <lodebook/notebook/date.hpp>
#include <string>
#include <string_view>

namespace lodebook::install {

struct Release {
  std::string version;
  notebook::Date date;
};

/// The release that `changes` begins with, `## 0.1.0, 2026-11-27`. Throws std::runtime_error where
/// it does not.
Release latest_release(std::string_view changes);

/// The date as a manual page has it: `November 27, 2026`.
std::string manual_date(const notebook::Date& date);

/// The changelog of the Debian package, deb-changelog(5); `package_version` is its own version, and
/// `maintainer` who made it.
std::string debian_changelog(const Release& release, std::string_view package_version,
                             std::string_view maintainer);

}  // namespace lodebook::install
