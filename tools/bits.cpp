// The exact bits of the reps of a folder's looks. tools/same-bits compares what two builds of it print.
#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <atomic>
#include <bit>
#include <cstdint>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"
#include "sim/play.hpp"

using namespace gapsound;

namespace {

struct Wish {
  std::string folder = "scenarios", look;
  std::uint64_t seed = 1, seeds = 3;
  int threads = 1;
};

struct Rep {
  std::string look;
  std::uint64_t seed = 1, hash = 0;
};

Setup setupOf(const std::string& file, const Library& library, const Model& model) {
  return resolve(readScenario(file, {}), library, model);
}

std::vector<std::string> looksIn(const std::string& folder) {
  std::vector<std::string> looks;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".json" && entry.path().filename().string().rfind("plan-", 0) != 0)
      looks.push_back(entry.path().stem().string());
  std::sort(looks.begin(), looks.end());
  return looks;
}

/// "look seed hash" for every look and seed, played by so many threads.
void printHashes(const Wish& wish, const Library& library, const Model& model) {
  std::vector<Rep> reps;
  for (const std::string& look : looksIn(wish.folder))
    for (std::uint64_t seed = 1; seed <= wish.seeds; ++seed) reps.push_back({look, seed, 0});
  std::atomic<std::size_t> next = 0;
  std::vector<std::jthread> pool;
  for (int t = 0; t < wish.threads; ++t)
    pool.emplace_back([&] {
      for (std::size_t k = next++; k < reps.size(); k = next++) {
        const Setup setup = setupOf(wish.folder + "/" + reps[k].look + ".json", library, model);
        reps[k].hash = play(setup, model, reps[k].seed).hash;
      }
    });
  pool.clear();
  for (const Rep& rep : reps) fmt::print("{} {} {}\n", rep.look, rep.seed, rep.hash);
}

/// "tick man bits" for every tick and man of one rep.
void printTicks(const Wish& wish, const Library& library, const Model& model) {
  const Setup setup = setupOf(wish.folder + "/" + wish.look + ".json", library, model);
  const Record record = play(setup, model, wish.seed);
  for (std::size_t tick = 0; tick < record.frames.size(); ++tick)
    for (std::size_t man = 0; man < kMen; ++man) {
      const Pose& p = record.frames[tick].men[man];
      fmt::print("{} {}", tick, setup.men[man].id);
      for (const double v : {p.pos.x, p.pos.y, p.vel.x, p.vel.y, p.face.x, p.face.y})
        fmt::print(" {:016x}", std::bit_cast<std::uint64_t>(v));
      fmt::print("\n");
    }
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"exact bits of reps"};
  Wish wish;
  app.add_option("--scenarios", wish.folder, "folder of the looks");
  app.add_option("--look", wish.look, "one look, tick by tick and man by man");
  app.add_option("--seed", wish.seed, "its seed");
  app.add_option("--seeds", wish.seeds, "seeds for each look");
  app.add_option("--threads", wish.threads, "threads")->check(CLI::Range(1, 64));
  CLI11_PARSE(app, argc, argv);
  try {
    const Library library = readLibrary(assetPath(""));
    const Model model = readModel(assetPath("model.json"));
    wish.look.empty() ? printHashes(wish, library, model) : printTicks(wish, library, model);
    return 0;
  } catch (const Error& e) {
    fmt::print(stderr, "{}\n", e.what());
    return static_cast<int>(e.code());
  }
}
