#include <doctest/doctest.h>

#include <array>
#include <bit>
#include <cmath>
#include <functional>
#include <initializer_list>
#include <set>
#include <vector>

#include "base/stream.hpp"

using namespace gapsound;

namespace {

std::vector<double> draws(int n, const std::function<double()>& draw) {
  std::vector<double> found;
  for (int i = 0; i < n; ++i) found.push_back(draw());
  return found;
}

double mean(const std::vector<double>& x) {
  double sum = 0.0;
  for (const double v : x) sum += v;
  return sum / static_cast<double>(x.size());
}

double covariance(const std::vector<double>& x, const std::vector<double>& y) {
  const double mx = mean(x);
  const double my = mean(y);
  double sum = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) sum += (x[i] - mx) * (y[i] - my);
  return sum / static_cast<double>(x.size());
}

double correlation(const std::vector<double>& x, const std::vector<double>& y) {
  return covariance(x, y) / std::sqrt(covariance(x, x) * covariance(y, y));
}

double excessKurtosis(const std::vector<double>& x) {
  const double m = mean(x);
  const double var = covariance(x, x);
  double sum = 0.0;
  for (const double v : x) sum += std::pow(v - m, 4);
  return sum / static_cast<double>(x.size()) / (var * var) - 3.0;
}

constexpr int kMany = 40000;
constexpr double kFiveSigma = 5.0 / 200.0;  // 5 / sqrt(kMany): a fair stream passes all of these for ever

}  // namespace

TEST_CASE("unit draws are uniform") {
  Stream s(1, 2, "moments");
  std::array<int, 16> bins{};
  for (int i = 0; i < kMany; ++i) {
    const double u = s.unit();
    REQUIRE(u >= 0.0);
    REQUIRE(u < 1.0);
    ++bins[static_cast<std::size_t>(u * 16.0)];
  }
  double chi = 0.0;
  for (const int n : bins) chi += (n - kMany / 16.0) * (n - kMany / 16.0) / (kMany / 16.0);
  CHECK(chi < 45.0);  // 15 degrees of freedom, p about 1e-4
}

TEST_CASE("normal draws have the moments of twelve uniforms") {
  Stream s(3, 4, "moments");
  const auto x = draws(kMany, [&] { return s.normal(); });
  CHECK(std::abs(mean(x)) < kFiveSigma);
  CHECK(covariance(x, x) == doctest::Approx(1.0).epsilon(0.035));
  CHECK(excessKurtosis(x) == doctest::Approx(-0.1).epsilon(0.12));  // exactly -1.2 / 12, sampling sd 0.024
}

TEST_CASE("chance hits its share and always draws once") {
  Stream a(5, 6, "coin");
  Stream b(5, 6, "coin");
  int hits = 0;
  for (int i = 0; i < kMany; ++i) {
    if (a.chance(0.3)) ++hits;
    static_cast<void>(b.chance(i % 2 == 0 ? 0.0 : 1.0));
  }
  CHECK(hits == doctest::Approx(0.3 * kMany).epsilon(0.04));
  CHECK(a.bits() == b.bits());
}

TEST_CASE("neighbours in seed, man and purpose have nothing in common") {
  const auto sequence = [](std::uint64_t seed, std::uint64_t man, const char* purpose) {
    Stream s(seed, man, purpose);
    return draws(kMany, [&] { return s.unit(); });
  };
  const auto base = sequence(100, 7, "read");
  CHECK(std::abs(correlation(base, sequence(101, 7, "read"))) < kFiveSigma);
  CHECK(std::abs(correlation(base, sequence(100, 8, "read"))) < kFiveSigma);
  CHECK(std::abs(correlation(base, sequence(100, 7, "reae"))) < kFiveSigma);
}

TEST_CASE("the first draws of consecutive seeds are as good as one long stream") {
  std::vector<double> first, next;
  for (std::uint64_t seed = 0; seed < kMany; ++seed) {
    first.push_back(Stream(seed, 11, "strength").unit());
    next.push_back(Stream(seed + 1, 11, "strength").unit());
  }
  CHECK(std::abs(mean(first) - 0.5) < kFiveSigma * std::sqrt(1.0 / 12.0));
  CHECK(covariance(first, first) == doctest::Approx(1.0 / 12.0).epsilon(0.03));
  CHECK(std::abs(correlation(first, next)) < kFiveSigma);
}

TEST_CASE("a stream is not its own echo") {
  Stream s(9, 9, "echo");
  const auto x = draws(kMany, [&] { return s.unit(); });
  for (const std::size_t lag : {1u, 2u, 12u}) {
    const std::vector<double> early(x.begin(), x.end() - static_cast<std::ptrdiff_t>(lag));
    const std::vector<double> late(x.begin() + static_cast<std::ptrdiff_t>(lag), x.end());
    CHECK(std::abs(correlation(early, late)) < kFiveSigma);
  }
}

TEST_CASE("streams never share a draw") {
  std::set<std::uint64_t> seen;
  constexpr int kSeeds = 20, kPlayers = 22, kDraws = 100;
  for (std::uint64_t seed = 0; seed < kSeeds; ++seed)
    for (std::uint64_t man = 0; man < kPlayers; ++man)
      for (const char* purpose : {"read", "contact"}) {
        Stream s(seed, man, purpose);
        for (int i = 0; i < kDraws; ++i) seen.insert(s.bits());
      }
  CHECK(seen.size() == std::size_t{2} * kSeeds * kPlayers * kDraws);
}

TEST_CASE("drawing from one stream leaves the others where they were") {
  Stream alone(42, 3, "read");
  Stream disturbed(42, 3, "read");
  Stream other(42, 4, "read");
  for (int i = 0; i < 100; ++i) {
    static_cast<void>(other.normal());
    CHECK(alone.bits() == disturbed.bits());
  }
}

TEST_CASE("one bit of the seed changes half the bits of the draw") {
  double flipped = 0.0;
  constexpr int kTries = 2000;
  for (std::uint64_t i = 0; i < kTries; ++i)
    flipped += std::popcount(Stream(i, 1, "mix").bits() ^ Stream(i ^ (1ULL << (i % 64)), 1, "mix").bits());
  CHECK(flipped / kTries == doctest::Approx(32.0).epsilon(0.02));
}
