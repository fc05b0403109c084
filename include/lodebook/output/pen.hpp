// SPDX-License-Identifier: MIT
// Many short texts, written one behind the other.
#pragma once

#include <algorithm>
#include <cstddef>
#include <lodebook/orientation/decimal.hpp>
#include <string>
#include <string_view>
#include <utility>

namespace lodebook::output {

/// Writes at the end of a string as the string itself does, but for a fraction of the cost: room is
/// made in blocks, and what is written is only held against its end. The string belongs to the pen
/// until the pen is gone; then it ends where the pen stopped.
class Pen {
 public:
  explicit Pen(std::string& text) : text_(text), at_(text.data() + text.size()), end_(at_) {}
  Pen(const Pen&) = delete;
  Pen& operator=(const Pen&) = delete;
  ~Pen() { text_.resize(size()); }

  void push_back(char c) {
    make_room(1);
    *at_++ = c;
  }
  Pen& operator+=(std::string_view text) {
    make_room(text.size());
    at_ += text.copy(at_, text.size());
    return *this;
  }
  /// The next `size` bytes, to be written by whoever asks for them.
  char* take(std::size_t size) {
    make_room(size);
    return std::exchange(at_, at_ + size);
  }
  /// Writes once more the `size` bytes that stand at `start`.
  void repeat(std::size_t start, std::size_t size) {
    make_room(size);
    at_ = std::copy_n(text_.data() + start, size, at_);
  }

  std::size_t size() const { return static_cast<std::size_t>(at_ - text_.data()); }
  /// The last byte, if there is one.
  char& back() { return at_[-1]; }
  /// What was written behind the first `start` bytes.
  std::string_view behind(std::size_t start) const {
    return std::string_view(text_.data(), size()).substr(start);
  }
  void pop_back() { --at_; }
  /// Takes back all but the first `size` bytes.
  void cut(std::size_t size) { at_ = text_.data() + size; }

 private:
  void make_room(std::size_t more) {
    if (static_cast<std::size_t>(end_ - at_) < more) lengthen(more);
  }
  void lengthen(std::size_t more) {
    constexpr std::size_t block = 1024;
    const std::size_t written = size();
    text_.resize(written + std::max(more, block));
    at_ = text_.data() + written;
    end_ = text_.data() + text_.size();
  }

  std::string& text_;
  char* at_;
  char* end_;
};

using lodebook::append_figure;  // to a string

/// Appends the figure's text, written in its place.
inline void append_figure(Pen& out, std::int64_t units, int decimals, int min_digits = 1) {
  const std::size_t size = figure_size(units, decimals, min_digits);
  write_figure(out.take(size) + size, units, decimals, min_digits);
}

}  // namespace lodebook::output
