#include <algorithm>
#include <utility>

#include "scenario/blocking_work.hpp"

namespace gapsound {
namespace {

constexpr double kHeadUp = 0.25;     // |x| between two noses that counts as head-up, yd
constexpr double kInside = 0.20;     // a man less far inside my nose is not in my inside gap, yd
constexpr double kShade = 0.62;      // on my shoulder, yd
constexpr double kOnMe = 0.80;       // nearest man still mine to block one on one, yd
constexpr double kEndInside = 0.55;  // zone: how far inside an end man may still be covered, yd
constexpr double kPullsFrom = 3.0;   // a back deeper than this runs straight at his man, yd
constexpr double kLastGap = 1.3;     // width of the gap outside the last man, yd

double magnitude(double x) { return x < 0 ? -x : x; }

BlockStep stepTo(BlockRule rule, const char* at) {
  BlockStep step;
  step.rule = rule;
  step.at = at;
  return step;
}

/// Kind of block of a rule that names its man.
BlockKind kindOf(BlockRule rule) {
  constexpr std::pair<BlockRule, BlockKind> kKinds[] = {
      {BlockRule::kick, BlockKind::kick},     {BlockRule::log, BlockKind::log},
      {BlockRule::wrap, BlockKind::wrap},     {BlockRule::lead, BlockKind::lead},
      {BlockRule::insert, BlockKind::insert}, {BlockRule::hinge, BlockKind::hinge},
      {BlockRule::cutoff, BlockKind::cutoff}, {BlockRule::lock, BlockKind::base},
      {BlockRule::arc, BlockKind::arc},       {BlockRule::fan, BlockKind::fan},
      {BlockRule::wall, BlockKind::wall},     {BlockRule::crack, BlockKind::crack},
      {BlockRule::stalk, BlockKind::stalk}};
  for (const auto& [known, kind] : kKinds) {
    if (known == rule) return kind;
  }
  return BlockKind::none;
}

PullStyle pullOf(const std::string& word) {
  if (word == "open") return PullStyle::open;
  if (word == "skip") return PullStyle::skip;
  return word == "flat" ? PullStyle::flat : PullStyle::none;
}

}  // namespace

/// Men for the scheme's parts: the first who is there and has no part yet.
void Blocking::giveParts() {
  for (const auto& [part, who] : scheme_.parts) {
    for (const std::string& place : who) {
      const int man = manFor(place);
      if (man == kNobody || man == carrier_ || part_of_.contains(man)) continue;
      part_of_[man] = part;
      break;
    }
  }
}

int Blocking::manFor(const std::string& place) const {
  for (int man = 0; man < kOffense; ++man) {
    if (attackerOf(look_, man).id == place || placeOf(man) == place) return man;
  }
  return kNobody;
}

/// Place on the line as the run sees it: PST, BSG, PSTE ...; a wing is PSW or BSW.
std::string Blocking::placeOf(int man) const {
  if (man == shape_.middle) return "C";
  for (const int side : {+1, -1}) {
    const auto& men = shape_.men(side);
    const auto found = std::find(men.begin(), men.end(), man);
    if (found == men.end()) continue;
    const auto at = static_cast<std::size_t>(found - men.begin());
    const char* const names[] = {"G", "T", "TE"};
    const bool wing = at > 2 || (at == 2 && !shape_.hasEnd(side));
    return std::string(side > 0 ? "PS" : "BS") + (wing ? "W" : names[at]);
  }
  return "";
}

std::vector<int> Blocking::outsideIn() const {
  std::vector<int> men(shape_.right.rbegin(), shape_.right.rend());
  men.push_back(shape_.middle);
  men.insert(men.end(), shape_.left.begin(), shape_.left.end());
  return men;
}

/// Next man of the line to the right (+1) or left (-1).
int Blocking::neighbour(int man, int toward) const {
  const auto men = outsideIn();
  const auto at = std::find(men.begin(), men.end(), man);
  if (toward > 0) return at == men.begin() || at == men.end() ? kNobody : *(at - 1);
  return at == men.end() || at + 1 == men.end() ? kNobody : *(at + 1);
}

BlockSteps Blocking::stepsFor(int man) const {
  const auto part = part_of_.find(man);
  const std::string keys[] = {part == part_of_.end() ? "" : part->second, placeOf(man),
                              attackerOf(look_, man).id};
  for (const std::string& key : keys) {
    const auto found = scheme_.jobs.find(key);
    if (!key.empty() && found != scheme_.jobs.end()) return found->second;
  }
  if (placeOf(man) == "PSW") return {stepTo(BlockRule::climb, "force")};
  if (placeOf(man) == "BSW") return {stepTo(BlockRule::cutoff, "")};
  const bool lead = attackerOf(look_, man).id == "F" || attackerOf(look_, man).id == "H";
  if (lead && man != carrier_) return {stepTo(BlockRule::lead, "b2")};
  return {};
}

void Blocking::decide(int man) {
  decided_[index(man)] = true;
  for (const BlockStep& step : stepsFor(man)) {
    if (apply(man, step)) return;
  }
}

bool Blocking::apply(int man, const BlockStep& step) {
  switch (step.rule) {
    case BlockRule::down:
      return down(man);
    case BlockRule::post:
      return post(man);
    case BlockRule::base:
      return base(man);
    case BlockRule::back:
      return back(man, -kHeadUp);
    case BlockRule::back_shade:
      return back(man, kHeadUp);
    case BlockRule::cover:
      return cover(man);
    case BlockRule::combo_out:
      return comboOut(man);
    case BlockRule::combo_in:
      return comboIn(man);
    case BlockRule::combo_back:
      return comboBack(man);
    case BlockRule::scoop:
      return scoop(man);
    case BlockRule::climb:
      return climb(man, step);
    default:
      return onMan(man, kindOf(step.rule), step);
  }
}

bool Blocking::reserved(int defender) const {
  return (scheme_.reserves_edge && defender == counts_.edge) ||
         (scheme_.reserves_back_edge && defender == counts_.back_edge);
}

bool Blocking::blocked(int defender) const {
  return std::any_of(jobs_.begin(), jobs_.end(), [&](const BlockJob& j) { return j.target == defender; });
}

/// The lineman of the defense with x in [from, to] who is nearest to `nearest_to`.
int Blocking::lineman(double from, double to, double nearest_to, bool free_only) const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    const Defender& man = defenderOf(look_, i);
    if (!isOnLine(man) || reserved(i) || man.spot.x < from || man.spot.x > to) continue;
    if (free_only && blocked(i)) continue;
    if (best == kNobody || magnitude(x(i) - nearest_to) < magnitude(x(best) - nearest_to)) best = i;
  }
  return best;
}

bool Blocking::down(int man) {
  const int side = x(man) > x(shape_.middle) ? +1 : -1;
  const int inner = neighbour(man, -side);
  if (inner == kNobody) return false;
  const double a = x(inner) - side * kHeadUp, b = x(man) - side * kInside;
  const int target = lineman(std::min(a, b), std::max(a, b), x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::down;
  job(man).target = target;
  return true;
}

/// Two on one: `stays` is the inside man. Who climbs is settled when the climbs are.
void Blocking::pair(int stays, int leaves, int target) {
  job(stays).partner = leaves;
  job(leaves).partner = stays;
  job(stays).target = job(leaves).target = target;
}

bool Blocking::post(int man) {
  const int outer = neighbour(man, +1);
  if (outer == kNobody || job(outer).kind != BlockKind::down || job(outer).partner != kNobody) return false;
  const int target = job(outer).target;
  const double off = x(target) - x(man);
  if (off < -kHeadUp || off > kShade) return false;
  pair(man, outer, target);
  job(man).kind = BlockKind::post;
  job(outer).kind = BlockKind::drive;
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::base(int man) {
  const int target = lineman(x(man) - kOnMe, x(man) + kOnMe, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::base;
  job(man).target = target;
  return true;
}

/// `from_nose`: how far inside of the next man's nose the defender has to be, yd.
bool Blocking::back(int man, double from_nose) {
  const int neighbour_there = neighbour(man, -1);
  if (neighbour_there == kNobody) return false;
  const int target = lineman(x(neighbour_there) + from_nose, x(man) - kInside, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::back;
  job(man).target = target;
  return true;
}

/// Zone: the man from my nose to my play-side gap is mine.
bool Blocking::cover(int man) {
  const int outer = neighbour(man, +1);
  const double to = outer == kNobody ? x(man) + kLastGap : x(outer) - kInside;
  const double from = x(man) - (outer == kNobody ? kEndInside : kHeadUp);
  const int helper =
      outer != kNobody && job(outer).kind == BlockKind::combo && job(outer).partner == man ? outer : kNobody;
  const int target = helper == kNobody ? lineman(from, to, x(man), true) : job(helper).target;
  if (target == kNobody) return false;
  job(man).target = target;
  job(man).kind = helper != kNobody              ? BlockKind::combo
                  : x(target) > x(man) + kHeadUp ? BlockKind::reach
                                                 : BlockKind::base;
  if (helper == kNobody) return true;
  pair(man, helper, target);
  return true;
}

bool Blocking::comboOut(int man) {
  const int outer = neighbour(man, +1);
  if (outer == kNobody || job(outer).target < kOffense || job(outer).partner != kNobody) return false;
  const int target = job(outer).target;
  if (!isOnLine(defenderOf(look_, target)) || x(target) < x(man)) return false;
  pair(outer, man, target);
  job(man).kind = job(outer).kind = BlockKind::combo;
  job(man).leaves = true;
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::comboIn(int man) {
  const int inner = neighbour(man, -1);
  if (inner == kNobody) return false;
  const int target = lineman(x(inner) - kHeadUp, x(man) - kInside, x(man), true);
  if (target == kNobody) return false;
  job(man) = {BlockKind::combo, target, inner, true};
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::comboBack(int man) {
  const int behind = neighbour(man, -1);
  if (behind == kNobody) return false;
  const int target = lineman(x(man) - kShade, x(man) + kHeadUp, x(man), true);
  if (target == kNobody) return false;
  job(man) = {BlockKind::combo, target, behind, true};
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::scoop(int man) {
  const int outer = neighbour(man, +1);
  if (outer == kNobody) return false;
  const int target = lineman(x(man), x(outer) + kHeadUp, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::scoop;
  job(man).target = target;
  return true;
}

bool Blocking::climb(int man, const BlockStep& step) {
  job(man).kind = BlockKind::climb;
  climbers_.push_back({man, step.at, false});
  return true;
}

bool Blocking::onMan(int man, BlockKind kind, const BlockStep& step) {
  const bool behind = kind == BlockKind::hinge || kind == BlockKind::cutoff || step.rule == BlockRule::lock;
  const std::string at = !step.at.empty() ? step.at : behind ? "back_edge" : "next";
  BlockJob& j = job(man);
  j.kind = kind;
  j.target = targetNamed(at);
  const bool behind_line = attackerOf(look_, man).spot.y < -kPullsFrom;
  j.pull = behind_line ? PullStyle::none : pullOf(step.pull);
  j.pull_depth = j.pull == PullStyle::none ? 0.0 : step.depth;
  j.delay_s = step.delay_s;
  j.reads_kick = step.reads_kick;
  j.may_log = step.may_log;
  return true;
}

std::array<BlockJob, kOffense> blockingOf(const Look& look, const Scheme& scheme) {
  return Blocking(look, scheme).run();
}

}  // namespace gapsound
