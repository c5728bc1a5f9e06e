#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "athlete/splits.hpp"

using namespace gapsound;

TEST_CASE("a fit gives back the two times it was made from") {
  for (const double forty : {4.4, 4.6, 4.9, 5.3, 5.8})
    for (const double share : {0.345, 0.348, 0.351}) {
      const auto fit = fitSplits(share * forty, forty, kHandStart);
      REQUIRE(fit);
      CHECK(clockTime(*fit, 10.0, kHandStart) == doctest::Approx(share * forty).epsilon(1e-9));
      CHECK(clockTime(*fit, 40.0, kHandStart) == doctest::Approx(forty).epsilon(1e-9));
    }
}

TEST_CASE("a fit gives back the man whose times it is given") {
  for (const double top : {8.0, 9.5, 11.5})
    for (const double tau : {0.91, 1.15, 1.49})
      for (const double offset : {0.0, 0.25}) {
        const SprintFit man{top, tau};
        const auto fit = fitSplits(clockTime(man, 10.0, offset), clockTime(man, 40.0, offset), offset);
        REQUIRE(fit);
        CHECK(fit->top_speed == doctest::Approx(top).epsilon(1e-9));
        CHECK(fit->tau == doctest::Approx(tau).epsilon(1e-9));
      }
}

TEST_CASE("times that contradict the sprint law are refused") {
  CHECK_FALSE(fitSplits(1.30, 4.60, kHandStart));  // off the line faster than anybody for that forty
  CHECK_FALSE(fitSplits(1.90, 4.60, kHandStart));  // ten yards lost that the forty does not show
  CHECK_FALSE(fitSplits(4.60, 1.60, kHandStart));  // the wrong way round
  CHECK_FALSE(fitSplits(0.0, 4.60, 0.0));
  CHECK_FALSE(fitSplits(std::nan(""), 4.60, kHandStart));
}

TEST_CASE("the limits of the time constant belong to it, what lies beyond does not") {
  const auto fitOf = [](double tau) {
    const SprintFit man{10.0, tau};
    return fitSplits(clockTime(man, 10.0, 0.25), clockTime(man, 40.0, 0.25), 0.25);
  };
  CHECK(fitOf(kLeastTau + 1e-6));
  CHECK(fitOf(kMostTau - 1e-6));
  CHECK_FALSE(fitOf(kLeastTau - 1e-3));
  CHECK_FALSE(fitOf(kMostTau + 1e-3));
}

TEST_CASE("a later start of the clock means a slower start of the man") {
  const auto early = fitSplits(1.58, 4.55, 0.20);
  const auto late = fitSplits(1.58, 4.55, 0.30);
  REQUIRE(early);
  REQUIRE(late);
  CHECK(early->tau < late->tau);
  CHECK(early->top_speed < late->top_speed);
}

TEST_CASE("the clock shows a distance when the man has run it") {
  const SprintFit man{10.5, 1.15};
  for (const double yards : {0.5, 5.0, 20.0, 60.0})
    CHECK(distanceAt(man, clockTime(man, yards, 0.25) + 0.25) == doctest::Approx(yards).epsilon(1e-9));
}

TEST_CASE("hand and electronic times are each other's inverse") {
  CHECK(handFromElectronic(electronicFromHand(4.61)) == doctest::Approx(4.61));
  CHECK(handFromElectronic(4.83) < 4.83);
}
