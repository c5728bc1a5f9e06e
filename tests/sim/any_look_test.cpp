#include "any_look.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>
#include <sstream>
#include <string>

#include "io/scenario_file.hpp"
#include "looks.hpp"

using namespace gapsound;

namespace {

/// Plays that many looks nobody thought of; what RapidCheck says of them.
std::string checkLooks(int many, std::uint64_t seed) {
  rc::detail::TestParams params;
  params.maxSuccess = many;
  params.seed = seed;
  params.disableShrinking = true;  // the look is printed whole
  params.maxDiscardRatio = 50;
  const auto result = rc::detail::checkTestable(
      [] {
        const auto look = looks::anyLook();
        const Tape tape{look.setup, look.seed, play(look.setup, looks::model(), look.seed)};
        const std::string wrong = looks::wrongWith(tape, looks::model());
        if (!wrong.empty())
          RC_FAIL(wrong + "\nseed " + std::to_string(look.seed) + "\n" + toJson(look.scenario));
      },
      rc::detail::TestMetadata{}, params);
  if (result.is<rc::detail::SuccessResult>()) return "";
  std::ostringstream words;
  rc::detail::printResultMessage(result, words);
  return words.str();
}

int looksWished(int otherwise) {
  const char* wish = std::getenv("GAPSOUND_LOOKS");
  return wish ? std::atoi(wish) : otherwise;
}

std::uint64_t seedWished(std::uint64_t otherwise) {
  const char* wish = std::getenv("GAPSOUND_LOOKS_SEED");
  return wish ? std::strtoull(wish, nullptr, 10) : otherwise;
}

}  // namespace

TEST_CASE("no legal look plays a rep that cannot be") {
  const std::string wrong = checkLooks(150, 1);
  INFO(wrong);
  CHECK(wrong.empty());
}

// GAPSOUND_LOOKS and GAPSOUND_LOOKS_SEED choose how many and which.
TEST_CASE("long: no legal look plays a rep that cannot be") {
  const std::string wrong = checkLooks(looksWished(4000), seedWished(2));
  INFO(wrong);
  CHECK(wrong.empty());
}

TEST_CASE("what must be true of every rep is seen where it is not") {
  const Setup setup = looks::setupOf(looks::names().front());
  const Tape sound{setup, 1, play(setup, looks::model(), 1)};
  CHECK(looks::wrongWith(sound, looks::model()).empty());
  const auto spoilt = [&](const auto& spoil) {
    Tape tape = sound;
    spoil(tape.record, tape.record.frames[40].men);
    return looks::wrongWith(tape, looks::model());
  };
  CHECK_FALSE(spoilt([](Record&, auto& men) { men[3].pos.x = std::nan(""); }).empty());
  CHECK_FALSE(spoilt([](Record&, auto& men) { men[3].pos = men[15].pos; }).empty());
  CHECK_FALSE(spoilt([](Record&, auto& men) { men[3].vel.y += 40.0; }).empty());
  CHECK_FALSE(spoilt([](Record& record, auto&) { record.yards += 2.0; }).empty());
  CHECK_FALSE(spoilt([](Record& record, auto&) { record.end_tick = 5000; }).empty());
}
