#include "cli/program.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <exception>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/film_options.hpp"
#include "cli/manual.hpp"
#include "cli/study_options.hpp"
#include "cli/verbs.hpp"

namespace gapsound {
namespace {

using Verb = std::function<int()>;

int codeOf(ExitCode code) { return static_cast<int>(code); }

void addPicture(CLI::App& verb, PictureOptions& options) {
  addPlay(verb, options);
  addJson(verb, options.json);
  verb.add_option("-o,--out", options.out, "file to write")->required();
  verb.add_option("--title", options.title, "title line in place of the scenario's");
  verb.add_flag("--no-mix", options.no_mix, "without the snap-to-snap variety of the calls");
}

/// The sheet of paper, and our men on it.
void addPaper(CLI::App& verb, HandoutOptions& o) {
  verb.add_option("--paper", o.paper, "letter, a4")
      ->check(CLI::IsMember({"letter", "a4"}))
      ->capture_default_str();
  verb.add_option("--roster", o.roster,
                  "your men, CSV: id, number, name, kg or lb, ten, forty, read_delay, clock");
  verb.add_flag("--names", o.names, "the roster's names as well as its numbers");
}

void addHandout(CLI::App& verb, HandoutOptions& o) {
  addMany(verb, o);
  verb.get_option("file")->description("scenario or plan file");
  verb.add_option("-o,--out", o.out, "file to write")->required();
  verb.add_option("--schemes", o.schemes, "runs to show a scenario's front against")->delimiter(',');
  addPaper(verb, o);
  addRepeatable(verb, "--runs", o.runs, "one of a plan's runs, by name (repeatable)");
  addRepeatable(verb, "--calls", o.calls, "one of a plan's calls, by name (repeatable)");
}

/// Keeps the options of every verb alive until the chosen one runs.
struct Verbs {
  CheckOptions check;
  ListOptions list;
  NewOptions fresh;
  FilmOptions film;
  RepOptions rep;
  ManyOptions reps;
  VaryOptions vary;
  VersusOptions versus;
  FaultsOptions faults;
  MatrixOptions matrix;
  GatherOptions gather;
  ClipOptions clip;
  CorrectOptions correct;
  StripOptions strip;
  SheetOptions sheet;
  CardOptions card;
  QuestionOptions question;
  WeekOptions week;
  ScoutOptions scout;
  OpenOptions open;
};

void addNew(CLI::App& verb, NewOptions& o) {
  verb.add_option("--formation", o.formation, "formation, id or name")->required();
  verb.add_option("--scheme", o.scheme, "scheme, id or name")->required();
  auto* const front = verb.add_option("--front", o.front, "front, id or name");
  auto* const kept =
      verb.add_option("--defense", o.defense, "a defense in a file of its own, in place of a front");
  front->excludes(kept);
  verb.add_option("-o,--out", o.out, "file to write")->required();
  verb.add_option("--title", o.title, "title line");
  verb.add_option("--variant", o.variant, "variant of the scheme")->capture_default_str();
  verb.add_option("--motion", o.motion, "MAN=KIND, a man in motion: A=fly, H=across, Y=trade");
  verb.add_option("--direction", o.direction, "left, right")->capture_default_str();
  verb.add_option("--strength", o.strength, "left, right")->capture_default_str();
  verb.add_option("--shell", o.shell, "shell, id or name")->capture_default_str()->excludes(kept);
  verb.add_option("--structure", o.structure, "spill, box")->capture_default_str()->excludes(kept);
  verb.add_option("--movement", o.movement, "called movement of the front")
      ->capture_default_str()
      ->excludes(kept);
  verb.add_option("--level", o.level, "high_school, college, pro")->capture_default_str();
  verb.add_option("--spot", o.spot, "left_hash, middle, right_hash")->capture_default_str();
  verb.add_option("--to-goal", o.to_goal, "yards to the goal line")->capture_default_str();
  verb.add_option("--down", o.down, "1 to 4")->capture_default_str();
  verb.add_option("--distance", o.distance, "yards to go")->capture_default_str();
  verb.add_option("--splits", o.splits, "standard, tight, wide")->capture_default_str();
  verb.add_option("--front-strength", o.front_strength, "formation, receivers, field, boundary, left, right")
      ->capture_default_str()
      ->excludes(kept);
  addRepeatable(verb, "--check", o.checks, "answer to a nub, trips or an unbalanced line (repeatable)");
  addRepeatable(verb, "--set", o.changes.sets, "change one value, PATH=VALUE (repeatable)");
  addRepeatable(verb, "--fault", o.changes.faults, "lay a fault on a man, MAN=KIND[:AMOUNT] (repeatable)");
  addJson(verb, o.json);
}

void addClip(CLI::App& verb, ClipOptions& o) {
  addPicture(verb, o);
  verb.add_option("--versus", o.versus, "second scenario, played side by side in step");
  addRepeatable(verb, "--b", o.b.sets, "change the second one, PATH=VALUE (repeatable)");
  addRepeatable(verb, "--b-fault", o.b.faults, "fault on the second one (repeatable)");
  verb.add_option("--b-seed", o.b_seed, "seed of the second one");
  verb.add_option("--names", o.names, "what stands over the two pictures")->expected(2);
  verb.add_option("--difference", o.difference,
                  "what was changed between the two, in place of what is found");
  verb.add_option("--line", o.line, "text under the frozen picture, in place of what the rep says");
  verb.add_option("--only", o.only, "levels to show, the others are greyed")
      ->delimiter(',')
      ->check(CLI::Range(1, 3));
  verb.add_option("--pick", o.pick,
                  "of 100 reps the typical, best or worst for the defense; of two sides where the second is")
      ->check(CLI::IsMember({"typical", "best", "worst"}));
  verb.add_option("--aspect", o.aspect, "16:9, 1:1, 9:16")->check(CLI::IsMember({"16:9", "1:1", "9:16"}));
  verb.add_option("--loop", o.loops, "show the play that many times")->check(CLI::Range(1, 5));
  verb.add_flag("--hide-names", o.hide_names, "men without their names");
}

void addStrip(CLI::App& verb, StripOptions& o) {
  addPicture(verb, o);
  verb.add_option("--frames", o.frames, "pictures, evenly spaced")->check(CLI::Range(2, 12));
  verb.add_flag("--wide", o.wide, "a lying page of the box alone");
}

void addSheet(CLI::App& verb, SheetOptions& o) {
  addHandout(verb, o);
  o.n = 200;
  verb.add_flag("--large", o.large, "type for the sideline");
  verb.add_flag("--master", o.master, "the master sheet alone");
  verb.add_flag("--no-faults", o.no_faults, "without the costliest mistakes, which take most of the time");
}

void addCard(CLI::App& verb, CardOptions& o) {
  addHandout(verb, o);
  verb.add_option("--to-a-page", o.to_a_page, "cards to a page: 1, 2, 4")->check(CLI::IsMember({1, 2, 4}));
  verb.add_flag("--one-way", o.one_way, "without the run turned over");
}

void addQuestion(CLI::App& verb, QuestionOptions& o) {
  addHandout(verb, o);
  o.n = 600;
  verb.add_option("--man", o.man, "whose question it is: S, FS, ...")->required();
  verb.add_option("--quiz", o.quiz, "that many questions")->check(CLI::Range(1, 40))->capture_default_str();
}

void addWeek(CLI::App& verb, WeekOptions& o) {
  addMany(verb, o);
  o.n = 200;
  verb.get_option("file")->description("plan file");
  verb.add_option("-o,--out", o.out, "folder to write")->required();
  verb.add_option("--only", o.only, "parts: summary, matrix, sheets, cards, clips, quiz")->delimiter(',');
  addPaper(verb, o);
  verb.add_flag("--large", o.large, "fit sheets in type for the sideline");
}

void addCorrect(CLI::App& verb, CorrectOptions& o) {
  addPlay(verb, o);
  addJson(verb, o.json);
  o.n = 64;
  verb.get_option("file")->description("the look as called, or a scenario written by film");
  verb.add_option("--seen", o.places, "CSV id,x,y: where men stood, in the frame of the look");
  addRepeatable(verb, "--saw", o.saw,
                "one thing seen: S=3.5,2, SS.y=7, end=kicked, backer=too_wide (repeatable)");
  verb.add_option("--at", o.at, "seconds after the snap of those places (2, or the film's)")
      ->check(CLI::Range(0.2, 8.0));
  verb.add_option("--gain", o.gain, "yards")->check(CLI::Range(-30.0, 110.0));
  verb.add_option("-n", o.n, "reps a mistake")->check(CLI::Range(24, 1000))->capture_default_str();
  verb.add_option("--jobs", o.jobs, "threads; 0: all cores")->check(CLI::Range(0, 1024));
  verb.add_option("--roster", o.roster, "your men, CSV");
  verb.add_option("-o,--out", o.out, "clip of before and after, MP4 or GIF");
}

void addScout(CLI::App& verb, ScoutOptions& o) {
  verb.add_option("file", o.file, "breakdown, CSV")->required();
  verb.add_option("-o,--out", o.out, "plan to write")->required();
  verb.add_option("--title", o.title, "title line");
  verb.add_option("--ours", o.ours, "plan or scenario with our calls");
  addRepeatable(verb, "--columns", o.columns, "what you call a column, OURS=THEIRS (repeatable)");
  addRepeatable(verb, "--name", o.names, "what you call a formation or run, LIBRARY=YOURS (repeatable)");
  verb.add_option("--top", o.top, "kinds of run to keep")->check(CLI::Range(1, 40))->capture_default_str();
  addJson(verb, o.json);
}

void addOpen(CLI::App& verb, OpenOptions& o) {
  addPlay(verb, o);
  verb.get_option("file")->required(false);
  verb.add_option("--ui-scale", o.ui_scale, "per cent")->check(CLI::IsMember({100, 150, 200}));
  verb.add_option("--theme", o.theme, "paper, evening")->check(CLI::IsMember({"paper", "evening"}));
  verb.add_option("--width", o.width, "pixels")->check(CLI::Range(640, 7680))->capture_default_str();
  verb.add_option("--height", o.height, "pixels")->check(CLI::Range(480, 4320))->capture_default_str();
  verb.add_option("--at", o.at, "seconds after the snap")->check(CLI::Range(0.0, 60.0));
  verb.add_option("--do", o.deeds, "keys and buttons before the shot, as in \"tab, m, Downhill, type 9\"");
  verb.add_option("--tell", o.tell, "keep this file saying what is shown and where, for scripts");
  verb.add_option("--shot", o.shot, "draw one picture into this PNG and leave");
}

int openWith(const WindowOpener& window, const OpenOptions& options) {
  if (!window) throw Error(ExitCode::noAccess, "this gapsound was built without its window");
  return window(options);
}

/// Adds every verb to the program; the chosen one is left in `chosen`.
void addVerbs(CLI::App& app, Verbs& o, Verb& chosen, const WindowOpener& window) {
  const auto verb = [&](const char* name, const char* words, auto add, auto& options, auto run) {
    auto* sub = app.add_subcommand(name, words);
    add(*sub, options);
    sub->callback([&chosen, &options, run] { chosen = [&options, run] { return run(options); }; });
  };
  const auto play_json = [](CLI::App& sub, auto& options) {
    addPlay(sub, options);
    addJson(sub, options.json);
  };
  const auto rep = [&](CLI::App& sub, RepOptions& options) {
    play_json(sub, options);
    sub.add_option("--tape", options.tape, "keep the recording in this file");
  };
  const auto check = [](CLI::App& sub, CheckOptions& options) {
    addPlay(sub, options);
    addJson(sub, options.json);
    sub.add_flag("--assignments", options.assignments, "also who blocks whom by rule");
  };
  const auto list = [](CLI::App& sub, ListOptions& options) {
    sub.add_option("kind", options.kind,
                   "formations, fronts, shells, schemes, variants, motions, movements, faults or attributes")
        ->required();
    addJson(sub, options.json);
  };
  verb("check", "is the look sound on paper?", check, o.check, runCheck);
  verb("list", "names the library knows", list, o.list, runList);
  verb("new", "writes a scenario from library names", addNew, o.fresh, runNew);
  verb("film", "a frame of tracking to a scenario that starts there", addFilm, o.film, runFilm);
  verb("rep", "one snap, told in words", rep, o.rep, runRep);
  verb("reps", "many snaps, the distribution", addReps, o.reps, runReps);
  verb("vary", "sweeps a setting and says where it breaks", addVary, o.vary, runVary);
  verb("versus", "two scenarios rep by rep on the same luck", addVersus, o.versus, runVersus);
  verb("faults", "every mistake alone: what it costs and who repairs it", addFaults, o.faults, runFaults);
  verb("matrix", "fronts and calls against their runs", addMatrix, o.matrix, runMatrix);
  verb("gather", "joins the parts of a study", addGather, o.gather, runGather);
  verb("clip", "a film clip, MP4 or GIF", addClip, o.clip, runClip);
  verb("strip", "a film strip, PNG, SVG or PDF", addStrip, o.strip, runStrip);
  verb("sheet", "fit sheets, PDF", addSheet, o.sheet, runSheet);
  verb("card", "scout-team cards, PDF", addCard, o.card, runCard);
  verb("question", "where do you fit? PDF or HTML", addQuestion, o.question, runQuestion);
  verb("week", "a plan to a week's folder", addWeek, o.week, runWeek);
  verb("correct", "a leak to its cause and cheapest repair", addCorrect, o.correct, runCorrect);
  verb("scout", "a charted breakdown to a plan", addScout, o.scout, runScout);
  verb("open", "the window", addOpen, o.open,
       [&window](const OpenOptions& options) { return openWith(window, options); });
}

/// Not listed: texts about the program itself, for packages.
void addDescribe(CLI::App& app, std::string& text, Verb& chosen) {
  auto* sub = app.add_subcommand("describe", "the program's own manual page or shell completion")->group("");
  sub->add_option("text", text)->required()->check(CLI::IsMember({"man", "bash"}));
  sub->callback([&app, &text, &chosen] {
    chosen = [&app, &text] {
      fmt::print("{}", text == "man" ? manualPage(app) : bashCompletion(app));
      return codeOf(ExitCode::fine);
    };
  });
}

/// CLI11 writes several lines; ours is one.
int usageLine(const CLI::ParseError& error) {
  fmt::print(stderr, "gapsound: {}; allowed: see gapsound --help\n", error.what());
  return codeOf(ExitCode::usage);
}

/// A first word that is no verb, which CLI11 only calls a verb missing; empty when it is one or an option.
std::string unknownVerb(const CLI::App& app, int argc, char** argv) {
  if (argc < 2 || argv[1][0] == '-') return "";
  std::vector<std::string> verbs;
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; })) {
    if (verb->check_name(argv[1])) return "";
    if (!verb->get_group().empty()) verbs.push_back(verb->get_name());
  }
  return fmt::format("verb: \"{}\"; allowed: {}", argv[1], nameHint(argv[1], verbs));
}

int printVersion() {
  fmt::print("{}\n", versionLine());
  return codeOf(ExitCode::fine);
}

int runChosen(const Verb& chosen) {
  try {
    return chosen();
  } catch (const Error& error) {
    fmt::print(stderr, "gapsound: {}\n", error.what());
    return codeOf(error.code());
  } catch (const std::exception& error) {
    fmt::print(stderr, "gapsound: a fault of ours: {}\n", error.what());
    return codeOf(ExitCode::ourFault);
  }
}

}  // namespace

int runProgram(int argc, char** argv, const WindowOpener& window) {
  CLI::App app("Gapsound plays run fits against the look you will see.", "gapsound");
  app.require_subcommand(1);
  app.set_help_all_flag("--help-all", "help of every verb");
  Verbs options;
  Verb chosen;
  addVerbs(app, options, chosen, window);
  std::string described;
  addDescribe(app, described, chosen);
  const auto call = callOf(argc, argv);
  options.reps.call = options.vary.call = options.versus.call = options.faults.call = options.matrix.call =
      call;
  bool version = false;
  app.add_flag("--version", version, "version, build, engine and model");
  if (const std::string refused = unknownVerb(app, argc, argv); !refused.empty()) {
    fmt::print(stderr, "gapsound: {}\n", refused);
    return codeOf(ExitCode::usage);
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& help) {
    return app.exit(help);
  } catch (const CLI::ParseError& error) {
    if (!version) return usageLine(error);
  }
  return runChosen(version ? printVersion : chosen);
}

}  // namespace gapsound
