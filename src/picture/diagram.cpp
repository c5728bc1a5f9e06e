#include "picture/diagram.hpp"

#include <algorithm>
#include <cmath>

#include "base/tick.hpp"
#include "picture/free_space.hpp"
#include "picture/ground.hpp"
#include "picture/men.hpp"

namespace gapsound {
namespace {

constexpr double kTrueWide = 6.6, kSqueezeWide = 0.30;  // yd from the ball; share of what lies just beyond
constexpr double kMostWide = 3.6;                       // yd drawn for all that lies beyond
constexpr double kTrueDeep = 5.5, kSqueezeDeep = 0.60;  // yd
constexpr double kBar = 0.45;                           // yd, half a block's bar
constexpr double kArrow = 0.6;                          // yd
constexpr double kEvery = 0.12;                         // s between the points of a bent path

using Path = std::vector<Vec2>;

const Man& manOf(const Tape& tape, int man) { return tape.setup.men[static_cast<std::size_t>(man)]; }

double untilOf(const Tape& tape) {
  const Record& record = tape.record;
  return seconds(record.line_tick >= 0 ? record.line_tick : record.end_tick);
}

Vec2 placeAt(const Tape& tape, int man, double t) {
  return frameAt(tape, t).men[static_cast<std::size_t>(man)].pos;
}

/// Corners cut once: a sampled path without its wobble.
Path smoothed(const Path& points) {
  if (points.size() < 3) return points;
  Path cut{points.front()};
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    cut.push_back(0.75 * points[i] + 0.25 * points[i + 1]);
    cut.push_back(0.25 * points[i] + 0.75 * points[i + 1]);
  }
  cut.push_back(points.back());
  return cut;
}

Path wayOf(const Tape& tape, int man, double until) {
  Path points;
  for (double t = 0.0; t < until; t += kEvery) points.push_back(placeAt(tape, man, t));
  points.push_back(placeAt(tape, man, until));
  return smoothed(points);
}

bool travels(const BlockJob& job) {
  switch (job.kind) {
    case BlockKind::kick:
    case BlockKind::log:
    case BlockKind::wrap:
    case BlockKind::lead:
    case BlockKind::insert:
    case BlockKind::arc:
      return true;
    default:
      return job.pull != PullStyle::none;
  }
}

/// When he gets his hands on another man than before, up to the crossing.
std::vector<double> meetingsOf(const Tape& tape, int man) {
  std::vector<double> times;
  int last = kNobody;
  for (const Event& event : tape.record.events) {
    if (event.what != Happening::engages || event.man != man || seconds(event.tick) > untilOf(tape)) continue;
    if (event.other != last) times.push_back(seconds(event.tick));
    last = event.other;
  }
  return times;
}

Path drawn(const Path& points) {
  Path there;
  for (const Vec2 p : points) there.push_back(drawnAt(p));
  return there;
}

Vec2 lastDirection(const Path& points) {
  for (std::size_t i = points.size() - 1; i > 0; --i) {
    const Vec2 step = points[i] - points[i - 1];
    if (length(step) > 0.05) return unit(step);
  }
  return {0.0, 1.0};
}

/// Shorter by what the man's own sign covers.
Path fromSign(Path points, double radius) {
  while (points.size() > 2 && distance(points[1], points[0]) < radius) points.erase(points.begin() + 1);
  const Vec2 out = unit(points[1] - points[0]);
  if (distance(points[0], points[1]) > radius) points[0] += radius * out;
  return points;
}

void drawBlock(Panel& panel, const Tape& tape, int man, double radius) {
  const BlockPath path = blockPathOf(tape, man);
  if (path.points.size() < 2) return;
  const Path points = drawn(path.points);
  if (distance(points.front(), points.back()) < 0.3) return;
  panel.shapes.push_back(Polyline{fromSign(points, radius), StyleId::block_path});
  for (const std::size_t bar : path.bars) {
    const Vec2 along =
        leftOf(lastDirection(Path(points.begin(), points.begin() + static_cast<long>(bar) + 1)));
    panel.shapes.push_back(Line{points[bar] - kBar * along, points[bar] + kBar * along, StyleId::block_path});
  }
  if (path.bars.empty()) drawArrow(panel, points, kArrow, StyleId::block_path);
}

void drawRun(Panel& panel, const Tape& tape, double radius) {
  const int carrier = tape.setup.carrier;
  if (carrier == kNobody) return;
  const double until = std::min(lengthOf(tape), untilOf(tape) + 0.35);
  const Path points = fromSign(drawn(wayOf(tape, carrier, until)), radius);
  panel.shapes.push_back(Polyline{points, StyleId::run_path});
  drawArrow(panel, points, 1.25 * kArrow, StyleId::run_path);
}

void drawFit(Panel& panel, const Tape& tape, int man, double radius) {
  const Path points = drawn(wayOf(tape, man, untilOf(tape)));
  if (distance(points.front(), points.back()) < 0.9) return;
  panel.shapes.push_back(Polyline{fromSign(points, radius), StyleId::fit_path});
  drawArrow(panel, points, kArrow, StyleId::fit_path);
}

Frame atTheSnap(const Tape& tape) {
  Frame frame = frameAt(tape, 0.0);
  for (Pose& pose : frame.men) pose.pos = drawnAt(pose.pos);
  frame.ball = drawnAt(frame.ball);
  return frame;
}

void drawDot(Panel& panel, const Tape& tape, int man, Vec2 at, const DiagramLook& look, FreeSpace& space) {
  panel.shapes.push_back(Disc{at, 0.55 * look.symbol, StyleId::dot});
  if (!look.names) return;
  const std::string& id = manOf(tape, man).id;
  const Vec2 page = panel.camera.toPage(at);
  const double up = 0.62 * look.text + 0.55 * look.symbol * panel.camera.scale_x;
  const double width = roughWidth(id, look.text);
  const Vec2 middle = space.place({{page.x, page.y - up},
                                   {page.x + up + 0.4 * width, page.y},
                                   {page.x - up - 0.4 * width, page.y},
                                   {page.x, page.y + up}},
                                  width, 0.8 * look.text);
  panel.shapes.push_back(Label{panel.camera.fromPage(middle), id, look.text, StyleId::defense_letter});
}

/// Keeps names off the paths drawn so far.
void takePaths(const Panel& panel, FreeSpace& space) {
  const auto takeLine = [&](Vec2 from, Vec2 to) {
    const Vec2 a = panel.camera.toPage(from), b = panel.camera.toPage(to);
    const int steps = 1 + static_cast<int>(distance(a, b) / 8.0);
    for (int i = 0; i <= steps; ++i) space.take(a + (static_cast<double>(i) / steps) * (b - a), 6.0, 6.0);
  };
  const auto isPath = [](StyleId style) {
    return style != StyleId::yard_line && style != StyleId::scrimmage;
  };
  for (const Shape& shape : panel.shapes) {
    if (const auto* line = std::get_if<Line>(&shape); line != nullptr && isPath(line->style))
      takeLine(line->a, line->b);
    if (const auto* path = std::get_if<Polyline>(&shape))
      for (std::size_t i = 0; i + 1 < path->points.size(); ++i)
        takeLine(path->points[i], path->points[i + 1]);
  }
}

void drawSigns(Panel& panel, const Tape& tape, const DiagramLook& look) {
  const Frame frame = atTheSnap(tape);
  FieldLook men;
  men.box = look.box, men.low = look.low, men.high = look.high;
  men.symbol = look.symbol, men.text = look.text, men.stroke = look.stroke;
  men.names = look.names;
  FreeSpace space(look.box);
  takePaths(panel, space);
  if (!look.dots) {
    drawMen(panel, tape.setup, frame, men);
    return drawNames(panel, tape.setup, frame, men, space);
  }
  drawOffense(panel, tape.setup, frame, men);
  for (const Pose& pose : frame.men) {
    const double side = 2.0 * look.symbol * panel.camera.scale_x;
    space.take(panel.camera.toPage(pose.pos), side, 0.6 * side);
  }
  for (int man = kOffense; man < kMen; ++man)
    drawDot(panel, tape, man, frame.men[static_cast<std::size_t>(man)].pos, look, space);
}

void drawPlainGround(Panel& panel, const DiagramLook& look) {
  const FieldView view = viewOf(panel.camera, look.box);
  panel.shapes.push_back(Rect{view.low, view.high, 0.0, StyleId::ground});
  for (double y = -5.0; y < view.high.y; y += 5.0) {
    const StyleId style = y == 0.0 ? StyleId::scrimmage : StyleId::yard_line;
    if (y > view.low.y) panel.shapes.push_back(Line{{view.low.x, y}, {view.high.x, y}, style});
  }
}

}  // namespace

Vec2 drawnAt(Vec2 spot) {
  const double wide = std::abs(spot.x);
  const double beyond = std::max(0.0, wide - kTrueWide);
  const double x =
      std::min(wide, kTrueWide) + kMostWide * (1.0 - std::exp(-kSqueezeWide * beyond / kMostWide));
  const double y = spot.y <= kTrueDeep ? spot.y : kTrueDeep + kSqueezeDeep * (spot.y - kTrueDeep);
  return {std::copysign(x, spot.x), y};
}

BlockPath blockPathOf(const Tape& tape, int man) {
  BlockPath path;
  const std::vector<double> meetings = meetingsOf(tape, man);
  if (travels(manOf(tape, man).block)) {
    path.points = wayOf(tape, man, meetings.empty() ? untilOf(tape) : meetings.front());
  } else {
    path.points = {placeAt(tape, man, 0.0)};
    if (meetings.empty()) path.points.push_back(placeAt(tape, man, untilOf(tape)));
    if (!meetings.empty()) path.points.push_back(placeAt(tape, man, meetings.front()));
  }
  if (meetings.empty()) return path;
  path.bars.push_back(path.points.size() - 1);
  for (std::size_t i = 1; i < meetings.size() && i < 2; ++i) {
    path.points.push_back(placeAt(tape, man, meetings[i]));
    path.bars.push_back(path.points.size() - 1);
  }
  return path;
}

void drawArrow(Panel& panel, const std::vector<Vec2>& points, double length, StyleId style) {
  if (points.size() < 2) return;
  const Vec2 along = lastDirection(points), across = leftOf(along);
  const Vec2 tip = points.back() + 0.5 * length * along;
  panel.shapes.push_back(Polygon{
      {tip, tip - length * along + 0.42 * length * across, tip - length * along - 0.42 * length * across},
      style});
}

Panel diagramPanel(const Tape& tape, const DiagramLook& look) {
  Panel panel{fieldCamera(look.box, look.low, look.high), look.box, look.stroke, {}};
  drawPlainGround(panel, look);
  const double radius = 1.1 * look.symbol;
  if (look.fits)
    for (int man = kOffense; man < kMen; ++man) drawFit(panel, tape, man, radius);
  if (look.blocks) {
    for (int man = 0; man < kOffense; ++man)
      if (man != tape.setup.carrier && man != tape.setup.passer) drawBlock(panel, tape, man, radius);
    drawRun(panel, tape, radius);
  }
  drawSigns(panel, tape, look);
  return panel;
}

}  // namespace gapsound
