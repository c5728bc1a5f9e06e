// Measures what a rep costs, everything on, against bare Box2D stepping the same bodies along the same paths
// for the same ticks, and how studies scale with threads. Prints one line that starts "rep / bare Box2D".
#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <chrono>
#include <filesystem>

#include "base/error.hpp"
#include "base/numbers.hpp"
#include "base/tick.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"
#include "sim/physics_world.hpp"
#include "study/reps.hpp"

using namespace gapsound;

namespace {

using Clock = std::chrono::steady_clock;
double secondsSince(Clock::time_point start) {
  return std::chrono::duration<double>(Clock::now() - start).count();
}

std::array<PhysicsWorld::Torso, kMen> torsosAtSnap(const Tape& tape) {
  std::array<PhysicsWorld::Torso, kMen> torsos;
  for (std::size_t k = 0; k < kMen; ++k) {
    const Man& man = tape.setup.men[k];
    const Pose& pose = tape.record.frames.front().men[k];
    torsos[k] = {pose.pos,          pose.face,      man.body.mass_kg,
                 man.body.shoulder, man.body.chest, static_cast<int>(k) == tape.setup.passer,
                 man.attacks};
  }
  return torsos;
}

struct TurnRates {
  std::vector<std::array<double, kMen>> at;
};

TurnRates turnRatesOf(const Record& record) {
  TurnRates rates;
  for (std::size_t tick = 0; tick + 1 < record.frames.size(); ++tick) {
    auto& row = rates.at.emplace_back();
    for (std::size_t k = 0; k < kMen; ++k) {
      const Vec2 a = record.frames[tick].men[k].face, b = record.frames[tick + 1].men[k].face;
      row[k] = fixedAngle({dot(a, b), cross(a, b)}) * kTicksPerSecond;
    }
  }
  return rates;
}

/// Steps a fresh world of the same torsos through the velocities on the tape; returns its time in seconds and
/// how far it ended from the tape on average, in yards.
struct Bare {
  double spent = 0.0, off = 0.0;
};
Bare stepBare(const Tape& tape) {
  const auto torsos = torsosAtSnap(tape);
  const TurnRates rates = turnRatesOf(tape.record);
  const auto& frames = tape.record.frames;
  const auto start = Clock::now();
  PhysicsWorld world(torsos);
  for (std::size_t tick = 0; tick + 1 < frames.size(); ++tick) {
    for (int k = 0; k < kMen; ++k) {
      world.setVelocity(k, frames[tick + 1].men[static_cast<std::size_t>(k)].vel);
      world.turn(k, rates.at[tick][static_cast<std::size_t>(k)]);
    }
    world.step();
  }
  Bare bare{secondsSince(start), 0.0};
  for (int k = 0; k < kMen; ++k)
    bare.off += distance(world.pos(k), frames.back().men[static_cast<std::size_t>(k)].pos) / kMen;
  return bare;
}

struct Costs {
  double rep = 0.0, bare = 0.0, ticks = 0.0, off = 0.0;
  int n = 0;
};

void measure(const Setup& setup, const Model& model, std::uint64_t seed, Costs& costs) {
  const auto start = Clock::now();
  const Tape tape = playTape(setup, model, seed);
  const Account account = accountOf(tape);
  costs.rep += secondsSince(start);
  const Bare bare = stepBare(tape);
  costs.bare += bare.spent;
  costs.off += bare.off;
  costs.ticks += static_cast<double>(tape.record.frames.size());
  costs.n += account.summary.t_end > 0.0;
}

std::vector<Setup> shippedLooks(const std::string& folder, const Library& library, const Model& model) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".json" && !entry.path().stem().string().starts_with("plan-"))
      files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  std::vector<Setup> setups;
  for (const auto& file : files) setups.push_back(resolve(readScenario(file.string()), library, model));
  return setups;
}

double repsPerSecond(const std::vector<Setup>& setups, const Model& model, int n, int threads) {
  const auto start = Clock::now();
  const auto reps = playAll(setups, model, 1, n, threads);
  return static_cast<double>(reps.size()) * n / secondsSince(start);
}

void run(int n, const std::string& folder) {
  const Model model = readModel(assetPath("model.json"));
  const Library library = readLibrary(assetPath(""));
  const auto setups = shippedLooks(folder, library, model);
  Costs costs;
  for (int rep = 0; rep < n; ++rep)
    for (const Setup& setup : setups) measure(setup, model, static_cast<std::uint64_t>(rep) + 1, costs);
  fmt::print("rep / bare Box2D: {:.2f}\n", costs.rep / costs.bare);
  fmt::print(
      "{} reps of {} looks, {:.0f} ticks each: rep {:.2f} ms, bare {:.2f} ms ({:.2f} yd off the tape)\n",
      costs.n, setups.size(), costs.ticks / costs.n, 1e3 * costs.rep / costs.n, 1e3 * costs.bare / costs.n,
      costs.off / costs.n);
  const double one = repsPerSecond(setups, model, n, 1);
  const double two = repsPerSecond(setups, model, n, 2);
  fmt::print("1 thread {:.0f} reps/s, 2 threads {:.0f} reps/s, {:.2f} times\n", one, two, two / one);
}

}  // namespace

int main(int argc, char** argv) {
  int n = 40;
  std::string folder = "scenarios";
  CLI::App app("Measures a rep against bare Box2D");
  app.add_option("--n,-n", n, "seeds of each look")->check(CLI::Range(1, 100000));
  app.add_option("--scenarios", folder, "folder of the shipped looks");
  CLI11_PARSE(app, argc, argv);
  try {
    run(n, folder);
  } catch (const Error& error) {
    fmt::print(stderr, "bench: {}\n", error.what());
    return static_cast<int>(error.code());
  }
  return 0;
}
