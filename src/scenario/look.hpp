#pragma once
#include <array>
#include <string>
#include <vector>

#include "football/library.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// The other side's name of a man named by side: LT and RT, CR and CL. Other names stay.
[[nodiscard]] std::string otherSide(const std::string& id);
/// "B+" and "B-", also in "alley+/force+".
[[nodiscard]] std::string otherSideGap(const std::string& gap);

struct Attacker {
  std::string id;
  Group group = Group::receiver;
  Vec2 spot;
  bool on_line = false;
  Vec2 vel;            // in motion at the snap, yd/s
  bool fakes = false;  // his motion runs on into a fake
};
struct Defender {
  std::string id;
  Group group = Group::backer;
  int level = 1;
  PlaceRule rule = PlaceRule::line;
  Vec2 spot;
  std::string gap;         // as called
  std::string moved_gap;   // after the called movement; empty: none
  int guard = 0;           // side of the guard a called movement has him read; 0: by his alignment
  bool rolled = false;     // safety brought down by the shell
  bool middle = false;     // the one deep safety
  bool nub = false;        // corner with no receiver on his side
  int man_on = kNobody;    // index of an attacker
  bool sent_back = false;  // left the fit for a shell that wants two high
  bool force = false;      // told to be force on his side, whatever the coverage says
  bool fires = false;      // goes for the mesh at the snap
};
/// 22 men placed, in one frame; attackers are men 0..10 and defenders 11..21 of the Setup to come.
struct Look {
  std::array<Attacker, kOffense> offense;
  std::array<Defender, kMen - kOffense> defense;
};
[[nodiscard]] Look flipped(const Look& look);

/// The blockers on the line as both sides count them: from the middle man outward.
struct LineShape {
  int middle = kNobody;
  std::vector<int> right, left;              // on the line, inside out, then a wing; indices of attackers
  bool right_end = false, left_end = false;  // a third man on the line there
  double middle_x = 0.0;
  std::vector<double> right_x, left_x;  // their x

  [[nodiscard]] const std::vector<double>& xs(int side) const { return side > 0 ? right_x : left_x; }
  [[nodiscard]] const std::vector<int>& men(int side) const { return side > 0 ? right : left; }
  [[nodiscard]] bool hasEnd(int side) const { return side > 0 ? right_end : left_end; }
  [[nodiscard]] double lastX(int side) const { return xs(side).back(); }
};
[[nodiscard]] LineShape shapeOf(const std::array<Attacker, kOffense>& offense);
/// True for a man on the line or a wing; false for receivers split out and for backs.
[[nodiscard]] bool isAttached(const LineShape& shape, int attacker);

/// Centre of a called gap on this line; x of `spot` for calls without a place on the line ("deep", "A+A-").
[[nodiscard]] double gapCentre(const LineShape& shape, const std::string& gap, Vec2 spot);

/// How the ball is snapped, by how deep the quarterback stands; gun without one.
[[nodiscard]] SnapKind snapSeen(const Look& look);

/// Receivers split out on one side, widest first.
[[nodiscard]] std::vector<int> splitOut(const Look& look, const LineShape& shape, int side);

}  // namespace gapsound
