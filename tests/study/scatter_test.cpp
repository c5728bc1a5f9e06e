#include "study/scatter.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "base/stream.hpp"
#include "study/place_density.hpp"

using namespace gapsound;

TEST_CASE("distances count in the scatter pooled over groups, worked by hand") {
  const std::vector<double> a{-1, -3, 0, 2, 1, 1}, b{9, 2, 10, 7, 11, 6};
  // About the mean: (-1,-3), (0,2), (1,1): xx 2, xy 4, yy 14, twice over with 2 degrees of freedom each.
  Scatter scatter(2);
  scatter.add(a);
  scatter.add(b);
  scatter.finish(1.0, 0.0, 1e-12);
  // Covariance [[1, 2], [2, 7]], determinant 3; its inverse [[7, -2], [-2, 1]] / 3.
  const auto u = scatter.whitened(std::vector<double>{1.0, 1.0});
  CHECK(u[0] * u[0] + u[1] * u[1] == doctest::Approx((7 - 2 - 2 + 1) / 3.0).epsilon(1e-9));
  CHECK(scatter.halfLogDeterminant() == doctest::Approx(0.5 * std::log(3.0)).epsilon(1e-9));
}

TEST_CASE("shrinking leaves the diagonal, the floor is added to it") {
  Scatter scatter(2);
  scatter.add(std::vector<double>{-1, -3, 0, 2, 1, 1});
  scatter.finish(1.0, 0.5, 1.0);
  // [[1 + 1, 2 / 2], [1, 7 + 1]]: determinant 15.
  CHECK(scatter.halfLogDeterminant() == doctest::Approx(0.5 * std::log(15.0)).epsilon(1e-9));
}

TEST_CASE("the mean of rows goes value by value") {
  const auto mean = meanRow(std::vector<double>{1, 10, 3, 20}, 2);
  CHECK(mean[0] == doctest::Approx(2.0));
  CHECK(mean[1] == doctest::Approx(15.0));
}

TEST_CASE(
    "a man who stands in two heaps is likelier in one of them than his mean says, and less so between") {
  Stream draw(3, 0, "heaps");
  std::vector<Vec2> heaps, bell;
  for (int k = 0; k < 200; ++k) {
    const Vec2 off{0.5 * draw.normal(), 0.5 * draw.normal()};
    heaps.push_back(Vec2{k % 2 == 0 ? -3.0 : 3.0, 0.0} + off);
    bell.push_back(3.0 * off);
  }
  CHECK(shapeGain(heaps, {3.0, 0.0}, 0.5) > 0.3);
  CHECK(shapeGain(heaps, {0.0, 0.0}, 0.5) < -1.0);
  CHECK(std::abs(shapeGain(bell, {0.0, 0.0}, 0.5)) < 0.3);
  CHECK(std::abs(shapeGain(bell, {1.5, 1.0}, 0.5)) < 0.3);
  CHECK(std::isfinite(shapeGain(bell, {40.0, 0.0}, 0.5)));
  CHECK(shapeGain({{1.0, 1.0}}, {5.0, 0.0}, 0.5) == 0.0);
}
