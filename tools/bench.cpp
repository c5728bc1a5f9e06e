// Measures what a rep costs, everything on, against bare Box2D stepping the same bodies along the same paths
// for the same ticks; what each stage of a rep costs; how studies scale with threads and what they hold in
// memory. Prints one line that starts "rep / bare Box2D".
#include <benchmark/benchmark.h>
#include <fmt/core.h>
#include <sys/resource.h>

#include <CLI/CLI.hpp>
#include <ctime>
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
#include "sim/play.hpp"
#include "study/reps.hpp"
#include "study/tally.hpp"

using namespace gapsound;

namespace {

/// Processor time, so that a busy machine does not blur the comparison.
using Moment = std::clock_t;
Moment now() { return std::clock(); }
double secondsSince(Moment start) { return static_cast<double>(now() - start) / CLOCKS_PER_SEC; }

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
  const auto start = now();
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
  const auto start = now();
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

struct Ground {
  Model model;
  std::vector<Setup> setups;
};

void compare(const Ground& ground, int n) {
  Costs costs;
  for (int rep = 0; rep < n; ++rep)
    for (const Setup& setup : ground.setups)
      measure(setup, ground.model, static_cast<std::uint64_t>(rep) + 1, costs);
  fmt::print("rep / bare Box2D: {:.2f}\n", costs.rep / costs.bare);
  fmt::print(
      "{} reps of {} looks, {:.0f} ticks each: rep {:.2f} ms, bare {:.2f} ms ({:.2f} yd off the tape)\n",
      costs.n, ground.setups.size(), costs.ticks / costs.n, 1e3 * costs.rep / costs.n,
      1e3 * costs.bare / costs.n, costs.off / costs.n);
}

/// One rep of each look after the other, so that every stage is measured on the same mix.
template <typename Stage>
void eachLook(benchmark::State& state, const Ground& ground, const Stage& stage) {
  std::vector<Tape> tapes;
  for (const Setup& setup : ground.setups) tapes.push_back(playTape(setup, ground.model, 1));
  std::size_t k = 0;
  for (auto _ : state) stage(tapes[k++ % tapes.size()]);
}

void addStages(const Ground& ground) {
  const auto stage = [&ground](const char* name, auto run) {
    benchmark::RegisterBenchmark(name, [&ground, run](benchmark::State& state) {
      eachLook(state, ground, run);
    })->Unit(benchmark::kMicrosecond);
  };
  const Model& model = ground.model;
  stage("stage/minds, contact and physics",
        [&model](const Tape& tape) { benchmark::DoNotOptimize(play(tape.setup, model, 1).hash); });
  stage("stage/bare Box2D", [](const Tape& tape) { benchmark::DoNotOptimize(stepBare(tape).off); });
  stage("stage/numbers of a rep", [](const Tape& tape) { benchmark::DoNotOptimize(summarize(tape).yards); });
  stage("stage/account in words",
        [](const Tape& tape) { benchmark::DoNotOptimize(accountOf(tape).fits.size()); });
}

void addThreads(const Ground& ground) {
  for (const int threads : {1, 2, 4}) {
    const auto name = fmt::format("study/threads:{}", threads);
    benchmark::RegisterBenchmark(
        name.c_str(),
        [&ground, threads](benchmark::State& state) {
          constexpr int kReps = 10;
          for (auto _ : state)
            benchmark::DoNotOptimize(playAll(ground.setups, ground.model, 1, kReps, threads).size());
          state.SetItemsProcessed(state.iterations() * kReps *
                                  static_cast<std::int64_t>(ground.setups.size()));
        })
        ->Unit(benchmark::kMillisecond)
        ->UseRealTime();
  }
}

/// Most this process has held in memory so far, MB.
double peakMegabytes() {
  struct rusage usage {};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

void weigh(const Ground& ground, std::size_t most) {
  Tally tally;
  const auto add = [&](std::size_t, const Summary& rep) {
    tally.add(rep);
    return true;
  };
  for (std::size_t n = 1000; n <= most; n *= 10) {
    playInOrder({ground.setups, ground.model, 1}, Schedule(1, n), 0, 0, add);
    fmt::print("memory after {} reps: {:.1f} MB\n", n, peakMegabytes());
  }
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  int n = 40;
  std::size_t memory = 0;
  std::string folder = "scenarios";
  CLI::App app("Measures a rep against bare Box2D, its stages, threads and memory");
  app.add_option("--n,-n", n, "seeds of each look")->check(CLI::Range(1, 100000));
  app.add_option("--memory", memory, "also weigh studies of 1000, 10000, ... up to so many reps");
  app.add_option("--scenarios", folder, "folder of the shipped looks");
  CLI11_PARSE(app, argc, argv);
  try {
    Ground ground{readModel(assetPath("model.json")), {}};
    ground.setups = shippedLooks(folder, readLibrary(assetPath("")), ground.model);
    if (memory > 0) weigh(ground, memory);
    compare(ground, n);
    addStages(ground);
    addThreads(ground);
    benchmark::RunSpecifiedBenchmarks();
  } catch (const Error& error) {
    fmt::print(stderr, "bench: {}\n", error.what());
    return static_cast<int>(error.code());
  }
  return 0;
}
