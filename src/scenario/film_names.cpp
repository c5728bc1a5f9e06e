#include "scenario/film_names.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "base/error.hpp"

namespace gapsound {
namespace {

constexpr double kAttached = 6.2;  // farthest from the ball a tight end is part of the line, yd
constexpr double kOffLine = -1.7;  // deeper than this he is off it
constexpr double kOnLine = 1.7;    // a backer nearer than this, in the box, is on the line
constexpr double kBox = 7.5;

bool isLineman(Group g) { return g == Group::guard || g == Group::center || g == Group::off_tackle; }

using Men = std::vector<NamedMan*>;

class Naming {
 public:
  Naming(std::vector<NamedMan>& men, double since) : men_(men), since_(since) {}
  void run() {
    nameLine();
    strong_ = strongSide();
    nameBacks();
    nameTightEnds();
    nameReceivers();
    nameFront();
    nameBackers();
    nameSecondary();
  }

 private:
  Vec2 before(const NamedMan& man) const { return man.start.pos - (0.5 * since_) * man.start.vel; }
  double wide(const NamedMan& man) const { return strong_ * before(man).x; }

  template <class Is>
  Men which(Is is) {
    Men found;
    for (NamedMan& man : men_)
      if (man.id.empty() && is(man)) found.push_back(&man);
    return found;
  }
  template <class Key>
  static void sortBy(Men& men, Key key) {
    std::stable_sort(men.begin(), men.end(), [&](auto* a, auto* b) { return key(*a) < key(*b); });
  }
  // The first name of the list that nobody has yet.
  void give(NamedMan& man, std::initializer_list<const char*> names) {
    for (const char* name : names)
      if (used_.insert(name).second) {
        man.id = name;
        return;
      }
    for (int n = 2; man.id.empty(); ++n) {
      const std::string name = fmt::format("{}{}", *names.begin(), n);
      if (used_.insert(name).second) man.id = name;
    }
  }
  void giveOwn(NamedMan& man) {
    if (!man.label_id.empty() && used_.insert(man.label_id).second) man.id = man.label_id;
  }

  void nameLine();
  double strongSide();
  void nameBacks();
  void nameTightEnds();
  void nameReceivers();
  void nameFront();
  void nameBackers();
  void nameSecondary();

  std::vector<NamedMan>& men_;
  double since_;
  double strong_ = 1.0;
  std::set<std::string> used_;
};

/// Five linemen; more are tight ends, those farthest from the middle.
void Naming::nameLine() {
  Men line = which([](const NamedMan& man) { return man.attacks && isLineman(man.group); });
  sortBy(line, [&](const NamedMan& man) { return before(man).x; });
  while (line.size() > 5) {
    const bool left = std::abs(before(*line.front()).x) > std::abs(before(*line.back()).x);
    NamedMan& extra = left ? *line.front() : *line.back();
    extra.group = Group::tight_end;
    extra.start.group = "tight_end";
    extra.label_id.clear();
    line.erase(left ? line.begin() : line.end() - 1);
  }
  const bool by_label =
      std::all_of(line.begin(), line.end(), [](auto* man) { return !man->label_id.empty(); });
  constexpr const char* kNames[] = {"LT", "LG", "C", "RG", "RT"};
  constexpr const char* kGroups[] = {"off_tackle", "guard", "center", "guard", "off_tackle"};
  for (std::size_t k = 0; k < line.size(); ++k) {
    if (by_label) giveOwn(*line[k]);
    if (line[k]->id.empty()) give(*line[k], {kNames[k]});
    if (!by_label) line[k]->start.group = kGroups[k];
  }
}

/// Where the tight end is; without one, where more receivers are; else the side of the run.
double Naming::strongSide() {
  double ends = 0.0, wide = 0.0;
  for (const NamedMan& man : men_) {
    const double x = before(man).x;
    const double side = x > 0.0 ? 1.0 : -1.0;
    if (man.attacks && man.group == Group::tight_end && std::abs(x) < kAttached) ends += side;
    if (man.attacks && man.group == Group::receiver) wide += side;
  }
  const double sum = ends != 0.0 ? ends : wide;
  return sum < 0.0 ? -1.0 : 1.0;
}

void Naming::nameBacks() {
  for (NamedMan* man : which([](const NamedMan& m) { return m.group == Group::quarterback; }))
    give(*man, {"Q"});
  Men backs = which([](const NamedMan& m) { return m.group == Group::back; });
  sortBy(backs, [&](const NamedMan& m) { return m.has_ball ? -99.0 : before(m).y; });
  for (NamedMan* man : backs) give(*man, {"T", "F", "H"});
  for (NamedMan* man : which([](const NamedMan& m) { return m.group == Group::fullback; }))
    give(*man, {"F", "H", "U"});
}

/// Y on the strong side of the line, U on the other, V beyond; off the line behind it an H.
void Naming::nameTightEnds() {
  Men ends = which([](const NamedMan& m) { return m.attacks && m.group == Group::tight_end; });
  sortBy(ends, [&](const NamedMan& m) { return -wide(m); });
  for (NamedMan* man : ends) {
    const Vec2 spot = before(*man);
    if (std::abs(spot.x) > kAttached)
      give(*man, {"A", "B", "V", "U"});
    else if (spot.y < kOffLine && std::abs(spot.x) < 4.0)
      give(*man, {"H", "U", "V"});
    else if (wide(*man) > 0.0)
      give(*man, {"Y", "V", "U"});
    else
      give(*man, {"U", "V", "Y"});
  }
}

void Naming::nameReceivers() {
  Men men = which([](const NamedMan& m) { return m.attacks; });
  sortBy(men, [&](const NamedMan& m) { return -wide(m); });
  if (!men.empty() && wide(*men.front()) > 0.0) give(*men.front(), {"Z"});
  if (!men.empty() && men.back()->id.empty()) give(*men.back(), {"X", "A"});
  for (NamedMan* man : men)
    if (man->id.empty()) give(*man, {"A", "B", "V", "Z"});
}

/// On the line from the strong side: SE, DT, NT, WE; a nose by his label keeps it.
void Naming::nameFront() {
  Men line = which([&](const NamedMan& m) {
    const Vec2 spot = before(m);
    const bool lineman = m.group == Group::edge || m.group == Group::tackle;
    return !m.attacks &&
           (lineman || (m.group == Group::backer && spot.y < kOnLine && std::abs(spot.x) < kBox));
  });
  sortBy(line, [&](const NamedMan& m) { return -wide(m); });
  if (line.empty()) return;
  give(*line.front(), {"SE"});
  if (line.back()->id.empty()) give(*line.back(), {"WE"});
  for (NamedMan* man : line)
    if (man->id.empty()) giveOwn(*man);
  const bool one = std::count_if(line.begin(), line.end(), [](auto* man) { return man->id.empty(); }) == 1;
  for (NamedMan* man : line) {
    if (!man->id.empty()) continue;
    if (one)
      give(*man, {"NT", "DT", "DT2"});
    else
      give(*man, {"DT", "NT", "DT2", "DG"});
  }
}

void Naming::nameBackers() {
  Men men = which([](const NamedMan& m) { return !m.attacks && m.group == Group::backer; });
  sortBy(men, [&](const NamedMan& m) { return -wide(m); });
  if (men.size() > 2) give(*men.front(), {"S"});
  for (NamedMan* man : men)
    if (man->id.empty()) give(*man, {"M", "W", "OLB", "OLB2"});
}

void Naming::nameSecondary() {
  Men corners = which([](const NamedMan& m) { return m.group == Group::corner; });
  sortBy(corners, [&](const NamedMan& m) { return before(m).x; });
  if (!corners.empty() && before(*corners.back()).x > 0.0) give(*corners.back(), {"CR"});
  if (!corners.empty() && corners.front()->id.empty()) give(*corners.front(), {"CL"});
  for (NamedMan* man : corners)
    if (man->id.empty()) give(*man, {"NK", "OV", "CL", "CR"});
  Men safeties = which([](const NamedMan& m) { return !m.attacks; });
  for (NamedMan* man : safeties) giveOwn(*man);
  sortBy(safeties, [&](const NamedMan& m) { return -wide(m); });
  for (NamedMan* man : safeties) {
    if (!man->id.empty()) continue;
    if (man == safeties.front())
      give(*man, {"SS", "FS", "NK", "OV"});
    else
      give(*man, {"FS", "SS", "NK", "OV"});
  }
}

double unlike(const NamedMan& man, Vec2 before, const Man& other) {
  const bool line = isLineman(man.group) || man.group == Group::tackle || man.group == Group::edge;
  const bool other_line =
      isLineman(other.group) || other.group == Group::tackle || other.group == Group::edge;
  const double kind = man.group == other.group ? 0.0 : line == other_line ? 1.5 : 3.0;
  const double named = !man.label_id.empty() && man.label_id == other.id ? -3.0 : 0.0;
  return distance(before, other.spot) + kind + named;
}

}  // namespace

void nameByPlace(std::vector<NamedMan>& men, double since_snap_s) { Naming(men, since_snap_s).run(); }

void nameByLook(std::vector<NamedMan>& men, double since_snap_s, const Setup& look) {
  struct Match {
    double cost;
    std::size_t man, other;
  };
  std::vector<Match> matches;
  for (std::size_t i = 0; i < men.size(); ++i) {
    const Vec2 before = men[i].start.pos - (0.5 * since_snap_s) * men[i].start.vel;
    for (std::size_t k = 0; k < kMen; ++k) {
      if (men[i].attacks == look.men[k].attacks)
        matches.push_back({unlike(men[i], before, look.men[k]), i, k});
    }
  }
  std::stable_sort(matches.begin(), matches.end(),
                   [](const Match& a, const Match& b) { return a.cost < b.cost; });
  std::array<bool, kMen> taken{};
  for (const Match& m : matches) {
    if (taken[m.other] || !men[m.man].id.empty()) continue;
    taken[m.other] = true;
    men[m.man].id = look.men[m.other].id;
    men[m.man].start.group = nameOf(look.men[m.other].group);
  }
}

}  // namespace gapsound
