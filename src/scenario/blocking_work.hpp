#pragma once
#include <map>
#include <string>
#include <vector>

#include "scenario/blocking.hpp"

namespace gapsound {

inline constexpr double kHeadUp = 0.25;  // |x| between two noses that counts as head-up, yd
inline constexpr double kInside = 0.20;  // a man less far inside my nose is not in my inside gap, yd
inline constexpr double kOnMe = 0.80;    // nearest man still mine to block one on one, yd
inline constexpr double kLastGap = 1.3;  // width of the gap outside the last man, yd

inline double magnitude(double x) { return x < 0 ? -x : x; }

/// Works the eleven jobs out, outside in: first every man's rule, then who climbs to whom.
/// Borrows look and scheme; used once.
class Blocking {
 public:
  Blocking(const Look& look, const Scheme& scheme)
      : look_(look),
        scheme_(scheme),
        shape_(shapeOf(look.offense)),
        counts_(countsOf(look, shape_, +1)),
        carrier_(carrierOf(look, scheme)) {}

  Assignments run() {
    giveParts();
    reserveMen();
    for (const int man : outsideIn()) decide(man);
    for (int man = 0; man < kOffense; ++man) {
      if (!decided_[index(man)]) decide(man);
    }
    sendClimbers();
    stalkReceivers();
    spareLeftMen();
    return {jobs_, readOf(), notes_};
  }

 private:
  struct Climber {
    int man = kNobody;
    std::string at;
    bool of_double = false;
  };
  static std::size_t index(int man) { return static_cast<std::size_t>(man); }
  BlockJob& job(int man) { return jobs_[index(man)]; }
  double x(int man) const {
    return man < kOffense ? attackerOf(look_, man).spot.x : defenderOf(look_, man).spot.x;
  }

  void giveParts();
  void givePart(const std::string& part, const std::vector<std::string>& who);
  void reserveMen();
  void spareLeftMen();
  ReadJob readOf() const;
  int manFor(const std::string& place) const;
  std::string placeOf(int man) const;
  std::string receiverPlace(int man) const;
  std::vector<int> outsideIn() const;
  int neighbour(int man, int toward) const;
  BlockSteps stepsFor(int man) const;
  void decide(int man);
  bool apply(int man, const BlockStep& step);

  bool down(int man);
  bool post(int man);
  bool base(int man);
  bool back(int man, int neighbour_there, double from_nose);
  bool cover(int man);
  bool comboOut(int man);
  bool comboIn(int man);
  bool comboBack(int man);
  bool scoop(int man);
  bool climb(int man, const BlockStep& step);
  bool fan(int man, const BlockStep& step);
  bool wall(int man, const BlockStep& step);
  bool pullAround(int man, const BlockStep& step);
  bool influence(int man, const BlockStep& step);
  bool squeeze(int man);
  bool wedge(int man);
  bool crack(int man, const BlockStep& step);
  bool fake(int man);
  bool onMan(int man, BlockKind kind, const BlockStep& step);
  int behind(int man) const;
  bool endsLine(int man) const;
  int helper(int man) const;
  void addManner(int man, const BlockStep& step);
  void pair(int stays, int leaves, int target);

  int lineman(double from, double to, double nearest_to, bool free_only) const;
  bool reserved(int defender) const;
  bool blocked(int defender) const;
  int targetNamed(const std::string& at) const;
  int trappedMan() const;
  int whammedMan() const;
  int forceSeen() const;
  int alleySeen() const;
  int backForceSeen() const;
  int backSafety() const;
  int cutoffSafety(int man) const;
  void sendClimbers();
  void spareOutermost();
  void settlePartners();
  void followUp();
  int climbTarget(const Climber& climber) const;
  int nextBacker() const;
  int stalked(int man, int side, bool free_only) const;
  void stalkReceivers();

  const Look& look_;
  const Scheme& scheme_;
  LineShape shape_;
  Counts counts_;
  int carrier_;
  std::array<BlockJob, kOffense> jobs_{};
  std::array<bool, kOffense> decided_{};
  std::map<int, std::string> part_of_;
  std::vector<Climber> climbers_;
  std::vector<int> climbed_to_;  // men of the second level somebody goes to
  std::vector<int> reserved_;    // linemen nobody but their own man may take
  bool reserves_b1_ = false;
  int around_ = 0;  // pullers sent around the edge so far
  std::vector<std::string> notes_;
};

}  // namespace gapsound
