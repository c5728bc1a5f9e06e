#include "app/desk.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "app/difference.hpp"
#include "app/handout.hpp"
#include "base/error.hpp"
#include "base/tick.hpp"
#include "cli/session.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {

Desk::Desk(Document document, Model model, StateFolder folder, int readout_reps)
    : document_(std::move(document)), model_(model), folder_(std::move(folder)), readout_reps_(readout_reps) {
  settings = folder_.settings();
  playAgain(true);
}

Desk::~Desk() {
  rep_errand_.cancel();
  readout_errand_.cancel();
  study_errand_.cancel();
}

/// A held look that was changed since is compared on the same luck; a held rep of the same look stays itself.
RepPtr Desk::heldToPlayAgain() const {
  const bool other_seed = held_ && held_->tape.seed != document_.seed();
  return other_seed && !changedSinceHeld().empty() ? held_ : nullptr;
}

void Desk::playAgain(bool readout_too) {
  ++edition_;
  rep_errand_.post([this, scenario = document_.scenario(), seed = document_.seed(), edition = edition_,
                    held = heldToPlayAgain()](const auto&) {
    Played played{edition, nullptr, nullptr, ""};
    try {
      played.rep = playRep(scenario, model_, seed);
      if (held) played.held = playRep(held->scenario, model_, seed);
    } catch (const Error& error) {
      played.fault = error.what();
    }
    played_.put(std::move(played));
  });
  if (!readout_too) return;
  readout_edition_ = edition_;
  counted_.clear();
  readout_errand_.post(
      [this, scenario = document_.scenario(), edition = edition_](const Errand::Stale& stale) {
        playReadout(scenario, model_, edition, readout_reps_, stale, counted_);
      });
}

void Desk::take(const Played& played) {
  if (played.edition != edition_) return;
  if (!played.rep) {
    notice_ = played.fault;
    return;
  }
  rep_ = played.rep;
  if (played.held && held_) held_ = played.held;
  playback.load(lengthOf(rep_->tape));
  view.question.reset();
  compare();
  if (manNamed(rep_->tape.setup, view.selected) == kNobody) view.selected.clear();
}

void Desk::compare() {
  const bool same = !held_ || held_ == rep_;
  difference_ = same ? "" : differenceWords(*held_, *rep_, changedSinceHeld());
}

bool Desk::collect() {
  bool any = false;
  if (const auto played = played_.take()) {
    take(*played);
    any = true;
  }
  if (auto counted = counted_.take(); counted && counted->edition == readout_edition_) {
    readout_ = std::move(*counted);
    any = true;
  }
  if (const auto words = handed_out_.take()) {
    notice_ = *words;
    any = true;
  }
  if (auto studied = studied_.take(); studied && studied->order.edition == study_edition_) {
    study_ = std::move(*studied);
    any = true;
  }
  return any;
}

void Desk::settle(bool all) {
  rep_errand_.wait();
  if (all) readout_errand_.wait();
  if (all) study_errand_.wait();
  if (all) handout_errand_.wait();
  static_cast<void>(collect());
}

void Desk::change(const std::string& words, const std::function<void(Scenario&)>& edit,
                  const std::string& gesture) {
  Scenario next = document_.scenario();
  edit(next);
  try {
    static_cast<void>(resolve(next, library(), model_));
  } catch (const Error& error) {
    notice_ = error.what();
    return;
  }
  notice_.clear();
  document_.change(std::move(next), words, gesture);
  keepUnsaved();
  playAgain(true);
}

void Desk::startStudy(StudyKind kind, const std::vector<SweepRange>& ranges, int reps) {
  const StudyOrder order{kind, document_.scenario(), ranges, reps, ++study_edition_};
  study_.reset();
  study_share_ = 0.0;
  view.study_page = true;
  study_errand_.post(
      [this, order](const Errand::Stale& stale) { playStudy(order, model_, stale, study_share_, studied_); });
}

void Desk::handOut(const std::string& file) {
  say("writing " + file + " ...");
  handout_errand_.post([this, rep = rep_, held = held_, words = changedSinceHeld(), file](const auto&) {
    handed_out_.put(writeHandout(rep, held == rep ? nullptr : held, words, file));
  });
}

void Desk::openCell(std::size_t cell) {
  if (!study_ || cell >= cellsOf(*study_)) return;
  const Scenario look = lookOfCell(*study_, cell);
  change(wordsOfCell(*study_, cell), [&](Scenario& scenario) { scenario = look; });
  view.study_page = false;
  playback.seek(0.0);
  playback.play();
}

void Desk::undo() {
  if (!document_.canUndo()) return say("nothing to undo");
  say("undone: " + document_.undoWords());
  document_.undo();
  keepUnsaved();
  playAgain(true);
}

void Desk::redo() {
  if (!document_.canRedo()) return say("nothing to redo");
  say("done again: " + document_.redoWords());
  document_.redo();
  keepUnsaved();
  playAgain(true);
}

void Desk::chooseSeed(std::uint64_t seed) {
  if (seed == 0) return;
  document_.choose(seed);
  playAgain(false);
}

void Desk::keepUnsaved() const {
  if (document_.unsaved()) {
    folder_.keepUnsaved(document_.file(), document_.text());
  } else {
    folder_.dropUnsaved();
  }
}

void Desk::replace(Document document) {
  document_ = std::move(document);
  letGo();
  readout_.reset();
  notice_.clear();
  view.selected.clear();
  keepUnsaved();
  playback.seek(0.0);
  playback.play();
  playAgain(true);
}

void Desk::open(const std::string& file) {
  try {
    Document document = Document::read(file);
    static_cast<void>(resolve(document.scenario(), library(), model_));
    replace(std::move(document));
    folder_.remember(file);
  } catch (const Error& error) {
    notice_ = error.what();
  }
}

bool Desk::saveAs(const std::string& file) {
  try {
    document_.saveAs(file);
  } catch (const Error& error) {
    notice_ = error.what();
    return false;
  }
  folder_.dropUnsaved();
  folder_.remember(file);
  notice_ = "saved as " + file;
  return true;
}

void Desk::select(const std::string& man) {
  view.selected = man;
  if (!man.empty()) hintDone(0);
}

void Desk::arrangeQuestion() {
  if (!rep_ || !view.asks || playback.playing()) view.question.reset();
  if (!rep_ || !view.asks) {
    coming_.reset();
    return playback.stopAt(std::nullopt);
  }
  if (playback.playing()) {
    const bool stands = coming_ && coming_->t > playback.time() && coming_->t - playback.time() < 2.0 * kStep;
    if (!stands) coming_ = nextQuestion(*rep_, playback.time(), view.selected);
    playback.stopAt(coming_ ? std::optional(coming_->t) : std::nullopt);
  } else if (coming_ && playback.time() == coming_->t) {
    view.question = std::exchange(coming_, std::nullopt);
    view.question->places = placesFor(*rep_, view.question->man, model_);
  }
}

void Desk::hintDone(std::size_t hint) {
  view.hints_done[hint] = true;
  const auto& done = view.hints_done;
  if (!settings.hints || !std::all_of(done.begin(), done.end(), [](bool one) { return one; })) return;
  settings.hints = false;
  keepSettings();
}

void Desk::startNew() {
  Scenario fresh = document_.scenario();
  fresh.title = "New look";
  fresh.tags.clear();
  fresh.players.clear();
  fresh.faults.clear();
  fresh.source = "new look";
  replace(Document(std::move(fresh), "", ""));
  view.cards = {Card::look, Card::call};
}

void Desk::ask(const Leaving& leaving) {
  if (document_.unsaved()) {
    leaving_ = leaving;
  } else {
    leave(leaving);
  }
}

void Desk::answer(LeaveBy answer) {
  if (!leaving_) return;
  const Leaving leaving = *std::exchange(leaving_, std::nullopt);
  if (answer == LeaveBy::stay) return;
  if (answer == LeaveBy::save) {
    if (document_.file().empty()) {
      view.cards.insert(Card::files);
      return say("name the file, then save");
    }
    if (!saveAs(document_.file())) return;
  }
  leave(leaving);
}

void Desk::leave(const Leaving& leaving) {
  switch (leaving.to) {
    case Leaving::To::open:
      return open(leaving.file);
    case Leaving::To::fresh:
      return startNew();
    case Leaving::To::quit:
      folder_.dropUnsaved();
      quits_ = true;
  }
}

void Desk::hold() {
  held_ = rep_;
  held_step_ = document_.step();
  difference_.clear();
  held_readout_ = readout_;
  if (view.holding == Holding::none) view.holding = Holding::shadow;
}

void Desk::letGo() {
  held_.reset();
  held_readout_.reset();
  difference_.clear();
  view.holding = Holding::none;
}

}  // namespace gapsound
