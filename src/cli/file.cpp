// SPDX-License-Identifier: MIT
// read(2), write(2) and rename(2), with every answer of theirs looked at.
#include <lodebook/cli/file.hpp>

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <utility>

namespace lodebook::cli {
namespace {

/// Bytes that a file is asked for at the least.
constexpr std::size_t read_size = 1 << 16;

std::error_code last_error() {
  return {errno, std::generic_category()};
}

/// Waits until the stream, which someone has made non-blocking, can go on.
void wait_for(int descriptor, short event) {
  pollfd waiting{descriptor, event, 0};
  ::poll(&waiting, 1, -1);
}

}  // namespace

Descriptor& Descriptor::operator=(Descriptor&& other) noexcept {
  close();
  number_ = other.release();
  return *this;
}

int Descriptor::release() {
  return std::exchange(number_, -1);
}

std::error_code Descriptor::close() {
  if (!is_open()) return {};
  return ::close(release()) == 0 ? std::error_code() : last_error();
}

std::error_code read_some(int descriptor, std::string& text, bool& more) {
  const std::size_t before = text.size();
  text.resize(std::max(before + read_size, std::min(text.capacity(), before + (read_size << 4))));
  for (;;) {
    const ssize_t got = ::read(descriptor, text.data() + before, text.size() - before);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0 && errno == EAGAIN) {
      wait_for(descriptor, POLLIN);
      continue;
    }
    const std::error_code error = got < 0 ? last_error() : std::error_code();
    text.resize(before + static_cast<std::size_t>(std::max<ssize_t>(got, 0)));
    more = got > 0;
    return error;
  }
}

bool has_input(int descriptor) {
  pollfd waiting{descriptor, POLLIN, 0};
  return ::poll(&waiting, 1, 0) > 0;
}

bool has_reader(int descriptor) {
  pollfd written{descriptor, 0, 0};
  return ::poll(&written, 1, 0) <= 0 || (written.revents & (POLLERR | POLLHUP)) == 0;
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

std::string base_of(const std::string& path) {
  return path.substr(path.rfind('/') + 1);
}

std::optional<std::string> behind_links(std::string path) {
  constexpr int most = 40;  // as the kernel allows
  for (int followed = 0; followed <= most; ++followed) {
    std::array<char, 4096> buffer;
    const ssize_t length = ::readlink(path.c_str(), buffer.data(), buffer.size());
    if (length < 0) return path;
    std::string next(buffer.data(), static_cast<std::size_t>(length));
    if (!next.starts_with('/')) next = folder_of(path) + '/' + next;
    path = std::move(next);
  }
  return std::nullopt;
}

std::error_code read_file(const std::string& name, std::size_t limit, std::string& text) {
  Descriptor file;
  int number = STDIN_FILENO;
  if (name != standard_stream) {
    file = Descriptor(::open(name.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file.is_open()) return last_error();
    number = file.number();
  }
  struct stat about {};
  if (::fstat(number, &about) != 0) return last_error();
  if (S_ISREG(about.st_mode)) {
    const auto size = static_cast<std::size_t>(std::max<off_t>(about.st_size, 0));
    if (size > limit) return std::make_error_code(std::errc::file_too_large);
    text.reserve(size + read_size);  // with room for the read that finds the end
  }
  for (bool more = true; more;) {
    if (const std::error_code error = read_some(number, text, more)) return error;
    if (text.size() > limit) return std::make_error_code(std::errc::file_too_large);
  }
  return {};
}

bool is_regular_file(const std::string& name) {
  struct stat about {};
  return name != standard_stream && ::stat(name.c_str(), &about) == 0 && S_ISREG(about.st_mode);
}

bool is_stream_or_folder(const std::string& name) {
  struct stat about {};
  return name == standard_stream || (::stat(name.c_str(), &about) == 0 && !S_ISREG(about.st_mode));
}

std::string typed_name(const std::string& name) {
  return name == standard_stream ? "<stdin>" : name;
}

std::optional<FileIdentity> identity_of(int descriptor) {
  struct stat about {};
  if (::fstat(descriptor, &about) != 0 || !S_ISREG(about.st_mode)) return std::nullopt;
  return FileIdentity{about.st_dev, about.st_ino, {}};
}

std::optional<FileIdentity> identity_of(const std::string& name) {
  struct stat about {};
  if (::stat(name.c_str(), &about) == 0) {
    if (!S_ISREG(about.st_mode)) return std::nullopt;
    return FileIdentity{about.st_dev, about.st_ino, {}};
  }
  const auto target = behind_links(name);
  if (!target || ::stat(folder_of(*target).c_str(), &about) != 0) return std::nullopt;
  return FileIdentity{about.st_dev, about.st_ino, base_of(*target)};
}

bool same_file(int descriptor, int other) {
  struct stat one {};
  struct stat two {};
  return ::fstat(descriptor, &one) == 0 && ::fstat(other, &two) == 0 && one.st_dev == two.st_dev &&
         one.st_ino == two.st_ino;
}

OutputFile::OutputFile(std::string name, int stream, std::string shown)
    : name_(std::move(name)), stream_(stream), shown_(std::move(shown)) {}

OutputFile OutputFile::standard_output() {
  return {{}, STDOUT_FILENO, "standard output"};
}
OutputFile OutputFile::standard_error() {
  return {{}, STDERR_FILENO, "standard error"};
}
OutputFile OutputFile::named(const std::string& name) {
  return name == standard_stream ? standard_output() : OutputFile(name, -1, name);
}

std::optional<int> OutputFile::stream() const {
  return stream_ < 0 ? std::nullopt : std::optional(stream_);
}

bool OutputFile::is_terminal() const {
  if (stream_ >= 0) return ::isatty(stream_) == 1;
  struct stat about {};
  if (::stat(name_.c_str(), &about) != 0 || !S_ISCHR(about.st_mode)) return false;
  const Descriptor file(::open(name_.c_str(), O_WRONLY | O_NOCTTY | O_NONBLOCK | O_CLOEXEC));
  return file.is_open() && ::isatty(file.number()) == 1;
}

void OutputFile::open() {
  struct stat about {};
  const bool exists = ::stat(name_.c_str(), &about) == 0;
  if (exists && !S_ISREG(about.st_mode)) {
    file_ = Descriptor(::open(name_.c_str(), O_WRONLY | O_CLOEXEC));
    if (!file_.is_open()) error_ = last_error();
    return;
  }
  const auto target = behind_links(name_);
  if (!target) {
    error_ = std::make_error_code(std::errc::too_many_symbolic_link_levels);
    return;
  }
  target_ = *target;
  // Renaming would replace even a file that someone has protected.
  if (exists && ::faccessat(AT_FDCWD, target_.c_str(), W_OK, AT_EACCESS) != 0) {
    error_ = last_error();
    return;
  }
  int number = -1;
  // Who could read the old file can read the new one, and nobody else at any time.
  error_ = temporary_.create(folder_of(target_), exists ? 0600 : 0666, number);
  if (error_) return;
  file_ = Descriptor(number);
  if (exists && ::fchmod(file_.number(), about.st_mode & 07777) != 0) error_ = last_error();
}

void OutputFile::write(std::string_view data) {
  if (!error_ && stream_ < 0 && !file_.is_open()) open();
  const int number = stream_ < 0 ? file_.number() : stream_;
  while (!error_ && !data.empty()) {
    const ssize_t put = ::write(number, data.data(), data.size());
    if (put >= 0) {
      data.remove_prefix(static_cast<std::size_t>(put));
    } else if (errno == EAGAIN) {
      wait_for(number, POLLOUT);
    } else if (errno != EINTR) {
      error_ = last_error();
    }
  }
}

void OutputFile::commit() {
  write({});
  if (error_ || stream_ >= 0) return;
  error_ = file_.close();
  if (!error_ && temporary_.exists()) error_ = temporary_.put(target_);
}

void guard_standard_streams() {
  for (const int number : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(number, F_GETFD) != -1 || errno != EBADF) continue;
    // Opened the wrong way round, so that using it still fails. The lowest free number is taken.
    ::open("/dev/null", number == STDIN_FILENO ? O_WRONLY : O_RDONLY);
  }
}

}  // namespace lodebook::cli
