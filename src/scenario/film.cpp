#include "scenario/film.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "scenario/film_labels.hpp"
#include "scenario/film_names.hpp"
#include "scenario/mirror.hpp"
#include "scenario/resolve.hpp"
#include "scenario/start.hpp"

namespace gapsound {
namespace {

bool isLineman(Group g) { return g == Group::guard || g == Group::center || g == Group::off_tackle; }

/// Hundredths of a hundredth: finer than any tracker, and the same for a picture and its mirror image.
double rounded(double x) { return std::round(x * 1e4) / 1e4; }

Vec2 rounded(Vec2 v) { return {rounded(v.x), rounded(v.y)}; }

int linemenNamed(const Film& film, bool tackles_too) {
  int count = 0;
  for (const FilmMan& man : film.men) {
    const bool tackle = man.label == "T" || man.label == "t";
    const auto label = man.attacks ? labelled(man.label, true, 0.0, false) : std::nullopt;
    count += label && isLineman(label->group) && (tackles_too || !tackle);
  }
  return count;
}

std::vector<NamedMan> namedMen(const Film& film) {
  const bool line_full = linemenNamed(film, false) == 5;
  std::vector<NamedMan> men;
  for (const FilmMan& man : film.men) {
    const auto label = labelled(man.label, man.attacks, std::abs(man.pos.y), line_full);
    if (!label)
      throw InputError(film.look.source, "position", "\"" + man.label + "\"", "a position of that side");
    NamedMan named;
    named.group = label->group;
    named.label_id = label->id;
    named.attacks = man.attacks;
    named.has_ball = man.has_ball;
    named.start = {man.pos, man.vel, man.facing_deg, std::string(nameOf(label->group)), "", "", ""};
    men.push_back(named);
  }
  return men;
}

double ballX(const std::vector<NamedMan>& men, double since) {
  std::vector<double> line;
  for (const NamedMan& man : men) {
    if (!isLineman(man.group)) continue;
    const double x = man.start.pos.x - 0.5 * since * man.start.vel.x;
    if (man.group == Group::center) return x;
    line.push_back(x);
  }
  std::sort(line.begin(), line.end());
  return line.empty() ? 0.0 : line[line.size() / 2];
}

void centre(std::vector<NamedMan>& men, double ball_x) {
  for (NamedMan& man : men) {
    man.start.pos = rounded(man.start.pos - Vec2{ball_x, 0.0});
    man.start.vel = rounded(man.start.vel);
  }
}

void turnOver(std::vector<NamedMan>& men) {
  for (NamedMan& man : men) {
    man.start.pos = mirrored(man.start.pos);
    man.start.vel = mirrored(man.start.vel);
    if (man.start.facing_deg) man.start.facing_deg = -*man.start.facing_deg;
    man.label_id = man.label_id.empty() ? "" : otherSide(man.label_id);
  }
}

Start startOf(const Film& film, const std::vector<NamedMan>& men) {
  Start start;
  start.since_snap_s = film.since_snap_s;
  for (const NamedMan& man : men) {
    start.men[man.id] = man.start;
    if (man.has_ball) start.ball = man.id;
  }
  return start;
}

/// The direction the men show, under any names.
std::string shownDirection(const Film& film, std::vector<NamedMan> men) {
  for (std::size_t i = 0; i < men.size(); ++i) men[i].id = fmt::format("{:02}", i);
  return runDirection(startOf(film, men));
}

}  // namespace

Scenario scenarioFrom(const Film& film, const Library& library, const Model& model) {
  std::vector<NamedMan> men = namedMen(film);
  if (std::none_of(men.begin(), men.end(), [](const NamedMan& man) { return man.has_ball; }))
    throw InputError(film.look.source, "ball", "nobody", "one man who has it");
  const double ball_x = ballX(men, film.since_snap_s);
  centre(men, ball_x);
  Scenario out = film.look;
  if (out.offense.direction.empty()) out.offense.direction = shownDirection(film, men);
  const bool to_right = out.offense.direction == "right";
  if (!to_right) turnOver(men);
  if (namesLook(out)) {
    nameByLook(men, film.since_snap_s, resolve(to_right ? out : mirrored(out), library, model));
  } else {
    nameByPlace(men, film.since_snap_s);
  }
  Scenario right = out;
  right.start = startOf(film, men);
  if (!to_right)
    out.start = mirrored(right).start;
  else
    out.start = right.start;
  out.start->left_sideline = rounded(film.left_sideline - ball_x);
  return out;
}

}  // namespace gapsound
