#include "app/landmarks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "picture/ground.hpp"

namespace gapsound {
namespace {

constexpr double kReach = 0.3;   // yd within which a landmark draws a man
constexpr double kOnLine = 1.5;  // yd, deepest spot of a man of the line
constexpr double kNamedWithin = 0.2;

const char* sideOf(double x) { return x < 0.0 ? " left" : " right"; }

void addTechniques(std::vector<Landmark>& found, const Library& library, Level level) {
  for (const auto& [name, drawn] : library.techniques) {
    const double x = techniqueX(drawn, library, level);
    if (x == 0.0) {
      found.push_back({name + " technique", 0.0});
      continue;
    }
    for (const double side : {-x, x}) found.push_back({name + " technique" + sideOf(side), side});
  }
}

const Landmark& nearestTo(double x, const std::vector<Landmark>& landmarks) {
  return *std::min_element(landmarks.begin(), landmarks.end(), [x](const Landmark& a, const Landmark& b) {
    return std::abs(a.x - x) < std::abs(b.x - x);
  });
}

double toStep(double value, double step) { return std::round(value / step) * step; }

}  // namespace

double techniqueX(double drawn_x, const Library& library, Level level) {
  constexpr Splits kDrawn{};
  const Splits& here = library.bodies.levels[static_cast<std::size_t>(level)].splits;
  const std::array drawn{0.0, kDrawn.guard, kDrawn.tackle, kDrawn.end};
  const std::array real{0.0, here.guard, here.tackle, here.end};
  std::size_t k = 1;
  while (k + 1 < drawn.size() && drawn_x > drawn[k]) ++k;
  if (drawn_x > drawn[k]) return drawn_x + real[k] - drawn[k];
  return real[k - 1] + (drawn_x - drawn[k - 1]) / (drawn[k] - drawn[k - 1]) * (real[k] - real[k - 1]);
}

std::vector<Landmark> landmarksOf(const Setup& setup, const Library& library) {
  std::vector<Landmark> found;
  addTechniques(found, library, setup.level);
  for (int k = 0; k < kOffense; ++k) {
    const Man& man = setup.men[static_cast<std::size_t>(k)];
    if (man.group != Group::receiver) continue;
    const double in = man.spot.x < 0.0 ? 1.0 : -1.0;
    found.push_back({"over " + man.id, man.spot.x});
    found.push_back({"inside " + man.id, man.spot.x + in});
    found.push_back({"outside " + man.id, man.spot.x - in});
  }
  found.push_back({"left hash", setup.sideline_left + hashDistance(setup.level)});
  found.push_back({"right hash", setup.sideline_right - hashDistance(setup.level)});
  return found;
}

Dropped snapped(Vec2 wanted, int man, const Setup& setup, const Library& library) {
  const Vec2 half{toStep(wanted.x, 0.5), toStep(wanted.y, 0.5)};
  if (isOffense(man)) return {half, ""};
  const double y = wanted.y < kOnLine ? toStep(std::max(wanted.y, 0.4), 0.1) : half.y;
  const auto landmarks = landmarksOf(setup, library);
  const Landmark& nearest = nearestTo(wanted.x, landmarks);
  if (std::abs(nearest.x - wanted.x) > kReach) return {{half.x, y}, ""};
  return {{nearest.x, y}, nearest.name};
}

std::string placeWords(int man, const Setup& setup, const Library& library) {
  const Vec2 spot = setup.men[static_cast<std::size_t>(man)].spot;
  std::string deep =
      fmt::format("{:.1f} yd {}", std::abs(spot.y), spot.y < 0.0 ? "behind the line" : "off the ball");
  if (isOffense(man)) return deep;
  const auto landmarks = landmarksOf(setup, library);
  const Landmark& nearest = nearestTo(spot.x, landmarks);
  if (std::abs(nearest.x - spot.x) > kNamedWithin) {
    return fmt::format("{:.1f} yd{}, {}", std::abs(spot.x), sideOf(spot.x), deep);
  }
  return spot.y < kOnLine ? nearest.name : nearest.name + ", " + deep;
}

}  // namespace gapsound
