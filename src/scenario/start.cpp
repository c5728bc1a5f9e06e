#include "scenario/start.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/numbers.hpp"
#include "scenario/film_names.hpp"
#include "scenario/start_jobs.hpp"

namespace gapsound {
namespace {

constexpr double kFastest = 13.0;  // yd/s
constexpr double kOneSpot = 0.2;   // nearer than this, two men share a place, yd
constexpr double kDeepest = 60.0, kWidest = 54.0, kLongest = 8.0;

[[noreturn]] void refuse(const Scenario& s, const std::string& path, const std::string& value,
                         const std::string& allowed) {
  throw InputError(s.source, "/start" + path, value, allowed);
}

std::vector<std::string> idsOf(const Start& start) {
  std::vector<std::string> ids;
  for (const auto& [id, man] : start.men) ids.push_back(id);
  return ids;
}

void within(const Scenario& s, const std::string& path, double value, double low, double high) {
  if (std::isfinite(value) && low <= value && value <= high) return;
  refuse(s, path, fmt::format("{:g}", value), fmt::format("a number {:g} to {:g}", low, high));
}

bool attacks(const StartMan& man) {
  const Group group = *groupNamed(man.group);
  return group != Group::corner && group != Group::safety && group != Group::backer && group != Group::edge &&
         group != Group::tackle;
}

bool isLineman(Group g) { return g == Group::guard || g == Group::center || g == Group::off_tackle; }

std::string groupOf(const Library& library, const std::string& id) {
  for (const Formation& formation : library.formations)
    for (const FormationMan& man : formation.men)
      if (man.id == id) return std::string(nameOf(man.group));
  for (const Front& front : library.fronts)
    for (const FrontMan& man : front.men)
      if (man.id == id) return std::string(nameOf(man.group));
  return "";
}

void nameGroups(Scenario& s, const Library& library) {
  for (auto& [id, man] : s.start->men) {
    if (man.group.empty()) man.group = groupOf(library, id);
    if (!groupNamed(man.group))
      refuse(s, "/men/" + id + "/group", "\"" + man.group + "\"", "a kind of man of the library");
  }
}

void checkMen(const Scenario& s) {
  const Start& start = *s.start;
  int count = 0, line = 0;
  for (const auto& [id, man] : start.men) {
    const std::string path = "/men/" + id;
    within(s, path + "/x", man.pos.x, -kWidest, kWidest);
    within(s, path + "/y", man.pos.y, -kDeepest, 2.0 * kDeepest);
    if (!(length(man.vel) <= kFastest))
      refuse(s, path, fmt::format("{:g} yd/s", length(man.vel)), fmt::format("at most {} yd/s", kFastest));
    count += attacks(man) ? 1 : 0;
    line += isLineman(*groupNamed(man.group)) ? 1 : 0;
    for (const auto& [other, mate] : start.men) {
      if (other == id) break;
      if (distance(mate.pos, man.pos) < kOneSpot)
        refuse(s, path, "on one spot with " + other, fmt::format("at least {} yd between two men", kOneSpot));
    }
  }
  if (start.men.size() != kMen || count != kOffense)
    refuse(s, "/men", fmt::format("{} men, {} of them attack", start.men.size(), count),
           "22 men, 11 on each side");
  if (line != 5)
    refuse(s, "/men", fmt::format("{} linemen of the offense", line), "5: off_tackle, guard, center");
}

void checkStart(const Scenario& s) {
  const Start& start = *s.start;
  within(s, "/since_snap_s", start.since_snap_s, 0.0, kLongest);
  checkMen(s);
  const auto ball = start.men.find(start.ball);
  if (ball == start.men.end())
    refuse(s, "/ball", "\"" + start.ball + "\"", nameHint(start.ball, idsOf(start)));
  if (!attacks(ball->second)) refuse(s, "/ball", "\"" + start.ball + "\"", "a man who attacks");
}

/// A spot given under players means the picture, when the rep starts from one.
void movePlayers(Scenario& s) {
  for (auto& [id, settings] : s.players) {
    const auto man = s.start->men.find(id);
    if (man == s.start->men.end())
      throw InputError(s.source, "/players/" + id, "unknown man", nameHint(id, idsOf(*s.start)));
    Vec2& pos = man->second.pos;
    pos.x = settings.x.value_or(pos.x);
    pos.y = settings.y.value_or(pos.y);
    if (settings.depth_yd) pos.y = attacks(man->second) ? -*settings.depth_yd : *settings.depth_yd;
    settings.x = settings.y = settings.depth_yd = std::nullopt;
  }
}

bool isPuller(const StartMan& man) {
  const Group g = *groupNamed(man.group);
  const bool may = g == Group::guard || g == Group::off_tackle || g == Group::center || g == Group::tight_end;
  return may && man.pos.y < -0.4 && std::abs(man.vel.x) > kPullSpeed;
}

Vec2 faceFrom(double degrees) {
  const double rad = std::abs(degrees) * 3.14159265358979 / 180.0;
  const Vec2 d = fixedDirection(rad);
  return {degrees < 0.0 ? -d.y : d.y, d.x};
}

/// Who runs looks where he runs; who gives ground or stands looks at the ball, blockers downfield.
Vec2 faceOf(const StartMan& man, Vec2 ball) {
  if (man.facing_deg) return faceFrom(*man.facing_deg);
  constexpr double kRuns = 2.5;  // yd/s
  const bool attacker = attacks(man);
  const bool backs_off = attacker ? man.vel.y < -1.0 : man.vel.y > 1.0;
  if (length(man.vel) > kRuns && !backs_off) return unit(man.vel);
  return attacker ? Vec2{0.0, 1.0} : unit(ball - man.pos, {0.0, -1.0});
}

int indexOf(const Setup& setup, const std::string& id) {
  for (int i = 0; i < kMen; ++i)
    if (setup.men[static_cast<std::size_t>(i)].id == id) return i;
  return kNobody;
}

Opening openingOf(const Setup& setup, const Scenario& s) {
  Opening opening;
  opening.since_snap_s = s.start->since_snap_s;
  opening.ball = indexOf(setup, s.start->ball);
  const Vec2 ball = s.start->men.at(s.start->ball).pos;
  for (std::size_t i = 0; i < kMen; ++i) {
    const StartMan& man = s.start->men.at(setup.men[i].id);
    opening.men[i] = {man.pos, man.vel, faceOf(man, ball)};
  }
  return opening;
}

void requireSameMen(const Setup& setup, const Scenario& s) {
  std::vector<std::string> ids;
  for (const Man& man : setup.men) ids.push_back(man.id);
  for (const auto& [id, man] : s.start->men) {
    if (indexOf(setup, id) == kNobody) refuse(s, "/men/" + id, "unknown man", nameHint(id, ids));
  }
  for (const std::string& id : ids) {
    if (!s.start->men.contains(id)) refuse(s, "/men", "without " + id, "all 22 men of the look");
  }
}

}  // namespace

bool namesLook(const Scenario& s) {
  return !s.offense.formation.empty() && !s.offense.scheme.empty() && !s.defense.front.empty();
}

std::string runDirection(const Start& start) {
  const StartMan& ball = start.men.at(start.ball);
  const double left = std::max(-ball.pos.y, 0.0) / std::max(ball.vel.y, 3.0);
  double sum = ball.pos.x + left * ball.vel.x;
  for (const auto& [id, man] : start.men) {
    const Group g = *groupNamed(man.group);
    if (isPuller(man)) sum += man.vel.x;
    if (g == Group::back && id != start.ball) sum += man.vel.x;
  }
  return sum < 0.0 ? "left" : "right";
}

Scenario readyToStart(const Scenario& scenario, const Library& library) {
  Scenario s = scenario;
  nameGroups(s, library);
  checkStart(s);
  movePlayers(s);
  if (s.offense.direction.empty()) s.offense.direction = runDirection(*s.start);
  return s;
}

void openFromFilm(Setup& setup, const Scenario& right) {
  requireSameMen(setup, right);
  setup.opening = openingOf(setup, right);
  setup.snap_flight_s = 0.0;
  setup.mix = {};
  giveBall(setup, right.offense.scheme.empty());
  if (right.offense.scheme.empty()) inferBlocks(setup);
  takeGivenJobs(setup, right);
}

}  // namespace gapsound
