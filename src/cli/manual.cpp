#include "cli/manual.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <string_view>
#include <vector>

#include "base/stream.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"

namespace gapsound {
namespace {

constexpr std::string_view kAfterVerbs =
    ".SH EXIT STATUS\n"
    "0 fine, 2 wrong command line, 3 a file or value that is not allowed, 4 cannot read or write, "
    "5 a fault of the program.\n"
    ".SH ENVIRONMENT\n"
    ".TP\n.B GAPSOUND_ASSETS\nfolder of the library, the constants and the themes, in place of the installed "
    "one\n"
    ".TP\n.B XDG_STATE_HOME\nwhere interrupted studies and unsaved work are kept, else ~/.local/state\n";

std::vector<const CLI::App*> verbsOf(const CLI::App& app) {
  return app.get_subcommands([](const CLI::App* verb) { return !verb->get_group().empty(); });
}

std::vector<const CLI::Option*> optionsOf(const CLI::App& verb) {
  return verb.get_options([&](const CLI::Option* option) {
    return !option->get_group().empty() && option != verb.get_help_ptr() && option != verb.get_help_all_ptr();
  });
}

std::vector<std::string> namesOf(const CLI::Option& option) {
  std::vector<std::string> names;
  for (const std::string& name : option.get_snames()) names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) names.push_back("--" + name);
  return names;
}

/// The words an option may take, from the list CLI11 describes them with: "TEXT:{letter,a4}".
std::vector<std::string> wordsOf(const CLI::Option& option) {
  const std::string type = option.get_type_name();
  const auto open = type.find('{');
  const auto close = type.find('}', open);
  if (open == std::string::npos || close == std::string::npos) return {};
  return CLI::detail::split(type.substr(open + 1, close - open - 1), ',');
}

std::string joined(const std::vector<std::string>& words, const char* between) {
  return CLI::detail::join(words, between);
}

std::string roff(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == '\\')
      safe += "\\e";
    else if (c == '-')
      safe += "\\-";
    else
      safe += c;
  }
  return safe.rfind('.', 0) == 0 || safe.rfind('\'', 0) == 0 ? "\\&" + safe : safe;
}

std::string entry(const CLI::Option& option) {
  const bool positional = !option.nonpositional();
  std::string head = positional ? option.get_name(true) : joined(namesOf(option), ", ");
  if (const auto words = wordsOf(option); !words.empty())
    head += " " + joined(words, "|");
  else if (!positional && option.get_items_expected_max() > 0)
    head += " " + option.get_type_name();
  std::string text = option.get_description();
  if (!option.get_default_str().empty()) text += " [" + option.get_default_str() + "]";
  if (option.get_required()) text += " (needed)";
  return fmt::format(".TP\n.B {}\n{}\n", roff(head), roff(text));
}

std::string completionCase(const CLI::App& verb) {
  std::string names = "--help", values;
  for (const CLI::Option* option : optionsOf(verb)) {
    const auto own = namesOf(*option);
    if (own.empty()) continue;
    names += " " + joined(own, " ");
    if (const auto words = wordsOf(*option); !words.empty())
      values += fmt::format("      {0}:{1}) words='{2}' ;;\n", verb.get_name(),
                            joined(own, ("|" + verb.get_name() + ":").c_str()), joined(words, " "));
  }
  return values + fmt::format("      {}:*) words='{}' ;;\n", verb.get_name(), names);
}

}  // namespace

std::string manualPage(const CLI::App& app) {
  std::string page = fmt::format(".TH GAPSOUND 1 \"\" \"gapsound {}\"\n.SH NAME\ngapsound \\- {}\n",
                                 GAPSOUND_VERSION, roff(app.get_description()));
  page += ".SH SYNOPSIS\n.B gapsound\nVERB [FILE] [options]\n.SH VERBS\n";
  for (const CLI::App* verb : verbsOf(app)) {
    page += fmt::format(".SS {}\n{}\n", roff(verb->get_name()), roff(verb->get_description()));
    for (const CLI::Option* option : optionsOf(*verb)) page += entry(*option);
  }
  return page + std::string(kAfterVerbs);
}

std::string bashCompletion(const CLI::App& app) {
  std::vector<std::string> verbs;
  std::string cases;
  for (const CLI::App* verb : verbsOf(app)) {
    verbs.push_back(verb->get_name());
    cases += completionCase(*verb);
  }
  return fmt::format(
      "_gapsound() {{\n"
      "  local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} words=\n"
      "  if [ \"$COMP_CWORD\" -eq 1 ]; then\n"
      "    words='{}'\n"
      "  else\n"
      "    case \"${{COMP_WORDS[1]}}:$before\" in\n{}"
      "    esac\n"
      "    case \"$word:$words\" in -*) ;; *:-*) words= ;; esac\n"
      "  fi\n"
      "  COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n"
      "}}\n"
      "complete -o default -F _gapsound gapsound\n",
      joined(verbs, " "), cases);
}

std::string versionLine() {
  const std::uint64_t model = keyOf(readWhole(assetPath("model.json")));
  return fmt::format("gapsound {} ({}), engine {}, model {:08x}", GAPSOUND_VERSION, GAPSOUND_BUILD_WORDS,
                     GAPSOUND_ENGINE, model & 0xffffffffU);
}

}  // namespace gapsound
