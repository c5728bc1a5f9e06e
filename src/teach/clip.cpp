#include "teach/clip.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "analysis/as_run.hpp"
#include "analysis/lanes.hpp"
#include "base/numbers.hpp"
#include "base/tick.hpp"
#include "picture/calipers.hpp"
#include "picture/field.hpp"
#include "picture/ledger.hpp"
#include "teach/caution.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr double kTitleSeconds = 1.0, kFreezeSeconds = 1.6, kEndingSeconds = 1.0, kCautionSeconds = 1.6;
constexpr int kSlowness = 4;
constexpr double kBeforeLine = 0.40, kAfterLine = 0.15;            // s around the crossing
constexpr double kHeader = 58.0, kLedger = 84.0, kCaption = 58.0;  // page units
constexpr FieldView kWide{{-11.5, -8.2}, {11.5, 12.6}};
constexpr FieldView kNear{{-8.5, -6.8}, {8.5, 9.3}};  // its lower part lies under ledger and caption
constexpr double kLeastSymbol = 12.0;                 // page units
constexpr double kZoomSeconds = 0.3;

double longestOf(const ClipScript& script) {
  double longest = 0.0;
  for (const ClipSide& side : script.sides) longest = std::max(longest, lengthOf(side.tape));
  return longest;
}

void slowAround(ClipScript& script, double first, double last) {
  const double end = longestOf(script);
  script.slow_from = clamped(first - kBeforeLine, 0.0, end);
  script.slow_to = clamped(last + kAfterLine, script.slow_from, end);
  script.freeze_at = clamped(first, script.slow_from, script.slow_to);
}

const char* verbOf(Relation relation) {
  switch (relation) {
    case Relation::bounce:
      return "bounces through";
    case Relation::cutback:
      return "cuts back through";
    case Relation::designed:
    case Relation::inside:
      return "runs through";
  }
  return "runs through";
}

std::string ownerWords(const Setup& setup, const Lane& lane) {
  if (lane.owner == kNobody) return "it is nobody's";
  const std::string& owner = setup.men[static_cast<std::size_t>(lane.owner)].id;
  switch (lane.cause) {
    case Cause::there:
      return owner + " is there";
    case Cause::absent:
      return owner + " is absent";
    case Cause::beaten:
      return owner + " is beaten";
    case Cause::missed:
      return owner + " misses it";
    case Cause::none:
      return "it is " + owner + "'s";
  }
  return "";
}

/// The lane the ball goes into: the one it stands before, else the nearest.
std::optional<Lane> laneTaken(const Tape& tape) {
  if (tape.record.line_tick < 0) return std::nullopt;
  const Frame frame = frameAt(tape, seconds(tape.record.line_tick));
  const std::vector<Lane> lanes = lanesAt(tape, frame);
  const auto off = [&](const Lane& lane) {
    return std::max({0.0, lane.left - frame.ball.x, frame.ball.x - lane.right});
  };
  const auto nearest = std::min_element(lanes.begin(), lanes.end(),
                                        [&](const Lane& a, const Lane& b) { return off(a) < off(b); });
  return nearest == lanes.end() ? std::nullopt : std::optional(*nearest);
}

/// True of the frozen picture by construction: it reads the lane measured there.
std::string laneLine(const Tape& tape, const std::optional<Lane>& lane) {
  const int carrier = runnerOf(tape);
  const std::string runner =
      carrier == kNobody ? "The ball" : tape.setup.men[static_cast<std::size_t>(carrier)].id;
  if (tape.record.line_tick < 0) return runner + " never crosses the line.";
  if (!lane) return runner + " crosses the line.";
  return fmt::format("{} {} {}, {}: {}.", runner, verbOf(lane->relation), lane->gap, yardsText(lane->width()),
                     ownerWords(tape.setup, *lane));
}

ClipSide sideOf(const Tape& tape, const std::string& name, const std::optional<Lane>& lane) {
  return {tape, name, lane ? std::optional(lane->centre()) : std::nullopt};
}

void repeat(std::vector<ClipFrame>& frames, const ClipScript& script, Scene scene, double t, double length) {
  frames.insert(frames.end(), static_cast<std::size_t>(std::lround(length * script.fps)),
                ClipFrame{scene, t});
}

/// 0 in the wide picture, 1 in the near one of the slow stretch.
double nearness(const ClipScript& script, double t) {
  if (script.slow_from >= script.slow_to) return 0.0;
  return std::min(ramp(t, script.slow_from - kZoomSeconds, script.slow_from),
                  ramp(t, script.slow_to + kZoomSeconds, script.slow_to));
}

FieldView between(const FieldView& a, const FieldView& b, double share) {
  return {a.low + share * (b.low - a.low), a.high + share * (b.high - a.high)};
}

Panel wholePage(const ClipScript& script) {
  Panel page = pagePanel({0.0, 0.0, script.width, script.height});
  page.shapes.push_back(Rect{{0.0, 0.0}, {script.width, script.height}, 0.0, StyleId::ground});
  return page;
}

DisplayList titleCard(const ClipScript& script) {
  Panel page = wholePage(script);
  const Vec2 middle{0.5 * script.width, 0.5 * script.height};
  const double wrap = 0.86 * script.width;
  page.shapes.push_back(Label{
      {middle.x, middle.y - 130.0}, script.title, 46.0, StyleId::title, Anchor::centre, Rise::top, wrap});
  page.shapes.push_back(Label{
      {middle.x, middle.y + 24.0}, script.subtitle, 28.0, StyleId::text, Anchor::centre, Rise::top, wrap});
  return {script.width, script.height, {std::move(page)}};
}

DisplayList cautionCard(const ClipScript& script) {
  Panel page = wholePage(script);
  double y = 0.5 * script.height - 110.0;
  page.shapes.push_back(
      Label{{0.08 * script.width, y}, "Before it goes to the field", 36.0, StyleId::title, Anchor::left});
  for (const std::string& line : cautionLines()) {
    y += 62.0;
    page.shapes.push_back(
        Label{{0.08 * script.width, y}, line, 27.0, StyleId::text, Anchor::left, Rise::middle, 0.0});
  }
  return {script.width, script.height, {std::move(page)}};
}

const char* speedWords(Scene scene) {
  switch (scene) {
    case Scene::slow:
      return "quarter speed";
    case Scene::freeze:
      return "held";
    case Scene::ending:
      return "over";
    default:
      return "real speed";
  }
}

void drawHeader(Panel& page, const ClipScript& script, const ClipFrame& frame) {
  const double y = 0.5 * kHeader;
  page.shapes.push_back(Label{{24.0, y}, script.title, 26.0, StyleId::title, Anchor::left});
  page.shapes.push_back(Label{
      {script.width - 24.0, y}, fmt::format("{:.2f} s", frame.t), 26.0, StyleId::mark_text, Anchor::right});
  page.shapes.push_back(
      Label{{script.width - 130.0, y}, speedWords(frame.scene), 20.0, StyleId::small, Anchor::right});
}

/// Ledger and caption have the foot of the page to themselves while the picture is near.
double footHeight(Scene scene) {
  if (scene == Scene::slow || scene == Scene::freeze) return kLedger + kCaption;
  return scene == Scene::ending ? kCaption : 0.0;
}

std::string captionFor(const ClipScript& script, Scene scene) {
  if (scene == Scene::freeze) return script.line;
  if (scene != Scene::ending || script.sides.size() > 1) return "";
  return "A " + endingLine(script.sides.front().tape.record) + ".";
}

Panel footOf(const ClipScript& script, const ClipFrame& frame) {
  const double height = footHeight(frame.scene);
  const double top = script.height - height;
  Panel foot = pagePanel({0.0, top, script.width, height});
  foot.shapes.push_back(Rect{{0.0, top}, {script.width, script.height}, 0.0, StyleId::ground});
  foot.shapes.push_back(Label{{0.5 * script.width, script.height - 0.5 * kCaption},
                              captionFor(script, frame.scene),
                              28.0,
                              StyleId::strong});
  return foot;
}

FieldLook fieldLook(const ClipScript& script, const ClipFrame& frame, const ClipSide& side,
                    const PageRect& box) {
  const FieldView view = viewAt(side.tape, frame.t, between(kWide, kNear, nearness(script, frame.t)));
  FieldLook look;
  look.box = box;
  look.low = view.low, look.high = view.high;
  look.text = 18.0;
  look.symbol = symbolFor(box, view, kLeastSymbol);
  look.names = script.names;
  look.shown = script.shown;
  if (script.calipers && frame.scene == Scene::freeze) {
    look.calipers = Calipers::open;
    look.caliper_x = side.lane_x;
  }
  return look;
}

Panel ledgerOf(const ClipSide& side, const std::vector<Lane>& lanes, const Camera& camera,
               const PageRect& box) {
  const PageRect strip{box.x + 6.0, box.bottom() - kLedger - kCaption, box.width - 12.0, kLedger};
  return ledgerPanel(side.tape.setup, lanes, camera, {strip, 17.0, 1.0});
}

struct SidePanels {
  Panel field, ledger;
};

SidePanels panelsOf(const ClipScript& script, const ClipFrame& frame, const ClipSide& side,
                    const PageRect& box) {
  const Frame now = frameAt(side.tape, frame.t);
  const std::vector<Lane> lanes = lanesShownAt(side.tape, frame.t, now);
  Panel field = fieldPanel(side.tape.setup, now, fieldLook(script, frame, side, box), lanes,
                           framesBefore(side.tape, frame.t));
  Panel ledger = ledgerOf(side, lanes, field.camera, box);
  return {std::move(field), std::move(ledger)};
}

void drawSideNames(DisplayList& page, const ClipScript& script, const ClipFrame& frame) {
  if (script.sides.size() < 2) return;
  Panel names = pagePanel({0.0, kHeader, script.width, 44.0});
  const double width = script.width / static_cast<double>(script.sides.size());
  double x = 0.5 * width;
  for (const ClipSide& side : script.sides) {
    const bool over = frame.t >= lengthOf(side.tape);
    const std::string words = over ? side.name + ": " + endingLine(side.tape.record) : side.name;
    const double half = 0.5 * roughWidth(words, 22.0) + 14.0;
    names.shapes.push_back(Rect{{x - half, kHeader + 4.0}, {x + half, kHeader + 38.0}, 4.0, StyleId::panel});
    names.shapes.push_back(Label{{x, kHeader + 21.0}, words, 22.0, StyleId::strong});
    x += width;
  }
  names.shapes.push_back(
      Line{{0.5 * script.width, kHeader}, {0.5 * script.width, script.height - kCaption}, StyleId::frame});
  names.clip.height = script.height - kHeader - kCaption;
  page.panels.push_back(std::move(names));
}

DisplayList playPage(const ClipScript& script, const ClipFrame& frame) {
  DisplayList page{script.width, script.height, {wholePage(script)}};
  drawHeader(page.panels.front(), script, frame);
  const double width = script.width / static_cast<double>(script.sides.size());
  std::vector<Panel> ledgers;
  for (std::size_t i = 0; i < script.sides.size(); ++i) {
    const PageRect box{static_cast<double>(i) * width, kHeader, width, script.height - kHeader};
    SidePanels panels = panelsOf(script, frame, script.sides[i], box);
    page.panels.push_back(std::move(panels.field));
    ledgers.push_back(std::move(panels.ledger));
  }
  if (footHeight(frame.scene) > 0.0) page.panels.push_back(footOf(script, frame));
  if (frame.scene == Scene::slow || frame.scene == Scene::freeze) {
    for (Panel& ledger : ledgers) page.panels.push_back(std::move(ledger));
  }
  drawSideNames(page, script, frame);
  return page;
}

}  // namespace

ClipScript clipOf(const Tape& tape) {
  ClipScript script;
  script.title = tape.setup.title;
  script.subtitle = lookLine(tape.setup);
  const std::optional<Lane> lane = laneTaken(tape);
  script.sides = {sideOf(tape, "", lane)};
  slowAround(script, crossingOf(tape), crossingOf(tape));
  script.line = laneLine(tape, lane);
  return script;
}

ClipScript clipOf(const Tape& a, const std::string& name_a, const Tape& b, const std::string& name_b,
                  const std::string& difference) {
  ClipScript script;
  script.title = a.setup.title;
  const std::string endings =
      fmt::format("{}: {}. {}: {}.", name_a, endingLine(a.record), name_b, endingLine(b.record));
  script.subtitle = difference.empty() ? endings : difference;
  script.line = script.subtitle;
  script.sides = {sideOf(a, name_a, laneTaken(a)), sideOf(b, name_b, laneTaken(b))};
  const auto [first, last] = std::minmax({crossingOf(a), crossingOf(b)});
  slowAround(script, first, std::min(last, first + kBeforeLine));
  return script;
}

std::vector<ClipFrame> framesOf(const ClipScript& script) {
  std::vector<ClipFrame> frames;
  repeat(frames, script, Scene::title, 0.0, kTitleSeconds);
  const int steps_a_second = kSlowness * script.fps;
  const auto stepAt = [&](double t) { return static_cast<int>(std::lround(t * steps_a_second)); };
  const int last = stepAt(longestOf(script)), slow_from = stepAt(script.slow_from),
            slow_to = stepAt(script.slow_to);
  const int frozen = script.freeze_at < 0.0 ? -1 : stepAt(script.freeze_at);
  for (int step = 0; step <= last;) {
    const bool slow = slow_from <= step && step < slow_to;
    const double t = static_cast<double>(step) / steps_a_second;
    frames.push_back({slow ? Scene::slow : Scene::play, t});
    if (step == frozen) repeat(frames, script, Scene::freeze, t, kFreezeSeconds);
    step += slow ? 1 : step < slow_from ? std::min(kSlowness, slow_from - step) : kSlowness;
  }
  repeat(frames, script, Scene::ending, longestOf(script), kEndingSeconds);
  repeat(frames, script, Scene::caution, longestOf(script), kCautionSeconds);
  return frames;
}

DisplayList clipPage(const ClipScript& script, const ClipFrame& frame) {
  switch (frame.scene) {
    case Scene::title:
      return titleCard(script);
    case Scene::caution:
      return cautionCard(script);
    default:
      return playPage(script, frame);
  }
}

}  // namespace gapsound
