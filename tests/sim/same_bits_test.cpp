#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <initializer_list>
#include <map>
#include <string>
#include <thread>
#include <vector>

#include "looks.hpp"

using namespace gapsound;

namespace {

constexpr std::uint64_t kGoldenSeeds = 3;
const std::string kGoldenFile = GAPSOUND_ROOT "/tests/sim/golden.txt";

using Hashes = std::map<std::string, std::uint64_t>;  // "look seed" -> hash

Hashes hashesNow() {
  Hashes now;
  for (const std::string& name : looks::names()) {
    const Setup setup = looks::setupOf(name);
    for (std::uint64_t seed = 1; seed <= kGoldenSeeds; ++seed)
      now[name + " " + std::to_string(seed)] = play(setup, looks::model(), seed).hash;
  }
  return now;
}

Hashes golden() {
  Hashes kept;
  std::ifstream in(kGoldenFile);
  std::string look, seed;
  std::uint64_t hash = 0;
  while (in >> look >> seed >> hash) kept[look + " " + seed] = hash;
  return kept;
}

std::vector<std::uint64_t> hashesOn(const Setup& setup, int threads, std::uint64_t reps) {
  std::vector<std::uint64_t> hashes(reps);
  std::vector<std::thread> pool;
  for (int t = 0; t < threads; ++t)
    pool.emplace_back([&, t] {
      for (auto seed = static_cast<std::uint64_t>(t); seed < reps;
           seed += static_cast<std::uint64_t>(threads))
        hashes[seed] = play(setup, looks::model(), seed).hash;
    });
  for (std::thread& thread : pool) thread.join();
  return hashes;
}

}  // namespace

// A change of the model or of a mind changes these on purpose: GAPSOUND_GOLDEN=write ./test_sim writes them
// anew.
TEST_CASE("every look plays to its golden bits") {
  const Hashes now = hashesNow();
  const char* wish = std::getenv("GAPSOUND_GOLDEN");
  if (wish && std::string(wish) == "write") {
    std::ofstream out(kGoldenFile);
    for (const auto& [key, hash] : now) out << key << ' ' << hash << '\n';
    MESSAGE("wrote ", kGoldenFile);
  }
  const Hashes kept = golden();
  CHECK(now.size() == kept.size());
  for (const auto& rep : now) {
    const auto& key = rep.first;
    CAPTURE(key);
    REQUIRE(kept.count(key) == 1);
    CHECK(rep.second == kept.at(key));
  }
}

TEST_CASE("five runs of one seed are one run") {
  const Setup setup = looks::setupOf(looks::names().front());
  const Record first = play(setup, looks::model(), 7);
  for (int i = 0; i < 4; ++i) {
    const Record again = play(setup, looks::model(), 7);
    CHECK(again.hash == first.hash);
    CHECK(again.yards == first.yards);
    CHECK(again.events.size() == first.events.size());
  }
}

TEST_CASE("seeds differ") {
  const Setup setup = looks::setupOf(looks::names().front());
  CHECK(play(setup, looks::model(), 1).hash != play(setup, looks::model(), 2).hash);
}

TEST_CASE("one, two and eight threads play the same reps") {
  const Setup setup = looks::setupOf(looks::names().back());
  const auto alone = hashesOn(setup, 1, 16);
  CHECK(hashesOn(setup, 2, 16) == alone);
  CHECK(hashesOn(setup, 8, 16) == alone);
}

TEST_CASE("left is right, turned over, to the last bit") {
  for (const std::string& name : looks::names()) {
    CAPTURE(name);
    const Setup setup = looks::setupOf(name);
    const Setup other = mirrored(setup);
    const Record a = play(setup, looks::model(), 5);
    const Record b = play(other, looks::model(), 5);
    REQUIRE(a.frames.size() == b.frames.size());
    CHECK(a.hash == b.hash);
    CHECK(a.yards == b.yards);
    const std::size_t last = a.frames.size() - 1;
    for (std::size_t i = 0; i < kMen; ++i)
      CHECK(a.frames[last].men[i].pos == mirrored(b.frames[last].men[i].pos));
  }
}

TEST_CASE("title, down and distance are not part of the play") {
  Setup setup = looks::setupOf(looks::names().front());
  const Record before = play(setup, looks::model(), 3);
  setup.title = "another name";
  setup.down = 3;
  setup.distance = 4.0;
  CHECK(play(setup, looks::model(), 3).hash == before.hash);
}
