// SPDX-License-Identifier: MIT
// Writes what is installed beside the program: manual pages, completions for shells, and the
// changelog of the Debian package. Part of the build only; it is not installed itself.
#include <cstdio>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include "changelog.hpp"
#include "completions.hpp"
#include "manual.hpp"
#include "markdown.hpp"

namespace lodebook::install {
namespace {

std::string read(const std::string& name) {
  std::ifstream file(name, std::ios::binary);
  std::string text{std::istreambuf_iterator<char>(file), {}};
  if (!file || text.empty()) throw std::runtime_error("cannot read " + name);
  return text;
}

void write(const std::string& name, std::string_view text) {
  std::ofstream file(name, std::ios::binary);
  file << text << std::flush;
  if (!file) throw std::runtime_error("cannot write " + name);
}

void run(const std::string& repository, const std::string& destination) {
  const std::string templates = repository + "/src/install/";
  const Release release = latest_release(read(repository + "/docs/CHANGELOG.md"));
  if (release.version != LODEBOOK_VERSION)
    throw std::runtime_error("the program is " LODEBOOK_VERSION ", the latest of the changes " +
                             release.version);
  const std::map<std::string, std::string> parts = {
      {"version", release.version},
      {"date", manual_date(release.date)},
      {"synopsis", synopsis()},
      {"commands", commands_described()},
      {"options", options_described()},
      {"language", manual_of(read(repository + "/docs/log-language.md"))},
      {"cautions", manual_of(section_of(read(repository + "/README.md"), "Cautions"))},
  };
  for (const std::string page : {"lodebook.1", "lodebook-log.5"})
    write(destination + '/' + page, filled(read(templates + page + ".in"), parts));
  write(destination + "/lodebook", bash_completion());
  write(destination + "/_lodebook", zsh_completion());
  write(destination + "/lodebook.fish", fish_completion());
  write(destination + "/changelog.Debian",
        debian_changelog(release, LODEBOOK_PACKAGE_VERSION, LODEBOOK_MAINTAINER));
}

}  // namespace
}  // namespace lodebook::install

int main(int argc, char** argv) {
  if (argc != 3) {
    std::fputs("usage: lodebook_pages REPOSITORY DESTINATION\n", stderr);
    return 2;
  }
  try {
    lodebook::install::run(argv[1], argv[2]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "lodebook_pages: %s\n", error.what());
    return 1;
  }
}
