#include "io/library_parts.hpp"

namespace gapsound {
namespace {

using Who = CheckStep::Who;
using Place = CheckStep::Place;

constexpr std::pair<const char*, Who> kWho[] = {
    {"near_safety", Who::near_safety}, {"far_safety", Who::far_safety},
    {"near_corner", Who::near_corner}, {"far_corner", Who::far_corner},
    {"near_edge", Who::near_edge},     {"overhang", Who::overhang},
    {"backers", Who::backers},         {"box", Who::box}};
constexpr std::pair<const char*, Place> kPlaces[] = {
    {"stay", Place::stay}, {"edge", Place::edge},   {"outside", Place::outside}, {"middle", Place::middle},
    {"slot", Place::slot}, {"split", Place::split}, {"nine", Place::nine},       {"center", Place::center}};
constexpr std::pair<const char*, Check::Against> kAgainst[] = {{"nub", Check::Against::nub},
                                                               {"trips", Check::Against::trips},
                                                               {"unbalanced", Check::Against::unbalanced}};

void readMix(JsonReader mix, CallHabits& habits) {
  habits.line_spread_yd = mix.number("line_spread_yd", 0.0, 2.0);
  habits.backer_spread_yd = mix.number("backer_spread_yd", 0.0, 2.0);
  habits.back_spread_yd = mix.number("back_spread_yd", 0.0, 3.0);
  habits.slant_share = mix.number("slant_share", 0.0, 1.0);
  habits.shoot_share = mix.number("shoot_share", 0.0, 1.0);
  mix.finish();
}

void readFlight(JsonReader flight, CallHabits& habits) {
  habits.gun_flight_s = flight.number("gun", 0.0, 1.0);
  habits.pistol_flight_s = flight.number("pistol", 0.0, 1.0);
  flight.finish();
}

void readDepths(JsonReader depth, CallHabits& habits) {
  JsonReader brief = depth.child("short_yardage"), gun = depth.child("gun_without_end");
  habits.short_distance = brief.number("distance", 0.0, 10.0);
  habits.short_to_goal = brief.number("to_goal", 0.0, 20.0);
  habits.short_backer_y = brief.number("y", 1.6, 6.0);
  habits.gun_backer_y = gun.number("y", 1.6, 7.0);
  brief.finish();
  gun.finish();
  depth.finish();
}

CheckStep readStep(JsonReader value) {
  CheckStep step;
  step.who = choice(value.child("who"), kWho);
  if (const auto place = value.maybeChild("place")) step.place = choice(*place, kPlaces);
  step.y = value.maybeNumber("y", 0.6, 25.0).value_or(0.0);
  step.by_yd = value.maybeNumber("by_yd", -3.0, 3.0).value_or(0.0);
  step.rolled = value.maybeFlag("rolled").value_or(false);
  step.middle = value.maybeFlag("middle").value_or(false);
  step.force = value.maybeFlag("force").value_or(false);
  step.fires = value.maybeFlag("fires").value_or(false);
  value.finish();
  return step;
}

Check readCheck(JsonReader value) {
  Check check;
  check.name = value.text("name");
  if (const auto aliases = value.maybeChild("aliases")) check.aliases = aliases->texts();
  check.against = choice(value.child("against"), kAgainst);
  check.front_to_it = value.maybeFlag("front_to_it").value_or(false);
  for (const JsonReader& step : value.child("steps").items()) check.steps.push_back(readStep(step));
  check.cost = value.text("cost");
  value.finish();
  return check;
}

}  // namespace

void readCalls(JsonReader file, Library& library) {
  readMix(file.child("mix"), library.habits);
  readFlight(file.child("snap_flight_s"), library.habits);
  readDepths(file.child("backer_depth"), library.habits);
  for (const JsonReader& check : file.child("checks").items()) library.checks.push_back(readCheck(check));
  file.finish();
}

}  // namespace gapsound
