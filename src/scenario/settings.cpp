#include "scenario/settings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "athlete/splits.hpp"
#include "base/error.hpp"
#include "base/nearest.hpp"
#include "scenario/bodies.hpp"
#include "scenario/given_jobs.hpp"

namespace gapsound {
namespace {

struct Range {
  double low, high;
};
constexpr Range kX{-30.0, 30.0}, kY{-12.0, 40.0}, kDepth{1.0, 25.0}, kMass{45.0, 190.0}, kTen{1.3, 2.8},
    kForty{4.0, 7.5}, kRead{0.0, 3.0}, kDownhill{1.0, 11.0}, kPush{0.2, 3.0}, kTackling{-3.0, 3.0};

std::string number(double value) { return fmt::format("{:g}", value); }

class ManPath {
 public:
  ManPath(const Scenario& scenario, const std::string& id)
      : file_(scenario.source), path_("/players/" + id) {}
  void within(const std::optional<double>& value, Range range, const char* key) const {
    if (value && !(range.low <= *value && *value <= range.high)) {
      refuse(key, number(*value), fmt::format("a number {:g} to {:g}", range.low, range.high));
    }
  }
  [[noreturn]] void refuse(const std::string& key, const std::string& value,
                           const std::string& allowed) const {
    throw InputError(file_, key.empty() ? path_ : path_ + "/" + key, value, allowed);
  }
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string file_, path_;
};

void checkRanges(const ManPath& path, const ManSettings& man) {
  path.within(man.x, kX, "x");
  path.within(man.y, kY, "y");
  path.within(man.depth_yd, kDepth, "depth_yd");
  path.within(man.mass_kg, kMass, "mass_kg");
  path.within(man.ten_yd_s, kTen, "ten_yd_s");
  path.within(man.forty_yd_s, kForty, "forty_yd_s");
  path.within(man.read_delay_s, kRead, "read_delay_s");
  path.within(man.downhill_yps, kDownhill, "downhill_yps");
  path.within(man.push, kPush, "push");
  path.within(man.tackling, kTackling, "tackling");
  const bool both = man.depth_yd && man.y;
  if (both) path.refuse("depth_yd", number(*man.depth_yd), "depth_yd or y, not both");
}

void placeMan(Vec2& spot, const ManSettings& man, bool attacks) {
  if (man.x) spot.x = *man.x;
  if (man.y) spot.y = *man.y;
  if (man.depth_yd) spot.y = attacks ? -*man.depth_yd : *man.depth_yd;
}

template <class Place>
bool onMan(Look& look, const std::string& id, Place place) {
  for (Attacker& man : look.offense) {
    if (sameName(man.id, id)) return place(man.spot, true), true;
  }
  for (Defender& man : look.defense) {
    if (sameName(man.id, id)) return place(man.spot, false), true;
  }
  return false;
}

Man* manNamed(Setup& setup, const std::string& id) {
  const auto found =
      std::find_if(setup.men.begin(), setup.men.end(), [&](const Man& man) { return sameName(man.id, id); });
  return found == setup.men.end() ? nullptr : &*found;
}

void refuseForAttacker(const ManPath& path, const ManSettings& man) {
  const char* const allowed = "a defender";
  if (man.read_delay_s) path.refuse("read_delay_s", number(*man.read_delay_s), allowed);
  if (man.downhill_yps) path.refuse("downhill_yps", number(*man.downhill_yps), allowed);
  if (man.tackling) path.refuse("tackling", number(*man.tackling), allowed);
  if (man.fit_off) path.refuse("fit_off", "given", allowed);
  if (man.key) path.refuse("key", *man.key, allowed);
}

double clockStart(const Scenario& scenario) {
  return scenario.clock == "electronic" ? kElectronicStart : kHandStart;
}

void setBody(Body& body, const ManPath& path, const ManSettings& man, double clock_start_s,
             const Library& library, const Model& model) {
  if (man.mass_kg) setMass(body, library.bodies, *man.mass_kg);
  setTimes(body, man, clock_start_s, model, path.file(), path.path());
  body.push = man.push.value_or(body.push);
  body.tackling = man.tackling.value_or(body.tackling);
}

void setFit(FitJob& fit, const ManPath& path, const ManSettings& man) {
  fit.read_delay_s = man.read_delay_s.value_or(fit.read_delay_s);
  fit.downhill_yps = man.downhill_yps.value_or(fit.downhill_yps);
  if (man.fit_off) fit.off_the_man_in_front = *man.fit_off == FitOff::man_in_front;
  if (!man.key) return;
  if (*man.key != "single" && *man.key != "triangle")
    path.refuse("key", *man.key, "\"single\", \"triangle\"");
  fit.key_style = *man.key == "single" ? KeyStyle::single : KeyStyle::triangle;
}

struct WhoMay {
  std::string_view who, words;
  bool (*may)(const Man& man);
};

bool has(const Man& man, FitRole role) { return man.fit.if_right == role || man.fit.if_left == role; }
bool fitsFromDepth(const Man& man) {
  return has(man, FitRole::alley) || has(man, FitRole::force) || has(man, FitRole::cutback);
}
bool isBackerOfRun(const Man& man) {
  return has(man, FitRole::first_backer) || has(man, FitRole::fill_backer) ||
         has(man, FitRole::overlap_backer);
}
bool leads(const BlockJob& job) {
  return job.kind == BlockKind::kick || job.kind == BlockKind::log || job.kind == BlockKind::wrap ||
         job.kind == BlockKind::lead || job.kind == BlockKind::insert;
}

constexpr WhoMay kWhoMay[] = {
    {"end", "the end man on the line",
     [](const Man& m) { return m.fit.level == 1 && (has(m, FitRole::edge) || has(m, FitRole::back_edge)); }},
    {"line", "a man of the defensive line", [](const Man& m) { return m.fit.level == 1; }},
    {"backer", "a man of the second level", [](const Man& m) { return m.fit.level == 2; }},
    {"level2", "a man of the second or third level", [](const Man& m) { return m.fit.level >= 2; }},
    {"fitter", "a backer or safety with a part in the run",
     [](const Man& m) { return m.fit.level >= 2 && (isBackerOfRun(m) || fitsFromDepth(m)); }},
    {"edge", "the man who has force, or a corner behind him",
     [](const Man& m) { return m.fit.level >= 2 && (has(m, FitRole::force) || has(m, FitRole::corner)); }},
    {"folder", "a backer or overhang behind the play",
     [](const Man& m) {
       return m.fit.level == 2 &&
              (has(m, FitRole::overlap_backer) || has(m, FitRole::fill_backer) || has(m, FitRole::cutback));
     }},
    {"behind", "a backer, or a safety who is alley or cutback",
     [](const Man& m) {
       return m.fit.level >= 2 && (isBackerOfRun(m) || has(m, FitRole::alley) || has(m, FitRole::cutback));
     }},
    {"downhill", "a man of the third level with a part in the run",
     [](const Man& m) { return m.fit.level == 3 && fitsFromDepth(m); }},
    {"defender", "a defender", [](const Man&) { return true; }},
};

constexpr WhoMay kBlockerMay[] = {
    {"blocker", "a blocker", [](const Man& m) { return m.block.kind != BlockKind::none; }},
    {"puller", "a blocker who pulls or leads",
     [](const Man& m) { return m.block.pull != PullStyle::none || leads(m.block); }},
    {"climber", "a blocker who climbs off a double team",
     [](const Man& m) { return m.block.leaves && m.block.partner != kNobody; }},
};

const WhoMay* rowFor(std::string_view who) {
  for (const WhoMay& row : kWhoMay)
    if (row.who == who) return &row;
  for (const WhoMay& row : kBlockerMay)
    if (row.who == who) return &row;
  return nullptr;
}

std::string whoWords(std::string_view who) { return std::string(rowFor(who)->words); }

void applyFault(Setup& setup, const Scenario& scenario, std::size_t index) {
  const PlacedFault& placed = scenario.faults[index];
  const std::string path = fmt::format("/faults/{}", index);
  const FaultFacts& facts = factsOf(placed.fault.kind);
  Man* man = manNamed(setup, placed.player);
  if (!man) {
    std::vector<std::string> ids;
    for (const Man& known : setup.men) ids.push_back(known.id);
    throw InputError(scenario.source, path + "/player", placed.player, nameHint(placed.player, ids));
  }
  if (!mayHave(*man, facts)) {
    throw InputError(scenario.source, path + "/kind", fmt::format("{} for {}", facts.name, placed.player),
                     fmt::format("{} is a mistake of {}", facts.name, whoWords(facts.who)));
  }
  const double amount = placed.fault.amount;
  if (!(amount > 0.0 && amount <= facts.most)) {
    throw InputError(scenario.source, path + "/amount", number(amount),
                     fmt::format("more than 0, at most {:g} {}", facts.most, facts.unit));
  }
  man->faults.push_back(placed.fault);
}

}  // namespace

bool mayHave(const Man& man, const FaultFacts& facts) {
  const WhoMay* row = rowFor(facts.who);
  const bool of_blockers = row >= std::begin(kBlockerMay) && row < std::end(kBlockerMay);
  return row != nullptr && man.attacks == of_blockers && row->may(man);
}

std::vector<std::string> idsOf(const Look& look) {
  std::vector<std::string> ids;
  for (const Attacker& man : look.offense) ids.push_back(man.id);
  for (const Defender& man : look.defense) ids.push_back(man.id);
  return ids;
}

void placeByHand(Look& look, const Scenario& scenario) {
  for (const auto& [id, settings] : scenario.players) {
    const ManPath path(scenario, id);
    checkRanges(path, settings);
    const bool known =
        onMan(look, id, [&, &man = settings](Vec2& spot, bool attacks) { placeMan(spot, man, attacks); });
    if (!known) path.refuse("", "unknown man", nameHint(id, idsOf(look)));
  }
}

void applySettings(Setup& setup, const Scenario& scenario, const Library& library, const Model& model) {
  for (const auto& [id, settings] : scenario.players) {
    const ManPath path(scenario, id);
    Man& man = *manNamed(setup, id);
    if (man.attacks) refuseForAttacker(path, settings);
    setBody(man.body, path, settings, clockStart(scenario), library, model);
    if (!man.attacks) setFit(man.fit, path, settings);
    giveJob(setup, static_cast<int>(&man - setup.men.data()), settings, scenario);
  }
  for (Man& man : setup.men) man.fit.downhill_yps = std::min(man.fit.downhill_yps, man.body.top_speed);
  for (std::size_t i = 0; i < scenario.faults.size(); ++i) applyFault(setup, scenario, i);
}

}  // namespace gapsound
