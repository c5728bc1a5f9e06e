#include "scenario/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "scenario/bracket.hpp"

namespace gapsound {
namespace {

constexpr double kOnLine = 1.45;  // deepest a man on the line stands, yd

Look lookOf(const Setup& setup) {
  Look look;
  for (std::size_t i = 0; i < look.offense.size(); ++i) {
    const Man& man = setup.men[i];
    const bool on_line = man.group != Group::quarterback && man.spot.y >= -kOnLine;
    look.offense[i] = {man.id, man.group, man.spot, on_line, man.vel, false};
  }
  return look;
}

std::vector<std::string> calls(const std::string& gap) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from <= gap.size();) {
    const auto to = std::min(gap.find('/', from), gap.size());
    parts.push_back(gap.substr(from, to - from));
    from = to + 1;
  }
  return parts;
}

/// "A+A-" names two gaps.
bool calls(const FitJob& fit, const std::string& gap) {
  for (const std::string& part : calls(fit.gap)) {
    if (part == gap || (part.size() == 4 && (part.substr(0, 2) == gap || part.substr(2) == gap))) return true;
  }
  return false;
}

std::vector<std::string> ownersOf(const Setup& setup, const std::string& gap) {
  std::vector<std::string> owners;
  for (std::size_t i = kOffense; i < kMen; ++i) {
    if (calls(setup.men[i].fit, gap)) owners.push_back(setup.men[i].id);
  }
  return owners;
}

char signOn(int side) { return side > 0 ? '+' : '-'; }

FitRole roleToward(const Man& man, int side) { return side > 0 ? man.fit.if_right : man.fit.if_left; }

std::vector<std::string> menWith(const Setup& setup, FitRole wanted, int side) {
  std::vector<std::string> men;
  for (std::size_t i = kOffense; i < kMen; ++i) {
    if (roleToward(setup.men[i], side) == wanted) men.push_back(setup.men[i].id);
  }
  return men;
}

/// The gap outside the last blocker belongs to whoever is called edge there, else to the force man.
GapOwner outermost(const Setup& setup, const std::string& gap, int side) {
  GapOwner owner{gap, ownersOf(setup, gap)};
  const std::string sign(1, signOn(side));
  if (owner.owners.empty()) owner.owners = ownersOf(setup, "edge" + sign);
  if (owner.owners.empty()) owner.owners = menWith(setup, FitRole::force, side);
  if (owner.owners.empty()) owner.owners = ownersOf(setup, "force" + sign);
  return owner;
}

void addSide(const Setup& setup, const LineShape& shape, int side, std::vector<GapOwner>& gaps) {
  const std::size_t blockers = shape.men(side).size();
  for (std::size_t i = 0; i <= blockers; ++i) {
    const std::string gap{static_cast<char>('A' + i), signOn(side)};
    gaps.push_back(i == blockers ? outermost(setup, gap, side) : GapOwner{gap, ownersOf(setup, gap)});
  }
}

/// Who is there for the gaps that arrive: backers a puller leaves without a gap, the safety called down
/// unless a line gap is his already, then an overhang behind the play with nobody to cover.
std::vector<std::string> spareMen(const Setup& setup, const std::vector<GapOwner>& line_gaps,
                                  bool puller_left) {
  const auto holds_one = [&](const std::string& id) {
    return std::any_of(line_gaps.begin(), line_gaps.end(),
                       [&](const GapOwner& gap) { return gap.owners == std::vector<std::string>{id}; });
  };
  std::vector<std::string> spare;
  if (puller_left) spare = menWith(setup, FitRole::overlap_backer, setup.direction);
  for (const std::string& id : menWith(setup, FitRole::alley, setup.direction)) {
    if (!holds_one(id)) spare.push_back(id);
  }
  for (std::size_t i = kOffense; i < kMen; ++i) {
    const Man& man = setup.men[i];
    if (man.fit.level == 2 && roleToward(man, setup.direction) == FitRole::cutback) spare.push_back(man.id);
  }
  return spare;
}

void giveSpare(GapOwner& gap, std::vector<std::string>& spare) {
  if (spare.empty()) return;
  gap.owners.push_back(spare.front());
  spare.erase(spare.begin());
}

bool quarterbackRuns(const Setup& setup) {
  return setup.read.who != kNobody || (setup.carrier != kNobody && setup.carrier == setup.passer);
}

/// Where he runs: away from the man he reads on the back side, else with the play.
int quarterbackSide(const Setup& setup) {
  if (setup.read.who == kNobody) return setup.direction;
  return setup.read.keep_aim_x * setup.direction < 0.0 ? -setup.direction : setup.direction;
}

/// Gaps that arrive with somebody, by kind and side.
class Arrivals {
 public:
  Arrivals(const Setup& setup, const LineShape& shape) : setup_(setup) {
    bool back_freed = quarterbackRuns(setup) && setup.read.who == kNobody;
    for (int i = 0; i < kOffense; ++i) {
      const Man& man = setup.men[static_cast<std::size_t>(i)];
      const bool attached = isAttached(shape, i);
      const bool leads = isLead(man.block, attached);
      if (attached && man.block.pull != PullStyle::none) ++pulls_[sideOf(man)];
      if (leads && back_freed && man.group == Group::back)
        back_freed = false;
      else if (leads)
        ++leads_[sideOf(man)];
    }
  }
  [[nodiscard]] bool anyPull() const { return pulls_[0] + pulls_[1] > 0; }
  void add(std::vector<std::string>& spare, std::vector<GapOwner>& gaps) const {
    for (const int side : {setup_.direction, -setup_.direction}) addEach("pull", pulls_, side, spare, gaps);
    for (const int side : {setup_.direction, -setup_.direction}) addEach("lead", leads_, side, spare, gaps);
  }

 private:
  using Counts = std::array<int, 2>;
  [[nodiscard]] std::size_t sideOf(const Man& man) const {
    const bool kicks = man.block.kind == BlockKind::kick || man.block.kind == BlockKind::log;
    if (!kicks || man.block.target == kNobody) return setup_.direction > 0;
    return setup_.men[static_cast<std::size_t>(man.block.target)].spot.x > 0.0;
  }
  static void addEach(const char* name, const Counts& counts, int side, std::vector<std::string>& spare,
                      std::vector<GapOwner>& gaps) {
    for (int n = 1; n <= counts[side > 0]; ++n) {
      GapOwner gap{fmt::format("{}{}{}", name, n > 1 ? std::to_string(n) : "", signOn(side)), {}};
      giveSpare(gap, spare);
      gaps.push_back(gap);
    }
  }

  const Setup& setup_;
  Counts pulls_{}, leads_{};
};

/// The quarterback's gap belongs to the force of that side, unless a line gap is all his; then to who is
/// spare.
void addQuarterback(const Setup& setup, std::vector<std::string>& spare, std::vector<GapOwner>& gaps) {
  const int side = quarterbackSide(setup);
  GapOwner gap{fmt::format("quarterback{}", signOn(side)), {}};
  for (const std::string& id : menWith(setup, FitRole::force, side)) {
    const bool holds_one = std::any_of(gaps.begin(), gaps.end(), [&](const GapOwner& other) {
      return other.owners == std::vector<std::string>{id};
    });
    if (!holds_one) gap.owners.push_back(id);
  }
  for (const std::string& id : menWith(setup, FitRole::cutback, setup.direction)) spare.push_back(id);
  if (gap.owners.empty()) giveSpare(gap, spare);
  gaps.push_back(gap);
}

void addArrivals(const Setup& setup, const LineShape& shape, std::vector<GapOwner>& gaps) {
  const Arrivals arrivals(setup, shape);
  auto spare = spareMen(setup, gaps, arrivals.anyPull());
  arrivals.add(spare, gaps);
  if (quarterbackRuns(setup)) addQuarterback(setup, spare, gaps);
}

bool isBlocked(const Setup& setup, int defender) {
  return std::any_of(setup.men.begin(), setup.men.begin() + kOffense,
                     [&](const Man& man) { return man.block.target == defender; });
}

void addBrackets(const Setup& setup, std::vector<std::string>& concerns) {
  for (const Bracket& bracket : bracketsOf(setup)) {
    const std::string who =
        bracket.on.empty() ? bracket.blocker : fmt::format("{}, who is for {}", bracket.blocker, bracket.on);
    if (bracket.inside.empty()) concerns.push_back(fmt::format("nobody is inside {}", who));
    if (bracket.outside.empty()) concerns.push_back(fmt::format("nobody is outside {}", who));
  }
}

/// Two gaps that rest on one man alone; a man called to two-gap is meant to.
void addOverloaded(const Setup& setup, const std::vector<GapOwner>& gaps,
                   std::vector<std::string>& concerns) {
  for (std::size_t i = kOffense; i < kMen; ++i) {
    const Man& man = setup.men[i];
    std::string held;
    int count = 0;
    for (const GapOwner& gap : gaps) {
      const bool extra = gap.gap.size() > 2;
      if (extra || gap.owners != std::vector<std::string>{man.id}) continue;
      held += (count++ ? " and " : "") + gap.gap;
    }
    if (count > 1 && man.fit.gap != "A+A-") concerns.push_back(fmt::format("{} alone has {}", man.id, held));
  }
}

}  // namespace

LineShape lineShapeOf(const Setup& setup) { return shapeOf(lookOf(setup).offense); }

std::vector<GapOwner> gapsOf(const Setup& setup) {
  const LineShape shape = lineShapeOf(setup);
  std::vector<GapOwner> gaps;
  addSide(setup, shape, -1, gaps);
  std::reverse(gaps.begin(), gaps.end());
  addSide(setup, shape, +1, gaps);
  addArrivals(setup, shape, gaps);
  return gaps;
}

std::vector<std::string> concernsOf(const Setup& setup) {
  std::vector<std::string> concerns;
  const auto gaps = gapsOf(setup);
  for (const GapOwner& gap : gaps) {
    if (gap.owners.empty()) concerns.push_back(fmt::format("nobody has {}", gap.gap));
  }
  addOverloaded(setup, gaps, concerns);
  addBrackets(setup, concerns);
  for (int i = kOffense; i < kMen; ++i) {
    const Man& man = setup.men[static_cast<std::size_t>(i)];
    const bool end = roleToward(man, setup.direction) == FitRole::edge;
    const bool read = setup.read.who == i;
    if (end && !read && !isBlocked(setup, i))
      concerns.push_back(fmt::format("nobody blocks {}, the end man", man.id));
  }
  return concerns;
}

}  // namespace gapsound
