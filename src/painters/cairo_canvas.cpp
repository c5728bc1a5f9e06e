#include "painters/cairo_canvas.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <vector>

#include "base/error.hpp"

namespace gapsound {
namespace {

constexpr double kRight = 0.5 * std::numbers::pi;
constexpr double kLineSpacing = 1.25;
constexpr double kCapsMiddle = 0.36;  // of the em, from the baseline up to the middle of the capitals

const char* familyOf(FontRole role) { return role == FontRole::sans ? "Inter" : "Roboto Condensed"; }

bool installed(const char* family) {
  PangoFontFamily** families = nullptr;
  int count = 0;
  pango_font_map_list_families(pango_cairo_font_map_get_default(), &families, &count);
  const bool found = std::any_of(families, families + count, [&](PangoFontFamily* candidate) {
    return std::string_view(pango_font_family_get_name(candidate)) == family;
  });
  g_free(families);
  return found;
}

PangoFontDescription* descriptionOf(double size, const Style& style) {
  PangoFontDescription* font = pango_font_description_new();
  pango_font_description_set_family(font, familyOf(style.font));
  pango_font_description_set_absolute_size(font, size * PANGO_SCALE);
  pango_font_description_set_weight(font, style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  return font;
}

void useTabularFigures(PangoLayout* layout) {
  PangoAttrList* attributes = pango_attr_list_new();
  pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum=1"));
  pango_layout_set_attributes(layout, attributes);
  pango_attr_list_unref(attributes);
}

PangoAlignment alignmentOf(Anchor anchor) {
  switch (anchor) {
    case Anchor::left:
      return PANGO_ALIGN_LEFT;
    case Anchor::centre:
      return PANGO_ALIGN_CENTER;
    case Anchor::right:
      return PANGO_ALIGN_RIGHT;
  }
  return PANGO_ALIGN_LEFT;
}

/// One panel's shapes in page units.
class Brush {
 public:
  Brush(cairo_t* cr, const Panel& panel, const Theme& theme, Typesetter& typesetter)
      : cr_(cr), panel_(panel), theme_(theme), typesetter_(typesetter) {}

  void operator()(const Disc& disc) {
    const Vec2 at = page(disc.centre);
    cairo_new_sub_path(cr_);
    cairo_arc(cr_, at.x, at.y, panel_.camera.toPage(disc.radius), 0.0, 4.0 * kRight);
    finish(disc.style);
  }
  void operator()(const Line& line) {
    move(line.a);
    draw(line.b);
    stroke(theme_[line.style]);
  }
  void operator()(const Polyline& line) {
    trace(line.points);
    stroke(theme_[line.style]);
  }
  void operator()(const Polygon& polygon) {
    trace(polygon.points);
    cairo_close_path(cr_);
    finish(polygon.style);
  }
  void operator()(const Rect& rect) {
    const Vec2 a = page(rect.low);
    const Vec2 b = page(rect.high);
    const PageRect box{std::min(a.x, b.x), std::min(a.y, b.y), std::abs(b.x - a.x), std::abs(b.y - a.y)};
    outline(box, panel_.camera.toPage(rect.corner));
    finish(rect.style);
  }
  void operator()(const Label& label) {
    const Style& style = theme_[label.style];
    PangoLayout* layout = typesetter_.layout(label, style);
    const Vec2 at = page(label.at);
    use(style.stroke);
    cairo_move_to(cr_, leftEdge(label, layout, at.x), topEdge(label, layout, at.y));
    pango_cairo_show_layout(cr_, layout);
  }

 private:
  [[nodiscard]] Vec2 page(Vec2 p) const { return panel_.camera.toPage(p); }
  void move(Vec2 p) { cairo_move_to(cr_, page(p).x, page(p).y); }
  void draw(Vec2 p) { cairo_line_to(cr_, page(p).x, page(p).y); }
  void use(Colour c) { cairo_set_source_rgba(cr_, c.r / 255.0, c.g / 255.0, c.b / 255.0, c.a / 255.0); }

  void trace(const std::vector<Vec2>& points) {
    move(points.front());
    std::for_each(points.begin() + 1, points.end(), [&](Vec2 p) { draw(p); });
  }

  void outline(const PageRect& box, double corner) {
    if (corner <= 0.0) return cairo_rectangle(cr_, box.x, box.y, box.width, box.height);
    const double r = std::min({corner, 0.5 * box.width, 0.5 * box.height});
    cairo_new_sub_path(cr_);
    cairo_arc(cr_, box.right() - r, box.y + r, r, -kRight, 0.0);
    cairo_arc(cr_, box.right() - r, box.bottom() - r, r, 0.0, kRight);
    cairo_arc(cr_, box.x + r, box.bottom() - r, r, kRight, 2.0 * kRight);
    cairo_arc(cr_, box.x + r, box.y + r, r, 2.0 * kRight, 3.0 * kRight);
    cairo_close_path(cr_);
  }

  void finish(StyleId id) {
    const Style& style = theme_[id];
    if (style.fill.a > 0) {
      use(style.fill);
      cairo_fill_preserve(cr_);
    }
    stroke(style);
  }

  void stroke(const Style& style) {
    if (style.stroke.a == 0 || style.width <= 0.0) return cairo_new_path(cr_);
    std::vector<double> dash = style.dash;
    for (double& length : dash) length *= panel_.stroke;
    use(style.stroke);
    cairo_set_line_width(cr_, style.width * panel_.stroke);
    cairo_set_dash(cr_, dash.data(), static_cast<int>(dash.size()), 0.0);
    cairo_stroke(cr_);
  }

  static double leftEdge(const Label& label, PangoLayout* layout, double x) {
    int width = 0;
    pango_layout_get_size(layout, &width, nullptr);
    const double used = label.wrap > 0.0 ? label.wrap : pango_units_to_double(width);
    const double share = label.anchor == Anchor::left ? 0.0 : label.anchor == Anchor::centre ? 0.5 : 1.0;
    return x - share * used;
  }

  static double topEdge(const Label& label, PangoLayout* layout, double y) {
    if (label.rise == Rise::top) return y;
    return y + kCapsMiddle * label.size - pango_units_to_double(pango_layout_get_baseline(layout));
  }

  cairo_t* cr_;
  const Panel& panel_;
  const Theme& theme_;
  Typesetter& typesetter_;
};

}  // namespace

void requireFonts() {
  for (const FontRole role : {FontRole::sans, FontRole::condensed}) {
    if (installed(familyOf(role))) continue;
    throw Error(ExitCode::noAccess,
                std::string("font \"") + familyOf(role) +
                    "\" is not installed; packages fonts-inter and fonts-roboto-unhinted");
  }
}

Typesetter::Typesetter() : context_(pango_font_map_create_context(pango_cairo_font_map_get_default())) {
  requireFonts();
}

PangoLayout* Typesetter::layout(const Label& label, const Style& style) {
  const Key key{label.text, label.size, label.wrap,   static_cast<int>(label.anchor),
                style.font, style.bold, style.tabular};
  auto& kept = layouts_[key];
  if (!kept) kept.reset(laidOut(label, style));
  return kept.get();
}

PangoLayout* Typesetter::laidOut(const Label& label, const Style& style) {
  PangoLayout* layout = pango_layout_new(context_.get());
  PangoFontDescription* font = descriptionOf(label.size, style);
  pango_layout_set_font_description(layout, font);
  pango_font_description_free(font);
  if (style.tabular) useTabularFigures(layout);
  if (label.wrap > 0.0) pango_layout_set_width(layout, pango_units_from_double(label.wrap));
  pango_layout_set_line_spacing(layout, kLineSpacing);
  pango_layout_set_alignment(layout, alignmentOf(label.anchor));
  pango_layout_set_text(layout, label.text.c_str(), -1);
  return layout;
}

void paint(cairo_t* surface, const DisplayList& list, const Theme& theme, Typesetter& typesetter) {
  for (const Panel& panel : list.panels) {
    cairo_save(surface);
    cairo_rectangle(surface, panel.clip.x, panel.clip.y, panel.clip.width, panel.clip.height);
    cairo_clip(surface);
    Brush brush(surface, panel, theme, typesetter);
    for (const Shape& shape : panel.shapes) std::visit(brush, shape);
    cairo_restore(surface);
  }
}

}  // namespace gapsound
