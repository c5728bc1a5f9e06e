#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "io/changes.hpp"

namespace gapsound {

/// What every verb that plays a scenario understands.
struct PlayOptions {
  std::string file;
  Changes changes;
  std::string model;  // empty: the shipped constants
  std::uint64_t seed = 1;
  bool json = false;
};

struct CheckOptions : PlayOptions {
  bool assignments = false;  // also who blocks whom
};

struct RepOptions : PlayOptions {
  std::string tape;  // empty: none is kept
};

/// Files a study writes beside its answer; empty: not written.
struct OutputFiles {
  std::string csv, png, svg, pdf;
};

struct ManyOptions : PlayOptions {
  int n = 400;
  int jobs = 0;                       // threads, 0: all cores
  std::optional<double> until_width;  // yd: stop once the interval is no wider
  OutputFiles files;
  std::string roster;  // CSV; empty: none
  bool resume = false;
  std::string checkpoint;             // log of the reps played so far; empty: in the user's state folder
  std::string part, part_file;        // "K/N" and the file of the part
  std::vector<std::string> gathered;  // parts to read instead of playing
  std::vector<std::string> call;      // the command line without where it runs and what it writes
};

struct VaryOptions : ManyOptions {
  std::vector<std::string> over;
  std::vector<std::string> limits;
};

struct FaultsOptions : ManyOptions {
  bool pairs = false;
  bool blockers = false;
};

struct MatrixOptions : ManyOptions {
  std::vector<std::string> formations, fronts, schemes, variants, shells, structures;
  std::string direction = "right", level;
};

struct GatherOptions {
  std::vector<std::string> parts;
  OutputFiles files;
  bool json = false;
};

struct VersusOptions : ManyOptions {
  std::string other;  // second file; empty: the first one again
  std::vector<std::string> a, b;
};

struct PictureOptions : PlayOptions {
  std::string out;
  std::string title;    // in place of the scenario's
  bool no_mix = false;  // without the snap-to-snap variety of the calls
};

struct StripOptions : PictureOptions {
  std::optional<int> frames;  // evenly spaced; absent: the moments that mattered
  bool wide = false;          // a lying page of the box alone
};

struct ClipOptions : PictureOptions {
  std::string versus;  // scenario played next to the first one; empty with changes below: the first again
  std::optional<std::uint64_t> b_seed;
  Changes b;                       // of the second one
  std::vector<std::string> names;  // over the two sides
  std::string difference;          // what was changed between them, in words; empty: told from the scenarios
  std::string line;                // under the frozen picture; empty: told from the rep
  std::vector<int> only;           // levels shown, the others greyed; empty: all
  std::string aspect = "16:9";     // 16:9, 1:1, 9:16
  std::string pick;                // typical, best, worst of 100 reps from the seed; empty: the seed itself
  int loops = 1;                   // times the play is shown
  bool hide_names = false;
};

/// Verbs that make pages of a scenario or of a plan's pairs.
struct HandoutOptions : ManyOptions {
  std::string out;
  std::string paper = "letter";          // letter, a4
  std::vector<std::string> schemes;      // for a scenario: the runs its front is shown against
  std::vector<std::string> runs, calls;  // for a plan: which of them, by name; empty: all
  bool names = false;                    // the roster's names as well as its numbers
};

struct SheetOptions : HandoutOptions {
  bool large = false;      // type for the sideline
  bool master = false;     // the master sheet alone
  bool no_faults = false;  // without the costliest mistakes, which take most of the time
};

struct CardOptions : HandoutOptions {
  int to_a_page = 1;     // 1, 2, 4
  bool one_way = false;  // without the run turned over
};

struct QuestionOptions : HandoutOptions {
  std::string man;  // whose question it is
  int quiz = 1;     // questions
};

/// A plan to a week's folder; `out` is the folder.
struct WeekOptions : HandoutOptions {
  std::vector<std::string> only;  // parts; empty: all
  bool large = false;
};

struct ScoutOptions {
  std::string file, out, title;
  std::string ours;                  // plan or scenario whose calls the plan gets; empty: usual ones
  std::vector<std::string> columns;  // "formation=Their set"
  std::vector<std::string> names;    // "F04=TREY"
  int top = 10;                      // kinds of run kept
  bool json = false;
};

struct NewOptions {
  std::string formation, scheme, front, out;
  std::string defense;  // file; in place of front and call
  std::string title, variant = "base", direction = "right", strength = "right";
  std::string motion;  // "A=fly"; empty: nobody moves
  std::string shell = "quarters", structure = "spill", movement = "none", level = "high_school";
  std::string spot = "middle", splits = "standard", front_strength = "formation";
  std::vector<std::string> checks;
  double to_goal = 75, distance = 10;
  int down = 1;
  Changes changes;  // laid on the document before it is written
  bool json = false;
};

/// A leak to its cause. `file` is the look as called, or a scenario that starts from film.
struct CorrectOptions : ManyOptions {
  std::string out;               // clip of before and after; empty: none
  std::string places;            // CSV id, x, y; empty: none
  std::vector<std::string> saw;  // "S=3.5,2", "SS.y=7", "end=kicked"
  std::optional<double> at;      // s after the snap; absent: 2.0 or the film's
  std::optional<double> gain;    // yd
};

struct FilmOptions {
  std::string file, out, title;
  double line = 0.0;  // line of scrimmage in the file's x, yd
  std::string attack = "+x", turn = "cw", zero = "y", columns;
  double since_snap = 1.3;                          // s
  std::string formation, scheme, front, direction;  // may stay empty
  std::string variant = "base", strength = "right", shell = "quarters", structure = "spill",
              level = "high_school";
  int down = 1;
  double distance = 10.0;
  bool json = false;
};

struct ListOptions {
  std::string kind;
  bool json = false;
};

struct OpenOptions : PlayOptions {
  std::optional<int> ui_scale;     // per cent; absent: as last time
  std::string theme;               // paper, evening; empty: as last time
  int width = 1280, height = 720;  // pixels
  std::optional<double> at;        // s after the snap
  std::string deeds;               // keys and buttons before the shot
  std::string tell;                // file that says what is shown, for scripts
  std::string shot;                // PNG to draw instead of opening a window
};

/// Opens the window; the program that has one hands it to runProgram.
using WindowOpener = std::function<int(const OpenOptions&)>;

}  // namespace gapsound
