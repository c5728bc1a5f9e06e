#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "base/error.hpp"
#include "io/atomic_file.hpp"
#include "io/rep_log.hpp"

using namespace gapsound;

namespace {

Summary repNumbered(int k) {
  Summary rep;
  rep.yards = 0.1 * k, rep.lane_gap = k % 2 == 0 ? "B+" : "alley-", rep.cutback_open = k % 3 == 0;
  rep.ending = k % 2 == 0 ? Ending::out : Ending::score, rep.lane_relation = Relation::cutback;
  rep.first_contact_man = k - 1, rep.hash = 0x9e3779b97f4a7c15ULL * static_cast<unsigned>(k + 1);
  rep.had_contact = 1U << (k % 11), rep.pullers_met = k, rep.pullers_through = k / 2;
  return rep;
}

struct Scratch {
  std::string file =
      (std::filesystem::temp_directory_path() / ("gapsound-rep-log-" + std::to_string(getpid()))).string();
  ~Scratch() { std::filesystem::remove(file); }
};

const RepLogHead kHead{"key", {"reps", "a.json", "-n", "8"}, 2, 3, 8};

std::vector<Summary> allIn(const std::string& file) {
  std::vector<Summary> reps;
  readRepLog(file, [&](const Summary& rep) {
    reps.push_back(rep);
    return true;
  });
  return reps;
}

void fill(const std::string& file, int n) {
  RepLog log = RepLog::create(file, kHead);
  for (int k = 0; k < n; ++k) log.append(repNumbered(k));
  log.flush();
}

}  // namespace

TEST_CASE("a log of reps gives back head and reps to the last bit") {
  const Scratch scratch;
  fill(scratch.file, 8);
  CHECK(inspectRepLog(scratch.file).head == kHead);
  const auto reps = allIn(scratch.file);
  REQUIRE(reps.size() == 8);
  for (int k = 0; k < 8; ++k) {
    const Summary& read = reps[static_cast<std::size_t>(k)];
    const Summary made = repNumbered(k);
    CHECK(read.yards == made.yards);
    CHECK(read.lane_gap == made.lane_gap);
    CHECK(read.cutback_open == made.cutback_open);
    CHECK(read.ending == made.ending);
    CHECK(read.lane_relation == made.lane_relation);
    CHECK(read.first_contact_man == made.first_contact_man);
    CHECK(read.had_contact == made.had_contact);
    CHECK(read.pullers_met == made.pullers_met);
    CHECK(read.pullers_through == made.pullers_through);
    CHECK(read.hash == made.hash);
  }
}

TEST_CASE("a log cut anywhere keeps its whole records and goes on after them") {
  const Scratch scratch;
  fill(scratch.file, 8);
  const std::string whole = readWhole(scratch.file);
  const auto head = whole.find('\n') + 1, record = (whole.size() - head) / 8;
  for (const std::size_t kept :
       {head, head + 1, head + record - 1, head + 3 * record, head + 5 * record + 17}) {
    std::ofstream(scratch.file, std::ios::binary) << whole.substr(0, kept);
    const auto sound = static_cast<int>((kept - head) / record);
    CHECK(inspectRepLog(scratch.file).reps == static_cast<std::uint64_t>(sound));
    RepLog log = RepLog::open(scratch.file);
    for (int k = sound; k < 8; ++k) log.append(repNumbered(k));
    log.flush();
    CHECK(readWhole(scratch.file) == whole);
  }
}

TEST_CASE("a spoilt record ends what is read") {
  const Scratch scratch;
  fill(scratch.file, 8);
  std::string content = readWhole(scratch.file);
  const auto head = content.find('\n') + 1, record = (content.size() - head) / 8;
  content[head + 4 * record + 40] ^= 1;
  std::ofstream(scratch.file, std::ios::binary) << content;
  CHECK(inspectRepLog(scratch.file).reps == 4);
}

TEST_CASE("what is no log is refused, a full disk is reported") {
  const Scratch scratch;
  for (const char* content :
       {"", "{\"gapsound\": 1", "{}\n", "reps\n", "{\"gapsound\": 1, \"kind\": \"tape\"}\n"}) {
    std::ofstream(scratch.file, std::ios::binary) << content;
    CHECK_THROWS_AS(static_cast<void>(inspectRepLog(scratch.file)), InputError);
  }
  CHECK_THROWS_AS(static_cast<void>(inspectRepLog("/nowhere/at/all")), Error);
  CHECK_THROWS_WITH_AS(static_cast<void>(RepLog::create("/dev/full", kHead)),
                       "/dev/full: cannot be written: No space left on device", Error);
}
