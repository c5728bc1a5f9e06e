#pragma once
#include <string>
#include <vector>

#include "picture/display_list.hpp"

namespace gapsound {

/// A page with the rectangles its parts were given.
struct LaidPage {
  DisplayList list;
  std::vector<PageRect> boxes;  // none overlaps another or leaves the page
};

/// A page being laid out from parts, each in a rectangle of its own.
class Layout {
 public:
  Layout(double width, double height);
  /// Puts text down, broken at `width`, its first line's top at y; returns the y below it.
  double words(double x, double y, double width, const std::string& text, double size, StyleId style,
               Anchor anchor = Anchor::left);
  /// One line of text set smaller where it would not fit.
  double line(double x, double y, double width, const std::string& text, double size, StyleId style,
              Anchor anchor = Anchor::left);
  void rule(double x, double right, double y, StyleId style = StyleId::frame);
  void box(const PageRect& rect, StyleId style);
  /// A picture with a frame around its clip.
  void picture(Panel panel);
  /// The caution at the foot of the page, as small as it may be; returns the y it begins at.
  double caution(double margin, double size);
  [[nodiscard]] static double heightOf(const std::string& text, double size, double width);
  [[nodiscard]] LaidPage done() &&;

 private:
  LaidPage page_;
};

/// Columns by their widths, rows of texts; the first row is the head. Rows are as high as their longest text.
struct Table {
  std::vector<double> widths;
  std::vector<std::vector<std::string>> rows;
  double size = 19.0;
  std::size_t strong_column = 0;  // set bold
};
/// Puts the table down at (x, y); returns the y below it.
double put(Layout& layout, const Table& table, double x, double y);
[[nodiscard]] double heightOf(const Table& table);

}  // namespace gapsound
