#include <doctest/doctest.h>

#include "base/nearest.hpp"

using namespace gapsound;

TEST_CASE("edit distance counts single letters and ignores case") {
  CHECK(editDistance("", "") == 0);
  CHECK(editDistance("power", "Power") == 0);
  CHECK(editDistance("kitten", "sitting") == 3);
  CHECK(editDistance("", "F01") == 3);
}

TEST_CASE("the nearest name comes first, ties in the order given") {
  const std::vector<std::string> known = {"quarters", "cover 1", "cover 2", "2-read"};
  CHECK(nearestNames("quaters", known, 1) == std::vector<std::string>{"quarters"});
  CHECK(nearestNames("cover 9", known, 2) == std::vector<std::string>{"cover 1", "cover 2"});
}

TEST_CASE("short lists are told whole, long ones by their nearest") {
  CHECK(nameHint("x", {"spill", "box"}) == "\"spill\", \"box\"");
  std::vector<std::string> many;
  for (int i = 10; i < 30; ++i) many.push_back("F" + std::to_string(i));
  CHECK(nameHint("F17x", many).find("nearest \"F17\"") == 0);
  CHECK(nameHint("F17x", many).find("(of 20)") != std::string::npos);
}
