// SPDX-License-Identifier: MIT
// Files: read whole, and written whole or not at all. What the system refuses is a value.
#pragma once

#include <sys/types.h>

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

#include <lodebook/cli/temporary.hpp>

namespace lodebook::cli {

/// The name that stands for standard input, or as an output for standard output.
inline constexpr std::string_view standard_stream = "-";

/// An open file of the system; closed at the end.
class Descriptor {
 public:
  Descriptor() = default;
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(other.release()) {}
  Descriptor& operator=(Descriptor&& other) noexcept;
  ~Descriptor() { close(); }

  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }
  int release();
  std::error_code close();

 private:
  int number_ = -1;
};

/// Reads the file `name` whole, `-` being standard input. Fails with what the system says, or
/// file_too_large over `limit` bytes.
std::error_code read_file(const std::string& name, std::size_t limit, std::string& text);

/// Reads what is there, at least one byte unless the end is reached, and appends it; `more` becomes
/// false at the end. Waits only where nothing is there.
std::error_code read_some(int descriptor, std::string& text, bool& more);
/// Another read would not have to wait.
bool has_input(int descriptor);
/// Somebody still reads what is written there.
bool has_reader(int descriptor);

/// The folder of a path, `.` for the current one, and the name within it.
std::string folder_of(const std::string& path);
std::string base_of(const std::string& path);
/// Follows symbolic links, also one whose target does not exist yet; nothing for a circle of them.
std::optional<std::string> behind_links(std::string path);

/// It is a file on a disk, rather than a pipe, a terminal or standard input, whatever that is.
bool is_regular_file(const std::string& name);
/// It is standard input, or there and no regular file: reading it again gives nothing, or fails.
bool is_stream_or_folder(const std::string& name);

/// How messages call an input: as typed, and `<stdin>` for standard input.
std::string typed_name(const std::string& name);

/// Which file a name means: two names of one file are equal. Only regular files and names of files
/// that do not exist yet have an identity; a terminal or /dev/null may well be used twice.
struct FileIdentity {
  dev_t device = 0;
  ino_t inode = 0;   ///< the folder's, for a file that does not exist yet
  std::string name;  ///< within the folder, for a file that does not exist yet

  friend bool operator==(const FileIdentity&, const FileIdentity&) = default;
};
std::optional<FileIdentity> identity_of(const std::string& name);
std::optional<FileIdentity> identity_of(int descriptor);

/// Two open streams end in the same file, terminal or pipe.
bool same_file(int descriptor, int other);

/// Where data go. A file is written under a temporary name beside it, which `commit` renames; until
/// then, and after any failure, an older file of that name stays as it was. What is no regular
/// file, such as a pipe or a device, is written directly. Nothing is created before the first
/// write.
class OutputFile {
 public:
  static OutputFile standard_output();
  static OutputFile standard_error();
  /// The file `name`, `-` being standard output.
  static OutputFile named(const std::string& name);

  OutputFile(OutputFile&&) noexcept = default;
  OutputFile& operator=(OutputFile&&) = delete;
  ~OutputFile() = default;

  /// Writes all of `data`. After a failure does nothing more.
  void write(std::string_view data);
  /// Puts the file in its place. Without it nothing remains.
  void commit();

  /// The first failure.
  std::error_code error() const { return error_; }
  /// Whoever read this pipe has gone.
  bool reader_gone() const { return error_ == std::errc::broken_pipe; }
  /// For messages.
  const std::string& shown() const { return shown_; }
  /// The stream's number, or nothing for a named file.
  std::optional<int> stream() const;
  bool is_terminal() const;

 private:
  OutputFile(std::string name, int stream, std::string shown);
  void open();

  std::string name_;
  int stream_;
  std::string shown_;
  Descriptor file_;
  std::string target_;   ///< `name_` behind all its symbolic links
  Temporary temporary_;  ///< is not there where the target is written directly
  std::error_code error_;
};

/// Gives the numbers of the three standard streams to nothing where they came closed, so that no
/// file opened later is taken for one of them.
void guard_standard_streams();

}  // namespace lodebook::cli
