#include <doctest/doctest.h>
#include <unistd.h>

#include <cmath>
#include <filesystem>

#include "film.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"

using namespace gapsound;

namespace {

constexpr double kWatched = 0.5;           // s after the picture
constexpr double kSinglePrecision = 1e-4;  // the bodies' world counts in floats
constexpr double kTouching = 1.2;          // nearer than this to anybody, he is not free, yd

bool staysFree(const Record& record, int from, int to, int man) {
  for (int tick = from; tick <= to; ++tick) {
    const Frame& f = record.frames[static_cast<std::size_t>(tick)];
    const Pose& me = f.men[static_cast<std::size_t>(man)];
    if (me.engaged != kNobody || me.down) return false;
    for (int i = 0; i < kMen; ++i)
      if (i != man && distance(me.pos, f.men[static_cast<std::size_t>(i)].pos) < kTouching) return false;
  }
  return true;
}

struct Drift {
  int free = 0, near = 0;
  double worst_cap = 0.0;    // most acceleration over the man's own cap, yd/s^2
  double worst_speed = 0.0;  // most speed over his own best, yd/s
};

/// How far free men get from where their velocities would have carried them.
void watch(const Setup& setup, std::uint64_t seed, Drift& drift) {
  const Record record = play(setup, looks::model(), seed);
  const int from = ticks(setup.opening->since_snap_s), to = from + ticks(kWatched);
  if (static_cast<int>(record.frames.size()) <= to) return;
  for (int man = 0; man < kMen; ++man) {
    const auto i = static_cast<std::size_t>(man);
    if (!staysFree(record, from, to, man)) continue;
    const Opening::Place& start = setup.opening->men[i];
    const Vec2 there = record.frames[static_cast<std::size_t>(to)].men[i].pos;
    ++drift.free;
    drift.near += distance(there, start.pos + kWatched * start.vel) <= 0.8 ? 1 : 0;
    const Body& body = setup.men[i].body;
    const double cap = std::max({body.top_speed / body.tau, body.brake, body.lateral});
    for (int tick = from; tick < to; ++tick) {
      const auto& a = record.frames[static_cast<std::size_t>(tick)].men[i];
      const auto& b = record.frames[static_cast<std::size_t>(tick) + 1].men[i];
      drift.worst_cap = std::max(drift.worst_cap, length(b.vel - a.vel) / kStep - cap);
      drift.worst_speed =
          std::max(drift.worst_speed, length(b.vel) - std::max(body.top_speed, length(start.vel)));
    }
  }
}

std::string rewritten(bool flip_x, bool flip_y) {
  constexpr double kWidth = 53.33;
  const CsvTable table("frame.csv", readWhole(film::shippedFrame()));
  std::string out = csvLine(table.columns());
  for (std::size_t row = 0; row < table.rows(); ++row) {
    std::vector<std::string> cells;
    for (const auto& column : table.columns()) {
      const std::string cell = table.text(row, column);
      const double value = std::atof(cell.c_str());
      const bool angle = column == "direction" || column == "facing";
      double turned = value;
      if (column == "x" && flip_x) turned = 120.0 - value;
      if (column == "y" && flip_y) turned = kWidth - value;
      if (angle && flip_x) turned = 360.0 - turned;  // (dx, dy) -> (-dx, dy), clockwise from +y
      if (angle && flip_y) turned = std::fmod(540.0 - turned, 360.0);  // -> (dx, -dy)
      cells.push_back(turned == value ? cell : fmt::format("{:.4f}", turned));
    }
    out += csvLine(cells);
  }
  return out;
}

Setup setupFrom(const std::string& text, const FilmAxes& axes) {
  const std::string file =
      std::filesystem::temp_directory_path() / fmt::format("gapsound_frame_{}.csv", getpid());
  writeAtomically(file, text);
  const Setup setup = film::setupOf(film::scenarioOf(file, axes));
  std::filesystem::remove(file);
  return setup;
}

}  // namespace

TEST_CASE("from a picture at the hand-off free men carry on, and nobody is faster than he can be") {
  Drift drift;
  for (const std::string& look : looks::names())
    for (std::uint64_t seed = 1; seed <= 3; ++seed)
      watch(film::setupOf(film::takenFrom(look, seed, 1.3)), seed + 10, drift);
  MESSAGE(drift.near << " of " << drift.free << " free men within 0.8 yd of straight on after 0.5 s");
  CHECK(drift.free > 200);
  CHECK(drift.near >= 0.9 * drift.free);
  CHECK(drift.worst_cap < kSinglePrecision);
  CHECK(drift.worst_speed < kSinglePrecision);
}

TEST_CASE("the same from the shipped frame") {
  const Setup setup = film::setupOf(film::scenarioOf(film::shippedFrame(), film::shippedAxes()));
  Drift drift;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) watch(setup, seed, drift);
  CHECK(drift.free > 100);
  CHECK(drift.near >= 0.9 * drift.free);
  CHECK(drift.worst_cap < kSinglePrecision);
  CHECK(drift.worst_speed < kSinglePrecision);
}

TEST_CASE("a rep starts at the picture: places, velocities, the ball") {
  const Setup setup = film::setupOf(film::scenarioOf(film::shippedFrame(), film::shippedAxes()));
  const Record record = play(setup, looks::model(), 5);
  const int from = ticks(1.45);
  REQUIRE(static_cast<int>(record.frames.size()) > from);
  const Frame& first = record.frames[static_cast<std::size_t>(from)];
  CHECK(setup.men[static_cast<std::size_t>(first.carrier)].id == "T");
  for (std::size_t i = 0; i < kMen; ++i) {
    CHECK(distance(first.men[i].pos, setup.opening->men[i].pos) < 1e-4);
    CHECK(length(first.men[i].vel - setup.opening->men[i].vel) < 1e-4);
    const Vec2 step = first.men[i].pos - record.frames[static_cast<std::size_t>(from) - 1].men[i].pos;
    CHECK(length(step - kStep * setup.opening->men[i].vel) < 0.03);  // what led to it fits
  }
  for (const Event& event : record.events) CHECK(event.tick >= from);
}

TEST_CASE("before the hand-off the mesh goes on") {
  int handed = 0, to_the_back = 0, looked = 0;
  for (const std::string& look : looks::names()) {
    const Setup given = looks::setupOf(look);
    const bool to_tailback =
        given.men[static_cast<std::size_t>(given.carrier)].id == "T" && given.run.toss_s <= 0.0;
    if (!to_tailback || given.read.who != kNobody || given.run.mesh_s < 1.0) continue;
    const Setup setup = film::setupOf(film::takenFrom(look, 2, 0.7));
    ++looked;
    to_the_back += setup.men[static_cast<std::size_t>(setup.carrier)].id == "T" ? 1 : 0;
    const Record record = play(setup, looks::model(), 3);
    handed += record.handoff_tick > ticks(0.7) && record.handoff_tick < ticks(2.0) ? 1 : 0;
  }
  MESSAGE(to_the_back << " of " << looked << " seen to be the back's, " << handed << " handed to him");
  CHECK(looked >= 15);
  CHECK(to_the_back >= 0.9 * looked);
  CHECK(handed >= 0.9 * looked);
}

TEST_CASE("a file turned by half a circle gives the same rep, a mirrored one the mirrored rep") {
  const Record given =
      play(film::setupOf(film::scenarioOf(film::shippedFrame(), film::shippedAxes())), looks::model(), 8);
  FilmAxes turned_axes = film::shippedAxes();
  turned_axes.line = 120.0 - turned_axes.line;
  turned_axes.attack_right = true;
  const Record turned = play(setupFrom(rewritten(true, true), turned_axes), looks::model(), 8);
  CHECK(turned.hash == given.hash);
  CHECK(turned.yards == given.yards);
  const Setup image = setupFrom(rewritten(false, true), film::shippedAxes());
  CHECK(image.direction == -1);
  const Record other = play(image, looks::model(), 8);
  REQUIRE(other.frames.size() == given.frames.size());
  CHECK(other.yards == given.yards);
  for (std::size_t k = static_cast<std::size_t>(ticks(1.45)); k < given.frames.size(); ++k)
    for (std::size_t i = 0; i < kMen; ++i)
      REQUIRE(mirrored(other.frames[k].men[i].pos) == given.frames[k].men[i].pos);
}
