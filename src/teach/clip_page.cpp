#include <fmt/format.h>

#include <algorithm>

#include "analysis/lanes.hpp"
#include "base/numbers.hpp"
#include "picture/field.hpp"
#include "picture/ledger.hpp"
#include "teach/caution.hpp"
#include "teach/clip.hpp"
#include "teach/layout.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr double kHeader = 58.0, kLedger = 84.0, kCaption = 58.0;  // page units
constexpr double kCaptionText = 28.0, kLeading = 1.28;
constexpr double kLeastTitle = 15.0;  // smaller is left to the title card
constexpr FieldView kWide{{-11.5, -8.2}, {11.5, 12.6}};
constexpr FieldView kNear{{-8.5, -6.8}, {8.5, 9.3}};  // its lower part lies under ledger and caption
constexpr double kLeastSymbol = 12.0;                 // page units
constexpr double kZoomSeconds = 0.3;

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

/// Lines of text under each other around a height, each broken to the page.
void stack(Panel& page, const std::vector<std::pair<std::string, double>>& texts, double middle, double width,
           Anchor anchor) {
  std::vector<std::pair<std::string, double>> lines;
  double height = 0.0;
  for (const auto& [text, size] : texts) {
    for (const std::string& line : linesOf(text, size, width))
      lines.emplace_back(line, size), height += kLeading * size;
    lines.emplace_back("", 0.6 * size), height += 0.6 * size;
  }
  double y = middle - 0.5 * height;
  const double x = anchor == Anchor::centre ? page.clip.middle().x : 0.5 * (page.clip.width - width);
  for (const auto& [line, size] : lines) {
    const double step = line.empty() ? size : kLeading * size;
    if (!line.empty())
      page.shapes.push_back(
          Label{{x, y + 0.5 * step}, line, size, size > 32.0 ? StyleId::title : StyleId::text, anchor});
    y += step;
  }
}

DisplayList titleCard(const ClipScript& script) {
  Panel page = wholePage(script);
  stack(page, {{script.title, 46.0}, {script.subtitle, 28.0}}, 0.5 * script.height, 0.86 * script.width,
        Anchor::centre);
  return {script.width, script.height, {std::move(page)}};
}

DisplayList cautionCard(const ClipScript& script) {
  Panel page = wholePage(script);
  std::vector<std::pair<std::string, double>> texts{{"Before it goes to the field", 36.0}};
  for (const std::string& line : cautionLines()) texts.emplace_back(line, 27.0);
  stack(page, texts, 0.5 * script.height, 0.86 * script.width, Anchor::left);
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

double sizeToFit(const std::string& text, double size, double width) {
  return std::min(size, width / std::max(kMeasureError * roughWidth(text, 1.0), 1e-9));
}

void drawHeader(Panel& page, const ClipScript& script, const ClipFrame& frame) {
  const double y = 0.5 * kHeader;
  const double title = sizeToFit(script.title, 26.0, script.width - 330.0);
  if (title >= kLeastTitle)
    page.shapes.push_back(Label{{24.0, y}, script.title, title, StyleId::title, Anchor::left});
  page.shapes.push_back(Label{
      {script.width - 24.0, y}, fmt::format("{:.2f} s", frame.t), 26.0, StyleId::mark_text, Anchor::right});
  page.shapes.push_back(
      Label{{script.width - 130.0, y}, speedWords(frame.scene), 20.0, StyleId::small, Anchor::right});
}

/// Room for the longest of the captions, one line or more.
double captionRoom(const ClipScript& script) {
  return std::max(kCaption, Layout::heightOf(script.line, kCaptionText, 0.94 * script.width) + 20.0);
}

/// Ledger and caption have the foot of the page to themselves while the picture is near.
double footHeight(const ClipScript& script, Scene scene) {
  if (scene == Scene::slow || scene == Scene::freeze) return kLedger + captionRoom(script);
  return scene == Scene::ending ? captionRoom(script) : 0.0;
}

std::string captionFor(const ClipScript& script, Scene scene) {
  if (scene == Scene::freeze) return script.line;
  if (scene != Scene::ending || script.sides.size() > 1) return "";
  return "A " + endingLine(script.sides.front().tape.record) + ".";
}

Panel footOf(const ClipScript& script, const ClipFrame& frame) {
  const double height = footHeight(script, frame.scene), room = captionRoom(script);
  const double top = script.height - height;
  Panel foot = pagePanel({0.0, top, script.width, height});
  foot.shapes.push_back(Rect{{0.0, top}, {script.width, script.height}, 0.0, StyleId::ground});
  const auto lines = linesOf(captionFor(script, frame.scene), kCaptionText, 0.94 * script.width);
  double y = script.height - 0.5 * room - 0.5 * kLeading * kCaptionText * static_cast<double>(lines.size());
  for (const std::string& line : lines) {
    foot.shapes.push_back(
        Label{{0.5 * script.width, y + 0.5 * kLeading * kCaptionText}, line, kCaptionText, StyleId::strong});
    y += kLeading * kCaptionText;
  }
  return foot;
}

/// Two sides stand next to each other, on an upright page one over the other.
PageRect boxOf(const ClipScript& script, std::size_t side) {
  const auto sides = static_cast<double>(script.sides.size()), at = static_cast<double>(side);
  const double height = script.height - kHeader;
  if (script.sides.size() > 1 && script.height > script.width) {
    const double each = (height - kLedger - captionRoom(script)) / sides;
    return {0.0, kHeader + at * each, script.width, each};
  }
  return {at * script.width / sides, kHeader, script.width / sides, height};
}

bool stacked(const ClipScript& script) { return script.sides.size() > 1 && script.height > script.width; }

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

/// The ledger of a side under its picture; of two sides over each other only the lower has room for one.
Panel ledgerOf(const ClipScript& script, const ClipSide& side, const std::vector<Lane>& lanes,
               const Camera& camera, const PageRect& box) {
  const double bottom = script.height - captionRoom(script);
  const PageRect strip{box.x + 6.0, bottom - kLedger, box.width - 12.0, kLedger};
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
  Panel ledger = ledgerOf(script, side, lanes, field.camera, box);
  return {std::move(field), std::move(ledger)};
}

void drawSideName(Panel& names, const ClipScript& script, const ClipFrame& frame, std::size_t i) {
  const ClipSide& side = script.sides[i];
  const PageRect box = boxOf(script, i);
  const bool over = frame.t >= lengthOf(side.tape);
  const std::string words = over ? side.name + ": " + endingLine(side.tape.record) : side.name;
  const double size = sizeToFit(words, 22.0, box.width - 36.0);
  const double half = 0.5 * roughWidth(words, size) + 14.0, x = box.middle().x;
  names.shapes.push_back(Rect{{x - half, box.y + 4.0}, {x + half, box.y + 38.0}, 4.0, StyleId::panel});
  names.shapes.push_back(Label{{x, box.y + 21.0}, words, size, StyleId::strong});
}

void drawSideNames(DisplayList& page, const ClipScript& script, const ClipFrame& frame) {
  if (script.sides.size() < 2) return;
  Panel names = pagePanel({0.0, kHeader, script.width, script.height - kHeader - captionRoom(script)});
  for (std::size_t i = 0; i < script.sides.size(); ++i) drawSideName(names, script, frame, i);
  const PageRect second = boxOf(script, 1);
  const Vec2 far = stacked(script) ? Vec2{second.right(), second.y} : Vec2{second.x, names.clip.bottom()};
  names.shapes.push_back(Line{{second.x, second.y}, far, StyleId::frame});
  page.panels.push_back(std::move(names));
}

DisplayList playPage(const ClipScript& script, const ClipFrame& frame) {
  DisplayList page{script.width, script.height, {wholePage(script)}};
  drawHeader(page.panels.front(), script, frame);
  std::vector<Panel> ledgers;
  for (std::size_t i = 0; i < script.sides.size(); ++i) {
    SidePanels panels = panelsOf(script, frame, script.sides[i], boxOf(script, i));
    page.panels.push_back(std::move(panels.field));
    if (!stacked(script) || i == 1) ledgers.push_back(std::move(panels.ledger));
  }
  if (footHeight(script, frame.scene) > 0.0) page.panels.push_back(footOf(script, frame));
  if (frame.scene == Scene::slow || frame.scene == Scene::freeze) {
    for (Panel& ledger : ledgers) page.panels.push_back(std::move(ledger));
  }
  drawSideNames(page, script, frame);
  return page;
}

}  // namespace

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
