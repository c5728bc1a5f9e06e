#pragma once
#include <cstdint>

namespace gapsound {

/// The finaliser of splitmix64 (Steele, Lea & Flood 2014).
[[nodiscard]] constexpr std::uint64_t finished(std::uint64_t z) {
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}
/// What mixed() of base/stream.hpp gives, for loops that call it for every body and tick.
[[nodiscard]] constexpr std::uint64_t mixedInline(std::uint64_t a, std::uint64_t b) {
  return finished(finished(finished(a + 0x9e3779b97f4a7c15ULL) ^ b) + 0x632be59bd9b4e019ULL);
}

}  // namespace gapsound
