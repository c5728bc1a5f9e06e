#pragma once
#include <algorithm>
#include <cstdint>
#include <vector>

#include "../sim/looks.hpp"
#include "base/tick.hpp"

/// Every shipped look at pro level, a few reps each, played once for all cases of a program.
namespace gapsound::played {

struct Look {
  Setup setup;
  std::vector<Record> reps;
};

inline const std::vector<Look>& looks() {
  constexpr std::uint64_t kReps = 12;
  static const std::vector<Look> all = [] {
    std::vector<Look> found;
    for (const std::string& name : gapsound::looks::names()) {
      Look look{gapsound::looks::setupOf(name, {"level=pro"}), {}};
      for (std::uint64_t seed = 1; seed <= kReps; ++seed)
        look.reps.push_back(play(look.setup, gapsound::looks::model(), seed));
      found.push_back(std::move(look));
    }
    return found;
  }();
  return all;
}

constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Order statistic at `share` of a sample that is not empty.
inline double quantile(std::vector<double> x, double share) {
  std::sort(x.begin(), x.end());
  return x.at(static_cast<std::size_t>(share * static_cast<double>(x.size() - 1)));
}

/// First tick of `record` from which the man is faster than `speed`; -1 when never.
inline int firstFaster(const Record& record, int man, double speed) {
  for (int k = 0; k < static_cast<int>(record.frames.size()); ++k)
    if (length(record.frames[at(k)].men[at(man)].vel) > speed) return k;
  return -1;
}

}  // namespace gapsound::played
