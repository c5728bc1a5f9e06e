#include "scenario/force_call.hpp"

#include <fmt/format.h>

#include "scenario/counts.hpp"
#include "scenario/names.hpp"

namespace gapsound {
namespace {

/// A safety who is not the middle of the field's.
bool isSafetyOf(const Look&, const Defender& man) { return man.rule == PlaceRule::safety && !man.middle; }

bool isCornerOf(const Look&, const Defender& man) { return isZoneCorner(man); }

/// An overhang, or an outside backer, off the ball.
bool isBackerOf(const Look& look, const Defender& man) {
  if (man.level != 2 || isOnLine(man) || man.man_on != kNobody) return false;
  return isOverhang(man) || isOutsideBacker(shapeOf(look.offense), man.spot.x);
}

using Fits = bool (*)(const Look&, const Defender&);
Fits kindOf(const std::string& word) {
  return word == "safety" ? isSafetyOf : word == "backer" ? isBackerOf : isCornerOf;
}

Defender* outermost(Look& look, int side, Fits fits) {
  Defender* best = nullptr;
  for (Defender& man : look.defense) {
    if (side * man.spot.x <= 0.0 || !fits(look, man)) continue;
    if (best == nullptr || side * man.spot.x > side * best->spot.x) best = &man;
  }
  return best;
}

std::string whoIsThere(Look& look, int side) {
  std::string words = "\"shell\"";
  for (const char* word : {"safety", "backer", "corner"})
    if (outermost(look, side, kindOf(word)) != nullptr) words += std::string(", \"") + word + "\"";
  return words;
}

bool tell(Look& look, int side, const std::string& word) {
  if (word == "shell") return true;
  Defender* man = outermost(look, side, kindOf(word));
  if (man == nullptr) return false;
  for (Defender& other : look.defense)
    if (side * other.spot.x > 0.0) other.force = false;
  return man->force = true;
}

}  // namespace

std::vector<std::string> callForce(Look& look, const Scenario& right, bool turned) {
  const DefensePlan& plan = right.defense;
  const std::string path = "/defense/call/force";
  if (!plan.force_left && !plan.force_right) {
    const bool on_right = tell(look, +1, plan.force), on_left = tell(look, -1, plan.force);
    if (!on_right && !on_left) refuseWord(right, path, plan.force, whoIsThere(look, +1));
    if (on_right && on_left) return {};
    return {fmt::format("no {} to force on the {}: there it is as the shell has it", plan.force,
                        on_left != turned ? "right" : "left")};
  }
  for (const int side : {+1, -1}) {
    const std::string word = (side > 0 ? plan.force_right : plan.force_left).value_or(plan.force);
    if (!tell(look, side, word))
      refuseWord(right, path + ((side > 0) != turned ? "/right" : "/left"), word, whoIsThere(look, side));
  }
  return {};
}

}  // namespace gapsound
