#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <string>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

namespace fs = std::filesystem;

const std::string kBuild = fs::path(GAPSOUND_PROGRAM).parent_path().string();

std::string installedIn(const ScratchFolder& folder, const std::string& name) {
  const auto outcome = shell("cmake --install " + quoted(kBuild) + " --prefix " + quoted(folder.path(name)));
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  return folder.path(name);
}

std::string modelIn(const std::string& version) { return version.substr(version.rfind(' ') + 1); }

void checkThatItPlays(const std::string& root) {
  const auto outcome = shell("cd / && " + quoted(root + "/bin/gapsound") + " rep " +
                             quoted(root + "/share/gapsound/scenarios/power-right-spill.json") + " --json");
  INFO(outcome.err);
  CHECK(outcome.code == 0);
  CHECK(outcome.out == run({"rep", shipped("power-right-spill"), "--json"}).out);
}

}  // namespace

TEST_CASE("--version says build, engine and model") {
  const auto version = run({"--version"});
  CHECK(version.code == 0);
  const std::regex form(
      R"(gapsound \d+\.\d+\.\d+ \(\w+ [\d.]+ \w+\), engine [0-9a-f]{8}, model [0-9a-f]{8}\n)");
  CHECK(std::regex_match(version.out, form));
}

TEST_CASE("an installed tree may be moved and finds its own assets") {
  const ScratchFolder folder;
  fs::rename(installedIn(folder, "first"), folder.path("moved to"));
  const std::string root = folder.path("moved to");
  checkThatItPlays(root);
  const std::string program = quoted(root + "/bin/gapsound");
  CHECK(shell(program + " --version").out == run({"--version"}).out);
  std::ofstream(root + "/share/gapsound/assets/model.json", std::ios::app) << '\n';
  const auto other = shell(program + " --version");
  CHECK(other.code == 0);
  CHECK(modelIn(other.out) != modelIn(run({"--version"}).out));  // its own file, not the source tree's
}

TEST_CASE("the Debian package holds a program that runs, and names what it needs") {
  const ScratchFolder folder;
  const auto packed =
      shell("cpack --config " + quoted(kBuild + "/CPackConfig.cmake") + " -B " + quoted(folder.path("out")));
  INFO(packed.err);
  REQUIRE(packed.code == 0);
  const auto unpacked =
      shell("set -e; dpkg-deb -x " + folder.path("out") + "/gapsound_*.deb " + folder.path("root") +
            "; dpkg-deb -f " + folder.path("out") + "/gapsound_*.deb Package Depends");
  INFO(unpacked.err);
  REQUIRE(unpacked.code == 0);
  for (const auto* needed : {"Package: gapsound", "libbox2d", "libcairo2", "libpango", "libfmt9", "libc6",
                             "ffmpeg", "fonts-inter", "fonts-roboto-unhinted"}) {
    INFO(needed);
    CHECK(unpacked.out.find(needed) != std::string::npos);
  }
  const std::string root = folder.path("root/usr");
  checkThatItPlays(root);
  for (const auto* file : {"share/man/man1/gapsound.1.gz", "share/bash-completion/completions/gapsound",
                           "share/doc/gapsound/copyright", "share/gapsound/assets/model.json"}) {
    INFO(file);
    CHECK(fs::is_regular_file(root + "/" + file));
  }
}

TEST_CASE("the manual page is made of the program's own help") {
  const auto page = run({"describe", "man"});
  REQUIRE(page.code == 0);
  for (const auto* verb : {"check", "rep", "vary", "versus", "clip", "week", "open"}) {
    INFO(verb);
    CHECK(page.out.find(std::string(".SS ") + verb + "\n") != std::string::npos);
    const auto help = run({verb, "--help"}).out;
    const std::regex option("(--[a-z][a-z-]*)");
    for (std::sregex_iterator it(help.begin(), help.end(), option), end; it != end; ++it) {
      if (it->str() == "--help" || it->str() == "--help-all") continue;
      CHECK(page.out.find(std::regex_replace(it->str(), std::regex("-"), "\\-")) != std::string::npos);
    }
  }
  const ScratchFolder folder;
  const auto set = shell("groff -man -Tutf8 -ww -z " + quoted(folder.file("gapsound.1", page.out)));
  CHECK(set.code == 0);
  CHECK(set.err.empty());
}

TEST_CASE("bash completes verbs, options, their words and files") {
  const ScratchFolder folder;
  const auto script = folder.file("completion", run({"describe", "bash"}).out);
  const auto completed = [&](const std::string& words, int at) {
    const auto outcome =
        shell("bash -c '. " + script + "; COMP_WORDS=(" + words + "); COMP_CWORD=" + std::to_string(at) +
              "; _gapsound; echo \"${COMPREPLY[*]}\"'");
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    return outcome.out;
  };
  CHECK(completed("gapsound ver", 1) == "versus\n");
  CHECK(completed("gapsound rep a.json --ta", 3) == "--tape\n");
  CHECK(completed("gapsound sheet a.json --paper \"\"", 4) == "letter a4\n");
  CHECK(completed("gapsound rep \"\"", 2) == "\n");  // left to file names
}
