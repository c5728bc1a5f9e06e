#pragma once
#include <map>
#include <string>
#include <vector>

#include "study/effects.hpp"
#include "study/played_looks.hpp"

namespace gapsound {

struct Library;

/// Plays every distinct side of the effects once. Borrows library and model.
class EffectSides {
 public:
  /// Reps from `first_seed` on, on `threads` threads (0: all cores).
  EffectSides(const Library& library, const Model& model, std::uint64_t first_seed = 1, int threads = 0,
              Progress progress = {});
  /// Keys are those of effectLooks(); throws std::out_of_range for another.
  [[nodiscard]] const EffectLook& look(const std::string& key) const { return bases_.at(key).look; }
  [[nodiscard]] const Setup& resolved(const std::string& key) const { return bases_.at(key).setup; }
  [[nodiscard]] Scenario side(const std::string& key, const std::vector<Turn>& turns) const;
  /// At least n reps of the look with the turns on it, in seed order.
  const std::vector<Summary>& reps(const std::string& key, const std::vector<Turn>& turns, int n);
  /// The effect judged on its own number of reps a side, or fewer where these settle it.
  EffectResult judged(const Effect& effect);

 private:
  struct Base {
    EffectLook look;
    Setup setup;
  };
  std::map<std::string, Base> bases_;
  PlayedLooks played_;
};

}  // namespace gapsound
