#include "painters/window/list_painter.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "painters/window/outlines.hpp"

namespace gapsound {
namespace {

constexpr double kLineSpacing = 1.25;
constexpr double kCapsMiddle = 0.36;  // of the em, from the baseline up to the middle of the capitals

ImVec2 im(Vec2 p) { return {static_cast<float>(p.x), static_cast<float>(p.y)}; }

/// One panel's shapes in pixels.
class Brush {
 public:
  Brush(ImDrawList& into, const Panel& panel, const Theme& theme, const FontShelf& fonts, double scale,
        Vec2 corner)
      : into_(into), panel_(panel), theme_(theme), fonts_(fonts), scale_(scale), corner_(corner) {}

  void operator()(const Disc& disc) {
    finish(circleOutline(pixel(disc.centre), pixels(disc.radius)), disc.style);
  }
  void operator()(const Line& line) { stroke({pixel(line.a), pixel(line.b)}, false, theme_[line.style]); }
  void operator()(const Polyline& line) { stroke(traced(line.points), false, theme_[line.style]); }
  void operator()(const Polygon& polygon) { finish(traced(polygon.points), polygon.style); }
  void operator()(const Rect& rect) {
    const Vec2 a = pixel(rect.low);
    const Vec2 b = pixel(rect.high);
    const PageRect box{std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x), std::abs(b.y - a.y)};
    finish(boxOutline(box, pixels(rect.corner)), rect.style);
  }
  void operator()(const Label& label) {
    const Style& style = theme_[label.style];
    const auto choice = fonts_.choose(style.font, style.bold, label.size * scale_);
    const std::vector<std::string> lines = wrapped(label, choice);
    const double step = kLineSpacing * label.size * scale_;
    double top = topEdge(label, choice);
    for (const std::string& line : lines) {
      const Vec2 at{std::round(leftEdge(label, choice, line)), std::round(top)};
      into_.AddText(choice.font, choice.size, im(at), packed(style.stroke), line.c_str());
      top += step;
    }
  }

 private:
  [[nodiscard]] Vec2 pixel(Vec2 p) const { return corner_ + scale_ * panel_.camera.toPage(p); }
  [[nodiscard]] double pixels(double length) const { return scale_ * panel_.camera.toPage(length); }

  [[nodiscard]] std::vector<Vec2> traced(const std::vector<Vec2>& points) const {
    std::vector<Vec2> traced;
    traced.reserve(points.size());
    for (const Vec2 p : points) traced.push_back(pixel(p));
    return traced;
  }

  void finish(const std::vector<Vec2>& outline, StyleId id) {
    const Style& style = theme_[id];
    if (style.fill.a > 0) fill(outline, style.fill);
    stroke(outline, true, style);
  }

  void fill(const std::vector<Vec2>& outline, Colour colour) {
    if (isConvex(outline)) {
      for (const Vec2 p : outline) into_.PathLineTo(im(p));
      into_.PathFillConvex(packed(colour));
      return;
    }
    const ImDrawListFlags flags = into_.Flags;
    into_.Flags &= ~ImDrawListFlags_AntiAliasedFill;  // seams between the triangles would show
    for (const auto& [a, b, c] : triangles(outline))
      into_.AddTriangleFilled(im(a), im(b), im(c), packed(colour));
    into_.Flags = flags;
  }

  void stroke(const std::vector<Vec2>& points, bool closed, const Style& style) {
    if (style.stroke.a == 0 || style.width <= 0.0) return;
    const double width = std::max(1.0, style.width * panel_.stroke * scale_);
    if (style.dash.empty()) return strokeRun(points, closed, width, style.stroke);
    std::vector<double> dash = style.dash;
    for (double& length : dash) length *= panel_.stroke * scale_;
    for (const auto& run : dashed(points, closed, dash)) strokeRun(run, false, width, style.stroke);
  }

  void strokeRun(const std::vector<Vec2>& points, bool closed, double width, Colour colour) {
    for (const Vec2 p : points) into_.PathLineTo(im(p));
    into_.PathStroke(packed(colour), closed ? ImDrawFlags_Closed : ImDrawFlags_None,
                     static_cast<float>(width));
  }

  [[nodiscard]] static double widthOf(const FontShelf::Choice& choice, const std::string& text) {
    return choice.font->CalcTextSizeA(choice.size, FLT_MAX, 0.0F, text.c_str()).x;
  }

  [[nodiscard]] std::vector<std::string> wrapped(const Label& label, const FontShelf::Choice& choice) const {
    if (label.wrap <= 0.0 && label.text.find('\n') == std::string::npos) return {label.text};
    const auto width = label.wrap > 0.0 ? static_cast<float>(label.wrap * scale_) : FLT_MAX;
    std::vector<std::string> lines;
    const char* from = label.text.c_str();
    const char* const end = from + label.text.size();
    const float by = choice.size / choice.font->FontSize;
    while (from < end) {
      const char* to =
          std::min(std::find(from, end, '\n'), choice.font->CalcWordWrapPositionA(by, from, end, width));
      if (to == from && *from != '\n') ++to;
      lines.emplace_back(from, to);
      from = to;
      while (from < end && (*from == ' ' || *from == '\n')) ++from;
    }
    return lines;
  }

  [[nodiscard]] double leftEdge(const Label& label, const FontShelf::Choice& choice,
                                const std::string& line) const {
    const double share = label.anchor == Anchor::left ? 0.0 : label.anchor == Anchor::centre ? 0.5 : 1.0;
    return pixel(label.at).x - share * widthOf(choice, line);
  }

  [[nodiscard]] double topEdge(const Label& label, const FontShelf::Choice& choice) const {
    const double y = pixel(label.at).y;
    if (label.rise == Rise::top) return y;
    const double ascent = choice.font->Ascent * choice.size / choice.font->FontSize;
    return y + kCapsMiddle * label.size * scale_ - ascent;
  }

  ImDrawList& into_;
  const Panel& panel_;
  const Theme& theme_;
  const FontShelf& fonts_;
  double scale_;
  Vec2 corner_;
};

}  // namespace

void paint(ImDrawList& into, const DisplayList& list, const Theme& theme, const FontShelf& fonts,
           double scale, Vec2 corner) {
  for (const Panel& panel : list.panels) {
    const Vec2 low = corner + scale * Vec2{panel.clip.x, panel.clip.y};
    const Vec2 high = corner + scale * Vec2{panel.clip.right(), panel.clip.bottom()};
    into.PushClipRect(im(low), im(high), true);
    Brush brush(into, panel, theme, fonts, scale, corner);
    for (const Shape& shape : panel.shapes) std::visit(brush, shape);
    into.PopClipRect();
  }
}

}  // namespace gapsound
