#include "picture/display_list.hpp"

#include <algorithm>
#include <bit>
#include <sstream>

#include "base/stream.hpp"

namespace gapsound {

Camera fieldCamera(const PageRect& box, Vec2 low, Vec2 high) {
  const Vec2 span = high - low;
  const double scale = std::min(box.width / span.x, box.height / span.y);
  const Vec2 centre = 0.5 * (low + high);
  const Vec2 middle = box.middle();
  return {{middle.x - scale * centre.x, middle.y + scale * centre.y}, scale, -scale};
}

Panel pagePanel(const PageRect& clip) { return {Camera{}, clip, 1.0, {}}; }

FieldView viewOf(const Camera& camera, const PageRect& clip) {
  return {camera.fromPage({clip.x, clip.bottom()}), camera.fromPage({clip.right(), clip.y})};
}

namespace {

double shareOfEm(char letter) {
  constexpr std::string_view narrow = "iIl1.,:;'|!fjt()[] ";
  constexpr std::string_view wide = "mwMW%@";
  if (narrow.find(letter) != std::string_view::npos) return 0.31;
  return wide.find(letter) != std::string_view::npos ? 0.86 : 0.58;
}

bool startsLetter(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }

/// Adds every value of a shape to a running hash.
class Hasher {
 public:
  void add(std::uint64_t word) { hash_ = mixed(hash_, word); }
  void add(double v) { add(std::bit_cast<std::uint64_t>(v)); }
  void add(Vec2 p) { add(p.x), add(p.y); }
  void add(StyleId style) { add(static_cast<std::uint64_t>(style)); }
  void add(const std::string& text) { add(keyOf(text)); }
  void add(const std::vector<Vec2>& points) {
    for (const Vec2 p : points) add(p);
  }
  void operator()(const Disc& s) { add(s.centre), add(s.radius), add(s.style); }
  void operator()(const Line& s) { add(s.a), add(s.b), add(s.style); }
  void operator()(const Polyline& s) { add(s.points), add(s.style); }
  void operator()(const Polygon& s) { add(s.points), add(s.style); }
  void operator()(const Rect& s) { add(s.low), add(s.high), add(s.corner), add(s.style); }
  void operator()(const Label& s) {
    add(s.at), add(s.text), add(s.size), add(s.style), add(s.wrap);
    add(static_cast<std::uint64_t>(s.anchor)), add(static_cast<std::uint64_t>(s.rise));
  }
  [[nodiscard]] std::uint64_t value() const { return hash_; }

 private:
  std::uint64_t hash_ = 0;
};

}  // namespace

double roughWidth(const std::string& text, double size) {
  double ems = 0.0;
  for (const char letter : text) ems += startsLetter(letter) ? shareOfEm(letter) : 0.0;
  return ems * size;
}

std::vector<std::string> linesOf(const std::string& text, double size, double width) {
  std::vector<std::string> lines;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    const bool fits = !lines.empty() && kMeasureError * roughWidth(lines.back() + " " + word, size) <= width;
    if (fits)
      lines.back() += " " + word;
    else
      lines.push_back(word);
  }
  return lines;
}

std::uint64_t hashOf(const DisplayList& list) {
  Hasher hasher;
  hasher.add(list.width), hasher.add(list.height);
  for (const Panel& panel : list.panels) {
    hasher.add(panel.camera.origin), hasher.add(panel.camera.scale_x), hasher.add(panel.camera.scale_y);
    hasher.add(Vec2{panel.clip.x, panel.clip.y}), hasher.add(Vec2{panel.clip.width, panel.clip.height});
    hasher.add(panel.stroke);
    for (const Shape& shape : panel.shapes) {
      hasher.add(static_cast<std::uint64_t>(shape.index()));
      std::visit([&](const auto& s) { hasher(s); }, shape);
    }
  }
  return hasher.value();
}

}  // namespace gapsound
