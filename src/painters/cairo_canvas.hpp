#pragma once
#include <cairo.h>
#include <pango/pangocairo.h>

#include <map>
#include <memory>
#include <string>
#include <tuple>

#include "picture/display_list.hpp"
#include "picture/theme.hpp"

namespace gapsound {

/// Throws Error(noAccess) with one line when a font the themes use is not installed.
void requireFonts();

/// Text laid out in the theme's fonts, kept for the next frame. Sizes are absolute, so that a picture,
/// a page and a film agree. Not for sharing between threads.
class Typesetter {
 public:
  Typesetter();
  /// Owned by the typesetter; valid until it is destroyed.
  PangoLayout* layout(const Label& label, const Style& style);

 private:
  using Key = std::tuple<std::string, double, double, int, FontRole, bool, bool>;
  struct Release {
    void operator()(void* object) const { g_object_unref(object); }
  };
  PangoLayout* laidOut(const Label& label, const Style& style);

  std::unique_ptr<PangoContext, Release> context_;
  std::map<Key, std::unique_ptr<PangoLayout, Release>> layouts_;
};

/// Draws a display list on any cairo surface; one page unit is one unit of the surface. Borrows all three.
void paint(cairo_t* surface, const DisplayList& list, const Theme& theme, Typesetter& typesetter);

}  // namespace gapsound
