#include "study/sensitivity.hpp"

#include <doctest/doctest.h>

#include "looks.hpp"

using namespace gapsound;

namespace {

Played gains(double a, double b, int reps) {
  Played played(2 * kHeadlines);
  for (std::size_t side = 0; side < played.size(); ++side) {
    for (int k = 0; k < reps; ++k) {
      Summary rep;
      rep.yards = (side % 2 == 0 ? a : b) + 0.01 * (k % 3) * static_cast<double>(side % 2);
      rep.cutback_taken = k % 4 == 0;
      played[side].push_back(rep);
    }
  }
  return played;
}

}  // namespace

TEST_CASE("the headlines resolve and name men their looks have") {
  for (const Headline& h : headlines()) {
    CAPTURE(h.words);
    CHECK_NOTHROW((void)resolve(h.a, looks::library(), looks::model()));
    CHECK_NOTHROW((void)resolve(h.b, looks::library(), looks::model()));
  }
}

TEST_CASE("sensitivity is the change on the reps both have") {
  const Played unchanged = gains(3.0, 4.0, 60);
  Played changed = gains(3.0, 2.0, 12);
  for (auto& side : changed)
    for (Summary& rep : side) rep.cutback_taken = false;
  const Sensitivity s = sensitivityOf(unchanged, changed);
  CHECK(s.yards == doctest::Approx(-1.0));
  CHECK(s.cutback == doctest::Approx(-0.25));
  CHECK(s.shift[2].difference == doctest::Approx(-2.0));
  CHECK(s.shift[2].n == 12);
}

TEST_CASE("an answer could turn when the shift is sure and larger than it is") {
  const Paired answer{600, 1.0, 5.0, 1e-6, {}};
  CHECK(couldTurn(answer, {30, -1.5, 2.0, 0.001, {}}));
  CHECK_FALSE(couldTurn(answer, {30, -1.5, 9.0, 0.4, {}}));
  CHECK_FALSE(couldTurn(answer, {30, -0.5, 0.1, 0.001, {}}));
  CHECK_FALSE(couldTurn(answer, {30, 1.5, 2.0, 0.001, {}}));
}
