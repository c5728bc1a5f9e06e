#include <fmt/core.h>

#include <filesystem>
#include <string_view>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

namespace fs = std::filesystem;

std::string titleFor(const NewOptions& o) {
  if (!o.title.empty()) return o.title;
  const std::string variant =
      (o.variant == "base" ? "" : " " + o.variant) + (o.motion.empty() ? "" : " " + o.motion);
  const std::string run = fmt::format("{} {}{} {}", o.formation, o.scheme, variant, o.direction);
  if (!o.defense.empty()) return fmt::format("{} against {}", run, fs::path(o.defense).stem().string());
  return fmt::format("{} against {} {}, {}", run, o.front, o.shell, o.structure);
}

/// "A=fly" as the scenario file has it; null when nobody moves.
Answer motionFor(const std::string& words) {
  const auto at = words.find('=');
  if (at == std::string::npos || at == 0 || at + 1 == words.size())
    throw Error(ExitCode::usage, fmt::format("--motion {}: MAN=KIND is wanted, A=fly", words));
  return {{"player", words.substr(0, at)}, {"kind", words.substr(at + 1)}};
}

/// The call as typed, or the file it is kept in, as seen from the new file's folder.
Answer defenseFor(const NewOptions& o) {
  if (!o.defense.empty())
    return {{"file", fs::proximate(o.defense, fs::absolute(o.out).parent_path()).string()}};
  return {{"front", o.front},
          {"shell", o.shell},
          {"call",
           {{"structure", o.structure},
            {"movement", o.movement},
            {"strength", o.front_strength},
            {"checks", o.checks}}}};
}

/// The document as a user could have typed it, so that it passes the same checks as every file.
Answer documentFor(const NewOptions& o) {
  Answer document = {
      {"gapsound", 1},
      {"title", titleFor(o)},
      {"level", o.level},
      {"field", {{"spot", o.spot}, {"to_goal", o.to_goal}, {"down", o.down}, {"distance", o.distance}}},
      {"offense",
       {{"formation", o.formation},
        {"scheme", o.scheme},
        {"variant", o.variant},
        {"direction", o.direction},
        {"strength", o.strength},
        {"splits", o.splits}}},
      {"defense", defenseFor(o)}};
  if (!o.motion.empty()) document["offense"]["motion"] = motionFor(o.motion);
  return document;
}

}  // namespace

int runNew(const NewOptions& options) {
  if (options.front.empty() && options.defense.empty())
    throw Error(ExitCode::usage, "new: --front or --defense is required");
  requireWritable(options.out);
  const Scenario scenario = parseScenario(documentFor(options).dump(), options.out, options.changes);
  static_cast<void>(resolve(scenario, library(), modelFor("")));
  writeAtomically(options.out, toFile(scenario));
  if (options.json) {
    printAnswer({{"written", options.out}});
  } else {
    fmt::print("{} written: {}\n", options.out, scenario.title);
  }
  return 0;
}

}  // namespace gapsound
