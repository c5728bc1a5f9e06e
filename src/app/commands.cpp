#include "app/commands.hpp"

#include <algorithm>
#include <array>

#include "app/handout.hpp"
#include "base/error.hpp"

namespace gapsound {
namespace {

KeyPress plain(Key key) { return {key, false, false, false}; }
KeyPress shift(Key key) { return {key, false, true, false}; }
KeyPress control(Key key) { return {key, true, false, false}; }

void toggle(Desk& desk) {
  desk.playback.toggle();
  desk.hintDone(1);
}

void toggleCard(Desk& desk, Card card) {
  if (desk.view.cards.erase(card) == 0) desk.view.cards.insert(card);
}

/// The next man of the defense, then of the offense.
void selectNext(Desk& desk, int step) {
  if (!desk.rep()) return;
  const Setup& setup = desk.rep()->tape.setup;
  const int now = manNamed(setup, desk.view.selected);
  const int first = step > 0 ? kOffense : kOffense - 1;
  const int next = now == kNobody ? first : (now + step + kMen) % kMen;
  desk.select(setup.men[static_cast<std::size_t>(next)].id);
}

Calipers after(Calipers now) {
  return now == Calipers::none ? Calipers::open : now == Calipers::open ? Calipers::passable : Calipers::none;
}

void escape(Desk& desk) {
  if (desk.view.in_cards) {
    desk.view.in_cards = false;
  } else if (desk.leaving()) {
    desk.answer(LeaveBy::stay);
  } else if (desk.view.help || desk.view.caution) {
    desk.view.help = desk.view.caution = false;
  } else if (desk.view.study_page) {
    desk.view.study_page = false;
  } else if (desk.view.meeting) {
    desk.view.meeting = false;
  } else if (!desk.notice().empty()) {
    desk.say("");
  } else if (!desk.view.cards.empty()) {
    desk.view.cards.clear();
  } else {
    desk.select("");
  }
  if (desk.settings.hints) {
    desk.settings.hints = false;
    desk.keepSettings();
  }
}

void changeHolding(Desk& desk) {
  if (!desk.held()) return desk.hold();
  desk.view.holding = desk.view.holding == Holding::shadow ? Holding::beside : Holding::shadow;
}

void nextTheme(Desk& desk) {
  desk.settings.theme = desk.settings.theme == "paper" ? "evening" : "paper";
  desk.keepSettings();
}

void nextScale(Desk& desk) {
  desk.settings.ui_scale = desk.settings.ui_scale == 100 ? 150 : desk.settings.ui_scale == 150 ? 200 : 100;
  desk.keepSettings();
}

void save(Desk& desk) {
  if (desk.document().file().empty()) {
    desk.view.cards.insert(Card::files);
    return desk.say("name the file, then save");
  }
  static_cast<void>(desk.saveAs(desk.document().file()));
}

const auto kCommands = std::to_array<Command>({
    {plain(Key::space), "play", "play or stop", toggle},
    {plain(Key::left), "frame back", "a frame back", [](Desk& d) { d.playback.stepFrames(-1); }},
    {plain(Key::right), "frame on", "a frame on", [](Desk& d) { d.playback.stepFrames(1); }},
    {shift(Key::left), "tenth back", "a tenth of a second back", [](Desk& d) { d.playback.stepTenths(-1); }},
    {shift(Key::right), "tenth on", "a tenth of a second on", [](Desk& d) { d.playback.stepTenths(1); }},
    {plain(Key::home), "snap", "to the snap", [](Desk& d) { d.playback.home(); }},
    {plain(Key::end), "end", "to the end", [](Desk& d) { d.playback.end(); }},
    {plain(Key::minus), "slower", "slower", [](Desk& d) { d.playback.slower(); }},
    {plain(Key::plus), "faster", "faster", [](Desk& d) { d.playback.faster(); }},
    {plain(Key::o), "loop", "over and over, or once",
     [](Desk& d) { d.playback.setLoop(!d.playback.loops()); }},
    {plain(Key::page_down), "next rep", "the next rep",
     [](Desk& d) { d.chooseSeed(d.document().seed() + 1); }},
    {plain(Key::page_up), "rep before", "the rep before",
     [](Desk& d) { d.chooseSeed(d.document().seed() - 1); }},
    {plain(Key::t), "typical", "a typical rep",
     [](Desk& d) {
       if (d.readout()) d.chooseSeed(d.readout()->typical_seed);
     }},
    {plain(Key::b), "best", "the defense's best rep",
     [](Desk& d) {
       if (d.readout()) d.chooseSeed(d.readout()->best_seed);
     }},
    {plain(Key::w), "worst", "the defense's worst rep",
     [](Desk& d) {
       if (d.readout()) d.chooseSeed(d.readout()->worst_seed);
     }},
    {plain(Key::h), "Hold", "hold this rep; again: shadow or side by side", changeHolding},
    {shift(Key::h), "let go", "let the held rep go", [](Desk& d) { d.letGo(); }},
    {plain(Key::k), "Calipers", "calipers: none, open lanes, every way through",
     [](Desk& d) { d.view.calipers = after(d.view.calipers); }},
    {plain(Key::n), "names", "names on or off", [](Desk& d) { d.view.names = !d.view.names; }},
    {plain(Key::j), "jobs", "what each defender is called to", [](Desk& d) { d.view.jobs = !d.view.jobs; }},
    {plain(Key::tab), "next man", "the next man", [](Desk& d) { selectNext(d, 1); }},
    {shift(Key::tab), "man before", "the man before", [](Desk& d) { selectNext(d, -1); }},
    {plain(Key::l), "Look", "the look card", [](Desk& d) { toggleCard(d, Card::look); }},
    {plain(Key::c), "Call", "the call card", [](Desk& d) { toggleCard(d, Card::call); }},
    {plain(Key::m), "Man", "the card of the man selected", [](Desk& d) { toggleCard(d, Card::man); }},
    {plain(Key::s), "Study", "the study card", [](Desk& d) { toggleCard(d, Card::study); }},
    {plain(Key::f6), "rows", "into the cards: arrows to walk, enter to change; again: back",
     [](Desk& d) { d.view.in_cards = !d.view.in_cards && !d.view.cards.empty(); }},
    {plain(Key::p), "study page", "the picture of the last study, or the field",
     [](Desk& d) { d.view.study_page = !d.view.study_page && d.study(); }},
    {plain(Key::f), "Files", "new, open, save as", [](Desk& d) { toggleCard(d, Card::files); }},
    {control(Key::s), "save", "save", save},
    {plain(Key::e), "clip", "a clip of this rep, with the held one beside it",
     [](Desk& d) { d.handOut(handoutName(d.document().file(), d.document().seed(), ".mp4")); }},
    {shift(Key::e), "strip", "a film strip of this rep",
     [](Desk& d) { d.handOut(handoutName(d.document().file(), d.document().seed(), ".pdf")); }},
    {control(Key::z), "undo", "undo", [](Desk& d) { d.undo(); }},
    {control(Key::y), "redo", "redo", [](Desk& d) { d.redo(); }},
    {{Key::z, true, true, false}, "redo too", "redo", [](Desk& d) { d.redo(); }},
    {control(Key::n), "new", "a new look from this one", [](Desk& d) { d.askNew(); }},
    {control(Key::q), "quit", "close the window", [](Desk& d) { d.askQuit(); }},
    {plain(Key::g), "free", "dragging: snap to landmarks, or free",
     [](Desk& d) { d.view.free_drag = !d.view.free_drag; }},
    {plain(Key::f11), "Meeting", "meeting: full screen, large type",
     [](Desk& d) { d.view.meeting = !d.view.meeting; }},
    {plain(Key::q), "ask", "stop where a man decides, and ask him",
     [](Desk& d) { d.view.asks = !d.view.asks; }},
    {plain(Key::f2), "theme", "paper or evening", nextTheme},
    {plain(Key::f3), "size", "larger type: 100, 150, 200 %", nextScale},
    {plain(Key::f1), "Help", "this page", [](Desk& d) { d.view.help = !d.view.help; }},
    {plain(Key::f4), "caution", "before it goes to the field",
     [](Desk& d) { d.view.caution = !d.view.caution; }},
    {plain(Key::escape), "close", "close what is open, step by step", escape},
});

}  // namespace

std::span<const Command> commands() { return kCommands; }

const Command& commandNamed(std::string_view name) {
  const auto found = std::find_if(kCommands.begin(), kCommands.end(),
                                  [&](const Command& command) { return command.name == name; });
  if (found == kCommands.end()) throw Error(ExitCode::ourFault, "no command " + std::string(name));
  return *found;
}

bool runKey(Desk& desk, const KeyPress& press) {
  const auto found = std::find_if(kCommands.begin(), kCommands.end(),
                                  [&](const Command& command) { return command.press == press; });
  if (found == kCommands.end()) return false;
  found->run(desk);
  return true;
}

}  // namespace gapsound
