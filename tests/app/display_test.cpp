#include <doctest/doctest.h>

#include <cstdlib>
#include <string>

#include "app/window.hpp"
#include "base/error.hpp"
#include "painters/window/display.hpp"

using namespace gapsound;

TEST_CASE("without a display there is one line and the exit code of a thing out of reach") {
  const char* set = std::getenv("DISPLAY");
  const std::string kept = set == nullptr ? "" : set;
  unsetenv("DISPLAY");
  OpenOptions options;
  options.file = std::string(GAPSOUND_ROOT) + "/scenarios/counter-right-guard-and-h.json";
  try {
    static_cast<void>(openWindow(options));
    FAIL("a window without a display");
  } catch (const Error& error) {
    CHECK(error.code() == ExitCode::noAccess);
    CHECK(std::string(error.what()).find("display") != std::string::npos);
    CHECK(std::string(error.what()).find('\n') == std::string::npos);
  }
  options.file = "/no/such/file.json";
  CHECK_THROWS_WITH_AS(static_cast<void>(openWindow(options)), doctest::Contains("/no/such/file.json"),
                       Error);
  if (set != nullptr) setenv("DISPLAY", kept.c_str(), 1);
}
