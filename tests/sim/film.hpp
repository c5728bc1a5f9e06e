#pragma once
#include <fmt/format.h>

#include <cmath>
#include <string>
#include <vector>

#include "base/tick.hpp"
#include "io/film_frame.hpp"
#include "looks.hpp"
#include "scenario/resolve.hpp"

/// Pictures of film: the shipped one, and one taken of any look at its hand-off.
namespace gapsound::film {

inline std::string shippedFrame() { return GAPSOUND_ROOT "/scenarios/film-power-right.csv"; }
inline FilmAxes shippedAxes() { return {38.0, false, true, true, {}}; }

inline Film withLook(Film film, double since) {
  film.since_snap_s = since;
  film.look.source = "film.csv";
  film.look.title = "film";
  film.look.level = Level::pro;
  film.look.offense.direction.clear();
  return film;
}

inline Scenario scenarioOf(const std::string& file, const FilmAxes& axes, double since = 1.45) {
  return scenarioFrom(withLook(readFilm(file, axes), since), looks::library(), looks::model());
}
inline Setup setupOf(const Scenario& scenario) { return resolve(scenario, looks::library(), looks::model()); }

/// The label a tracking file would give him.
inline std::string labelOf(const Man& man) {
  static const std::vector<std::string> words = {"WR",  "CB", "S",  "HB", "FB", "TE", "QB",
                                                 "OLB", "DE", "DT", "T",  "G",  "C"};
  const bool safety = man.group == Group::safety;
  return safety ? (man.spot.y > 6.5 ? "S" : "NB") : words[static_cast<std::size_t>(man.group)];
}

/// A look stopped at a time of a rep, as a tracker would have seen it, and the scenario that starts there.
inline Scenario takenFrom(const std::string& look, std::uint64_t seed, double since) {
  const Setup setup = looks::setupOf(look);
  const Record record = play(setup, looks::model(), seed);
  const Frame& f = record.frames[static_cast<std::size_t>(ticks(since))];
  Film film;
  for (std::size_t i = 0; i < kMen; ++i) {
    const Pose& p = f.men[i];
    const double facing = std::atan2(p.face.x, p.face.y) * 180.0 / 3.14159265358979;
    film.men.push_back({labelOf(setup.men[i]), setup.men[i].attacks, f.carrier == static_cast<int>(i), p.pos,
                        p.vel, facing});
  }
  return scenarioFrom(withLook(film, since), looks::library(), looks::model());
}

}  // namespace gapsound::film
