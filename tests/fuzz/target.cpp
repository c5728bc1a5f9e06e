// One fuzzer: GAPSOUND_READER names the reader it feeds.
#include <cstddef>
#include <cstdint>

#include "readers.hpp"

// NOLINTNEXTLINE(readability-identifier-naming): libFuzzer's name
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const gapsound::fuzz::Reader reader = gapsound::fuzz::readers().at(GAPSOUND_READER);
  reader({reinterpret_cast<const char*>(data), size});
  return 0;
}
