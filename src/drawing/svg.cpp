// SPDX-License-Identifier: MIT
#include <lodebook/drawing/svg.hpp>

#include <lodebook/drawing/markup.hpp>
#include <lodebook/drawing/style.hpp>
#include <lodebook/orientation/decimal.hpp>

namespace lodebook::drawing {
namespace {

/// A thousandth of a millimetre is finer than any print.
constexpr int decimals = 3;

std::string figure(double millimetres) {
  std::string out;
  append_trimmed(out, millimetres, decimals);
  return out;
}

std::string data_of(const Path& path) {
  std::string data;
  for (const std::vector<Point>& part : path.parts) {
    char command = 'M';
    for (const Point& point : part) {
      data.push_back(command);
      append_trimmed(data, point.x, decimals);
      data.push_back(' ');
      append_trimmed(data, point.y, decimals);
      command = 'L';
    }
    if (path.closed && !part.empty()) data.push_back('Z');
  }
  return data;
}

std::string_view name_of(Words::Anchor anchor) {
  switch (anchor) {
    case Words::Anchor::middle:
      return "middle";
    case Words::Anchor::end:
      return "end";
    case Words::Anchor::start:
      break;
  }
  return "start";
}

class Writer {
 public:
  Writer(std::string& out, const Picture& picture) : markup_(out), picture_(picture) {}

  void write(bool with_style_sheet) {
    const std::string width = figure(picture_.width());
    const std::string height = figure(picture_.height());
    const std::string title_id = picture_.name() + "-title";
    const std::string description_id = picture_.name() + "-description";
    markup_.open("svg", {{"xmlns", "http://www.w3.org/2000/svg"},
                         {"class", "drawn"},
                         {"width", width + "mm"},
                         {"height", height + "mm"},
                         {"viewBox", "0 0 " + width + ' ' + height},
                         {"role", "img"},
                         {"aria-labelledby", title_id + ' ' + description_id}});
    markup_.line_break();
    markup_.element("title", {{"id", title_id}}, picture_.title());
    markup_.element("desc", {{"id", description_id}}, picture_.description());
    markup_.line_break();
    if (with_style_sheet) {
      std::string sheet;
      append_style_sheet(sheet, Paper::light, svg_scope);
      markup_.open("style");
      markup_.line_break();
      markup_.verbatim(sheet);
      markup_.close();
      markup_.line_break();
    }
    markup_.empty("rect", {{"class", "paper"}, {"width", width}, {"height", height}});
    markup_.line_break();
    for (const Picture::Item& item : picture_.items()) {
      std::visit([this](const auto& what) { write(what); }, item);
      markup_.line_break();
    }
    markup_.close();
    markup_.line_break();
  }

 private:
  void write(const Shape& shape) {
    std::string classes(class_of(shape.role));
    if (shape.series) classes += ' ' + class_of_series(*shape.series);
    if (shape.series && shape.role == Role::curve) classes += ' ' + class_of_pattern(*shape.series);
    if (shape.level) classes += ' ' + class_of_level(*shape.level);
    std::visit([&](const auto& form) { write(form, classes); }, shape.form);
  }
  void write(const Path& path, std::string_view classes) {
    markup_.empty("path", {{"class", classes}, {"d", data_of(path)}});
  }
  void write(const Circle& circle, std::string_view classes) {
    markup_.empty("circle", {{"class", classes},
                             {"cx", figure(circle.center.x)},
                             {"cy", figure(circle.center.y)},
                             {"r", figure(circle.radius)}});
  }
  void write(const Words& words, std::string_view classes) {
    const std::string x = figure(words.at.x);
    const std::string y = figure(words.at.y);
    const std::string_view anchor = name_of(words.anchor);
    if (words.turn == 0) {
      markup_.element("text", {{"class", classes}, {"x", x}, {"y", y}, {"text-anchor", anchor}},
                      words.text);
    } else {
      const std::string turn = "rotate(" + figure(words.turn) + ' ' + x + ' ' + y + ')';
      markup_.element(
          "text",
          {{"class", classes}, {"x", x}, {"y", y}, {"text-anchor", anchor}, {"transform", turn}},
          words.text);
    }
  }
  void write(const BeginReading& reading) {
    if (reading.repeats.empty()) {
      markup_.open("g", {{"class", "reading"}, {"data-source", reading.source}});
    } else {
      markup_.open("g", {{"class", "reading"},
                         {"data-source", reading.source},
                         {"data-repeats", reading.repeats}});
    }
    markup_.element("title", reading.title);
  }
  void write(const BeginClip& clip) {
    const std::string id = picture_.name() + "-clip-" + std::to_string(++clips_);
    markup_.open("clipPath", {{"id", id}});
    std::visit([this](const auto& outline) { write(outline, "outline"); }, clip.outline);
    markup_.close();
    markup_.open("g", {{"clip-path", "url(#" + id + ')'}});
  }
  void write(const End&) { markup_.close(); }

  Markup markup_;
  const Picture& picture_;
  std::size_t clips_ = 0;
};

}  // namespace

void append_svg_file(std::string& out, const Picture& picture) {
  out += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  Writer(out, picture).write(true);
}

void append_svg_element(std::string& out, const Picture& picture) {
  Writer(out, picture).write(false);
}

}  // namespace lodebook::drawing
