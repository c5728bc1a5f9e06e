#include <fmt/core.h>

#include <filesystem>

#include "cli/film_options.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/film.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

Level levelOf(const std::string& word) {
  return word == "pro" ? Level::pro : word == "college" ? Level::college : Level::high_school;
}

/// What the options say about the look; direction stays open unless they name it.
Scenario lookOf(const FilmOptions& o) {
  Scenario look;
  look.source = o.file;
  look.title = o.title.empty() ? "From film: " + std::filesystem::path(o.file).stem().string() : o.title;
  look.tags = {"film"};
  look.level = levelOf(o.level);
  look.field.to_goal = o.attack == "+x" ? 110.0 - o.line : o.line - 10.0;
  look.field.down = o.down;
  look.field.distance = o.distance;
  look.offense = {o.formation, o.scheme, o.variant, o.direction, o.strength, {}};
  look.defense.front = o.front;
  look.defense.shell = o.shell;
  look.defense.structure = o.structure;
  return look;
}

}  // namespace

int runFilm(const FilmOptions& options) {
  requireWritable(options.out);
  const Model model = modelFor("");
  Film film = readFilm(options.file, axesOf(options));
  film.since_snap_s = options.since_snap;
  film.look = lookOf(options);
  Scenario scenario = scenarioFrom(film, library(), model);
  scenario.source = options.out;
  static_cast<void>(resolve(scenario, library(), model));
  writeAtomically(options.out, toJson(scenario));
  if (options.json) {
    printAnswer({{"written", options.out}});
  } else {
    fmt::print("{} written: {} has the ball {:.2f} s after the snap, the run goes {}\n", options.out,
               scenario.start->ball, scenario.start->since_snap_s, scenario.offense.direction);
  }
  return 0;
}

}  // namespace gapsound
