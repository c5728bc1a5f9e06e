#pragma once
#include <string>
#include <vector>

#include "scenario/scenario.hpp"

/// A look of the calibration card: a shipped scenario, or one made from library names that nobody tuned on.
struct CardLook {
  std::string name;
  gapsound::Scenario scenario;
  bool shipped = true;
};

inline CardLook madeLook(const char* formation, const char* front, const char* scheme, const char* direction,
                         const char* structure, const char* shell) {
  CardLook look;
  look.name =
      std::string(formation) + " " + front + " " + scheme + " " + direction + " " + structure + " " + shell;
  look.shipped = false;
  look.scenario.source = look.name;
  look.scenario.title = look.name;
  look.scenario.level = gapsound::Level::pro;
  look.scenario.offense.formation = formation;
  look.scenario.offense.scheme = scheme;
  look.scenario.offense.direction = direction;
  look.scenario.defense.front = front;
  look.scenario.defense.shell = shell;
  look.scenario.defense.structure = structure;
  return look;
}

inline std::vector<CardLook> madeLooks() {
  return {madeLook("F01", "D03", "R01", "right", "spill", "quarters"),
          madeLook("F03", "D01", "R02", "left", "spill", "quarters"),
          madeLook("F07", "D04", "R03", "right", "box", "2-read"),
          madeLook("F10", "D01", "R01", "right", "spill", "cover 3 sky"),
          madeLook("F13", "D06", "R04", "right", "spill", "quarters"),
          madeLook("F10", "D03", "R04", "left", "spill", "cover 1"),
          madeLook("F01", "D03", "R03", "left", "spill", "quarters"),
          madeLook("F03", "D06", "R01", "left", "box", "quarters"),
          madeLook("F07", "D03", "R02", "right", "spill", "cover 3 sky"),
          madeLook("F13", "D03", "R03", "left", "box", "quarters")};
}
