#include <doctest/doctest.h>

#include <algorithm>

#include "analysis/account.hpp"
#include "base/numbers.hpp"
#include "drawn.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

constexpr int kHandoff = ticks(1.3);

/// Four seconds in which the back runs straight to the line at `cross_x` at 2.5 s and on, and everybody else
/// stands as blocked: both jambs held, the backers held unless named free.
Tape drawnRun(double cross_x) {
  Tape tape{drawn::power(), 5, {}};
  const Frame blocked = drawn::picture(tape.setup, "T",
                                       {{"DT", {1.6, 1.4}, {0, -1}, "RG"},
                                        {"RG", {1.3, 0.7}, {0, 1}, "DT"},
                                        {"RT", {2.1, 0.7}, {0, 1}, "DT"},
                                        {"SE", {4.9, 0.6}, {0, -1}, "F"},
                                        {"F", {4.3, -0.1}, {0, 1}, "SE"},
                                        {"C", {-0.5, 0.4}, {0, 1}, "NT"},
                                        {"LT", {-2.6, 0.1}, {0, 1}, "WE"},
                                        {"Y", {2.0, 4.0}, {0, 1}, "M"},
                                        {"LG", {3.4, 3.8}, {0, 1}, "S"}});
  for (int tick = 0; tick <= ticks(4.0); ++tick) {
    Frame f = blocked;
    const Vec2 back{cross_x * ramp(seconds(tick), 1.0, 2.5), -6.0 + 6.0 * ramp(seconds(tick), 1.3, 2.5)};
    const double past = std::max(seconds(tick) - 2.5, 0.0);
    Pose& t = f.men[drawn::at("T")];
    t.pos = back + Vec2{0.0, 4.0 * past};
    t.vel = tick < kHandoff ? Vec2{1.0, 0.0} : Vec2{0.0, 5.0};
    f.carrier = static_cast<std::int8_t>(tick < kHandoff ? tape.setup.passer : tape.setup.carrier);
    f.ball = tick < kHandoff ? f.men[drawn::at("Q")].pos : t.pos;
    tape.record.frames.push_back(f);
  }
  tape.record.events = {{ticks(3.0), Happening::first_contact, drawn::man("FS"), drawn::man("T"), 0},
                        {ticks(3.0), Happening::tries_tackle, drawn::man("FS"), drawn::man("T"), 0},
                        {ticks(3.0), Happening::misses_tackle, drawn::man("FS"), drawn::man("T"), 0},
                        {ticks(3.9), Happening::tries_tackle, drawn::man("SS"), drawn::man("T"), 0},
                        {ticks(3.9), Happening::wraps, drawn::man("SS"), drawn::man("T"), 0}};
  tape.record.yards = 6.2, tape.record.end_tick = ticks(4.0);
  tape.record.handoff_tick = kHandoff, tape.record.line_tick = ticks(2.5),
  tape.record.first_contact_tick = ticks(3.0);
  return tape;
}

void free(Tape& tape, const char* id, Vec2 pos) {
  for (Frame& f : tape.record.frames) {
    Pose& p = f.men[drawn::at(id)];
    if (p.engaged != kNobody) f.men[static_cast<std::size_t>(p.engaged)].engaged = kNobody;
    p.engaged = kNobody, p.pos = pos;
  }
}

bool says(const std::vector<std::string>& sentences, const std::string& words) {
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("times, speeds and places are those of the tape") {
  const Summary s = summarize(drawnRun(3.3));
  CHECK(s.yards == 6.2);
  CHECK(s.t_handoff == Approx(1.3));
  CHECK(s.t_line == Approx(2.5));
  CHECK(s.t_first_contact == Approx(3.0));
  CHECK(s.t_end == Approx(4.0));
  CHECK(s.speed_handoff == Approx(5.0));
  CHECK(s.depth_handoff == Approx(6.0));
  CHECK(s.speed_1s == Approx(1.0));
  CHECK(s.speed_line == Approx(5.0));
  CHECK(s.cross_x == Approx(3.3));
  CHECK(s.lane_gap == "C+");
  CHECK(s.yards_after_contact == Approx(6.2 - 2.0));
  CHECK(s.first_contact_man == drawn::man("FS"));
  CHECK(s.tackle_tries == 2);
  CHECK(s.tackle_misses == 1);
}

TEST_CASE("men near at the crossing are counted by distance, blocked or not") {
  const Summary s = summarize(drawnRun(3.3));
  CHECK(s.nearest_defender_line == Approx(distance({3.3, 0.0}, {4.9, 0.6})));
  CHECK(s.defenders_within_3 == 2);  // SE and DT
}

TEST_CASE(
    "blockers and pullers are those with a job, touched when they have hands on somebody before the "
    "crossing") {
  Tape tape = drawnRun(3.3);
  Summary s = summarize(tape);
  CHECK(s.blockers == 7);
  CHECK(s.blockers_touched == 7);
  CHECK(s.pullers == 1);
  CHECK(s.pullers_met == 1);
  for (Frame& f : tape.record.frames) f.men[drawn::at("LG")].engaged = kNobody;
  s = summarize(tape);
  CHECK(s.blockers_touched == 6);
  CHECK(s.pullers_met == 0);
  tape.record.frames.back().men[drawn::at("LG")].engaged = drawn::at("DT");
  CHECK(summarize(tape).pullers_through == 0);
  tape.record.frames.back().men[drawn::at("LG")].engaged = drawn::at("M");
  CHECK(summarize(tape).pullers_through == 1);
}

TEST_CASE("a crossing counts as designed, cutback or bounce by where it lies to the jambs") {
  CHECK(summarize(drawnRun(3.3)).lane_relation == Relation::designed);
  const Summary back = summarize(drawnRun(0.5));
  CHECK(back.cutback_taken);
  CHECK_FALSE(back.bounced);
  const Summary out = summarize(drawnRun(6.0));
  CHECK(out.bounced);
  CHECK_FALSE(out.cutback_taken);
}

TEST_CASE("a cutback is open when nobody free can be there, and shut by one free backer") {
  Tape tape = drawnRun(3.3);
  for (Frame& f : tape.record.frames) {
    f.men[drawn::at("W")].engaged = static_cast<std::int8_t>(drawn::man("C"));
    f.men[drawn::at("WE")].pos = {-3.6, 0.8};
    f.men[drawn::at("NT")].pos = {0.4, 1.2};
    f.men[drawn::at("C")].pos = {0.3, 0.5};
  }
  CHECK(summarize(tape).cutback_open);
  free(tape, "W", {-1.5, 2.6});
  CHECK_FALSE(summarize(tape).cutback_open);
}

TEST_CASE("a window that opens for less than a fifth of a second is none") {
  Tape tape = drawnRun(3.3);
  for (Frame& f : tape.record.frames) {
    f.men[drawn::at("WE")].pos = {-3.6, 0.8};
    f.men[drawn::at("NT")].pos = {0.4, 1.2};
    f.men[drawn::at("C")].pos = {0.3, 0.5};
    f.men[drawn::at("W")].pos = {-1.5, 2.6};
  }
  const auto heldFor = [&](double from, double to) {
    Tape held = tape;
    for (int tick = ticks(from); tick < ticks(to); ++tick)
      held.record.frames[static_cast<std::size_t>(tick)].men[drawn::at("W")].engaged =
          static_cast<std::int8_t>(drawn::man("LT"));
    return summarize(held).cutback_open;
  };
  CHECK_FALSE(heldFor(2.2, 2.3));
  CHECK(heldFor(2.1, 2.45));
}

TEST_CASE("a free man who stands near the ball for a second is found, a blocked one is not") {
  Tape tape = drawnRun(3.3);
  for (Frame& f : tape.record.frames)
    for (Pose& p : f.men)
      if (p.vel == Vec2{}) p.vel = {0.0, 2.0};
  CHECK_FALSE(summarize(tape).stood_still);
  free(tape, "W", {-1.5, 2.6});
  for (Frame& f : tape.record.frames) f.men[drawn::at("W")].vel = {0.0, 0.5};
  CHECK(summarize(tape).stood_still);
}

TEST_CASE("the account tells the levels in order and nothing that the tape does not show") {
  Tape tape = drawnRun(3.3);
  auto& events = tape.record.events;
  const int s = drawn::man("S"), ss = drawn::man("SS");
  const std::vector<Event> read{
      {ticks(1.5), Happening::end_state, s, kNobody, static_cast<int>(EndState::kicked)},
      {ticks(1.5), Happening::decides, s, kNobody, static_cast<int>(Fit::inside)},
      {ticks(1.9), Happening::backer_state, ss, kNobody, static_cast<int>(BackerState::kicked_out)},
      {ticks(1.9), Happening::decides, ss, kNobody, static_cast<int>(Fit::insert)}};
  events.insert(events.begin(), read.begin(), read.end());
  const Account account = accountOf(tape);
  CHECK(says(account.why, "S saw that SE was kicked out and fitted inside the end; LG had him blocked"));
  CHECK(says(account.why, "SS saw that S was turned out by his blocker and inserted"));
  CHECK(says(account.why, "W had not made up his mind"));
  CHECK(says(account.why, "FS missed the tackle 2.0 yd downfield"));
  CHECK(account.tacklers == std::vector<std::string>{"SS"});
  REQUIRE(account.lane);
  CHECK(account.lane->gap == "C+");
  REQUIRE(account.fits.size() == 9);
  CHECK(account.fits.front().level == 1);
  CHECK(account.fits.back().level == 3);
  const auto line =
      std::find_if(account.fits.begin(), account.fits.end(), [&](const FitLine& f) { return f.man == s; });
  CHECK(line->saw == "SE was kicked out");
  CHECK(line->t == Approx(1.5));
  CHECK(line->result == "blocked by LG");
}

TEST_CASE("a backer on his call is told as one, whatever he saw") {
  Tape tape = drawnRun(3.3);
  tape.setup.men[drawn::at("S")].fit.off_the_man_in_front = false;
  tape.record.events.insert(tape.record.events.begin(), {ticks(1.5), Happening::decides, drawn::man("S"),
                                                         kNobody, static_cast<int>(Fit::over_top)});
  CHECK(says(accountOf(tape).why, "S ran to his call"));
}

TEST_CASE("moments come in order, from the snap to the gain") {
  const auto moments = momentsOf(drawnRun(3.3));
  REQUIRE(moments.size() >= 4);
  CHECK(moments.front().words == "Snap");
  CHECK(moments.back().words == "Gain of 6.2 yd");
  CHECK(std::is_sorted(moments.begin(), moments.end(),
                       [](const Moment& a, const Moment& b) { return a.t < b.t; }));
}

TEST_CASE("a moment says what a man sets out to do, for he has not done it yet") {
  Tape tape = drawnRun(3.3);
  tape.record.events.insert(tape.record.events.begin(), {ticks(1.5), Happening::decides, drawn::man("S"),
                                                         kNobody, static_cast<int>(Fit::over_top)});
  const auto told = [&](const char* words) {
    const auto moments = momentsOf(tape);
    return std::any_of(moments.begin(), moments.end(), [&](const Moment& m) { return m.words == words; });
  };
  CHECK(told("S goes over the top"));
  tape.setup.men[drawn::at("S")].fit.off_the_man_in_front = false;
  CHECK(told("S runs to his call"));
}

TEST_CASE("a rep that never crosses has no lane and says so") {
  Tape tape = drawnRun(3.3);
  tape.record.line_tick = -1;
  const Account account = accountOf(tape);
  CHECK_FALSE(account.lane);
  CHECK(account.summary.lane_gap.empty());
  CHECK(says(account.why, "T never crossed the line"));
}
