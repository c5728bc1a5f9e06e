#include "app/page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "app/study_page.hpp"
#include "picture/ledger.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr FieldView kView{{-11.5, -8.0}, {11.5, 11.8}};
constexpr FieldView kLowView{{-11.5, -6.5}, {11.5, 9.0}};
constexpr double kLeastSymbol = 11.0;  // page units
constexpr double kCardWidth = 292.0;
constexpr double kMargin = 18.0;

double smallText(const PageLayout& layout) { return (layout.low ? 0.76 : 0.93) * layout.text; }

bool beside(const Desk& desk) { return desk.held() && desk.view.holding == Holding::beside; }

PageRect liveBox(const Desk& desk, const PageLayout& layout) {
  if (!beside(desk)) return layout.field;
  PageRect box = layout.field;
  box.width *= 0.5;
  box.x += box.width;
  return box;
}

PageRect heldBox(const PageLayout& layout) {
  PageRect box = layout.field;
  box.width *= 0.5;
  return box;
}

/// Wide enough to show the man who is asked.
FieldView viewOf(const Desk& desk, const Tape& tape, const PageLayout& layout) {
  constexpr double kRound = 1.4, kAbove = 3.4;  // yd around him; the question stands above
  FieldView view = viewAt(tape, desk.playback.time(), layout.low ? kLowView : kView);
  if (!desk.view.question) return view;
  const auto man = static_cast<std::size_t>(desk.view.question->man);
  const Vec2 at = frameAt(tape, desk.playback.time()).men[man].pos;
  view.low = {std::min(view.low.x, at.x - kRound), std::min(view.low.y, at.y - kRound)};
  view.high = {std::max(view.high.x, at.x + kRound), std::max(view.high.y, at.y + kAbove)};
  return view;
}

FieldLook lookFor(const Desk& desk, const Tape& tape, const PageRect& box, const PageLayout& layout) {
  const FieldView view = viewOf(desk, tape, layout);
  FieldLook look;
  look.box = box;
  look.low = view.low, look.high = view.high;
  look.symbol = symbolFor(box, view, (layout.low ? 0.65 : 1.0) * kLeastSymbol * layout.text / 15.0);
  look.text = (layout.low ? 0.75 : 1.0) * layout.text;
  look.names = desk.view.names;
  look.calipers = desk.view.calipers;
  look.selected = desk.view.question ? desk.view.question->man : manNamed(tape.setup, desk.view.selected);
  return look;
}

Panel fieldOf(const Desk& desk, const Rep& rep, const PageRect& box, const PageLayout& layout) {
  const double t = desk.playback.time();
  const Frame frame = frameAt(rep.tape, t);
  return fieldPanel(rep.tape.setup, frame, lookFor(desk, rep.tape, box, layout),
                    lanesShownAt(rep.tape, t, frame), framesBefore(rep.tape, t));
}

Panel shadowOf(const Desk& desk, const PageLayout& layout, const FieldLook& live) {
  FieldLook look = live;
  look.box = layout.field;
  const Tape& tape = desk.held()->tape;
  return shadowPanel(tape.setup, frameAt(tape, desk.playback.time()), look);
}

Panel ledgerOf(const Rep& rep, double t, const Camera& camera, const PageRect& box, double text) {
  const Frame frame = frameAt(rep.tape, t);
  return ledgerPanel(rep.tape.setup, lanesShownAt(rep.tape, t, frame), camera, {box, text, 1.0});
}

std::string endingWords(const Rep& rep) {
  const auto& tacklers = rep.account.tacklers;
  std::string words = endingLine(rep.tape.record);
  for (std::size_t i = 0; i < tacklers.size(); ++i)
    words += (i == 0 ? " by " : i + 1 == tacklers.size() ? " and " : ", ") + tacklers[i];
  return words;
}

/// The rep in a line; without the tacklers where they would run into what stands on the right of it.
std::string repWords(const Rep& rep, const std::string& beside, double size, double width) {
  std::string words = fmt::format("rep {}: {}", rep.tape.seed, endingWords(rep));
  if (roughWidth(words, size) + roughWidth(beside, size) + size < width) return words;
  return fmt::format("rep {}: {}", rep.tape.seed, endingLine(rep.tape.record));
}

std::string share(const char* words, double value, const std::optional<Readout>& held,
                  double Distribution::*member) {
  const std::string was = held ? fmt::format(" (was {:.0f})", 100 * (held->gains.*member)) : "";
  return fmt::format("   {} {:.0f} %{}", words, 100 * value, was);
}

/// What the look comes to over many reps, beside what it was when the rep was held.
std::string readoutWords(const Desk& desk) {
  const auto& now = desk.readout();
  const auto& held = desk.heldReadout();
  if (!now) return "playing this look over and over ...";
  const Distribution& d = now->gains;
  std::string words =
      fmt::format("{} reps: mean {:.1f} yd ({:.1f} to {:.1f})", d.n, d.mean, d.mean_ci.low, d.mean_ci.high);
  if (held) words += fmt::format(", was {:.1f}", held->gains.mean);
  return words + share("0 or less", d.stuffed, held, &Distribution::stuffed) +
         share("10 or more", d.ten_plus, held, &Distribution::ten_plus) +
         share("cutback open", d.cutback_open, held, &Distribution::cutback_open);
}

/// Whole words up to the width, three points for the rest.
std::string shortened(const std::string& words, double size, double width) {
  if (linesOf(words, size, width).size() < 2) return words;
  return linesOf(words, size, width - roughWidth(" ...", size)).front() + " ...";
}

/// Title and clock; under them the rep and the many reps, on a line each where the window is narrow.
Panel titlePanel(const Desk& desk, const PageLayout& layout) {
  Panel panel = pagePanel(layout.title);
  const PageRect& box = layout.title;
  const bool narrow = layout.narrow;
  const double lines = narrow && !layout.low ? 3.0 : 2.0;
  const auto lineY = [&](double line) { return box.y + box.height * (line + 0.5) / lines; };
  const Rep& rep = *desk.rep();
  const std::string mark = desk.document().unsaved() ? "  (not saved)" : "";
  const auto add = [&](Vec2 at, const std::string& words, double size, StyleId style, Anchor anchor) {
    panel.shapes.push_back(Label{at, words, size, style, anchor});
  };
  const double left = box.x + kMargin, right = box.right() - kMargin;
  const double head = (narrow ? 1.0 : 1.15) * layout.text;
  const std::string clock = fmt::format("{:.2f} s", desk.playback.time());
  const double room = right - left - roughWidth(clock + mark, 1.2 * head) - head;
  add({left, lineY(0)}, shortened(rep.tape.setup.title, head, room) + mark, head, StyleId::title,
      Anchor::left);
  add({right, lineY(0)}, clock, head, StyleId::mark_text, Anchor::right);
  const std::string words = repWords(rep, narrow ? "" : readoutWords(desk), layout.text, right - left);
  add({left, lineY(1)}, words, 0.95 * layout.text, StyleId::text, Anchor::left);
  if (!layout.low || !narrow)
    add({narrow ? left : right, lineY(lines - 1.0)}, readoutWords(desk), layout.text, StyleId::cell_text,
        narrow ? Anchor::left : Anchor::right);
  panel.shapes.push_back(Line{{box.x, box.bottom()}, {box.right(), box.bottom()}, StyleId::frame});
  return panel;
}

void drawSideName(Panel& panel, const PageRect& box, const std::string& words, double text) {
  const double half = 0.5 * roughWidth(words, text) + 10.0;
  const Vec2 at{box.middle().x, box.bottom() - 1.2 * text};
  panel.shapes.push_back(
      Rect{{at.x - half, at.y - 0.8 * text}, {at.x + half, at.y + 0.8 * text}, 3.0, StyleId::panel});
  panel.shapes.push_back(Label{at, words, text, StyleId::strong});
}

/// What each defender is called to, below his sign.
void addJobs(DisplayList& page, const Desk& desk, const PageLayout& layout) {
  if (!desk.view.jobs) return;
  const FieldPlace place = fieldPlace(desk, layout);
  const Frame frame = frameAt(desk.rep()->tape, desk.playback.time());
  Panel panel = pagePanel(place.look.box);
  for (std::size_t man = kOffense; man < static_cast<std::size_t>(kMen); ++man) {
    const Vec2 at = place.camera.toPage(frame.men[man].pos);
    const double below = place.look.symbol * place.camera.scale_x + 0.75 * layout.text;
    panel.shapes.push_back(Label{{at.x, at.y + below},
                                 desk.rep()->tape.setup.men[man].fit.gap,
                                 0.9 * layout.text,
                                 StyleId::cell_text});
  }
  page.panels.push_back(std::move(panel));
}

/// The places to choose from; once one is chosen a ring stands around the right one.
void drawLetters(Panel& panel, const PutQuestion& question, const Camera& camera, double text) {
  for (const LetteredPlace& offered : question.places) {
    const Vec2 at = camera.toPage(offered.place);
    if (question.guess && offered.right) panel.shapes.push_back(Disc{at, 1.3 * text, StyleId::option_ring});
    panel.shapes.push_back(Disc{at, 0.8 * text, StyleId::option});
    panel.shapes.push_back(Label{at, std::string(1, offered.letter), 1.1 * text, StyleId::option_letter});
  }
}

/// The spot that was clicked and the spot where he fits, with a rule between them.
void addGuess(DisplayList& page, const Desk& desk, const PageLayout& layout) {
  const auto& question = desk.view.question;
  if (!question) return;
  const FieldPlace place = fieldPlace(desk, layout);
  Panel panel = pagePanel(place.look.box);
  if (question->guess) {
    const Vec2 guess = place.camera.toPage(*question->guess);
    const Vec2 truth = place.camera.toPage(fitSpot(*desk.rep(), question->man));
    panel.shapes.push_back(Line{guess, truth, StyleId::caliper});
    panel.shapes.push_back(Disc{guess, 0.6 * layout.text, StyleId::tick_saw});
    panel.shapes.push_back(Disc{truth, 0.6 * layout.text, StyleId::tick_decided});
  }
  drawLetters(panel, *question, place.camera, layout.text);
  page.panels.push_back(std::move(panel));
}

std::string sentenceNow(const Desk& desk) {
  const View& view = desk.view;
  if (view.question) return questionWords(*desk.rep(), *view.question);
  return view.drag && view.drag->moved ? view.drag->landmark : desk.difference();
}

/// The question, the sentence about the held rep, or where the man being dragged stands, on top of the field.
void addSentence(DisplayList& page, const Desk& desk, const PageLayout& layout) {
  const std::string words = sentenceNow(desk);
  if (words.empty()) return;
  const PageRect& field = layout.field;
  const double wrap = field.width - 60.0;
  const auto lines = static_cast<double>(linesOf(words, layout.text, wrap).size());
  const double bottom = field.y + 12.0 + 1.3 * layout.text * lines;
  Panel panel = pagePanel(field);
  panel.shapes.push_back(Rect{{field.x, field.y}, {field.right(), bottom}, 0.0, StyleId::panel});
  panel.shapes.push_back(Label{{field.middle().x, field.y + 6.0},
                               words,
                               layout.text,
                               StyleId::strong,
                               Anchor::centre,
                               Rise::top,
                               wrap});
  page.panels.push_back(std::move(panel));
}

void addBeside(DisplayList& page, const Desk& desk, const PageLayout& layout) {
  const PageRect box = heldBox(layout);
  page.panels.push_back(fieldOf(desk, *desk.held(), box, layout));
  PageRect strip = layout.ledger;
  strip.width *= 0.5;
  const double t = desk.playback.time();
  page.panels.push_back(ledgerOf(*desk.held(), t, page.panels.back().camera, strip, smallText(layout)));
  Panel names = pagePanel(layout.field);
  drawSideName(names, box, "held: " + endingWords(*desk.held()), layout.text);
  drawSideName(names, liveBox(desk, layout), "now: " + endingWords(*desk.rep()), layout.text);
  names.shapes.push_back(Line{{box.right(), box.y}, {box.right(), box.bottom()}, StyleId::frame});
  page.panels.push_back(std::move(names));
}

Panel ground(const PageLayout& layout) {
  Panel panel = pagePanel({0.0, 0.0, layout.width, layout.height});
  panel.shapes.push_back(Rect{{0.0, 0.0}, {layout.width, layout.height}, 0.0, StyleId::ground});
  return panel;
}

/// Two rows of words where one does not hold them.
double railHeight(const PageLayout& layout) {
  constexpr double kOneRow = 1095.0, kOneShortRow = 620.0;  // page units the words need
  return layout.width < (layout.low ? kOneShortRow : kOneRow) ? 68.0 : 38.0;
}

}  // namespace

PageLayout layoutOf(double width, double height, bool left, bool right, bool meeting) {
  PageLayout layout;
  layout.width = width, layout.height = height;
  layout.low = height < 480.0;
  layout.text = meeting ? std::clamp(height / 34.0, 15.0, 30.0) : 15.0;
  layout.narrow = width < 73.0 * layout.text;
  const double title = (layout.low ? 3.0 : layout.narrow ? 4.6 : 3.4) * layout.text;
  const double rail = meeting ? 0.0 : railHeight(layout);
  const double ladder = std::min((layout.low ? 0.17 : 0.2) * height, 7.2 * layout.text);
  const double ledger = (layout.low ? 3.9 : 4.9) * layout.text;
  layout.title = {0.0, 0.0, width, title};
  layout.rail = {0.0, height - rail, width, rail};
  layout.ladder = {0.0, layout.rail.y - ladder, width, ladder};
  const double left_width = left ? kCardWidth : 0.0;
  const double right_width = right ? kCardWidth : 0.0;
  const double middle = width - left_width - right_width;
  layout.ledger = {left_width, layout.ladder.y - ledger, middle, ledger};
  layout.field = {left_width, title, middle, layout.ledger.y - title};
  layout.left = {0.0, title, left_width, layout.ladder.y - title};
  layout.right = {width - right_width, title, right_width, layout.ladder.y - title};
  return layout;
}

FieldPlace fieldPlace(const Desk& desk, const PageLayout& layout) {
  const FieldLook look = lookFor(desk, desk.rep()->tape, liveBox(desk, layout), layout);
  return {look, fieldCamera(look.box, look.low, look.high)};
}

LadderLook ladderLook(const Desk& desk, const PageLayout& layout) {
  return {layout.ladder, smallText(layout), manNamed(desk.rep()->tape.setup, desk.view.selected)};
}

int manAt(const Desk& desk, const PageLayout& layout, Vec2 page) {
  const FieldPlace place = fieldPlace(desk, layout);
  const PageRect& box = place.look.box;
  if (page.x < box.x || page.x > box.right() || page.y < box.y || page.y > box.bottom()) return kNobody;
  const Vec2 at = place.camera.fromPage(page);
  const Frame frame = frameAt(desk.rep()->tape, desk.playback.time());
  const auto far = [&](const Pose& pose) { return distance(pose.pos, at); };
  const auto nearest = std::min_element(frame.men.begin(), frame.men.end(),
                                        [&](const Pose& a, const Pose& b) { return far(a) < far(b); });
  return far(*nearest) > 1.5 * place.look.symbol ? kNobody : static_cast<int>(nearest - frame.men.begin());
}

std::optional<LadderTick> tickAt(const Desk& desk, const PageLayout& layout, Vec2 page) {
  const LadderLook look = ladderLook(desk, layout);
  const auto& ticks = desk.rep()->ticks;
  const auto far = [&](const LadderTick& tick) {
    return distance(ladderPoint(desk.rep()->tape, look, tick), page);
  };
  const auto nearest = std::min_element(ticks.begin(), ticks.end(),
                                        [&](const auto& a, const auto& b) { return far(a) < far(b); });
  if (nearest == ticks.end() || far(*nearest) > 0.6 * layout.text) return std::nullopt;
  return *nearest;
}

PageRect studyBox(const PageLayout& layout) {
  PageRect box = layout.field;
  box.height += layout.ledger.height;
  return box;
}

namespace {

void addStudy(DisplayList& page, const Desk& desk, const PageLayout& layout) {
  if (!desk.study()) {
    Panel panel = pagePanel(layout.field);
    panel.shapes.push_back(Label{layout.field.middle(), desk.studying() ? "playing ..." : "no study yet",
                                 1.2 * layout.text, StyleId::text});
    page.panels.push_back(std::move(panel));
    return;
  }
  for (Panel& panel : studyPage(*desk.study(), studyBox(layout)).panels)
    page.panels.push_back(std::move(panel));
}

void addField(DisplayList& page, const Desk& desk, const PageLayout& layout) {
  const Rep& rep = *desk.rep();
  const double t = desk.playback.time();
  const PageRect live = liveBox(desk, layout);
  page.panels.push_back(fieldOf(desk, rep, live, layout));
  const Camera camera = page.panels.back().camera;
  PageRect strip = layout.ledger;
  strip.x = live.x, strip.width = live.width;
  if (desk.held() && desk.view.holding == Holding::shadow) {
    page.panels.push_back(shadowOf(desk, layout, fieldPlace(desk, layout).look));
  }
  addJobs(page, desk, layout);
  addGuess(page, desk, layout);
  page.panels.push_back(ledgerOf(rep, t, camera, strip, smallText(layout)));
  if (beside(desk)) addBeside(page, desk, layout);
  addSentence(page, desk, layout);
}

}  // namespace

DisplayList stagePage(const Desk& desk, const PageLayout& layout) {
  DisplayList page{layout.width, layout.height, {ground(layout)}};
  if (desk.view.study_page) {
    addStudy(page, desk, layout);
  } else {
    addField(page, desk, layout);
  }
  page.panels.push_back(titlePanel(desk, layout));
  page.panels.push_back(ladderPanel(desk.rep()->tape, desk.playback.time(), ladderLook(desk, layout)));
  return page;
}

}  // namespace gapsound
