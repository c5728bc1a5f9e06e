#include "teach/strip.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "analysis/account.hpp"
#include "picture/field.hpp"
#include "teach/caution.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr std::size_t kFewest = 6, kMost = 8;
constexpr double kMargin = 36.0, kTitle = 30.0, kText = 19.0, kCaution = 14.0, kBetween = 14.0;  // page units
constexpr double kApart = 0.12;  // s; closer moments are one picture

using Frames = std::vector<StripFrame>;

/// Moments that would look the same share a picture and their words.
Frames merged(const std::vector<Moment>& moments) {
  Frames frames;
  for (const Moment& moment : moments) {
    if (frames.empty() || moment.t - frames.back().t >= kApart) {
      frames.push_back({moment.t, moment.words});
    } else if (frames.back().words.size() + moment.words.size() < 40) {
      frames.back().words += "; " + moment.words;
    }
  }
  return frames;
}

/// Index of the inner frame that stands closest between its neighbours.
std::size_t leastMissed(const Frames& frames) {
  std::size_t least = 1;
  for (std::size_t i = 1; i + 1 < frames.size(); ++i) {
    const auto room = [&](std::size_t k) { return frames[k + 1].t - frames[k - 1].t; };
    if (room(i) < room(least)) least = i;
  }
  return least;
}

/// Index of the frame after the longest pause.
std::size_t longestPause(const Frames& frames) {
  std::size_t longest = 1;
  for (std::size_t i = 1; i < frames.size(); ++i) {
    const auto pause = [&](std::size_t k) { return frames[k].t - frames[k - 1].t; };
    if (pause(i) > pause(longest)) longest = i;
  }
  return longest;
}

struct Grid {
  int columns = 1, rows = 1;
  double top = 0.0, width = 0.0, height = 0.0;  // of one cell with its words
  [[nodiscard]] PageRect cell(int index) const {
    const int row = index / columns, column = index % columns;
    return {kMargin + column * (width + kBetween), top + row * (height + kBetween), width, height};
  }
};

Grid gridFor(const StripLook& look, int frames) {
  Grid grid;
  grid.rows = look.rows;
  grid.columns = (frames + look.rows - 1) / look.rows;
  grid.top = kMargin + 1.5 * kTitle + 1.8 * kText;
  const double bottom = look.height - kMargin - 3.0 * kCaution;
  grid.width = (look.width - 2.0 * kMargin - (grid.columns - 1) * kBetween) / grid.columns;
  grid.height = (bottom - grid.top - (grid.rows - 1) * kBetween) / grid.rows;
  return grid;
}

Panel headingOf(const Tape& tape, const StripLook& look) {
  Panel panel = pagePanel({0.0, 0.0, look.width, look.height});
  panel.shapes.push_back(Rect{{0.0, 0.0}, {look.width, look.height}, 0.0, StyleId::ground});
  panel.shapes.push_back(
      Label{{kMargin, kMargin + 0.5 * kTitle}, tape.setup.title, kTitle, StyleId::title, Anchor::left});
  const std::string words =
      fmt::format("{} · {} · seed {}", lookLine(tape.setup), endingLine(tape.record), tape.seed);
  panel.shapes.push_back(
      Label{{kMargin, kMargin + 1.5 * kTitle + 0.2 * kText}, words, kText, StyleId::text, Anchor::left});
  panel.shapes.push_back(Label{{kMargin, look.height - kMargin - 2.2 * kCaution},
                               cautionText(),
                               kCaution,
                               StyleId::caution,
                               Anchor::left,
                               Rise::top,
                               look.width - 2.0 * kMargin});
  return panel;
}

Panel pictureOf(const Tape& tape, const StripFrame& frame, const PageRect& box, const StripLook& look) {
  const FieldView view = viewAt(tape, frame.t, look.view);
  FieldLook field;
  field.box = box;
  field.low = view.low, field.high = view.high;
  field.symbol = symbolFor(box, view, look.symbol);
  field.text = 13.0;
  field.stroke = 0.7;
  const Frame now = frameAt(tape, frame.t);
  Panel panel =
      fieldPanel(tape.setup, now, field, lanesShownAt(tape, frame.t, now), framesBefore(tape, frame.t));
  panel.shapes.push_back(Rect{panel.camera.fromPage({box.x, box.y}),
                              panel.camera.fromPage({box.right(), box.bottom()}), 0.0, StyleId::frame});
  return panel;
}

/// Time and words share the line under the picture; long words are set smaller.
void drawWords(Panel& page, const StripFrame& frame, const PageRect& cell) {
  const double y = cell.bottom() - 0.55 * kText;
  const double indent = 3.6 * kText;
  const double fitting = (cell.width - indent) / std::max(1.05 * roughWidth(frame.words, 1.0), 1.0);
  page.shapes.push_back(
      Label{{cell.x, y}, fmt::format("{:.2f} s", frame.t), kText, StyleId::strong, Anchor::left});
  page.shapes.push_back(
      Label{{cell.x + indent, y}, frame.words, std::min(0.9 * kText, fitting), StyleId::text, Anchor::left});
}

}  // namespace

std::vector<StripFrame> momentsForStrip(const Tape& tape) {
  Frames frames = merged(momentsOf(tape));
  if (frames.size() < 2) return evenFrames(tape, static_cast<int>(kFewest));
  while (frames.size() > kMost)
    frames.erase(frames.begin() + static_cast<std::ptrdiff_t>(leastMissed(frames)));
  while (frames.size() < kFewest || frames.size() % 2 != 0) {  // two full rows
    const std::size_t i = longestPause(frames);
    const double t = 0.5 * (frames[i - 1].t + frames[i].t);
    frames.insert(frames.begin() + static_cast<std::ptrdiff_t>(i), {t, ""});
  }
  return frames;
}

std::vector<StripFrame> evenFrames(const Tape& tape, int n) {
  Frames frames;
  for (int i = 0; i < n; ++i) frames.push_back({lengthOf(tape) * i / (n - 1), ""});
  return frames;
}

StripLook handoutStrip() { return {}; }

StripLook judgingStrip() { return {2200.0, 1750.0, 3, {{-10.0, -8.2}, {10.0, 12.9}}, 10.0}; }

DisplayList stripPage(const Tape& tape, const std::vector<StripFrame>& frames, const StripLook& look) {
  const Grid grid = gridFor(look, static_cast<int>(frames.size()));
  DisplayList page{look.width, look.height, {headingOf(tape, look)}};
  for (std::size_t i = 0; i < frames.size(); ++i) {
    const PageRect cell = grid.cell(static_cast<int>(i));
    drawWords(page.panels.front(), frames[i], cell);
    page.panels.push_back(
        pictureOf(tape, frames[i], {cell.x, cell.y, cell.width, cell.height - 1.4 * kText}, look));
  }
  return page;
}

}  // namespace gapsound
