#include "base/error.hpp"
#include "io/library_parts.hpp"

namespace gapsound {
namespace {

constexpr const char* kLevels[] = {"high_school", "college", "pro"};

Splits readSplits(JsonReader value) {
  Splits splits;
  splits.guard = value.number("guard", 0.8, 2.2);
  splits.tackle = value.number("tackle", 1.6, 4.4);
  splits.end = value.number("end", 2.4, 6.6);
  splits.line_back = value.number("line_back", 0.0, 1.0);
  splits.back_deeper = value.number("back_deeper", 0.0, 1.0);
  splits.front_y = value.number("front_y", 0.35, 1.5);
  splits.shell_deeper = value.number("shell_deeper", 0.0, 6.0);
  value.finish();
  return splits;
}

LevelKind readLevel(JsonReader value, const char* name) {
  LevelKind level;
  level.name = name;
  level.skill_speed = value.number("skill_speed", 0.5, 1.2);
  level.line_speed = value.number("line_speed", 0.5, 1.2);
  level.brake = value.number("brake", 0.5, 1.2);
  level.read = value.number("read", 0.5, 2.0);
  level.mesh_later_s = value.number("mesh_later_s", -0.5, 0.5);
  level.hash_to_sideline = value.number("hash_to_sideline", 10.0, 26.67);
  level.splits = readSplits(value.child("splits"));
  value.finish();
  return level;
}

SplitCall readSplitCall(JsonReader value) {
  SplitCall call;
  call.name = value.text("name");
  call.guard = value.number("guard", 0.8, 2.2);
  call.tackle = value.number("tackle", 1.6, 4.4);
  call.end = value.number("end", 2.4, 6.6);
  value.finish();
  return call;
}

BodyKind readKind(JsonReader value) {
  BodyKind kind;
  JsonReader mass = value.child("mass_kg");
  for (std::size_t i = 0; i < 3; ++i) kind.mass_kg[i] = mass.number(kLevels[i], 45.0, 190.0);
  mass.finish();
  kind.top_speed = value.number("top_speed", 5.0, 13.0);
  kind.tau = value.number("tau", 0.9, 1.5);
  kind.heavy = value.flag("heavy");
  kind.backpedal = value.number("backpedal", 0.3, 0.8);
  kind.read_delay_s = value.number("read_delay_s", 0.0, 3.0);
  kind.downhill_yps = value.number("downhill_yps", 1.0, 11.0);
  value.finish();
  return kind;
}

Girth readGirth(JsonReader value) {
  Girth girth;
  girth.at_85_kg = value.number("at_85_kg", 10.0, 80.0);
  girth.slope = value.number("per_kg", 0.0, 1.0);
  girth.pads = value.number("pads", 0.0, 20.0);
  value.finish();
  return girth;
}

using Cell = std::pair<const char*, Fit*>;

void readRow(JsonReader value, std::initializer_list<Cell> cells) {
  for (const auto& [key, fit] : cells) {
    const JsonReader cell = value.child(key);
    const auto found = fitNamed(cell.asText());
    if (!found) cell.refuse("a fit: over_top, inside, new_edge, under, tight_double, alley, ...");
    *fit = *found;
  }
  value.finish();
}

void readByEnd(JsonReader value, FitBook& book, std::size_t structure) {
  for (std::size_t i = 0; i < kEndStates; ++i) {
    readRow(value.child(std::string(nameOf(static_cast<EndState>(i)))),
            {{"first", &book.table.first_backer[structure][i]},
             {"fill", &book.table.fill_backer[structure][i]},
             {"overlap", &book.table.overlap_backer[structure][i]},
             {"overlap_behind_fill", &book.overlap_behind_fill[structure][i]}});
  }
  value.finish();
}

void readByBacker(JsonReader value, FitTable& table) {
  for (std::size_t i = 0; i < kBackerStates; ++i) {
    readRow(value.child(std::string(nameOf(static_cast<BackerState>(i)))),
            {{"alley", &table.alley[i]}, {"force", &table.force[i]}, {"cutback", &table.cutback[i]}});
  }
  value.finish();
}

void readByLine(JsonReader value, FitTable& table) {
  for (std::size_t i = 0; i < kLineStates; ++i) {
    readRow(value.child(std::string(nameOf(static_cast<LineState>(i)))),
            {{"first", &table.first_by_line[i]},
             {"fill", &table.fill_by_line[i]},
             {"overlap", &table.overlap_by_line[i]}});
  }
  value.finish();
}

void readByForce(JsonReader value, FitTable& table) {
  for (std::size_t i = 0; i < kForceStates; ++i) {
    readRow(value.child(std::string(nameOf(static_cast<ForceState>(i)))),
            {{"alley", &table.alley_by_force[i]}, {"corner", &table.corner_by_force[i]}});
  }
  value.finish();
}

void readOverlapOver(JsonReader value, FitBook& book) {
  for (const auto structure : {Structure::spill, Structure::box}) {
    JsonReader states = value.child(structure == Structure::spill ? "spill" : "box");
    for (const auto& [word, row] : states.members()) {
      OverlapOver over;
      over.structure = structure;
      const auto end = endStateNamed(word);
      if (!end) row.refuse(word, "a state of the end: spilled, reached, ...");
      over.end = *end;
      readRow(row, {{"first", &over.first}, {"overlap", &over.overlap}});
      book.overlap_over.push_back(over);
    }
  }
  value.finish();
}

}  // namespace

void readBodies(JsonReader file, Library& library) {
  JsonReader levels = file.child("levels");
  for (std::size_t i = 0; i < 3; ++i)
    library.bodies.levels[i] = readLevel(levels.child(kLevels[i]), kLevels[i]);
  levels.finish();
  for (const JsonReader& call : file.child("split_calls").items()) {
    library.bodies.split_calls.push_back(readSplitCall(call));
  }
  JsonReader groups = file.child("groups");
  for (std::size_t i = 0; i < kGroups; ++i) {
    library.bodies.kinds[i] = readKind(groups.child(std::string(nameOf(static_cast<Group>(i)))));
  }
  groups.finish();
  library.bodies.shoulder = readGirth(file.child("shoulder_cm"));
  library.bodies.chest = readGirth(file.child("chest_cm"));
  file.finish();
}

void readFits(JsonReader file, Library& library) {
  JsonReader by_end = file.child("by_end");
  readByEnd(by_end.child("spill"), library.fits, static_cast<std::size_t>(Structure::spill));
  readByEnd(by_end.child("box"), library.fits, static_cast<std::size_t>(Structure::box));
  by_end.finish();
  readByBacker(file.child("by_first_backer"), library.fits.table);
  readByLine(file.child("by_line"), library.fits.table);
  readByForce(file.child("by_force"), library.fits.table);
  readOverlapOver(file.child("overlap_over"), library.fits);
  file.finish();
}

}  // namespace gapsound
