#pragma once
#include <cstdint>
#include <string_view>

namespace gapsound {

/// 64-bit FNV-1a of a text, then mixed: a stable key for names.
[[nodiscard]] std::uint64_t keyOf(std::string_view text);
/// Three-round mix of two words; every bit of the input reaches every bit of the output.
[[nodiscard]] std::uint64_t mixed(std::uint64_t a, std::uint64_t b);

/// A random stream owned by (seed, man, purpose). Two streams never share draws, so changing
/// one man's setting moves nobody else's luck. Draws are the same bits on every machine.
class Stream {
 public:
  Stream(std::uint64_t seed, std::uint64_t man, std::string_view purpose);
  std::uint64_t bits();
  /// Uniform in [0, 1).
  double unit();
  /// Mean 0, standard deviation 1, within +-6: the sum of twelve uniforms less six.
  double normal();
  /// True with probability p; always draws once, so later draws do not depend on p.
  bool chance(double p);

 private:
  std::uint64_t state_;
};

}  // namespace gapsound
