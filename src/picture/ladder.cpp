#include "picture/ladder.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "analysis/cast.hpp"
#include "analysis/words.hpp"
#include "base/numbers.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr std::array kRowNames{"Ball", "Line", "Backers", "Secondary"};
constexpr int kRows = 4;

std::optional<LadderKind> kindOf(Happening what) {
  switch (what) {
    case Happening::saw_key:
    case Happening::end_state:
    case Happening::line_state:
    case Happening::backer_state:
      return LadderKind::saw;
    case Happening::decides:
      return LadderKind::decided;
    case Happening::engages:
    case Happening::sheds:
    case Happening::tries_tackle:
    case Happening::misses_tackle:
    case Happening::wraps:
    case Happening::shoots:
    case Happening::slants:
    case Happening::errs:
      return LadderKind::did;
    case Happening::snap:
    case Happening::handoff:
    case Happening::tosses:
    case Happening::keeps:
    case Happening::crosses_line:
    case Happening::first_contact:
    case Happening::down:
    case Happening::out_of_bounds:
    case Happening::score:
      return LadderKind::ball;
    case Happening::whiffs:
    case Happening::climbs:
      return std::nullopt;
  }
  return std::nullopt;
}

/// The happening in words; {0} is who, {1} whom.
const char* patternOf(Happening what) {
  switch (what) {
    case Happening::saw_key:
      return "{0} reads his key";
    case Happening::end_state:
    case Happening::line_state:
    case Happening::backer_state:
      return "{0} sees";
    case Happening::decides:
      return "{0} decides";
    case Happening::engages:
      return "{0} meets {1}";
    case Happening::sheds:
      return "{0} gets off {1}";
    case Happening::tries_tackle:
      return "{0} tackles";
    case Happening::misses_tackle:
      return "{0} misses";
    case Happening::wraps:
      return "{0} has hold";
    case Happening::shoots:
      return "{0} shoots";
    case Happening::slants:
      return "{0} slants";
    case Happening::errs:
      return "{0} makes the mistake laid on him";
    case Happening::snap:
      return "snap";
    case Happening::handoff:
      return "hand-off to {0}";
    case Happening::tosses:
      return "{0} tosses to {1}";
    case Happening::keeps:
      return "{0} keeps off {1}";
    case Happening::crosses_line:
      return "the ball crosses the line";
    case Happening::first_contact:
      return "first contact";
    case Happening::down:
      return "down";
    case Happening::out_of_bounds:
      return "out of bounds";
    case Happening::score:
      return "score";
    case Happening::whiffs:
    case Happening::climbs:
      return "";
  }
  return "";
}

std::string idOf(const Setup& setup, int man) {
  return man == kNobody ? std::string("nobody") : setup.men[static_cast<std::size_t>(man)].id;
}

/// What the man in front was to him: "SE was kicked out".
std::string sightOf(const Setup& setup, const Event& event) {
  const Cast cast = castOf(setup);
  if (event.what == Happening::end_state)
    return fmt::format("{} {}", idOf(setup, cast.end), saidOf(static_cast<EndState>(event.code)));
  return fmt::format("{} {}", idOf(setup, cast.first_backer), saidOf(static_cast<BackerState>(event.code)));
}

std::string wordsOf(const Setup& setup, const Event& event) {
  const std::string who = idOf(setup, event.man), whom = idOf(setup, event.other);
  std::string words = fmt::format(fmt::runtime(patternOf(event.what)), who, whom);
  if (event.what == Happening::end_state || event.what == Happening::backer_state)
    return fmt::format("{}: {}", words, sightOf(setup, event));
  if (event.what != Happening::decides) return words;
  std::string fit(nameOf(static_cast<Fit>(event.code)));
  std::replace(fit.begin(), fit.end(), '_', ' ');
  return fmt::format("{}: {}", words, fit);
}

/// An engagement is listed under the attacker or the defender; the ladder speaks of defenders.
int defenderOf(const Event& event) {
  return event.man != kNobody && isOffense(event.man) && event.other != kNobody ? event.other : event.man;
}

std::optional<LadderTick> tickFor(const Setup& setup, const Event& event) {
  const auto kind = kindOf(event.what);
  if (!kind) return std::nullopt;
  if (*kind == LadderKind::ball) {
    return LadderTick{seconds(event.tick), 0, event.man, *kind, wordsOf(setup, event)};
  }
  const int man = defenderOf(event);
  if (man == kNobody || isOffense(man)) return std::nullopt;
  Event seen = event;
  if (man != event.man) std::swap(seen.man, seen.other);
  const int row = std::clamp(setup.men[static_cast<std::size_t>(man)].fit.level, 1, 3);
  return LadderTick{seconds(event.tick), row, man, *kind, wordsOf(setup, seen)};
}

/// Left of it stand the names of the rows.
double axisLeft(const LadderLook& look) { return look.box.x + 6.0 * look.text; }
double axisRight(const LadderLook& look) { return look.box.right() - 1.5 * look.text; }
double rowHeight(const LadderLook& look) { return (look.box.height - 1.4 * look.text) / kRows; }
double rowY(const LadderLook& look, int row) { return look.box.y + (row + 0.5) * rowHeight(look); }

double axisX(const Tape& tape, const LadderLook& look, double t) {
  return axisLeft(look) + (axisRight(look) - axisLeft(look)) * t / std::max(lengthOf(tape), kStep);
}

void drawRows(Panel& panel, const LadderLook& look) {
  for (int row = 0; row < kRows; ++row) {
    const double y = rowY(look, row);
    panel.shapes.push_back(Line{{axisLeft(look), y}, {axisRight(look), y}, StyleId::ladder_rule});
    panel.shapes.push_back(Label{{look.box.x + 0.4 * look.text, y},
                                 kRowNames[static_cast<std::size_t>(row)],
                                 look.text,
                                 StyleId::ladder_text,
                                 Anchor::left});
  }
}

void drawSeconds(Panel& panel, const Tape& tape, const LadderLook& look) {
  const double top = look.box.y, bottom = rowY(look, kRows - 1) + 0.5 * rowHeight(look);
  for (int s = 0; s <= static_cast<int>(lengthOf(tape)); ++s) {
    const double x = axisX(tape, look, s);
    panel.shapes.push_back(Line{{x, top}, {x, bottom}, StyleId::ladder_rule});
    panel.shapes.push_back(
        Label{{x, bottom + 0.7 * look.text}, fmt::format("{} s", s), 0.85 * look.text, StyleId::ladder_text});
  }
}

void drawTick(Panel& panel, Vec2 at, LadderKind kind, double size) {
  switch (kind) {
    case LadderKind::saw:
      panel.shapes.push_back(Disc{at, 0.8 * size, StyleId::tick_saw});
      break;
    case LadderKind::decided:
      panel.shapes.push_back(
          Polygon{{{at.x, at.y - size}, {at.x + size, at.y}, {at.x, at.y + size}, {at.x - size, at.y}},
                  StyleId::tick_decided});
      break;
    case LadderKind::did:
      panel.shapes.push_back(Line{{at.x, at.y - 1.1 * size}, {at.x, at.y + 1.1 * size}, StyleId::tick_did});
      break;
    case LadderKind::ball:
      panel.shapes.push_back(Disc{at, 0.8 * size, StyleId::tick_ball});
      break;
  }
}

void drawPlayHead(Panel& panel, double x, const LadderLook& look) {
  const double top = look.box.y, bottom = rowY(look, kRows - 1) + 0.5 * rowHeight(look);
  const double half = 0.35 * look.text;
  panel.shapes.push_back(Line{{x, top}, {x, bottom}, StyleId::play_head});
  panel.shapes.push_back(
      Polygon{{{x - half, top}, {x + half, top}, {x, top + 1.6 * half}}, StyleId::play_head});
}

}  // namespace

std::vector<LadderTick> ladderTicks(const Tape& tape) {
  std::vector<LadderTick> ticks;
  for (const Event& event : tape.record.events) {
    if (auto tick = tickFor(tape.setup, event)) ticks.push_back(std::move(*tick));
  }
  return ticks;
}

Vec2 ladderPoint(const Tape& tape, const LadderLook& look, const LadderTick& tick) {
  return {axisX(tape, look, tick.t), rowY(look, tick.row)};
}

double ladderTime(const Tape& tape, const LadderLook& look, double page_x) {
  const double share = (page_x - axisLeft(look)) / (axisRight(look) - axisLeft(look));
  return clamped(share, 0.0, 1.0) * lengthOf(tape);
}

Panel ladderPanel(const Tape& tape, double t, const LadderLook& look) {
  Panel panel = pagePanel(look.box);
  drawSeconds(panel, tape, look);
  drawRows(panel, look);
  const double size = std::min(0.4 * look.text, 0.4 * rowHeight(look));
  for (const LadderTick& tick : ladderTicks(tape)) {
    const Vec2 at = ladderPoint(tape, look, tick);
    if (tick.row > 0 && tick.man == look.selected)
      panel.shapes.push_back(Disc{at, 1.7 * size, StyleId::selected});
    drawTick(panel, at, tick.kind, size);
  }
  drawPlayHead(panel, axisX(tape, look, t), look);
  return panel;
}

}  // namespace gapsound
