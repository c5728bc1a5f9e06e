#include <algorithm>
#include <array>

#include "analysis/account.hpp"
#include "analysis/as_run.hpp"
#include "analysis/door.hpp"
#include "analysis/gaps.hpp"
#include "analysis/openings.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr int kLook = 3;                // ticks between two looks at the lanes: 20 a second
constexpr int kOpenLooks = 5;           // looks in a row that span the 0.2 s a window has to stay open
constexpr double kWindowMargin = 0.15;  // s
constexpr double kIdleSpeed = 1.0;      // yd/s
constexpr double kIdleReach = 8.0;      // yd from the ball
constexpr double kHolding = 1.0;        // yd: he has hands on the ball carrier
constexpr double kNear = 3.0;           // yd

std::size_t at(int k) { return static_cast<std::size_t>(k); }

/// Reads the numbers of one rep off its tape, each function one group of fields.
class Reader {
 public:
  Reader(const Setup& setup, const Record& record) : setup_(setup), record_(record), frames_(record.frames) {
    outcome();
    tackles();
    deeds();
    if (frames_.empty()) return;
    speeds();
    crossing();
    window();
    movement();
    blocks();
    idleDefender();
  }
  [[nodiscard]] Summary summary() && { return std::move(sum_); }

 private:
  [[nodiscard]] int lastTick() const { return static_cast<int>(frames_.size()) - 1; }
  [[nodiscard]] const Frame& frame(int tick) const { return frames_[at(std::clamp(tick, 0, lastTick()))]; }
  [[nodiscard]] bool crossed() const { return record_.line_tick >= 0; }
  [[nodiscard]] const Man& man(int k) const { return setup_.men[at(k)]; }
  [[nodiscard]] double carrierSpeed(int tick) const {
    return setup_.carrier == kNobody ? 0.0 : length(frame(tick).men[at(setup_.carrier)].vel);
  }

  void outcome() {
    const auto time = [](int tick) { return tick < 0 ? -1.0 : seconds(tick); };
    sum_.yards = record_.yards;
    sum_.kept = record_.kept;
    sum_.ending = record_.ending;
    sum_.hash = record_.hash;
    sum_.t_handoff = time(record_.handoff_tick);
    sum_.t_line = time(record_.line_tick);
    sum_.t_first_contact = time(record_.first_contact_tick);
    sum_.t_end = seconds(record_.end_tick);
  }

  void tackles() {
    for (const Event& event : record_.events) {
      const bool missed = event.what == Happening::misses_tackle;
      sum_.tackle_tries += missed || event.what == Happening::wraps;
      sum_.tackle_misses += missed;
      if (event.what == Happening::first_contact && sum_.first_contact_man == kNobody)
        sum_.first_contact_man = isOffense(event.man) ? event.other : event.man;
    }
  }

  void deeds() {
    const auto bit = [](int k) { return k >= kOffense ? 1U << (k - kOffense) : 0U; };
    for (const Event& event : record_.events) {
      if (event.what == Happening::decides && event.code != static_cast<int>(Fit::called))
        sum_.fitted_otherwise |= bit(event.man);
      if (event.what == Happening::wraps || event.what == Happening::first_contact)
        sum_.had_contact |= bit(event.man) | (event.other == kNobody ? 0U : bit(event.other));
    }
  }

  void speeds() {
    if (record_.handoff_tick >= 0) {
      sum_.speed_handoff = carrierSpeed(record_.handoff_tick);
      sum_.depth_handoff = -frame(record_.handoff_tick).ball.y;
    }
    sum_.speed_1s = carrierSpeed(ticks(1.0));
    sum_.speed_1_5s = carrierSpeed(ticks(1.5));
    sum_.speed_2s = carrierSpeed(ticks(2.0));
    for (int tick = 0; tick <= lastTick(); ++tick)
      sum_.best_speed = std::max(sum_.best_speed, carrierSpeed(tick));
    if (record_.first_contact_tick >= 0)
      sum_.yards_after_contact = std::max(record_.yards - frame(record_.first_contact_tick).ball.y, 0.0);
  }

  void crossing() {
    if (!crossed()) return;
    const Frame& there = frame(record_.line_tick);
    sum_.cross_x = there.ball.x;
    sum_.speed_line = carrierSpeed(record_.line_tick);
    sum_.nearest_defender_line = 1e3;
    for (int k = kOffense; k < kMen; ++k) {
      const double off = distance(there.men[at(k)].pos, there.ball);
      sum_.nearest_defender_line = std::min(sum_.nearest_defender_line, off);
      if (off <= kNear) ++sum_.defenders_within_3;
    }
    sum_.lane_gap = GapChart(setup_).at(there.ball.x);
    sum_.lane_relation = doorAt(setup_, there).relationOf(there.ball.x);
    sum_.cutback_taken = sum_.lane_relation == Relation::cutback;
    sum_.bounced = sum_.lane_relation == Relation::bounce;
  }

  [[nodiscard]] bool windowOpen(const Frame& now) const {
    const Door door = doorAt(setup_, now);
    for (Lane& lane : openingsAt(setup_, now)) {
      if (lane.width() < kPassable || door.relationOf(lane.centre()) != Relation::cutback) continue;
      timeLane(setup_, now, lane);
      if (lane.state == LaneState::open && lane.margin > kWindowMargin) return true;
    }
    return false;
  }

  void window() {
    if (record_.handoff_tick < 0) return;
    const int until = crossed() ? record_.line_tick : lastTick();
    int open = 0;
    for (int tick = record_.handoff_tick; tick <= until && !sum_.cutback_open; tick += kLook) {
      open = windowOpen(frame(tick)) ? open + 1 : 0;
      sum_.cutback_open = open >= kOpenLooks;
    }
  }

  /// Mean distance downfield since the snap of the men that `counts` picks.
  template <typename Picks>
  [[nodiscard]] double meanForward(double t, const Picks& counts) const {
    double sum = 0.0;
    int n = 0;
    for (int k = 0; k < kMen; ++k) {
      if (!counts(man(k))) continue;
      sum += frame(ticks(t)).men[at(k)].pos.y - frames_.front().men[at(k)].pos.y;
      ++n;
    }
    return n > 0 ? sum / n : 0.0;
  }

  void movement() {
    const auto lineman = [](const Man& m) {
      return m.attacks &&
             (m.group == Group::center || m.group == Group::guard || m.group == Group::off_tackle);
    };
    const auto backer = [](const Man& m) {
      return !m.attacks && m.group == Group::backer && m.fit.level == 2;
    };
    sum_.line_forward_1s = meanForward(1.0, lineman);
    sum_.line_forward_2s = meanForward(2.0, lineman);
    sum_.line_forward_3s = meanForward(3.0, lineman);
    sum_.backers_forward_1s = -meanForward(1.0, backer);
    sum_.backers_forward_1_5s = -meanForward(1.5, backer);
    sum_.backers_forward_2s = -meanForward(2.0, backer);
  }

  /// First tick at which he has hands on somebody; past the end when never.
  [[nodiscard]] int firstTouch(int k) const {
    for (int tick = 0; tick <= lastTick(); ++tick)
      if (frame(tick).men[at(k)].engaged != kNobody) return tick;
    return lastTick() + 1;
  }

  void blocks() {
    const int until = crossed() ? record_.line_tick : lastTick();
    for (int k = 0; k < kOffense; ++k) {
      const Man& m = man(k);
      if (m.block.kind == BlockKind::none || m.group == Group::receiver || k == setup_.carrier) continue;
      const int touch = firstTouch(k);
      ++sum_.blockers;
      sum_.blockers_touched += touch <= until;
      if (m.block.pull == PullStyle::none) continue;
      ++sum_.pullers;
      if (touch > lastTick()) continue;
      ++sum_.pullers_met;
      sum_.pullers_through += man(frame(touch).men[at(k)].engaged).fit.level >= 2;
    }
  }

  void idleDefender() {
    std::array<int, kMen> idle{};
    const int from = std::max(record_.handoff_tick, 0);
    for (int tick = from; tick <= std::min(record_.end_tick, lastTick()); ++tick) {
      const Frame& now = frame(tick);
      for (int k = kOffense; k < kMen; ++k) {
        const Pose& pose = now.men[at(k)];
        const double away = distance(pose.pos, now.ball);
        const bool free = pose.engaged == kNobody && !pose.down && away > kHolding && away < kIdleReach;
        idle[at(k)] = free && length(pose.vel) < kIdleSpeed ? idle[at(k)] + 1 : 0;
        if (idle[at(k)] >= kTicksPerSecond) sum_.stood_still = true;
      }
    }
  }

  const Setup& setup_;
  const Record& record_;
  const std::vector<Frame>& frames_;
  Summary sum_;
};

}  // namespace

Summary summarize(const Tape& tape) {
  return withSetupAsRun(tape, [&](const Setup& setup) { return Reader(setup, tape.record).summary(); });
}

}  // namespace gapsound
