#include "cli/print.hpp"

#include <fmt/core.h>
#include <unistd.h>

#include <cstdio>
#include <utility>

namespace gapsound {

void printAnswer(const Answer& answer) { fmt::print("{}\n", answer.dump(2)); }

Answer orNull(double value) { return value < 0.0 ? Answer(nullptr) : Answer(value); }

Answer asPair(const Interval& interval) { return Answer::array({interval.low, interval.high}); }

namespace {

Answer asAnswer(const std::map<std::string, LaneUse>& lanes) {
  Answer answer = Answer::object();
  for (const auto& [gap, use] : lanes) answer[gap] = {{"share", use.share}, {"mean", use.mean}};
  return answer;
}

Answer asAnswer(const Timing& t) {
  return {{"t_handoff", t.t_handoff},
          {"t_line", t.t_line},
          {"t_first_contact", t.t_first_contact},
          {"t_end", t.t_end},
          {"speed_handoff", t.speed_handoff},
          {"depth_handoff", t.depth_handoff},
          {"line_speed", t.line_speed},
          {"best_speed", t.best_speed},
          {"speed_1s", t.speed_1s},
          {"speed_1_5s", t.speed_1_5s},
          {"speed_2s", t.speed_2s},
          {"after_contact_mean", t.after_contact_mean},
          {"contact_to_end", t.contact_to_end},
          {"nearest_defender_line", t.nearest_defender_line},
          {"defenders_within_3", t.defenders_within_3},
          {"never_crossed", t.never_crossed}};
}

}  // namespace

Answer asAnswer(const Distribution& d) {
  return {{"n", d.n},
          {"mean", d.mean},
          {"sd", d.sd},
          {"median", d.median},
          {"p10", d.p10},
          {"p90", d.p90},
          {"mean_ci", asPair(d.mean_ci)},
          {"lost", d.lost},
          {"stuffed", d.stuffed},
          {"four_plus", d.four_plus},
          {"ten_plus", d.ten_plus},
          {"twelve_plus", d.twelve_plus},
          {"twenty_plus", d.twenty_plus},
          {"success", d.success},
          {"cross_x", {{"mean", d.cross_x_mean}, {"median", d.cross_x_median}}},
          {"cutback_open", d.cutback_open},
          {"cutback_taken", d.cutback_taken},
          {"bounced", d.bounced},
          {"kept", d.kept},
          {"missed_tackles", d.missed_tackles},
          {"lanes", asAnswer(d.lanes)},
          {"timing", asAnswer(d.timing)}};
}

const char* wordOf(Ending ending) {
  switch (ending) {
    case Ending::tackled:
      return "tackled";
    case Ending::forward_progress:
      return "forward_progress";
    case Ending::out:
      return "out";
    case Ending::score:
      return "score";
    case Ending::time:
      return "time";
  }
  return "";
}

const char* wordOf(Relation relation) {
  switch (relation) {
    case Relation::designed:
      return "designed";
    case Relation::inside:
      return "inside";
    case Relation::bounce:
      return "bounce";
    case Relation::cutback:
      return "cutback";
  }
  return "";
}

std::string percent(double share) { return fmt::format("{:.1f} %", 100.0 * share); }

ProgressLine::ProgressLine(std::string what)
    : what_(std::move(what)), terminal_(isatty(STDERR_FILENO) != 0) {}

ProgressLine::~ProgressLine() {
  if (terminal_ && shown_ >= 0) fmt::print(stderr, "\r\033[K");
}

Progress ProgressLine::reporter() {
  return [this](double share) {
    show(share);
    return true;
  };
}

std::string ProgressLine::timeLeft(double share) const {
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - started_;
  if (share >= 1.0 || share <= share_at_start_) return "";
  const double left = spent.count() * (1.0 - share) / (share - share_at_start_);
  return left < 90.0 ? fmt::format(", {:.0f} s left", left) : fmt::format(", {:.0f} min left", left / 60.0);
}

void ProgressLine::show(double share) {
  if (share_at_start_ < 0.0) {
    started_ = std::chrono::steady_clock::now();
    share_at_start_ = share;
  }
  const int step = terminal_ ? 1 : 25;
  const int done = static_cast<int>(100.0 * share) / step * step;
  if (done == shown_ || (done == 0 && !terminal_)) return;
  shown_ = done;
  fmt::print(stderr, "{}{}: {} %{}{}", terminal_ ? "\r\033[K" : "", what_, done, timeLeft(share),
             terminal_ ? "" : "\n");
  std::fflush(stderr);
}

}  // namespace gapsound
