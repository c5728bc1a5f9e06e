#include "scenario/fitting.hpp"

#include <algorithm>

namespace gapsound {
namespace {

constexpr double kAttached = 2.5;  // yd outside the last blocker: an end or wing

double magnitude(double x) { return x < 0 ? -x : x; }

class Fitting {
 public:
  Fitting(const Look& look, const Shell& shell) : look_(look), shell_(shell), shape_(shapeOf(look.offense)) {}

  std::array<FitJob, kMen - kOffense> run() {
    for (int man = kOffense; man < kMen; ++man) describe(man);
    assign(+1);
    assign(-1);
    return jobs_;
  }

 private:
  FitJob& job(int man) { return jobs_[static_cast<std::size_t>(man - kOffense)]; }
  const Defender& at(int man) const { return defenderOf(look_, man); }
  FitRole& role(int man, int side) { return side > 0 ? job(man).if_right : job(man).if_left; }

  void describe(int man);
  void assign(int side);
  void assignBackers(const Counts& counts, int side);
  void assignSecondary(const Counts& counts, int side);
  void nameForce(int man, int side);
  void giveAlleyOf(int force, int side);
  int forceOn(const Counts& counts, int side) const;
  int toldToForce(int side) const;
  int hasEndInMan(const Counts& counts, int side) const;
  bool staysWithTwins(int man) const;
  int overhangOn(const Counts& counts, int side) const;
  int cornerOn(int side, bool nub_only) const;
  int safetyToward(int side) const;
  bool hasMiddle() const;
  bool rolledOn(int man, int side) const;
  bool coversSlot(int man) const;
  int keyOf(int man) const;
  int nearestOf(const std::vector<int>& men, double x) const;
  std::vector<int> lineMen() const;
  int guardOn(int side) const;
  int endOrSecond(int side) const;

  const Look& look_;
  const Shell& shell_;
  LineShape shape_;
  std::array<FitJob, kMen - kOffense> jobs_{};
};

void Fitting::describe(int man) {
  FitJob& j = job(man);
  const Defender& defender = at(man);
  const bool moves = !defender.moved_gap.empty();
  const double own_x = gapCentre(shape_, defender.gap, defender.spot);
  const double new_x = moves ? gapCentre(shape_, defender.moved_gap, defender.spot) : own_x;
  j.level = defender.level;
  j.gap = moves ? defender.moved_gap : defender.gap;
  j.gap_x = j.level == 1 ? own_x : new_x;
  j.slant_x = new_x - j.gap_x;
  j.key = keyOf(man);
  j.man_on = defender.man_on;
  j.sent_back = defender.sent_back;
  j.fires = defender.fires;
}

void Fitting::assign(int side) {
  Counts counts = countsOf(look_, shape_, side);
  const int told = toldToForce(side);
  counts.backers.erase(std::remove(counts.backers.begin(), counts.backers.end(), told), counts.backers.end());
  for (int man = kOffense; man < kMen; ++man) {
    role(man, side) = FitRole::out;
    if (isZoneCorner(at(man))) role(man, side) = FitRole::corner;
    if (at(man).level == 1) role(man, side) = FitRole::interior;
  }
  if (counts.back_edge != kNobody) role(counts.back_edge, side) = FitRole::back_edge;
  if (counts.edge != kNobody) role(counts.edge, side) = FitRole::edge;
  assignBackers(counts, side);
  assignSecondary(counts, side);
}

void Fitting::assignBackers(const Counts& counts, int side) {
  const std::size_t n = counts.backers.size();
  for (std::size_t i = 0; i < n; ++i) {
    role(counts.backers[i], side) = i == 0       ? FitRole::first_backer
                                    : i + 1 == n ? FitRole::overlap_backer
                                                 : FitRole::fill_backer;
  }
}

/// Alley is the safety who comes down on the play side, force the man who sets the edge outside him, cutback
/// whoever stays behind: the far safety of two, a rolled one away from the run, an overhang with nobody to
/// cover.
void Fitting::assignSecondary(const Counts& counts, int side) {
  const int near = safetyToward(side), far = safetyToward(-side);
  const int force = forceOn(counts, side);
  if (near != kNobody && near != far) {
    role(far, side) = FitRole::cutback;
    role(near, side) = FitRole::alley;
  } else if (near != kNobody) {
    role(near, side) = FitRole::alley;
  }
  if (hasMiddle() && near != kNobody && near != far) {
    const int middle = at(near).middle ? near : far, other = middle == near ? far : near;
    role(middle, side) = FitRole::alley;
    role(other, side) = FitRole::cutback;
    if (!at(other).rolled && side * at(other).spot.x > 0) role(other, side) = FitRole::alley;
    if (at(other).rolled && side * at(other).spot.x > 0 && other != force) {
      role(other, side) = FitRole::alley;
      role(middle, side) = FitRole::cutback;
    }
  }
  if (far != kNobody && role(far, side) == FitRole::cutback && staysWithTwins(far))
    role(far, side) = FitRole::out;
  for (int man = kOffense; man < kMen; ++man) {
    const bool behind = isOverhang(at(man)) && role(man, side) == FitRole::out && side * at(man).spot.x < 0;
    if (behind && !coversSlot(man)) role(man, side) = FitRole::cutback;
  }
  if (force == kNobody) return;
  if (role(force, side) == FitRole::alley) giveAlleyOf(force, side);
  role(force, side) = FitRole::force;
  const bool backer = at(force).level == 2 && at(force).force;
  if (backer || at(force).rule == PlaceRule::corner) nameForce(force, side);
}

/// The alley of a safety who is called to force is the overhang's inside him, where there is one.
void Fitting::giveAlleyOf(int force, int side) {
  for (int man = kOffense; man < kMen; ++man) {
    if (at(man).force || !at(force).force || !isOverhang(at(man)) || side * at(man).spot.x <= 0) continue;
    if (role(man, side) == FitRole::out && at(man).man_on == kNobody) role(man, side) = FitRole::alley;
  }
}

/// A corner or backer who is force is called so; the others have it in their front's call.
void Fitting::nameForce(int man, int side) {
  job(man).gap = side > 0 ? "force+" : "force-";
  job(man).gap_x = gapCentre(shape_, job(man).gap, at(man).spot);
}

int Fitting::overhangOn(const Counts& counts, int side) const {
  int best = kNobody;
  for (int man = kOffense; man < kMen; ++man) {
    if (isOverhang(at(man)) && !counts.hasBacker(man) && at(man).level == 2 && side * at(man).spot.x > 0 &&
        at(man).man_on == kNobody) {
      best = man;
    }
  }
  return best;
}

int Fitting::cornerOn(int side, bool nub_only) const {
  for (int man = kOffense; man < kMen; ++man) {
    if (isZoneCorner(at(man)) && side * at(man).spot.x > 0 && (at(man).nub || !nub_only)) return man;
  }
  return kNobody;
}

bool Fitting::rolledOn(int man, int side) const { return at(man).rolled && side * at(man).spot.x > 0; }

int Fitting::toldToForce(int side) const {
  for (int man = kOffense; man < kMen; ++man) {
    if (at(man).force && side * at(man).spot.x > 0) return man;
  }
  return kNobody;
}

int Fitting::forceOn(const Counts& counts, int side) const {
  if (const int told = toldToForce(side); told != kNobody) return told;
  for (const ForceWho who : shell_.force) {
    int man = kNobody;
    switch (who) {
      case ForceWho::overhang:
        man = overhangOn(counts, side);
        break;
      case ForceWho::corner:
        man = cornerOn(side, false);
        break;
      case ForceWho::nub_corner:
        man = cornerOn(side, true);
        break;
      case ForceWho::rolled:
        for (int i = kOffense; i < kMen; ++i) man = rolledOn(i, side) ? i : man;
        break;
    }
    if (man != kNobody) return man;
  }
  return hasEndInMan(counts, side);
}

/// The man who has the end or wing of that side and stands outside him: when he blocks, the run is his.
int Fitting::hasEndInMan(const Counts& counts, int side) const {
  for (int man = kOffense; man < kMen; ++man) {
    const Defender& defender = at(man);
    if (defender.level == 1 || defender.man_on == kNobody || counts.hasBacker(man)) continue;
    const double x = side * attackerOf(look_, defender.man_on).spot.x;
    if (x > 0.0 && x < side * shape_.lastX(side) + kAttached && side * defender.spot.x > x) return man;
  }
  return kNobody;
}

/// Two receivers on his side and a nub on the other: the second of them is his, the run is not.
bool Fitting::staysWithTwins(int man) const {
  const int side = at(man).spot.x < shape_.middle_x ? -1 : +1;
  const bool high = !at(man).rolled && !at(man).middle;
  return shell_.owns_twins && high && splitOut(look_, shape_, side).size() >= 2 &&
         splitOut(look_, shape_, -side).empty();
}

int Fitting::safetyToward(int side) const {
  int best = kNobody;
  for (int man = kOffense; man < kMen; ++man) {
    if (at(man).rule != PlaceRule::safety) continue;
    if (best == kNobody || side * at(man).spot.x > side * at(best).spot.x) best = man;
  }
  return best;
}

bool Fitting::hasMiddle() const {
  return std::any_of(look_.defense.begin(), look_.defense.end(),
                     [](const Defender& man) { return man.middle; });
}

bool Fitting::coversSlot(int man) const {
  const int side = at(man).spot.x < 0 ? -1 : +1;
  constexpr double kSlotNear = 6.0;
  const auto receivers = splitOut(look_, shape_, side);
  return !receivers.empty() &&
         magnitude(attackerOf(look_, receivers.back()).spot.x - at(man).spot.x) < kSlotNear;
}

std::vector<int> Fitting::lineMen() const {
  std::vector<int> men = shape_.left;
  men.push_back(shape_.middle);
  men.insert(men.end(), shape_.right.begin(), shape_.right.end());
  return men;
}

int Fitting::nearestOf(const std::vector<int>& men, double x) const {
  int best = kNobody;
  for (const int man : men) {
    const double off = magnitude(attackerOf(look_, man).spot.x - x);
    if (best == kNobody || off < magnitude(attackerOf(look_, best).spot.x - x) - 1e-9) best = man;
  }
  return best;
}

int Fitting::guardOn(int side) const { return shape_.men(side).front(); }

/// A safety's key: the tight end, else the second receiver, else the tackle on his side.
int Fitting::endOrSecond(int side) const {
  if (shape_.hasEnd(side)) return shape_.men(side)[2];
  const auto receivers = splitOut(look_, shape_, side);
  return receivers.size() > 1 ? receivers[1] : shape_.men(side)[1];
}

int Fitting::keyOf(int man) const {
  const Defender& defender = at(man);
  const double x = defender.spot.x;
  const int side = x < shape_.middle_x - 1e-9 ? -1 : +1;
  if (defender.man_on != kNobody) return defender.man_on;
  if (defender.guard != 0) return guardOn(defender.guard);
  if (defender.level == 1) return nearestOf(lineMen(), x);
  if (defender.rule == PlaceRule::corner) {
    const auto receivers = splitOut(look_, shape_, side);
    return receivers.empty() ? endOrSecond(side) : receivers.front();
  }
  if (defender.level == 3) return endOrSecond(side);
  if (isOverhang(defender)) return shape_.men(side).back();
  return isOutsideBacker(shape_, x) ? nearestOf(lineMen(), x) : guardOn(side);
}

}  // namespace

std::array<FitJob, kMen - kOffense> fittingOf(const Look& look, const Shell& shell) {
  return Fitting(look, shell).run();
}

}  // namespace gapsound
