#include "scenario/bracket.hpp"

#include <algorithm>

#include "scenario/check.hpp"

namespace gapsound {
namespace {

/// The fit of one side of the run as it is called, from the inside out.
class FitOrder {
 public:
  FitOrder(const Setup& setup, int side) : setup_(setup), side_(side) {
    const Structure structure = structureOnEdge();
    addBackersBehind();
    if (structure == Structure::spill) add(FitRole::edge);
    add(FitRole::first_backer);
    if (structure == Structure::box) add(FitRole::edge);
    add(FitRole::alley);
    add(FitRole::force);
  }

  /// Nearest man of the fit inside (-1) or outside (+1) of this one; kNobody: there is none.
  [[nodiscard]] int beside(int man, int way) const {
    const auto found = std::find(order_.begin(), order_.end(), man);
    if (found == order_.end()) return kNobody;
    if (way < 0) return found == order_.begin() ? kNobody : *(found - 1);
    return found + 1 == order_.end() ? kNobody : *(found + 1);
  }
  /// The same without the end: he is the kicker's.
  [[nodiscard]] int backerBeside(int man, int way) const {
    const int next = beside(man, way);
    return next != kNobody && roleOf(next) == FitRole::edge ? beside(next, way) : next;
  }
  [[nodiscard]] bool has(int man) const {
    return std::find(order_.begin(), order_.end(), man) != order_.end();
  }
  [[nodiscard]] int first() const { return with(FitRole::first_backer); }
  [[nodiscard]] int behind() const { return behind_; }

 private:
  [[nodiscard]] FitRole roleOf(int man) const {
    const FitJob& fit = setup_.men[static_cast<std::size_t>(man)].fit;
    return side_ > 0 ? fit.if_right : fit.if_left;
  }
  [[nodiscard]] int with(FitRole role) const {
    for (int man = kOffense; man < kMen; ++man) {
      if (roleOf(man) == role) return man;
    }
    return kNobody;
  }
  [[nodiscard]] Structure structureOnEdge() const {
    const int edge = with(FitRole::edge);
    return edge == kNobody ? Structure::spill
                           : structureFor(setup_.men[static_cast<std::size_t>(edge)].fit, side_);
  }
  void add(FitRole role) {
    const int man = with(role);
    if (man != kNobody && !has(man)) order_.push_back(man);
  }
  void addBackersBehind() {
    const int overlap = with(FitRole::overlap_backer);
    const bool shoots = overlap != kNobody &&
                        setup_.men[static_cast<std::size_t>(overlap)].fit.bs_backer == BackSideBacker::shoot;
    if (!shoots) add(FitRole::overlap_backer);
    add(FitRole::fill_backer);
    if (!order_.empty()) behind_ = order_.back();
  }

  const Setup& setup_;
  int side_;
  int behind_ = kNobody;
  std::vector<int> order_;
};

int targetOf(const BlockJob& job) { return job.target != kNobody ? job.target : job.climb_to; }

class Bracketing {
 public:
  explicit Bracketing(const Setup& setup)
      : setup_(setup), front_(setup, setup.direction), back_(setup, -setup.direction) {}

  [[nodiscard]] Bracket around(int blocker) const {
    const Man& man = at(blocker);
    const int target = targetOf(man.block);
    Bracket bracket{man.id, idOf(target), "", ""};
    const auto [inside, outside] = sidesOf(target);
    bracket.inside = idOf(inside);
    bracket.outside = idOf(outside);
    return bracket;
  }

 private:
  struct Sides {
    int inside, outside;
  };

  [[nodiscard]] const Man& at(int man) const { return setup_.men[static_cast<std::size_t>(man)]; }
  [[nodiscard]] std::string idOf(int man) const { return man == kNobody ? "" : at(man).id; }
  [[nodiscard]] FitRole roleOf(int man) const {
    return setup_.direction > 0 ? at(man).fit.if_right : at(man).fit.if_left;
  }

  [[nodiscard]] Sides sidesOf(int target) const {
    if (target == kNobody) return {front_.behind(), front_.first()};
    switch (roleOf(target)) {
      case FitRole::back_edge:
        return aroundEdge(back_, target, -setup_.direction);
      case FitRole::edge:
        return aroundEdge(front_, target, setup_.direction);
      case FitRole::interior:
        return {target, front_.first()};
      case FitRole::overlap_backer:
      case FitRole::fill_backer:
        return {target, front_.backerBeside(target, +1)};
      default:
        break;
    }
    if (!front_.has(target)) return {front_.first(), target};
    return {front_.backerBeside(target, -1), target};
  }

  /// The end takes the kicker's inside half in a spill, his outside half in a box.
  [[nodiscard]] Sides aroundEdge(const FitOrder& order, int end, int side) const {
    if (structureFor(at(end).fit, side) == Structure::spill) return {end, order.beside(end, +1)};
    return {order.beside(end, -1), end};
  }

  const Setup& setup_;
  FitOrder front_, back_;
};

}  // namespace

bool isLead(const BlockJob& job, bool attached) {
  const BlockKind kind = job.kind;
  const bool inserts = kind == BlockKind::kick || kind == BlockKind::log || kind == BlockKind::wrap ||
                       kind == BlockKind::lead || kind == BlockKind::insert;
  return inserts && !attached;
}

std::vector<Bracket> bracketsOf(const Setup& setup) {
  const Bracketing bracketing(setup);
  const LineShape shape = lineShapeOf(setup);
  std::vector<Bracket> brackets;
  for (int i = 0; i < kOffense; ++i) {
    const BlockJob& job = setup.men[static_cast<std::size_t>(i)].block;
    const bool attached = isAttached(shape, i);
    const bool pulls = attached && job.pull != PullStyle::none;
    if (pulls || isLead(job, attached)) brackets.push_back(bracketing.around(i));
  }
  return brackets;
}

}  // namespace gapsound
