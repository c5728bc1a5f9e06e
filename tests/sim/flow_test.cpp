#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

#include "base/tick.hpp"
#include "looks.hpp"

using namespace gapsound;

namespace {

/// How far the nearest free backer is inside a ball that crosses outside the end, rep by rep.
std::vector<double> insideAtTheEdge(const Model& model, int reps) {
  const Setup setup = looks::setupOf("wide-zone-right-doublets");
  std::vector<double> found;
  for (int seed = 1; seed <= reps; ++seed) {
    const Record rep = play(setup, model, static_cast<std::uint64_t>(seed));
    const auto crossed = std::find_if(rep.frames.begin(), rep.frames.end(),
                                      [](const Frame& f) { return f.carrier >= 0 && f.ball.y > 0.0; });
    if (crossed == rep.frames.end()) continue;
    double end = 0.0, nearest = 99.0;
    for (std::size_t man = kOffense; man < kMen; ++man) {
      const Pose& pose = crossed->men[man];
      const int level = setup.men[man].fit.level;
      if (level == 1) end = std::max(end, pose.pos.x);
      if (level == 2 && pose.engaged == kNobody) nearest = std::min(nearest, crossed->ball.x - pose.pos.x);
    }
    if (crossed->ball.x > end + 1.0 && nearest < 99.0) found.push_back(nearest);
  }
  return found;
}

double meanOf(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

}  // namespace

// Common practice, no source: inside-out on a ball that leaves the box.
TEST_CASE("a free backer goes with a ball that leaves the box") {
  Model stays = looks::model();
  stays.fit_trail_first_yd = stays.fit_trail_yd = 99.0;
  const auto goes = insideAtTheEdge(looks::model(), 300), left = insideAtTheEdge(stays, 300);
  REQUIRE(goes.size() > 20);
  REQUIRE(left.size() > 20);
  MESSAGE("a free backer is ", meanOf(goes), " yd inside the ball, ", meanOf(left), " when he stays");
  CHECK(meanOf(goes) < meanOf(left) - 0.5);
}
