#pragma once
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "base/vec2.hpp"
#include "picture/styles.hpp"

namespace gapsound {

// Positions, radii and corners are in the units of the panel's camera (field yards, or page units under the
// page camera). Text sizes and stroke widths are always in page units, so zoom changes neither.

/// Round outline and fill.
struct Disc {
  Vec2 centre;
  double radius = 0.0;
  StyleId style{};
};
struct Line {
  Vec2 a, b;
  StyleId style{};
};
/// Open run of two or more points: stroke only.
struct Polyline {
  std::vector<Vec2> points;
  StyleId style{};
};
/// Closed outline of three or more points: stroke and fill. May be concave, never crosses itself.
struct Polygon {
  std::vector<Vec2> points;
  StyleId style{};
};
struct Rect {
  Vec2 low, high;       // two opposite corners, either order
  double corner = 0.0;  // radius of rounded corners
  StyleId style{};
};
enum class Anchor : std::uint8_t { left, centre, right };
enum class Rise : std::uint8_t { middle, top };
/// Text in the style's stroke colour and font, UTF-8.
struct Label {
  Vec2 at;
  std::string text;
  double size = 12.0;  // height of the em, page units
  StyleId style{};
  Anchor anchor = Anchor::centre;  // which part of the text stands at `at`
  Rise rise = Rise::middle;        // `at.y` is the middle of the capitals, or the top of the first line
  double wrap = 0.0;               // page units; lines are broken at this width, 0: one line
};

using Shape = std::variant<Disc, Line, Polyline, Polygon, Rect, Label>;

/// A rectangle of the page, y downwards.
struct PageRect {
  double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
  [[nodiscard]] double right() const { return x + width; }
  [[nodiscard]] double bottom() const { return y + height; }
  [[nodiscard]] Vec2 middle() const { return {x + 0.5 * width, y + 0.5 * height}; }
};

/// From a panel's units to the page (page y runs down; a field camera turns y over).
struct Camera {
  Vec2 origin;           // where the panel's (0, 0) lies on the page
  double scale_x = 1.0;  // page units per unit
  double scale_y = 1.0;  // negative: y runs up the page
  [[nodiscard]] Vec2 toPage(Vec2 p) const { return {origin.x + scale_x * p.x, origin.y + scale_y * p.y}; }
  [[nodiscard]] Vec2 fromPage(Vec2 p) const {
    return {(p.x - origin.x) / scale_x, (p.y - origin.y) / scale_y};
  }
  /// Page length of a radius or corner.
  [[nodiscard]] double toPage(double length) const { return scale_x * length; }
};

/// Shapes under one camera, clipped to a part of the page.
struct Panel {
  Camera camera;
  PageRect clip;
  double stroke = 1.0;        // factor on the widths and dashes of the styles; below 1 in small pictures
  std::vector<Shape> shapes;  // back to front
};

/// One page of values; painters draw the panels in order. Knows nothing of pixels or fonts.
struct DisplayList {
  double width = 1280.0, height = 720.0;  // page units
  std::vector<Panel> panels;
};

/// The camera that shows all of [low, high] (yards) as large as `box` allows, in its middle, downfield up.
[[nodiscard]] Camera fieldCamera(const PageRect& box, Vec2 low, Vec2 high);
/// A panel in page units, clipped to `clip`.
[[nodiscard]] Panel pagePanel(const PageRect& clip);
/// What of the field a panel shows: lower left and upper right corner, yards.
struct FieldView {
  Vec2 low, high;
};
[[nodiscard]] FieldView viewOf(const Camera& camera, const PageRect& clip);
/// Width of a text in page units, estimated without a font (within a tenth or so); for layout only.
[[nodiscard]] double roughWidth(const std::string& text, double size);
/// roughWidth may fall short by this much.
inline constexpr double kMeasureError = 1.12;
/// Text broken between words into lines that fit the width by the rough measure, with room for its error.
[[nodiscard]] std::vector<std::string> linesOf(const std::string& text, double size, double width);
/// Same pictures, same number: 64-bit hash over every value of the list.
[[nodiscard]] std::uint64_t hashOf(const DisplayList& list);

}  // namespace gapsound
