#include "scenario/start_jobs.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "athlete/reach.hpp"
#include "scenario/given_jobs.hpp"

namespace gapsound {
namespace {

constexpr double kTouching = 1.15;    // centres of two men in contact, yd
constexpr double kMeshSoon = 1.2;     // s within which a hand-off is still to come
constexpr double kMeshWidth = 1.6;    // how near the two then pass, yd
constexpr double kMeshEarly = 1.1;    // s after the snap until when paths do not yet show it
constexpr double kMeshFrom = 7.0;     // farthest a back then comes from, yd
constexpr double kMeshClosing = 6.0;  // yd/s at which the two come together
constexpr double kWorkPace = 0.75;    // share of top speed a blocker works at

std::size_t at(int i) { return static_cast<std::size_t>(i); }
const Opening::Place& placeOf(const Setup& s, int man) { return s.opening->men[at(man)]; }
Group groupOf(const Setup& s, int man) { return s.men[at(man)].group; }

bool isLineman(Group g) { return g == Group::guard || g == Group::center || g == Group::off_tackle; }
bool isReceiver(Group g) { return g == Group::receiver; }

int quarterback(const Setup& s) {
  for (int i = 0; i < kOffense; ++i)
    if (groupOf(s, i) == Group::quarterback) return i;
  return kNobody;
}

// When and where the back and the passer come together if both keep on; soon after the snap they have yet to
// turn to each other.
Meeting meshOf(const Setup& s, int passer, int back) {
  const auto& p = placeOf(s, passer);
  const auto& b = placeOf(s, back);
  const Vec2 gap = p.pos - b.pos, closing = p.vel - b.vel;
  const double square = dot(closing, closing);
  const double t = square > 1e-6 ? std::clamp(-dot(gap, closing) / square, 0.0, kMeshSoon) : 0.0;
  if (length(gap + t * closing) < kMeshWidth) return {t, b.pos + t * b.vel};
  const bool early =
      s.opening->since_snap_s < kMeshEarly && groupOf(s, back) == Group::back && length(gap) < kMeshFrom;
  return {early ? length(gap) / kMeshClosing : kNever, b.pos + 0.6 * gap};
}

// The back before any other who could take it; a lead blocker also passes the passer closely.
int nextCarrier(const Setup& s, int passer, Meeting& mesh) {
  int best = kNobody;
  for (const bool backs : {true, false}) {
    if (best != kNobody) break;
    for (int i = 0; i < kOffense; ++i) {
      const Group g = groupOf(s, i);
      if (i == passer || isLineman(g) || (g == Group::back) != backs || placeOf(s, i).pos.y > -0.5) continue;
      const Meeting m = meshOf(s, passer, i);
      if (m.t >= mesh.t) continue;
      best = i;
      mesh = m;
    }
  }
  return best;
}

double aimOf(const Opening::Place& ball) {
  const double left = std::max(-ball.pos.y, 0.0) / std::max(ball.vel.y, 3.0);
  return ball.pos.x + std::min(left, 0.8) * ball.vel.x;
}

struct Work {
  double cost;
  int blocker, defender;
};

class Inference {
 public:
  explicit Inference(Setup& setup) : s_(setup) {}
  void run() {
    for (int i = 0; i < kOffense; ++i) s_.men[at(i)].block = {};
    takeContacts();
    takePulls();
    takeNearest();
  }

 private:
  BlockJob& job(int man) { return s_.men[at(man)].block; }
  bool blocks(int man) const { return man != s_.carrier && man != s_.passer; }
  bool idle(int man) { return blocks(man) && job(man).kind == BlockKind::none; }
  bool taken(int defender) {
    return std::any_of(s_.men.begin(), s_.men.begin() + kOffense,
                       [&](const Man& m) { return m.block.target == defender; });
  }
  double pace(int man) const { return kWorkPace * s_.men[at(man)].body.top_speed; }

  void takeContacts() {
    std::vector<Work> pairs;
    for (int b = 0; b < kOffense; ++b) {
      if (!blocks(b)) continue;
      for (int d = kOffense; d < kMen; ++d) {
        const double gap = distance(placeOf(s_, b).pos, placeOf(s_, d).pos);
        if (gap < kTouching) pairs.push_back({gap, b, d});
      }
    }
    sort(pairs);
    for (const Work& w : pairs) {
      if (!idle(w.blocker)) continue;
      joinMate(w.blocker, w.defender);
      job(w.blocker).kind = job(w.blocker).partner == kNobody ? BlockKind::base : BlockKind::combo;
      job(w.blocker).target = w.defender;
    }
  }

  // The second man on a defender makes it a double team; he is the one who climbs.
  void joinMate(int blocker, int defender) {
    for (int mate = 0; mate < kOffense; ++mate) {
      if (job(mate).target != defender || job(mate).partner != kNobody) continue;
      job(mate).partner = blocker;
      job(mate).kind = BlockKind::combo;
      job(blocker).partner = mate;
      job(blocker).leaves = true;
      return;
    }
  }

  bool pulls(int man) {
    const Group g = groupOf(s_, man);
    const auto& p = placeOf(s_, man);
    return idle(man) && (isLineman(g) || g == Group::tight_end) && p.pos.y < -0.4 && p.vel.x > kPullSpeed;
  }

  // First puller kicks the edge if it is free, who follows leads through.
  void takePulls() {
    std::vector<int> men;
    for (int i = 0; i < kOffense; ++i)
      if (pulls(i)) men.push_back(i);
    std::stable_sort(men.begin(), men.end(),
                     [&](int a, int b) { return placeOf(s_, a).pos.x > placeOf(s_, b).pos.x; });
    s_.run.bends = men.empty();
    bool kicked = false;
    for (const int man : men) {
      const int edge = edgeMan();
      BlockJob& j = job(man);
      j.pull = PullStyle::flat;
      j.kind = !kicked && edge != kNobody && !taken(edge) ? BlockKind::kick : BlockKind::wrap;
      kicked |= j.kind == BlockKind::kick;
      j.target = j.kind == BlockKind::kick ? edge : nearestThreat(man);
      s_.run.patient = s_.run.patient || j.kind == BlockKind::wrap;
    }
  }

  int edgeMan() const {
    for (int d = kOffense; d < kMen; ++d)
      if (s_.men[at(d)].fit.if_right == FitRole::edge) return d;
    return kNobody;
  }

  // Time to meet him, more for a man off the way he runs and for one the play has left behind.
  double costOf(int blocker, int defender) const {
    const auto& b = placeOf(s_, blocker);
    const auto& d = placeOf(s_, defender);
    const Meeting m = firstMeeting(b.pos, b.vel, pace(blocker), d.pos, d.vel, 0.85);
    const double turned = length(b.vel) > 1.0 ? 1.0 - dot(unit(b.vel), unit(d.pos - b.pos)) : 0.0;
    const double behind = d.pos.y < b.pos.y - 0.5 ? 1.0 : 0.0;
    return m.t + 0.4 * turned + behind;
  }

  int nearestThreat(int blocker) {
    int best = kNobody;
    double least = kNever;
    for (int d = kOffense; d < kMen; ++d) {
      if (taken(d) || costOf(blocker, d) >= least) continue;
      best = d;
      least = costOf(blocker, d);
    }
    return best;
  }

  static void sort(std::vector<Work>& work) {
    std::stable_sort(work.begin(), work.end(), [](const Work& a, const Work& b) { return a.cost < b.cost; });
  }

  void takeNearest() {
    std::vector<Work> work;
    for (int b = 0; b < kOffense; ++b) {
      for (int d = kOffense; idle(b) && d < kMen; ++d) work.push_back({costOf(b, d), b, d});
    }
    sort(work);
    for (const Work& w : work) {
      if (!idle(w.blocker) || taken(w.defender)) continue;
      job(w.blocker).kind = freeKind(w.blocker);
      job(w.blocker).target = job(w.blocker).climb_to = w.defender;
    }
  }

  BlockKind freeKind(int man) const {
    const Group g = groupOf(s_, man);
    if (isReceiver(g)) return BlockKind::stalk;
    return isLineman(g) ? BlockKind::climb : BlockKind::lead;
  }

  Setup& s_;
};

}  // namespace

void giveBall(Setup& setup, bool infer_run) {
  const Opening& opening = *setup.opening;
  const int passer = quarterback(setup);
  Meeting mesh;
  const bool with_passer = opening.ball == passer;
  const int next = with_passer ? nextCarrier(setup, passer, mesh) : kNobody;
  setup.passer = passer;
  setup.carrier = next == kNobody ? opening.ball : next;  // the passer himself: he keeps it
  setup.run.mesh = next == kNobody ? placeOf(setup, opening.ball).pos : mesh.point;
  setup.run.mesh_s = opening.since_snap_s + (next == kNobody ? 0.0 : mesh.t);
  setup.run.steps.clear();
  setup.run.toss_s = 0.0;
  if (!infer_run) return;
  setup.run.aim_x = aimOf(placeOf(setup, setup.carrier));
  setup.read = {};
  setup.run.patient = false;
  setup.run.bends = false;
}

void inferBlocks(Setup& setup) { Inference(setup).run(); }

void takeGivenJobs(Setup& setup, const Scenario& right) {
  for (Man& man : setup.men) {
    const StartMan& given = right.start->men.at(man.id);
    const std::string path = "/start/men/" + man.id;
    if (!given.block.empty()) man.block.kind = blockNamed(given.block, right, path + "/block");
    if (!given.on.empty()) man.block.target = defenderNamed(setup, given.on, right, path + "/on");
    if (!given.role.empty()) man.fit.if_right = partNamed(given.role, right, path + "/role");
  }
}

}  // namespace gapsound
