// Which states of the men of each level occur over the shipped looks and every mistake laid on every man it
// fits. The names and what they mean are common practice, no source; the bounds below are this test's own
// reading of them.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <map>
#include <set>
#include <string>

#include "football/faults.hpp"
#include "looks.hpp"
#include "scenario/settings.hpp"
#include "sim/play.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

constexpr int kReps = 8000;
constexpr int kOften = 20;
using Seen = std::map<std::string, int>;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// One rep, mirrored so that the run goes to +x.
class Rep {
 public:
  Rep(const Setup& setup, Record record) : setup_(setup), record_(std::move(record)) {
    const int tick = record_.line_tick >= 0 ? record_.line_tick : record_.end_tick;
    frame_ = &record_.frames[at(std::min(tick, static_cast<int>(record_.frames.size()) - 1))];
    until_ = tick;
  }
  [[nodiscard]] const Man& man(int i) const { return setup_.men[at(i)]; }
  [[nodiscard]] FitRole role(int i) const {
    return setup_.direction > 0 ? man(i).fit.if_right : man(i).fit.if_left;
  }
  [[nodiscard]] double x(int i) const { return setup_.direction * frame_->men[at(i)].pos.x; }
  [[nodiscard]] double y(int i) const { return frame_->men[at(i)].pos.y; }
  [[nodiscard]] double spotX(int i) const { return setup_.direction * man(i).spot.x; }
  [[nodiscard]] double ballX() const { return setup_.direction * frame_->ball.x; }
  [[nodiscard]] int blockerOf(int i) const { return frame_->men[at(i)].engaged; }
  [[nodiscard]] bool happened(Happening what, int who, int code = -1, bool before = true) const {
    for (const Event& e : record_.events)
      if (e.what == what && e.man == who && (code < 0 || e.code == code) && (!before || e.tick <= until_))
        return true;
    return false;
  }
  /// Deeper than y in the offense's backfield at some time before the ball crossed.
  [[nodiscard]] bool wasBehind(int man, double y) const {
    for (std::size_t k = 0; k < record_.frames.size() && k <= at(until_); ++k)
      if (record_.frames[k].men[at(man)].pos.y < y) return true;
    return false;
  }
  [[nodiscard]] const Record& record() const { return record_; }
  [[nodiscard]] const Setup& setup() const { return setup_; }

 private:
  const Setup& setup_;
  Record record_;
  const Frame* frame_ = nullptr;
  int until_ = 0;
};

/// What others saw of the end and of the first backer.
void addSights(const Rep& rep, Seen& seen) {
  std::set<std::string> found;
  for (const Event& e : rep.record().events) {
    if (e.what == Happening::end_state)
      found.insert("end " + std::string(nameOf(static_cast<EndState>(e.code))));
    if (e.what == Happening::backer_state)
      found.insert("b1 " + std::string(nameOf(static_cast<BackerState>(e.code))));
  }
  for (const std::string& each : found) ++seen[each];
}

const char* lineState(const Rep& rep, int man) {
  const double in = rep.spotX(man) - rep.x(man), side = rep.spotX(man) < 0 ? -1.0 : 1.0;
  const int blocker = rep.blockerOf(man);
  if (blocker != kNobody && rep.man(blocker).block.pull != PullStyle::none) return "trapped";
  if (rep.y(man) < -0.7) return "penetrated";
  if (blocker != kNobody && rep.y(man) - rep.man(man).spot.y > 1.5) return "moved_back";
  if (std::abs(in) > 1.2) return in * side > 0 ? "crossed_in" : "crossed_out";
  if (blocker != kNobody && rep.x(blocker) > rep.x(man) + 0.35) return "pinned";
  return "held";
}

const char* overlapState(const Rep& rep, int man) {
  const bool blocked = rep.blockerOf(man) != kNobody;
  if (rep.happened(Happening::shoots, man)) {
    if (rep.happened(Happening::tries_tackle, man, -1, false)) return "shot_hit";
    return blocked ? "shot_backblocked" : "reading";
  }
  if (rep.happened(Happening::decides, man, static_cast<int>(Fit::fold))) return "fold";
  if (rep.happened(Happening::decides, man, static_cast<int>(Fit::hang))) return "hang";
  if (blocked) return "cut_off";
  return rep.x(man) > rep.ballX() ? "overlap_over" : "overlap_under";
}

const char* forceState(const Rep& rep, int man) {
  const int blocker = rep.blockerOf(man);
  if (blocker != kNobody) {
    const bool receiver = rep.man(blocker).group == Group::receiver;
    if (receiver && rep.spotX(blocker) > rep.spotX(man)) return "cracked";
    return rep.x(blocker) > rep.x(man) ? "logged" : "kicked";
  }
  if (rep.wasBehind(man, -1.0)) return "deep";
  return rep.x(man) < rep.ballX() ? "inside_lost" : "set";
}

const char* alleyState(const Rep& rep, int man) {
  if (rep.x(man) > rep.ballX() + 2.5) return "overrun";
  return rep.y(man) > 6.0 ? "late" : "alley_fit";
}

void addLevels(const Rep& rep, Seen& seen) {
  for (int man = kOffense; man < kMen; ++man) {
    const FitRole role = rep.role(man);
    if (role == FitRole::interior) ++seen[std::string("dl ") + lineState(rep, man)];
    if (role == FitRole::overlap_backer) ++seen[std::string("bs_backer ") + overlapState(rep, man)];
    if (role == FitRole::force) ++seen[std::string("force ") + forceState(rep, man)];
    if (role == FitRole::alley) ++seen[std::string("safety ") + alleyState(rep, man)];
    if (role == FitRole::cutback) ++seen[rep.x(man) > rep.ballX() ? "safety flowed" : "safety cutback_held"];
  }
}

/// What each defender knows and has decided, event by event.
struct Mind {
  int side = 0;
  EndState end = EndState::open;
  LineState line = LineState::held;
  BackerState backer = BackerState::reading;
  Fit fit = Fit::called;
};

void learn(Mind& mind, const Event& e) {
  if (e.what == Happening::saw_key) mind.side = e.code;
  if (e.what == Happening::end_state) mind.end = static_cast<EndState>(e.code);
  if (e.what == Happening::line_state) mind.line = static_cast<LineState>(e.code);
  if (e.what == Happening::backer_state) mind.backer = static_cast<BackerState>(e.code);
  if (e.what == Happening::decides) mind.fit = static_cast<Fit>(e.code);
}

const char* tableOf(FitRole role) {
  if (role == FitRole::first_backer) return "first";
  if (role == FitRole::fill_backer) return "fill";
  if (role == FitRole::overlap_backer) return "overlap";
  return role == FitRole::alley ? "alley" : role == FitRole::force ? "force" : "";
}

/// The rows of the tables one defender's decision may have come from, with the fit each of them orders.
std::map<std::string, Fit> rowsFor(const Setup& setup, FitRole role, const Man& man, const Mind& mind) {
  const FitTable& t = setup.fits;
  const auto e = at(static_cast<int>(mind.end)), l = at(static_cast<int>(mind.line)),
             b = at(static_cast<int>(mind.backer)),
             s = at(static_cast<int>(structureFor(man.fit, mind.side)));
  const std::string who = tableOf(role), end = " end " + std::string(nameOf(mind.end)),
                    line = " line " + std::string(nameOf(mind.line)),
                    backer = " b1 " + std::string(nameOf(mind.backer));
  const std::string wall = s == 0 ? " spill" : " box";
  switch (role) {
    case FitRole::first_backer:
      return {{who + wall + end, t.first_backer[s][e]}, {who + line, t.first_by_line[l]}};
    case FitRole::fill_backer:
      return {{who + wall + end, t.fill_backer[s][e]}, {who + line, t.fill_by_line[l]}};
    case FitRole::overlap_backer:
      return {{who + wall + end, t.overlap_backer[s][e]}, {who + line, t.overlap_by_line[l]}};
    case FitRole::alley:
      return {{who + backer, t.alley[b]}};
    default:
      return {{who + backer, t.force[b]}};
  }
}

bool goesByItsCall(const Man& man) {
  return man.fit.bs_backer != BackSideBacker::overlap || !man.fit.off_the_man_in_front;
}

/// Rows that were read: what a man saw, and that he decided what one of the rows for it orders.
void addRows(const Rep& rep, Seen& rows, int& astray) {
  std::array<Mind, kMen> minds;
  for (const Event& e : rep.record().events) {
    if (e.man == kNobody) continue;
    Mind& mind = minds[at(e.man)];
    learn(mind, e);
    const Man& man = rep.man(e.man);
    if (e.what != Happening::decides || mind.side == 0 || goesByItsCall(man)) continue;
    const FitRole role = mind.side > 0 ? man.fit.if_right : man.fit.if_left;
    if (*tableOf(role) == 0 || mind.fit == Fit::called) continue;
    bool ordered = false;
    for (const auto& [row, fit] : rowsFor(rep.setup(), role, man, mind)) {
      ordered |= fit == mind.fit;
      if (fit == mind.fit) ++rows[row + " -> " + std::string(nameOf(fit))];
    }
    const bool by_force = role == FitRole::alley && mind.fit == Fit::alley;
    if (!ordered && !by_force) ++astray;
  }
}

std::string unseen(const Seen& seen) {
  std::string out;
  const auto add = [&](const char* kind, std::string_view name) {
    const std::string state = std::string(kind) + " " + std::string(name);
    if (seen.count(state) == 0 || seen.at(state) < kOften) out += " " + state + ";";
  };
  for (int k = 1; k < kEndStates; ++k) add("end", nameOf(static_cast<EndState>(k)));
  for (int k = 1; k < kBackerStates; ++k) add("b1", nameOf(static_cast<BackerState>(k)));
  for (int k = 0; k < 7; ++k) add("dl", nameOf(static_cast<LineState>(k)));
  for (int k = 1; k < 8; ++k) add("bs_backer", nameOf(static_cast<OverlapState>(k)));
  for (int k = 1; k < 7; ++k) add("force", nameOf(static_cast<ForceState>(k)));
  for (int k = 1; k < 6; ++k) add("safety", nameOf(static_cast<SafetyState>(k)));
  return out;
}

void callBackSide(Setup& setup, BackSideBacker call) {
  for (Man& man : setup.men) man.fit.bs_backer = call;
}

/// The looks with no mistake under every call of the back side, then those with each kind of mistake, on
/// every man it fits.
std::vector<std::vector<Setup>> variedLooks() {
  std::vector<std::vector<Setup>> kinds(1 + faultTable().size());
  for (const std::string& name : names()) {
    const Setup sound = setupOf(name);
    for (const BackSideBacker call : {BackSideBacker::overlap, BackSideBacker::fold, BackSideBacker::hang}) {
      kinds[0].push_back(sound);
      callBackSide(kinds[0].back(), call);
    }
    for (std::size_t man = 0; man < kMen; ++man) {
      for (std::size_t kind = 0; kind < faultTable().size(); ++kind) {
        const FaultFacts& facts = faultTable()[kind];
        if (!mayHave(sound.men[man], facts)) continue;
        kinds[1 + kind].push_back(sound);
        kinds[1 + kind].back().men[man].faults = {{facts.kind, facts.usual}};
      }
    }
  }
  return kinds;
}

}  // namespace

TEST_CASE("long: the states of all levels occur over shipped looks and mistakes") {
  const auto kinds = variedLooks();  // each kind as often as any other
  Seen seen, rows;
  int astray = 0;
  for (int k = 0; k < kReps; ++k) {
    const auto& looks = kinds[at(k) % kinds.size()];
    const Setup& setup = looks[at(k) / kinds.size() * 7919 % looks.size()];  // 7919 is prime: a mixed order
    const Rep rep(setup, play(setup, model(), static_cast<std::uint64_t>(k + 1)));
    addSights(rep, seen);
    addLevels(rep, seen);
    addRows(rep, rows, astray);
  }
  std::string table;
  for (const auto& [state, count] : seen) table += fmt::format("{:<28}{:>6}\n", state, count);
  for (const auto& [row, count] : rows) table += fmt::format("{:<46}{:>6}\n", row, count);
  MESSAGE("in ", kReps, " reps:\n", table);
  CHECK(unseen(seen) == "");
  CHECK(rows.size() >= 40);
  CHECK(astray == 0);
}

TEST_CASE("a defense on its call decides nothing off the man in front") {
  for (const std::string& name : names()) {
    Setup setup = setupOf(name);
    for (Man& man : setup.men) man.fit.off_the_man_in_front = false;
    INFO(name);
    const Record record = play(setup, model(), 5);
    for (const Event& e : record.events) {
      if (e.what != Happening::decides) continue;
      const Fit fit = static_cast<Fit>(e.code);
      const bool by_call =
          fit == Fit::called || fit == Fit::force_set || fit == Fit::cutback || fit == Fit::deep;
      CHECK(by_call);
    }
  }
}
