#pragma once
#include <cstdint>

namespace gapsound {

/// The finaliser of splitmix64 (Steele, Lea & Flood 2014).
[[nodiscard]] constexpr std::uint64_t finished(std::uint64_t z) {
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31);
}

}  // namespace gapsound
