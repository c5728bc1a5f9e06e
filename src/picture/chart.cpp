#include "picture/chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "picture/page_words.hpp"

namespace gapsound {
namespace {

/// Data to page.
struct Axes {
  PageRect plot;
  Scale x, y;
  [[nodiscard]] double pageX(double v) const { return plot.x + plot.width * (v - x.low) / (x.high - x.low); }
  [[nodiscard]] double pageY(double v) const {
    return plot.bottom() - plot.height * (v - y.low) / (y.high - y.low);
  }
  [[nodiscard]] Vec2 at(double vx, double vy) const { return {pageX(vx), pageY(vy)}; }
};

std::string figure(double v, int digits) {
  const double shown = std::abs(v) < 0.5 * std::pow(10.0, -digits) ? 0.0 : v;
  return fmt::format("{:.{}f}", shown, digits);
}

int stepsOf(const Scale& scale) {
  return static_cast<int>(std::lround((scale.high - scale.low) / scale.step));
}

void drawXAxis(Panel& panel, const Axes& axes, const std::string& label) {
  const double bottom = axes.plot.bottom();
  for (int i = 0; i <= stepsOf(axes.x); ++i) {
    const double v = axes.x.low + i * axes.x.step;
    panel.shapes.push_back(Line{{axes.pageX(v), bottom}, {axes.pageX(v), bottom + 6.0}, StyleId::axis});
    panel.shapes.push_back(Label{{axes.pageX(v), bottom + 6.0 + 0.8 * kLabelSize},
                                 figure(v, axes.x.digits),
                                 kLabelSize,
                                 StyleId::axis_text});
  }
  panel.shapes.push_back(Line{{axes.plot.x, bottom}, {axes.plot.right(), bottom}, StyleId::axis});
  panel.shapes.push_back(
      Label{{axes.plot.middle().x, bottom + 2.5 * kLabelSize}, label, kLabelSize, StyleId::text});
}

void drawYAxis(Panel& panel, const Axes& axes, const std::string& label) {
  for (int i = 0; i <= stepsOf(axes.y); ++i) {
    const double v = axes.y.low + i * axes.y.step;
    const double y = axes.pageY(v);
    const bool zero = std::abs(v) < 1e-9;
    panel.shapes.push_back(
        Line{{axes.plot.x, y}, {axes.plot.right(), y}, zero ? StyleId::axis : StyleId::grid});
    panel.shapes.push_back(Label{
        {axes.plot.x - 10.0, y}, figure(v, axes.y.digits), kLabelSize, StyleId::axis_text, Anchor::right});
  }
  panel.shapes.push_back(Label{{axes.plot.x - 2.4 * kLabelSize, axes.plot.y - 1.2 * kLabelSize},
                               label,
                               kLabelSize,
                               StyleId::text,
                               Anchor::left});
}

void drawBand(Panel& panel, const Axes& axes, const Curve& curve, StyleId style) {
  if (curve.low.size() != curve.x.size() || curve.x.size() < 2) return;
  Polygon band{{}, style};
  for (std::size_t i = 0; i < curve.x.size(); ++i) band.points.push_back(axes.at(curve.x[i], curve.high[i]));
  for (std::size_t i = curve.x.size(); i-- > 0;) band.points.push_back(axes.at(curve.x[i], curve.low[i]));
  panel.shapes.push_back(std::move(band));
}

void drawCurve(Panel& panel, const Axes& axes, const Curve& curve, StyleId style, StyleId point) {
  Polyline line{{}, style};
  for (std::size_t i = 0; i < curve.x.size(); ++i) line.points.push_back(axes.at(curve.x[i], curve.y[i]));
  const std::vector<Vec2> points = line.points;
  if (points.size() > 1) panel.shapes.push_back(std::move(line));
  for (const Vec2 p : points) panel.shapes.push_back(Disc{p, 4.5, point});
}

void drawCurveName(Panel& panel, const Axes& axes, const Curve& curve, std::size_t index, StyleId style) {
  if (curve.name.empty()) return;
  const double y = axes.plot.y - 1.2 * kLabelSize;
  const double x = axes.plot.right() - 20.0 - 300.0 * static_cast<double>(index);
  panel.shapes.push_back(Label{{x, y}, curve.name, kLabelSize, StyleId::text, Anchor::right});
  const double left = x - roughWidth(curve.name, kLabelSize) - 60.0;
  panel.shapes.push_back(Line{{left, y}, {left + 44.0, y}, style});
}

void drawMark(Panel& panel, const Axes& axes, const AxisMark& mark, double y) {
  const double x = axes.pageX(mark.x);
  panel.shapes.push_back(Line{{x, axes.plot.y}, {x, axes.plot.bottom()}, StyleId::mark});
  if (mark.interval) {
    const double a = axes.pageX(mark.interval->first), b = axes.pageX(mark.interval->second);
    panel.shapes.push_back(Line{{a, y}, {b, y}, StyleId::axis});
    for (const double end : {a, b})
      panel.shapes.push_back(Line{{end, y - 5.0}, {end, y + 5.0}, StyleId::axis});
  }
  const bool on_right = x > axes.plot.middle().x;
  panel.shapes.push_back(Label{{on_right ? x - 8.0 : x + 8.0, y - 0.9 * kLabelSize},
                               mark.words,
                               kLabelSize,
                               StyleId::mark_text,
                               on_right ? Anchor::right : Anchor::left});
}

struct Extent {
  double low = 1e300, high = -1e300;
  void include(const std::vector<double>& values) {
    for (const double v : values) low = std::min(low, v), high = std::max(high, v);
  }
};

/// Steps of the x axis end at the first and last value swept.
Axes axesFor(const ChartData& data, const PageRect& plot) {
  Extent x, y;
  for (const Curve& curve : data.curves) {
    x.include(curve.x), y.include(curve.y), y.include(curve.low), y.include(curve.high);
  }
  return {plot, roundScale(x.low, x.high, 12), roundScale(std::min(y.low, 0.0), y.high)};
}

void drawBarRow(Panel& panel, const Axes& axes, const BarData::Row& row, double y, double half) {
  const double zero = axes.pageX(0.0), end = axes.pageX(row.value);
  panel.shapes.push_back(
      Rect{{zero, y - half}, {end, y + half}, 0.0, row.value >= 0.0 ? StyleId::bar : StyleId::bar_2});
  if (row.low < row.high) {
    const double a = axes.pageX(row.low), b = axes.pageX(row.high);
    panel.shapes.push_back(Line{{a, y}, {b, y}, StyleId::axis});
    for (const double jaw : {a, b}) {
      panel.shapes.push_back(Line{{jaw, y - 0.4 * half}, {jaw, y + 0.4 * half}, StyleId::axis});
    }
  }
  const double size = std::min(kLabelSize, 1.5 * half);
  panel.shapes.push_back(Label{{axes.plot.x - 10.0, y}, row.name, size, StyleId::axis_text, Anchor::right});
  const double beside = std::max({end, axes.pageX(row.high), zero}) + 8.0;
  panel.shapes.push_back(Label{{beside, y}, row.note, size, StyleId::axis_text, Anchor::left});
}

double nameWidth(const BarData& data) {
  double widest = 0.0;
  for (const auto& row : data.rows) widest = std::max(widest, roughWidth(row.name, kLabelSize));
  return widest;
}

}  // namespace

Scale roundScale(double low, double high, int most) {
  if (high - low < 1e-9) low -= 0.5, high += 0.5;
  const double rough = (high - low) / most;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  double step = 10.0 * power;
  for (const double share : {5.0, 2.5, 2.0, 1.0}) {
    if (share * power >= rough * (1.0 - 1e-9)) step = share * power;
  }
  const double whole_low = std::floor(low / step + 1e-6), whole_high = std::ceil(high / step - 1e-6);
  int digits = 0;
  for (double s = step; digits < 6 && std::abs(s - std::round(s)) > 1e-6; s *= 10.0) ++digits;
  return {whole_low * step, whole_high * step, step, digits};
}

DisplayList chartPage(const ChartData& data, double width, double height) {
  const PlotLayout layout =
      plotLayout(width, height, kPageMargin + 3.0 * kLabelSize, {data.title, data.sentence, data.footnote});
  Panel panel = pagePanel(layout.page);
  drawPageWords(panel, layout.page, {data.title, data.sentence, data.footnote});
  const Axes axes = axesFor(data, layout.plot);
  drawYAxis(panel, axes, data.y_label);
  constexpr StyleId bands[] = {StyleId::band, StyleId::band_2};
  constexpr StyleId lines[] = {StyleId::curve, StyleId::curve_2};
  constexpr StyleId points[] = {StyleId::point, StyleId::point_2};
  for (std::size_t i = 0; i < data.curves.size(); ++i) drawBand(panel, axes, data.curves[i], bands[i % 2]);
  drawXAxis(panel, axes, data.x_label);
  for (std::size_t i = 0; i < data.curves.size(); ++i) {
    drawCurve(panel, axes, data.curves[i], lines[i % 2], points[i % 2]);
    drawCurveName(panel, axes, data.curves[i], i, lines[i % 2]);
  }
  double y = layout.plot.y + 2.0 * kLabelSize;
  for (const AxisMark& mark : data.marks) {
    drawMark(panel, axes, mark, y);
    y += 2.2 * kLabelSize;
  }
  return {width, height, {std::move(panel)}};
}

DisplayList barPage(const BarData& data, double width, double height) {
  const PlotLayout layout = plotLayout(width, height, kPageMargin + nameWidth(data) + 20.0,
                                       {data.title, data.sentence, data.footnote});
  Panel panel = pagePanel(layout.page);
  drawPageWords(panel, layout.page, {data.title, data.sentence, data.footnote});
  Extent extent{0.0, 0.0};
  for (const auto& row : data.rows) extent.include({row.value, row.low, row.high});
  Axes axes{layout.plot, roundScale(extent.low, extent.high), {}};
  axes.plot.width -= 8.0 * kLabelSize;  // room for the notes
  drawXAxis(panel, axes, data.x_label);
  const double pitch = axes.plot.height / static_cast<double>(std::max<std::size_t>(data.rows.size(), 1));
  double y = axes.plot.y + 0.5 * pitch;
  for (const auto& row : data.rows) {
    drawBarRow(panel, axes, row, y, std::min(0.36 * pitch, 16.0));
    y += pitch;
  }
  const double zero = axes.pageX(0.0);
  panel.shapes.push_back(Line{{zero, axes.plot.y}, {zero, axes.plot.bottom()}, StyleId::axis});
  return {width, height, {std::move(panel)}};
}

}  // namespace gapsound
