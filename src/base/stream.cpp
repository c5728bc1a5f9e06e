#include "base/stream.hpp"

#include "base/mix.hpp"

namespace gapsound {

std::uint64_t mixed(std::uint64_t a, std::uint64_t b) {
  return finished(finished(finished(a + 0x9e3779b97f4a7c15ULL) ^ b) + 0x632be59bd9b4e019ULL);
}

std::uint64_t keyOf(std::string_view text) {
  std::uint64_t h = 0xcbf29ce484222325ULL;
  for (const char c : text) h = (h ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
  return finished(h);
}

Stream::Stream(std::uint64_t seed, std::uint64_t man, std::string_view purpose)
    : state_(mixed(mixed(seed, man), keyOf(purpose))) {}

std::uint64_t Stream::bits() {
  state_ += 0x9e3779b97f4a7c15ULL;
  return finished(state_);
}

double Stream::unit() { return static_cast<double>(bits() >> 11) * 0x1.0p-53; }

double Stream::normal() {
  double sum = -6.0;
  for (int k = 0; k < 12; ++k) sum += unit();
  return sum;
}

bool Stream::chance(double p) { return unit() < p; }

}  // namespace gapsound
