// SPDX-License-Identifier: MIT
#include <lodebook/cli/heading.hpp>

#include <fcntl.h>
#include <sys/stat.h>

#include <cerrno>
#include <lodebook/cli/file.hpp>

namespace lodebook::cli {

namespace {

std::string in_utf_8(std::string text, notebook::Encoding encoding) {
  return encoding == notebook::Encoding::windows_1252 ? notebook::utf8_from_windows_1252(text)
                                                      : std::move(text);
}

/// The folder of a file, with the slash behind it; empty for the current one.
std::string folder_before(std::string_view file) {
  return std::string(file.substr(0, file.rfind('/') + 1));
}

/// Opens a file below `folder`, a step at a time, so that no link leads out of it.
Descriptor open_below(const std::string& folder, std::string_view named) {
  Descriptor at(::open(folder.empty() ? "." : folder.c_str(), O_PATH | O_DIRECTORY | O_CLOEXEC));
  while (at.is_open()) {
    const std::size_t slash = named.find('/');
    const std::string step(named.substr(0, slash));
    const bool is_last = slash == std::string_view::npos;
    const int how = is_last ? O_RDONLY | O_NONBLOCK : O_PATH | O_DIRECTORY;
    Descriptor next(::openat(at.number(), step.c_str(), how | O_NOFOLLOW | O_CLOEXEC));
    if (is_last || !next.is_open()) return next;
    at = std::move(next);
    named.remove_prefix(slash + 1);
  }
  return at;
}

}  // namespace

bool take_heading(CommandLine& line) {
  line.headings.clear();
  if (!line.heading) return true;
  notebook::HeadingFile file{*line.heading, {}, {}};
  if (const std::error_code error = read_file(*line.heading, largest_heading, file.text)) {
    tell(cannot_read(*line.heading, error));
    return false;
  }
  file.text = in_utf_8(std::move(file.text), line.encoding);
  line.headings.push_back(std::move(file));
  return true;
}

std::string_view heading_refusal(std::string_view log, std::string_view named) {
  if (log == standard_stream) return "the log comes from standard input";
  if (named.starts_with('/')) return "its name begins with /";
  for (std::size_t begin = 0; begin <= named.size();) {
    const std::size_t end = std::min(named.find('/', begin), named.size());
    if (named.substr(begin, end - begin) == "..") return "its name holds ..";
    begin = end + 1;
  }
  return {};
}

notebook::HeadingFile open_heading(const std::string& log, std::string_view named,
                                   notebook::Encoding encoding) {
  const std::string folder = folder_before(log);
  notebook::HeadingFile file{folder + std::string(named), {}, {}};
  const auto fail = [&](std::string_view why) {
    file.fault = why;
    return file;
  };
  if (const std::string_view why = heading_refusal(log, named); !why.empty()) return fail(why);
  const Descriptor opened = open_below(folder, named);
  if (!opened.is_open())
    return fail(errno == ELOOP ? "it is a link"
                               : std::error_code(errno, std::generic_category()).message());
  struct stat about {};
  if (::fstat(opened.number(), &about) != 0 || !S_ISREG(about.st_mode))
    return fail("it is no regular file");
  for (bool more = true; more && file.text.size() <= largest_heading;) {
    if (const std::error_code error = read_some(opened.number(), file.text, more))
      return fail(error.message());
  }
  if (file.text.size() > largest_heading) return fail("it is larger than 1 MiB");
  file.text = in_utf_8(std::move(file.text), encoding);
  return file;
}

}  // namespace lodebook::cli
