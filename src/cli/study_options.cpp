#include "cli/study_options.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <string_view>

namespace gapsound {
namespace {

constexpr std::array<std::string_view, 2> kFlags = {"--resume", "--json"};
constexpr std::array<std::string_view, 9> kValues = {"--jobs", "--checkpoint", "--part", "-o",   "--out",
                                                     "--csv",  "--png",        "--svg",  "--pdf"};

void addFiles(CLI::App& verb, OutputFiles& files) {
  verb.add_option("--csv", files.csv, "table for a spreadsheet");
  verb.add_option("--png", files.png, "picture");
  verb.add_option("--svg", files.svg, "drawing");
  verb.add_option("--pdf", files.pdf, "page");
}

void addSize(CLI::App& verb, ManyOptions& o, int least, const char* words) {
  addJson(verb, o.json);
  verb.add_option("-n", o.n, words)->check(CLI::Range(least, 10000000))->capture_default_str();
  verb.add_option("--jobs", o.jobs, "threads, 0 for all cores")->check(CLI::Range(0, 256));
}

/// All but the file.
void addStudy(CLI::App& verb, ManyOptions& o) {
  addSize(verb, o, 2, "reps of each look, at most that many with --until-width");  // one has no interval
  addFiles(verb, o.files);
  verb.add_flag("--resume", o.resume, "go on where the same command was interrupted");
  verb.add_option("--checkpoint", o.checkpoint,
                  "where the reps are kept meanwhile; a file of the user's state folder");
  verb.add_option("--roster", o.roster, "CSV of the men: id, kg or lb, ten, forty, read_delay, clock");
  auto* out = verb.add_option("-o,--out", o.part_file, "file of the part");
  auto* part = verb.add_option("--part", o.part, "play one part of the study, K/N, for gather");
  part->needs(out);
  out->needs(part);
  addRepeatable(verb, "--gathered", o.gathered, "")->group("");
}

void addUntil(CLI::App& verb, ManyOptions& o, const char* words) {
  verb.add_option("--until-width", o.until_width, words)->check(CLI::Range(0.01, 100.0))->excludes("--part");
}

bool isValueOption(std::string_view word) {
  return std::find(kValues.begin(), kValues.end(), word) != kValues.end();
}

}  // namespace

void addJson(CLI::App& verb, bool& json) {
  verb.add_flag("--json", json, "one JSON document on standard output");
}

CLI::Option* addRepeatable(CLI::App& verb, const char* name, std::vector<std::string>& into,
                           const char* words) {
  return verb.add_option(name, into, words)
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void addPlay(CLI::App& verb, PlayOptions& options) {
  verb.add_option("file", options.file, "scenario file")->required();
  addRepeatable(verb, "--set", options.changes.sets, "change one value, PATH=VALUE (repeatable)");
  addRepeatable(verb, "--fault", options.changes.faults,
                "lay a fault on a man, MAN=KIND[:AMOUNT] (repeatable)");
  verb.add_option("--model", options.model, "another file of model constants");
  verb.add_option("--seed", options.seed, "first seed")->capture_default_str();
}

void addMany(CLI::App& verb, ManyOptions& o) {
  addPlay(verb, o);
  addSize(verb, o, 1, "reps");
}

void addReps(CLI::App& verb, ManyOptions& o) {
  addPlay(verb, o);
  addStudy(verb, o);
  addUntil(verb, o, "stop once the mean's interval at 95 % is no wider than so many yards");
}

void addVary(CLI::App& verb, VaryOptions& o) {
  o.n = 200;
  addPlay(verb, o);
  addStudy(verb, o);
  addUntil(verb, o, "stop once every value is told from the best one to so many yards");
  addRepeatable(verb, "--over", o.over, "setting to sweep, PATH=LO:HI:STEP; twice for a map")->required();
  addRepeatable(verb, "--limit", o.limits,
                "what counts as broken: MEASURE=VALUE, or =+VALUE and =-VALUE against the best (repeatable)");
}

void addVersus(CLI::App& verb, VersusOptions& o) {
  addPlay(verb, o);
  addStudy(verb, o);
  addUntil(verb, o, "stop once the difference's interval at 95 % is no wider than so many yards");
  verb.add_option("other", o.other, "second scenario; without it the first one on both sides");
  addRepeatable(verb, "--a", o.a, "change the first side, PATH=VALUE (repeatable)");
  addRepeatable(verb, "--b", o.b, "change the second side, PATH=VALUE (repeatable)");
}

void addFaults(CLI::App& verb, FaultsOptions& o) {
  o.n = 200;
  addPlay(verb, o);
  addStudy(verb, o);
  verb.add_flag("--pairs", o.pairs, "two mistakes at once, of the ten that cost most");
  verb.add_flag("--blockers", o.blockers, "mistakes of the offense, too");
}

void addMatrix(CLI::App& verb, MatrixOptions& o) {
  o.n = 200;
  addPlay(verb, o);
  verb.get_option("file")->required(false)->description("plan, or scenario whose names are changed");
  addStudy(verb, o);
  const auto list = [&](const char* name, std::vector<std::string>& into, const char* words) {
    verb.add_option(name, into, words)
        ->delimiter(',')
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  };
  list("--formations", o.formations, "names, commas between them");
  list("--fronts", o.fronts, "names, commas between them");
  list("--schemes", o.schemes, "names, commas between them");
  list("--variants", o.variants, "names, or all; those a scheme does not have are left out");
  list("--shells", o.shells, "names, commas between them");
  list("--structures", o.structures, "spill, box");
  verb.add_option("--direction", o.direction, "left, right")->capture_default_str();
  verb.add_option("--level", o.level, "high_school, college, pro");
}

void addGather(CLI::App& verb, GatherOptions& o) {
  verb.add_option("parts", o.parts, "files that --part wrote")->required();
  addJson(verb, o.json);
  addFiles(verb, o.files);
}

std::vector<std::string> callOf(int argc, char** argv) {
  std::vector<std::string> call;
  for (int k = 1; k < argc; ++k) {
    const std::string_view word = argv[k];
    const auto name = word.substr(0, word.find('='));
    if (std::find(kFlags.begin(), kFlags.end(), word) != kFlags.end()) continue;
    const bool glued = word.size() > 2 && word.substr(0, 2) == "-o";
    if (glued || (word != name && isValueOption(name))) continue;
    if (isValueOption(word)) {
      ++k;
      continue;
    }
    call.emplace_back(word);
  }
  return call;
}

}  // namespace gapsound
