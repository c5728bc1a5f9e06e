#pragma once
#include "study/reps.hpp"
#include "study/tally.hpp"

namespace gapsound {

/// Two looks rep by rep on common random numbers.
struct Versus {
  int n = 0;
  Distribution a, b;
  Paired yards;         // b - a; identical sides: [0, 0] and p 1
  Paired cutback_open;  // b - a, as shares
};

/// Adds pairs up as they come, in constant memory.
class VersusTally {
 public:
  VersusTally(const Situation& a, const Situation& b) : a_(a), b_(b) {}
  /// A rep of the first side, then the rep of the second with the same seed.
  void add(const Summary& rep);
  [[nodiscard]] int pairs() const { return static_cast<int>(yards_.n()); }
  /// At 95 %, of the mean difference.
  [[nodiscard]] Interval interval() const { return yards_.paired().ci; }
  [[nodiscard]] Versus versus() const;

 private:
  void addPair(const Summary& a, const Summary& b);
  Tally a_, b_;
  Moments yards_, windows_;
  Summary waiting_;
  bool waits_ = false;
};

[[nodiscard]] Versus versus(const Setup& a, const Setup& b, const Model& model, std::uint64_t first_seed,
                            int n, int threads = 0, const Progress& progress = {});
[[nodiscard]] Situation situationOf(const Setup& setup);

}  // namespace gapsound
