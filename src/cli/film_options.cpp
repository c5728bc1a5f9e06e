#include "cli/film_options.hpp"

namespace gapsound {

void addFilmAxes(CLI::App& verb, FilmOptions& o) {
  verb.add_option("--line", o.line, "line of scrimmage in the file's x, yd")
      ->required()
      ->check(CLI::Range(10.0, 110.0));
  verb.add_option("--attack", o.attack, "way the offense goes")
      ->check(CLI::IsMember({"+x", "-x"}))
      ->capture_default_str();
  verb.add_option("--turn", o.turn, "angles grow cw or ccw")
      ->check(CLI::IsMember({"cw", "ccw"}))
      ->capture_default_str();
  verb.add_option("--zero", o.zero, "axis of 0 degrees")
      ->check(CLI::IsMember({"x", "y"}))
      ->capture_default_str();
  verb.add_option("--columns", o.columns, "other spellings of the columns, OURS=THEIRS,OURS=THEIRS");
}

void addFilm(CLI::App& verb, FilmOptions& o) {
  verb.add_option("frame", o.file, "tracking of one instant, CSV")->required();
  verb.add_option("-o,--out", o.out, "scenario to write")->required();
  addFilmAxes(verb, o);
  verb.add_option("--since-snap", o.since_snap, "seconds since the snap")
      ->check(CLI::Range(0.0, 8.0))
      ->capture_default_str();
  verb.add_option("--title", o.title);
  verb.add_option("--formation", o.formation, "with --scheme and --front: the men become those of this look");
  verb.add_option("--scheme", o.scheme);
  verb.add_option("--front", o.front);
  verb.add_option("--direction", o.direction, "left, right; found from the picture when absent")
      ->check(CLI::IsMember({"left", "right"}));
  verb.add_option("--variant", o.variant)->capture_default_str();
  verb.add_option("--strength", o.strength)->check(CLI::IsMember({"left", "right"}))->capture_default_str();
  verb.add_option("--shell", o.shell)->capture_default_str();
  verb.add_option("--structure", o.structure, "spill, box")->capture_default_str();
  verb.add_option("--level", o.level)
      ->check(CLI::IsMember({"high_school", "college", "pro"}))
      ->capture_default_str();
  verb.add_option("--down", o.down)->check(CLI::Range(1, 4))->capture_default_str();
  verb.add_option("--distance", o.distance, "yards to a first down")
      ->check(CLI::Range(1.0, 99.0))
      ->capture_default_str();
  verb.add_flag("--json", o.json, "one JSON document on standard output");
}

FilmAxes axesOf(const FilmOptions& o) {
  return {o.line, o.attack == "+x", o.turn == "cw", o.zero == "y", columnNames(o.columns)};
}

}  // namespace gapsound
