#include "io/seen_file.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

using namespace gapsound;

namespace {

const Setup& look() {
  static const Setup power =
      resolve(readScenario(std::string(GAPSOUND_ROOT) + "/scenarios/power-right-spill.json"),
              readLibrary(assetPath("")), readModel(assetPath("model.json")));
  return power;
}

std::size_t man(const std::string& id) {
  for (std::size_t k = 0; k < kMen; ++k)
    if (look().men[k].id == id) return k;
  FAIL("no " << id);
  return 0;
}

Seen sawAll(const std::vector<std::string>& texts) {
  Seen seen;
  for (const std::string& text : texts) laySighting(text, look(), seen);
  return seen;
}

std::string refusalOf(const std::string& text) {
  try {
    static_cast<void>(sawAll({text}));
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("what was seen is typed as places and states") {
  const Seen seen = sawAll({"S=3.5,2", "ss.y=7", "SE.x=-4", "end=kicked", "backer=too_wide"});
  CHECK(*seen.men[man("S")].x == 3.5);
  CHECK(*seen.men[man("S")].y == 2.0);
  CHECK_FALSE(seen.men[man("SS")].x);
  CHECK(*seen.men[man("SS")].y == 7.0);
  CHECK(*seen.men[man("SE")].x == -4.0);
  CHECK(seen.end == EndState::kicked);
  CHECK(seen.backer == BackerState::too_wide);
}

TEST_CASE("what cannot have been seen is refused in one line") {
  CHECK(has(refusalOf("S"), "MAN=X,Y"));
  CHECK(has(refusalOf("ZZ.x=3"), "of 22"));
  CHECK(has(refusalOf("S.x=3,5"), "MAN.x=X"));
  CHECK(has(refusalOf("S.x=wide"), "yards, -60 to 60"));
  CHECK(has(refusalOf("S.x=nan"), "yards, -60 to 60"));
  CHECK(has(refusalOf("S.x=90"), "yards, -60 to 60"));
  CHECK(has(refusalOf("end=kikd"), "open, spilled, kicked"));
  for (const char* text : {"S", "ZZ.x=3", "S.x=wide", "end=kikd"})
    CHECK(refusalOf(text).find('\n') == std::string::npos);
}

TEST_CASE("places come from a table, each man once") {
  const std::string file = (std::filesystem::temp_directory_path() / "gapsound-places.csv").string();
  Seen seen;
  std::ofstream(file) << "id,x,y\nS,3.5,2\nSS,,7\n";
  readPlaces(file, look(), seen);
  CHECK(*seen.men[man("S")].x == 3.5);
  CHECK_FALSE(seen.men[man("SS")].x);
  std::ofstream(file) << "id,x,y\nS,3.5,2\nS,3,2\n";
  CHECK_THROWS_WITH_AS(readPlaces(file, look(), seen), doctest::Contains("every man once"), InputError);
  std::ofstream(file) << "id,x,y\nQQ,3.5,2\n";
  CHECK_THROWS_WITH_AS(readPlaces(file, look(), seen), doctest::Contains("line 2"), InputError);
  std::filesystem::remove(file);
}
