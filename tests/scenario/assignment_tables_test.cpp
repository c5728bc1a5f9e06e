// The jobs of five schemes against five fronts, written by hand from the line rules of the schemes (common
// practice, no source), not from what the engine answers. Words with | are the same job by another shade.
#include <sstream>

#include "looks.hpp"
#include "scenario/assignments.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

struct Table {
  const char *formation, *scheme, *front, *shell;
  // "man word target", then "+mate" of a double team and ">backer" of the climb.
  std::vector<const char*> rows;
};

struct Row {
  std::string man, word, target = "-", mate = "-", climb = "-";
};

Row rowOf(const std::string& text) {
  std::istringstream words(text);
  Row row;
  words >> row.man >> row.word;
  for (std::string word; words >> word;) {
    (word[0] == '+'   ? row.mate
     : word[0] == '>' ? row.climb
                      : row.target) = word[0] == '+' || word[0] == '>' ? word.substr(1) : word;
  }
  return row;
}

bool oneOf(const std::string& words, const std::string& word) {
  std::istringstream each(words);
  for (std::string known; std::getline(each, known, '|');) {
    if (known == word) return true;
  }
  return false;
}

void checkTable(const Table& table) {
  const Setup setup = resolved(table.formation, table.scheme, table.front, table.shell);
  CAPTURE(table.scheme);
  CAPTURE(table.front);
  for (const char* text : table.rows) {
    CAPTURE(text);
    const Row row = rowOf(text);
    const BlockJob& job = man(setup, row.man).block;
    INFO(wordOf(job.kind), " ", idOf(setup, job.target), " with ", idOf(setup, job.partner), " to ",
         idOf(setup, job.climb_to));
    CHECK(oneOf(row.word, std::string(wordOf(job.kind))));
    if (row.word != "climb") CHECK(idOf(setup, job.target) == row.target);
    CHECK(idOf(setup, job.partner) == row.mate);
    if (row.climb != "-") CHECK(idOf(setup, job.climb_to) == row.climb);
  }
}

}  // namespace

// clang-format off
TEST_CASE("power by hand: over, under, 4-2-5, odd, bear") {
  checkTable({"F01", "R01", "D01", "quarters",
              {"Y climb >M", "RT drive DT +RG >W", "RG post DT +RT >W", "C back NT", "LG wrap S",
               "LT hinge WE", "F kick SE"}});
  checkTable({"F01", "R01", "D02", "quarters",
              {"Y drive SE +RT >W", "RT post SE +Y >W", "RG drive NT +C >W", "C post NT +RG >W", "LG wrap M",
               "LT down DT", "F kick S"}});
  checkTable({"F01", "R01", "D03", "quarters",
              {"Y climb >W", "RT drive DT +RG >W", "RG post DT +RT >W", "C back NT", "LG wrap M",
               "LT hinge WE", "F kick SE"}});
  checkTable({"F01", "R01", "D05", "quarters",
              {"Y drive DE +RT >W", "RT post DE +Y >W", "RG drive NT +C >W", "C post NT +RG >W", "LG wrap M",
               "LT hinge DE2", "F kick OLB"}});
  checkTable({"F01", "R01", "D08", "cover 1",
              {"Y down S", "RT drive DT +RG >W", "RG post DT +RT >W", "C base NT", "LG wrap M", "LT down DT2",
               "F kick OLB"}});
}

TEST_CASE("counter with guard and H by hand: over, under, 4-2-5, odd, bear") {
  checkTable({"F03", "R02", "D01", "quarters",
              {"Y climb >M", "RT drive DT +RG >W", "RG post DT +RT >W", "C back NT", "LG kick SE", "H wrap S",
               "LT hinge WE"}});
  checkTable({"F03", "R02", "D02", "quarters",
              {"Y drive SE +RT >W", "RT post SE +Y >W", "RG drive NT +C >W", "C post NT +RG >W", "LG kick S",
               "H wrap M", "LT down DT"}});
  checkTable({"F03", "R02", "D03", "quarters",
              {"Y climb >W", "RT drive DT +RG >W", "RG post DT +RT >W", "C back NT", "LG kick SE", "H wrap M",
               "LT hinge WE"}});
  checkTable({"F03", "R02", "D05", "quarters",
              {"Y drive DE +RT >W", "RT post DE +Y >W", "RG drive NT +C >W", "C post NT +RG >W", "LG kick OLB",
               "H wrap M", "LT hinge DE2"}});
  checkTable({"F03", "R02", "D08", "cover 1",
              {"Y down S", "RT drive DT +RG >W", "RG post DT +RT >W", "C base NT", "LG kick OLB", "H wrap M",
               "LT down DT2"}});
}

// The tackle away from the run locks the man on him, so a three on the back-side guard is the guard's.
TEST_CASE("inside zone by hand: over, under, 4-2-5, odd, bear") {
  checkTable({"F01", "R04", "D01", "quarters",
              {"Y base|reach SE", "RT combo DT +RG >S", "RG combo DT +RT", "C combo NT +LG >W",
               "LG combo NT +C >W", "LT base WE", "F lead M"}});
  checkTable({"F01", "R04", "D02", "quarters",
              {"Y base|reach S", "RT combo SE +RG", "RG combo SE +RT >M", "C reach NT", "LG base|back DT",
               "LT base WE", "F lead W"}});
  checkTable({"F01", "R04", "D03", "quarters",
              {"Y base SE", "RT combo DT +RG >M", "RG combo DT +RT", "C combo NT +LG >W", "LG combo NT +C >W",
               "LT base WE", "F lead W"}});
  checkTable({"F01", "R04", "D05", "quarters",
              {"Y base|reach OLB", "RT combo DE +RG", "RG combo DE +RT >M", "C combo NT +LG",
               "LG combo NT +C >W", "LT base DE2", "F lead W"}});
  checkTable({"F01", "R04", "D08", "cover 1",
              {"Y base|reach OLB", "RT base|reach S", "RG base|reach DT", "C base NT", "LG base|back DT2",
               "LT base WE", "F lead W"}});
}

// Away from the run a man between guard and tackle is theirs together until the guard can climb; with nobody
// there the tackle climbs and the end man is left.
TEST_CASE("wide zone by hand: over, under, 4-2-5, odd, bear") {
  checkTable({"F01", "R06", "D01", "quarters",
              {"Y combo SE +RT", "RT combo SE +Y >S", "RG reach DT", "C combo NT +LG >W", "LG combo NT +C",
               "LT climb >FS", "F lead M"}});
  checkTable({"F01", "R06", "D02", "quarters",
              {"Y reach S", "RT combo SE +RG", "RG combo SE +RT >M", "C reach NT", "LG combo DT +LT >W",
               "LT combo DT +LG", "F lead W"}});
  checkTable({"F01", "R06", "D03", "quarters",
              {"Y combo SE +RT", "RT combo SE +Y >M", "RG reach DT", "C combo NT +LG >W", "LG combo NT +C",
               "LT climb >FS", "F lead W"}});
  checkTable({"F01", "R06", "D05", "quarters",
              {"Y reach OLB", "RT combo DE +RG", "RG combo DE +RT >M", "C combo NT +LG", "LG combo NT +C >W",
               "LT climb >FS", "F lead W"}});
  checkTable({"F01", "R06", "D08", "cover 1",
              {"Y reach OLB", "RT reach S", "RG reach DT", "C base NT", "LG combo DT2 +LT >M",
               "LT combo DT2 +LG", "F lead W"}});
}

TEST_CASE("duo by hand: over, under, 4-2-5, odd, bear") {
  checkTable({"F01", "R07", "D01", "quarters",
              {"Y base|reach SE", "RT drive DT +RG >S", "RG post DT +RT", "C combo NT +LG >W",
               "LG combo NT +C >W", "LT base WE", "F lead M"}});
  checkTable({"F01", "R07", "D02", "quarters",
              {"Y base|reach S", "RT base|reach SE", "RG drive NT +C >M", "C post NT +RG", "LG base DT",
               "LT base WE", "F lead W"}});
  checkTable({"F01", "R07", "D03", "quarters",
              {"Y base SE", "RT drive DT +RG", "RG post DT +RT >M", "C combo NT +LG >W", "LG combo NT +C",
               "LT base WE", "F lead W"}});
  checkTable({"F01", "R07", "D05", "quarters",
              {"Y base|reach OLB", "RT base|reach DE", "RG drive NT +C >M", "C post NT +RG", "LG climb >FS",
               "LT base DE2", "F lead W"}});
  checkTable({"F01", "R07", "D08", "cover 1",
              {"Y base|reach OLB", "RT base|reach S", "RG base|reach DT", "C base NT", "LG base DT2",
               "LT base WE", "F lead W"}});
}
// clang-format on
