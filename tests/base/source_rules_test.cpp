#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

// A folder includes itself and the folders before it.
const std::vector<std::string> kFolders = {"base",  "athlete", "football", "scenario", "minds",
                                           "sim",   "tape",    "analysis", "study",    "picture",
                                           "teach", "io",      "painters", "cli",      "app"};

struct Source {
  std::string name;    // "sim/play.cpp"
  std::string folder;  // "sim"
  std::string text;    // without comments
};

std::string withoutComments(const std::string& text) {
  return std::regex_replace(text, std::regex("//[^\\n]*|/\\*[^*]*\\*+(?:[^/*][^*]*\\*+)*/"), "");
}

std::string contentOf(const fs::path& file) {
  std::ifstream in(file);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

std::vector<Source> sources() {
  const fs::path root = fs::path(GAPSOUND_ROOT) / "src";
  std::vector<Source> found;
  for (const auto& entry : fs::recursive_directory_iterator(root)) {
    if (!entry.is_regular_file()) continue;
    const auto name = fs::relative(entry.path(), root).generic_string();
    found.push_back({name, name.substr(0, name.find('/')), withoutComments(contentOf(entry.path()))});
  }
  std::sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.name < b.name; });
  return found;
}

std::size_t rankOf(const std::string& folder) {
  return static_cast<std::size_t>(std::find(kFolders.begin(), kFolders.end(), folder) - kFolders.begin());
}

std::vector<std::string> matches(const std::string& text, const std::string& pattern) {
  const std::regex rule(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), rule), end; it != end; ++it) {
    found.push_back(it->size() > 1 ? it->str(1) : it->str());
  }
  return found;
}

void refuse(const Source& source, const std::vector<std::string>& patterns) {
  for (const auto& pattern : patterns) {
    for (const auto& match : matches(source.text, pattern)) {
      FAIL_CHECK(source.name << " has " << match);
    }
  }
}

/// A source with its comments, without what lies in unnamed namespaces, whose names are its own.
std::string sharedPart(const Source& source) {
  std::string text = contentOf(fs::path(GAPSOUND_ROOT) / "src" / source.name);
  const std::string opens = "\nnamespace {\n", closes = "\n}  // namespace\n";
  for (std::size_t from = text.find(opens); from != std::string::npos; from = text.find(opens)) {
    const std::size_t to = text.find(closes, from);
    REQUIRE(to != std::string::npos);
    text.erase(from, to - from + closes.size() - 1);
  }
  return text;
}

}  // namespace

TEST_CASE("every source lies in a known folder") {
  const auto all = sources();
  REQUIRE(all.size() > 40);
  for (const auto& source : all) {
    INFO(source.name);
    CHECK(rankOf(source.folder) < kFolders.size());
  }
}

TEST_CASE("a folder includes only itself and the ones before it") {
  for (const auto& source : sources()) {
    for (const auto& included : matches(source.text, "#include \"([^\"]+)\"")) {
      INFO(source.name << " includes " << included);
      const auto folder = included.substr(0, included.find('/'));
      REQUIRE(rankOf(folder) < kFolders.size());
      const bool is_main = source.name == "cli/main.cpp";  // puts the program together
      CHECK((is_main || rankOf(folder) <= rankOf(source.folder)));
    }
  }
}

TEST_CASE("libraries are used where they belong") {
  struct Rule {
    std::string pattern;
    std::vector<std::string> places;
  };
  const std::vector<Rule> rules = {
      {"#include <box2d/", {"sim/"}},
      {"#include <nlohmann/", {"io/", "cli/"}},
      {"#include <CLI/", {"cli/"}},
      {"#include <cairo|#include <pango/", {"painters/"}},
      {"#include <SFML/", {"painters/window/", "app/"}},
      {"#include <imgui|#include <backends/imgui", {"painters/window/", "app/"}},
  };
  for (const auto& source : sources()) {
    for (const auto& rule : rules) {
      if (matches(source.text, rule.pattern).empty()) continue;
      INFO(source.name << " has " << rule.pattern);
      CHECK(std::any_of(rule.places.begin(), rule.places.end(),
                        [&](const std::string& place) { return source.name.rfind(place, 0) == 0; }));
    }
  }
}

TEST_CASE("nothing in the simulation depends on clock, library or hash order") {
  const std::vector<std::string> everywhere_below_study = {
      "system_clock", "steady_clock", "high_resolution_clock", "random_device",       "\\brand\\(",
      "\\bsrand\\(",  "mt19937",      "_distribution\\b",      "std::unordered_\\w+", "std::hash",
      "std::shuffle", "std::sample"};
  for (const auto& source : sources()) {
    if (rankOf(source.folder) <= rankOf("study")) refuse(source, everywhere_below_study);
  }
}

TEST_CASE("the simulation computes with + - * / and sqrt alone") {
  const std::vector<std::string> functions = {
      "(?:std::|\\b)(?:exp|exp2|expm1|log|log2|log10|log1p|pow|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|"
      "tanh|"
      "cbrt|hypot|erf|tgamma|lgamma|fma)f?\\("};
  for (const auto& source : sources()) {
    if (source.folder == "athlete" || source.folder == "minds" || source.folder == "sim")
      refuse(source, functions);
  }
}

TEST_CASE("the compiler may not reorder arithmetic") {
  const auto lists = contentOf(fs::path(GAPSOUND_ROOT) / "CMakeLists.txt") +
                     contentOf(fs::path(GAPSOUND_ROOT) / "tests/CMakeLists.txt");
  CHECK(lists.find("-ffp-contract=off") != std::string::npos);
  for (const auto* flag : {"-ffast-math", "-Ofast", "-funsafe-math", "-march=native"}) {
    INFO(flag);
    CHECK(lists.find(flag) == std::string::npos);
    for (const auto& source : sources()) CHECK(source.text.find(flag) == std::string::npos);
  }
}

// Two types of one name in one namespace break the rule of one definition, and no linker says so.
TEST_CASE("no two types have one name") {
  std::map<std::string, std::string> places;
  for (const auto& source : sources())
    for (const auto& type :
         matches(sharedPart(source), "\n(?:struct|class|enum class) (\\w+)(?: final)?(?: :[^;\n]*)? \\{")) {
      const auto [other, is_new] = places.emplace(type, source.name);
      const std::string& elsewhere = other->second;
      INFO(type << " in " << source.name << " and in " << elsewhere);
      CHECK(is_new);
    }
  CHECK(places.size() > 200);
}

TEST_CASE("every constant of the model is used by something") {
  std::vector<std::string> constants;
  std::set<std::string> words;
  for (const auto& source : sources()) {
    if (source.name == "base/model.hpp")
      constants = matches(source.text, "X\\((\\w+_\\w+)\\)");
    else
      for (const auto& word : matches(source.text, "\\b([a-z]\\w*_\\w+)")) words.insert(word);
  }
  CHECK(constants.size() > 100);
  for (const auto& constant : constants) {
    INFO(constant);
    CHECK(words.count(constant) == 1);
  }
}

TEST_CASE("files are short enough to read at one sitting") {
  for (const auto& source : sources()) {
    INFO(source.name);
    CHECK(std::count(source.text.begin(), source.text.end(), '\n') < 500);
  }
}
