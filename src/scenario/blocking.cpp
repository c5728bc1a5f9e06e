#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "scenario/blocking_work.hpp"

namespace gapsound {
namespace {

constexpr double kPullsFrom = 3.0;  // a back deeper than this runs straight at his man, yd

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
      {BlockRule::lock_end, BlockKind::base}, {BlockRule::lock_gun, BlockKind::base},
      {BlockRule::arc, BlockKind::arc},       {BlockRule::stalk, BlockKind::stalk}};
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

/// Men for the scheme's parts: the first who is there and has no part yet. Whoever stands in is noted.
void Blocking::giveParts() {
  for (const auto& [part, who] : scheme_.parts) givePart(part, who);
}

void Blocking::givePart(const std::string& part, const std::vector<std::string>& who) {
  for (const std::string& place : who) {
    const int man = manFor(place);
    if (man == kNobody || man == carrier_ || part_of_.contains(man)) continue;
    part_of_[man] = part;
    if (place != who.front()) {
      notes_.push_back(fmt::format("no {}: {} is the {}", who.front(), attackerOf(look_, man).id, part));
    }
    return;
  }
  if (!who.empty())
    notes_.push_back(fmt::format("no {} and nobody to stand in: there is no {}", who.front(), part));
}

void Blocking::reserveMen() {
  for (const Reserve& reserve : scheme_.reserves) {
    const bool void_now = !reserve.part.empty() &&
                          std::none_of(part_of_.begin(), part_of_.end(),
                                       [&](const auto& given) { return given.second == reserve.part; });
    if (void_now) continue;
    if (reserve.who == "b1") {
      reserves_b1_ = true;
    } else {
      reserved_.push_back(targetNamed(reserve.who));
    }
  }
}

/// The man left for a trap, a wham or the quarterback's eyes is not touched by anybody else.
void Blocking::spareLeftMen() {
  const auto left_for_one = [](const Reserve& r) { return r.who == "trap" || r.who == "wham"; };
  const auto found = std::find_if(scheme_.reserves.begin(), scheme_.reserves.end(), left_for_one);
  const int left = scheme_.read                                            ? targetNamed(scheme_.read->who)
                   : found != scheme_.reserves.end() && !reserved_.empty() ? targetNamed(found->who)
                                                                           : kNobody;
  for (BlockJob& j : jobs_) {
    if (j.target != left) j.spares = left;
  }
}

ReadJob Blocking::readOf() const {
  if (!scheme_.read) return {};
  return {targetNamed(scheme_.read->who), scheme_.read->keeps_if_wide, scheme_.read->keep_aim_x};
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
  return receiverPlace(man);
}

/// The innermost receiver split out on a side is PSR or BSR.
std::string Blocking::receiverPlace(int man) const {
  for (const int side : {+1, -1}) {
    const auto men = splitOut(look_, shape_, side);
    if (!men.empty() && men.back() == man) return side > 0 ? "PSR" : "BSR";
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
  if (attackerOf(look_, man).fakes && man != carrier_) return {stepTo(BlockRule::fake, "")};
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
  const bool idle_back = attackerOf(look_, man).group == Group::back && man != carrier_ && !scheme_.read;
  if (idle_back) return {stepTo(BlockRule::fake, "")};
  return {};
}

void Blocking::decide(int man) {
  decided_[index(man)] = true;
  for (const BlockStep& step : stepsFor(man)) {
    if (!apply(man, step)) continue;
    addManner(man, step);
    return;
  }
}

void Blocking::addManner(int man, const BlockStep& step) {
  BlockJob& j = job(man);
  j.show = step.rule == BlockRule::influence ? Show::past : step.show;
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
      return back(man, neighbour(man, -1), -kHeadUp);
    case BlockRule::back_shade:
      return back(man, neighbour(man, -1), kHeadUp);
    case BlockRule::back_far:
      return back(man, neighbour(neighbour(man, -1), -1), kHeadUp);
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
    case BlockRule::fan:
      return fan(man, step);
    case BlockRule::wall:
      return wall(man, step);
    case BlockRule::pull:
      return pullAround(man, step);
    case BlockRule::influence:
      return influence(man, step);
    case BlockRule::squeeze:
      return squeeze(man);
    case BlockRule::wedge:
      return wedge(man);
    case BlockRule::crack:
      return crack(man, step);
    case BlockRule::fake:
      return fake(man);
    case BlockRule::lock_end:
      return endsLine(man) && onMan(man, kindOf(step.rule), step);
    case BlockRule::lock_gun:
      return endsLine(man) && snapSeen(look_) == SnapKind::gun && onMan(man, kindOf(step.rule), step);
    default:
      return onMan(man, kindOf(step.rule), step);
  }
}

/// On the line: the man on me or just outside me on the back side; else the end man there.
int Blocking::behind(int man) const {
  if (!isAttached(shape_, man)) return counts_.back_edge;
  const int near = lineman(x(man) - kLastGap, x(man) + kHeadUp, x(man), true);
  return near == kNobody ? counts_.back_edge : near;
}

bool Blocking::endsLine(int man) const { return neighbour(man, -1) == kNobody; }

bool Blocking::onMan(int man, BlockKind kind, const BlockStep& step) {
  const bool is_behind = kind == BlockKind::hinge || kind == BlockKind::cutoff || kind == BlockKind::base;
  BlockJob& j = job(man);
  j.kind = kind;
  j.target = step.at.empty() && is_behind ? behind(man) : targetNamed(step.at.empty() ? "next" : step.at);
  const bool leads = kind == BlockKind::lead || kind == BlockKind::insert;
  if (leads) climbed_to_.push_back(j.target);
  const bool behind_line = attackerOf(look_, man).spot.y < -kPullsFrom;
  j.pull = behind_line ? PullStyle::none : pullOf(step.pull);
  j.pull_depth = j.pull == PullStyle::none ? 0.0 : step.depth;
  j.delay_s = step.delay_s;
  j.reads_kick = step.reads_kick;
  j.may_log = step.may_log;
  return true;
}

Assignments blockingOf(const Look& look, const Scheme& scheme) { return Blocking(look, scheme).run(); }

}  // namespace gapsound
