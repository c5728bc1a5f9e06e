#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "base/model.hpp"
#include "scenario/setup.hpp"

namespace gapsound {
struct Library;
}

namespace calibration {

/// What the command line asked for.
struct Options {
  int n = 400;
  int jobs = 0;
  std::uint64_t seed = 1;
  std::string looks = "*";
  std::string scenarios = "scenarios";
  std::string model;
  bool each = false;
  bool markdown = false;
  bool fit = false;
  bool write = false;                  // what the fit found, into the model file
  std::vector<std::string> constants;  // shell patterns of those the fit may move; empty: all estimates
  int evaluations = 150;               // of the fit
  bool effects = false;
  bool drift = false;
  bool sensitivity = false;
  double minutes = 15;  // of the sensitivities
  std::string items;
};

/// Where everything is played from. Borrows all three.
struct Ground {
  const Options& options;
  const gapsound::Library& library;
  const gapsound::Model& model;
};

/// Shows the share done on a terminal; always true.
bool tellProgress(double share);

void printCard(const Ground& ground);
/// Moves constants that are estimates; prints what moved and both halves' cards before and after.
void fitConstants(const Ground& ground, bool n_given);
void printEachLook(const Ground& ground);
void printEffects(const Ground& ground, bool n_given);
void printDrift(const Ground& ground);
void printSensitivity(const Ground& ground, bool n_given);

}  // namespace calibration
