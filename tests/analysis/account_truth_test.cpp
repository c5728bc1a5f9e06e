#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "../sim/looks.hpp"
#include "analysis/account.hpp"
#include "analysis/as_run.hpp"
#include "analysis/words.hpp"
#include "base/tick.hpp"
#include "study/reps.hpp"

// Every sentence of a rep's account is taken at its word and held against the recording: places, hands,
// events. A sentence of a kind that is not known here fails, so that none goes unchecked.

using namespace gapsound;

namespace {

using Parts = std::smatch;

/// The ids of a list: "LG, F and RT".
std::vector<std::string> listed(std::string words) {
  words = std::regex_replace(words, std::regex(" and |, "), " ");
  std::istringstream in(words);
  std::vector<std::string> ids;
  for (std::string id; in >> id;) ids.push_back(id);
  return ids;
}

bool near(const std::string& told, double value) { return std::abs(std::stod(told) - value) <= 0.0501; }

class Witness {
 public:
  explicit Witness(const Tape& tape)
      : tape_(tape),
        rep_(tape.record),
        then_(rep_.line_tick >= 0 ? rep_.line_tick : rep_.end_tick),
        direction_(asRun(tape).direction) {}

  [[nodiscard]] int man(const std::string& id) const {
    for (int k = 0; k < kMen; ++k)
      if (tape_.setup.men[static_cast<std::size_t>(k)].id == id) return k;
    return kNobody;
  }
  [[nodiscard]] const Frame& frame(int tick) const {
    return rep_
        .frames[static_cast<std::size_t>(std::clamp(tick, 0, static_cast<int>(rep_.frames.size()) - 1))];
  }
  [[nodiscard]] const Pose& pose(const std::string& id, int tick) const {
    return frame(tick).men[static_cast<std::size_t>(man(id))];
  }
  [[nodiscard]] bool holds(const std::string& blocker, const std::string& whom, int tick) const {
    return pose(blocker, tick).engaged == man(whom);
  }
  [[nodiscard]] bool allHold(const std::string& blockers, const std::string& whom) const {
    const auto ids = listed(blockers);
    return std::all_of(ids.begin(), ids.end(), [&](const std::string& id) { return holds(id, whom, then_); });
  }
  [[nodiscard]] bool nobodyHolds(const std::string& whom) const {
    return std::none_of(tape_.setup.men.begin(), tape_.setup.men.begin() + kOffense,
                        [&](const Man& m) { return holds(m.id, whom, then_); });
  }
  /// A teammate has a blocker on him further to that side than the man stands.
  [[nodiscard]] bool blockedOutsideOf(const std::string& id, int side, int tick) const {
    const auto& men = frame(tick).men;
    return std::any_of(men.begin() + kOffense, men.end(), [&](const Pose& mate) {
      return mate.engaged != kNobody && side * (mate.pos.x - pose(id, tick).pos.x) > 0.0;
    });
  }
  [[nodiscard]] bool happened(Happening what, const std::string& id) const {
    return std::any_of(rep_.events.begin(), rep_.events.end(),
                       [&](const Event& e) { return e.what == what && e.man == man(id); });
  }
  [[nodiscard]] const Event* lastBefore(Happening what, const std::string& id, int tick) const {
    const Event* found = nullptr;
    for (const Event& e : rep_.events)
      if (e.what == what && e.man == man(id) && e.tick <= tick) found = &e;
    return found;
  }
  /// At some moment from half a second before `from` (that long ago is what a man sees) to `to`.
  [[nodiscard]] bool sometime(int from, int to, const std::function<bool(int)>& true_at) const {
    for (int t = std::max(from - kTicksPerSecond / 2, 0); t <= to; ++t)
      if (true_at(t)) return true;
    return false;
  }
  /// The side a man took the run for; the run's own while he had not read it.
  [[nodiscard]] int sideRead(const std::string& id, int tick) const {
    const Event* read = lastBefore(Happening::saw_key, id, tick);
    return read == nullptr ? tape_.setup.direction : read->code;
  }
  [[nodiscard]] std::string endOf(int side) const {
    for (const Man& m : tape_.setup.men)
      if (!m.attacks && (side > 0 ? m.fit.if_right : m.fit.if_left) == FitRole::edge) return m.id;
    return "";
  }
  /// On one side of the ball no man stands in the two yards in front of it and within nine of the middle.
  [[nodiscard]] bool lastOutside(Vec2 ball) const {
    bool left = true, right = true;
    for (int k = 0; k < kMen; ++k) {
      const Vec2 p = frame(then_).men[static_cast<std::size_t>(k)].pos;
      if (k == runnerOf(tape_) || p.y < ball.y || p.y > ball.y + 2.0 || std::abs(p.x) > 9.0) continue;
      (p.x < ball.x ? left : right) = false;
    }
    return left || right;
  }
  [[nodiscard]] double outside(const std::string& id, double x, int tick) const {
    return direction_ * (x - pose(id, tick).pos.x);
  }

  const Tape& tape_;
  const Record& rep_;
  int then_;
  int direction_;
};

constexpr double kThroughTheLine = 1.0;  // yd of depth

/// A state is a fact of the picture: men who were reached, kicked or washed had hands on them, and so on.
bool couldBeSeen(const Witness& w, const std::string& whom, const std::string& state, int from, int to,
                 int side) {
  static const std::vector<std::string> kHeld{"spilled the kick",
                                              "was kicked out",
                                              "set a firm edge",
                                              "set the edge too wide",
                                              "was washed inside",
                                              "was reached",
                                              "was logged",
                                              "was pinned inside",
                                              "spilled his blocker",
                                              "turned his blocker in",
                                              "was turned out by his blocker"};
  const auto higher = [&](double y) {
    return w.sometime(from, to, [&](int t) { return w.pose(whom, t).pos.y < y; });
  };
  if (std::find(kHeld.begin(), kHeld.end(), state) != kHeld.end()) {
    // A spilling end high upfield is as good as kicked though nobody has touched him.
    return w.sometime(from, to, [&](int t) { return w.pose(whom, t).engaged != kNobody; }) ||
           (state == "was kicked out" && higher(looks::model().state_high_y));
  }
  if (state == "ran upfield") return higher(looks::model().state_upfield_y);
  if (state == "crossed inside") return true;
  if (state == "ran under the double team")
    return w.sometime(from, to, [&](int t) { return w.blockedOutsideOf(whom, side, t); });
  if (state == "was late")
    return w.sometime(from, to, [&](int t) { return w.pose(whom, t).pos.y > looks::model().state_late_y; });
  if (state.starts_with("shot his gap and ")) return higher(kThroughTheLine);
  const std::string end = w.endOf(side);
  const auto outside = [&](int t) {
    return end.empty() ? 0.0 : side * (w.pose(whom, t).pos.x - w.pose(end, t).pos.x);
  };
  if (state == "fitted inside") return w.sometime(from, to, [&](int t) { return outside(t) <= 0.0; });
  return (state == "went over the top" || state == "was too wide") &&
         w.sometime(from, to, [&](int t) { return outside(t) >= 0.0; });
}

/// Whom he looks to: the first backer or the end of the side he took the run for.
bool looksTo(const Witness& w, const std::string& whom, int side) {
  const FitJob& fit = w.tape_.setup.men[static_cast<std::size_t>(w.man(whom))].fit;
  const FitRole role = side > 0 ? fit.if_right : fit.if_left;
  return role == FitRole::edge || role == FitRole::first_backer;
}

bool decided(const Witness& w, const std::string& id, const std::string& did) {
  const Event* decision = w.lastBefore(Happening::decides, id, w.then_);
  if (decision == nullptr) return false;
  const Man& man = w.tape_.setup.men[static_cast<std::size_t>(w.man(id))];
  if (did == "ran to his call whatever he saw") return !man.fit.off_the_man_in_front;
  return did == saidOf(static_cast<Fit>(decision->code));
}

/// "; LG had him blocked when the ball crossed" or "; he was not there at the end" or nothing.
bool cameOf(const Witness& w, const std::string& id, const std::string& suffix) {
  Parts p;
  if (suffix.empty()) return true;
  if (suffix.find("when the ball crossed") == std::string::npos && w.rep_.line_tick >= 0) return false;
  if (std::regex_match(suffix, p, std::regex("; (.+) had him blocked .*"))) return w.allHold(p[1], id);
  return suffix.starts_with("; he was not there ") && w.nobodyHolds(id);
}

bool decision(const Witness& w, const Parts& p) {
  const std::string id = p[1], took = p[3], whom = p[5], state = p[6], did = p[7];
  if (!decided(w, id, did) || !cameOf(w, id, p[8])) return false;
  const Event* event = w.lastBefore(Happening::decides, id, w.then_);
  const int side = w.sideRead(id, event->tick);
  if (took.empty() ? side != w.direction_ : side == w.direction_ || (side > 0) != (took == "right"))
    return false;
  if (whom.empty()) return true;
  const bool backer = w.tape_.setup.men[static_cast<std::size_t>(w.man(whom))].fit.level == 2;
  const Event* seen = w.lastBefore(backer ? Happening::backer_state : Happening::end_state, id, event->tick);
  return seen != nullptr && looksTo(w, whom, side) &&
         couldBeSeen(w, whom, state, seen->tick, event->tick, side);
}

bool undecided(const Witness& w, const Parts& p) {
  return w.lastBefore(Happening::decides, p[1], w.then_) == nullptr && cameOf(w, p[1], p[2]);
}

bool slanted(const Witness& w, const Parts& p) {
  const auto ids = listed(p[1]);
  return std::all_of(ids.begin(), ids.end(),
                     [&](const std::string& id) { return w.happened(Happening::slants, id); });
}

/// A mistake laid on him: it is in his setup, and it began to show then.
bool erred(const Witness& w, const Parts& p) {
  const auto& faults = w.tape_.setup.men[static_cast<std::size_t>(w.man(p[1]))].faults;
  return std::any_of(w.rep_.events.begin(), w.rep_.events.end(), [&](const Event& e) {
    const auto kind = static_cast<FaultKind>(e.code);
    return e.what == Happening::errs && e.man == w.man(p[1]) && p[2].str() == saidOf(kind) &&
           (p[3].length() == 0 || std::abs(std::stod(p[3]) - seconds(e.tick)) < 0.006) &&
           std::any_of(faults.begin(), faults.end(), [&](const Fault& f) { return f.kind == kind; });
  });
}

bool blocked(const Witness& w, const Parts& p) {
  const std::string who = p[1], whom = p[2], side = p[4];
  if (who == "Nobody" ? !w.nobodyHolds(whom) : !w.allHold(who, whom)) return false;
  if (p[3] == "at the end") return w.rep_.line_tick < 0;
  const double off = w.outside(whom, w.frame(w.then_).ball.x, w.then_);
  return w.rep_.line_tick >= 0 && (side == "outside" ? off > 0.0 : off <= 0.0);
}

bool gotThrough(const Witness& w, const Parts& p) {
  return near(p[2], -w.pose(p[1], w.then_).pos.y) &&
         (p[3].length() == 0 ? w.nobodyHolds(p[1]) : w.allHold(p[3], p[1]));
}

bool driven(const Witness& w, const Parts& p) {
  return near(p[2], w.pose(p[1], w.then_).pos.y - w.pose(p[1], 0).pos.y) && w.allHold(p[3], p[1]);
}

bool crossedAt(const Witness& w, const Parts& p) {
  const Vec2 ball = w.frame(w.then_).ball;
  const std::string way = p[2], of = p[3], whose = p[7];
  if (w.rep_.line_tick < 0 || ball.y < 0.0) return false;
  if (way == "bounced outside " || way == "went outside ") {
    if (w.outside(of, ball.x, w.then_) <= 0.0) return false;
  } else if (way == "cut back inside " && w.outside(of, ball.x, w.then_) >= 0.0) {
    return false;
  }
  const bool letter = p[4].str().find(ball.x > w.pose("C", 0).pos.x ? '+' : '-') != std::string::npos;
  const bool only = p[5].length() > 0, outermost = p[6].length() == 0;
  if (!letter || (outermost ? !w.lastOutside(ball) : only != (std::stod(p[6]) < 1.2 - 1e-6))) return false;
  Parts q;
  if (std::regex_match(whose, q, std::regex("it was (\\w+)'s, who was ([\\d.]+) yd away")))
    return distance(w.pose(q[1], w.then_).pos, ball) < std::stod(q[2]) + 5.0;
  if (std::regex_match(whose, q, std::regex("(\\w+) was there and blocked(?: by (.+))?")))
    return w.pose(q[1], w.then_).engaged != kNobody;
  if (std::regex_match(whose, q, std::regex("(\\w+) was there, free, and did not close it")))
    return w.pose(q[1], w.then_).engaged == kNobody;
  if (std::regex_match(whose, q, std::regex("(\\w+) was there|it was (\\w+)'s"))) return true;
  return whose == "nobody had it";
}

bool missed(const Witness& w, const Parts& p) {
  const double y = std::stod(p[2]) * (p[3] == "behind the line" ? -1.0 : 1.0);
  return std::any_of(w.rep_.events.begin(), w.rep_.events.end(), [&](const Event& e) {
    return e.what == Happening::misses_tackle && e.man == w.man(p[1]) &&
           std::abs(w.frame(e.tick).ball.y - y) <= 0.0501;
  });
}

bool gained(const Witness& w, const std::string& words) {
  Parts p;
  if (words == "there was no gain") return std::abs(w.rep_.yards) < 0.0501;
  return std::regex_match(words, p, std::regex("the (gain|loss) was ([\\d.]+) yd")) &&
         near(p[2], p[1] == "gain" ? w.rep_.yards : -w.rep_.yards);
}

bool tackled(const Witness& w, const Parts& p) {
  const auto helpers = listed(p[3]);
  return w.happened(Happening::wraps, p[1]) && gained(w, p[4]) &&
         std::all_of(helpers.begin(), helpers.end(),
                     [&](const std::string& id) { return w.happened(Happening::wraps, id); });
}

bool untackled(const Witness& w, const Parts& p) {
  const std::string how = p[1];
  const Ending ending = w.rep_.ending;
  const bool so = how.ends_with("went out of bounds")           ? ending == Ending::out
                  : how.ends_with("scored")                     ? ending == Ending::score
                  : how.ends_with("was stopped where he stood") ? ending == Ending::forward_progress
                                                                : how == "Nobody made a tackle";
  const bool wrapped = std::any_of(w.rep_.events.begin(), w.rep_.events.end(),
                                   [](const Event& e) { return e.what == Happening::wraps; });
  return so && !wrapped && gained(w, p[2]);
}

bool madeUp(const Witness& w, const Parts& p) {
  const Event* decision = w.lastBefore(Happening::decides, p[1], w.then_);
  return w.happened(Happening::wraps, p[1]) && decision != nullptr && w.rep_.yards <= 4.0 &&
         w.man(p[2]) >= kOffense && w.man(p[1]) != w.man(p[2]);
}

struct Kind {
  const char* name;
  std::regex form;
  bool (*holds)(const Witness&, const Parts&);
};

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{
      {"slant", std::regex("(.+) slanted a gap\\."), slanted},
      {"shoot", std::regex("(\\w+) shot his gap on this snap\\."),
       [](const Witness& w, const Parts& p) { return w.happened(Happening::shoots, p[1]); }},
      {"mistake", std::regex("By order (\\w+) (.+?)(?: at ([\\d.]+) s)?\\."), erred},
      {"give", std::regex("(\\w+) read (\\w+) and gave\\."),
       [](const Witness& w, const Parts&) { return !w.rep_.kept && w.rep_.handoff_tick >= 0; }},
      {"keep", std::regex("(\\w+) saw (\\w+) (widen|close on the back) and kept\\."),
       [](const Witness& w, const Parts&) { return w.rep_.kept; }},
      {"block",
       std::regex("([^;]+) had (\\w+) blocked (when the ball crossed, and it went (\\w+) him|at the end)\\."),
       blocked},
      {"through", std::regex("(\\w+) got ([\\d.]+) yd into the backfield(?: with (.+) on him)?\\."),
       gotThrough},
      {"driven", std::regex("(\\w+) was driven ([\\d.]+) yd off the line by (.+)\\."), driven},
      {"undecided", std::regex("(\\w+) had not made up his mind(; .+)?\\."), undecided},
      {"never", std::regex("(\\w+) never crossed the line\\."),
       [](const Witness& w, const Parts&) { return w.rep_.line_tick < 0; }},
      {"lane",
       std::regex(
           "(\\w+) (bounced outside |went outside |cut back inside |hit the designed lane|ran inside the "
           "end|bounced|cut back)(\\w*) through (\\S+), (?:(only )?([\\d.]+) yd wide|with nobody of the "
           "front outside him): (.+)\\."),
       crossedAt},
      {"cutback left", std::regex("The cutback was open and not taken\\."),
       [](const Witness& w, const Parts&) {
         const Summary s = summarize(w.tape_);
         return s.cutback_open && !s.cutback_taken;
       }},
      {"miss", std::regex("(\\w+) missed the tackle ([\\d.]+) yd (downfield|behind the line)\\."), missed},
      {"tackle", std::regex("(\\w+) made the tackle(, (.+) helped)?; (.+)\\."), tackled},
      {"made up", std::regex("(\\w+) made up for (\\w+)\\."), madeUp},
      {"no tackle",
       std::regex(
           "(Nobody made a tackle|.+ went out of bounds|.+ scored|.+ was stopped where he stood); (.+)\\."),
       untackled},
      {"decision",
       std::regex(
           "(\\w+) (took it for a run to the (right|left)(?:, | and ))?(saw that (\\w+) (.+?) and "
           ")?(went over the top|fitted inside the end|became the edge|took the (?:out|in)side half of "
           "the lane|held his ground|went underneath the first backer|went over the double team|folded "
           "inside|shot the gap|hung behind the ball|filled the alley|inserted inside the first backer|"
           "stayed square for the cutback|came forward into the cutback window|took the gap a mate had "
           "left|took the edge for the force|stayed slow behind the lineman in front|went over the top "
           "of the lineman in front|set the force|squeezed the force in|stayed deep|played his call|ran "
           "to his call whatever he saw)(; .+)?\\."),
       decision}};
  return all;
}

/// The kind of the sentence; "" when it is of none or does not hold.
std::string kindOf(const Witness& witness, const std::string& sentence) {
  for (const Kind& kind : kinds()) {
    Parts parts;
    if (std::regex_match(sentence, parts, kind.form)) return kind.holds(witness, parts) ? kind.name : "";
  }
  return "";
}

}  // namespace

TEST_CASE("every sentence of an account holds against the tape, in every shipped look") {
  std::map<std::string, int> told;
  for (const std::string& name : looks::names()) {
    const Setup setup = looks::setupOf(name);
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
      const Tape tape = playTape(setup, looks::model(), seed);
      const Witness witness(tape);
      CAPTURE(name);
      CAPTURE(seed);
      for (const std::string& sentence : accountOf(tape).why) {
        CAPTURE(sentence);
        const std::string kind = kindOf(witness, sentence);
        CHECK_FALSE(kind.empty());
        ++told[kind];
      }
    }
  }
  for (const Kind& kind : kinds()) {
    CAPTURE(kind.name);
    if (std::string(kind.name) != "no tackle") CHECK(told[kind.name] > 0);
  }
}

TEST_CASE("the witness catches a sentence that is not so") {
  const Setup setup = looks::setupOf("power-right-spill");
  const Tape tape = playTape(setup, looks::model(), 1);
  const Witness witness(tape);
  CHECK(kindOf(witness, "CL made the tackle; the gain was 2.2 yd.").empty());
  CHECK(kindOf(witness, "NT got 9.0 yd into the backfield.").empty());
  CHECK(kindOf(witness, "CL had SE blocked when the ball crossed, and it went inside him.").empty());
  CHECK(kindOf(witness, "W went over the top.").empty());
  CHECK(kindOf(witness, "It was a fine play.").empty());
}
