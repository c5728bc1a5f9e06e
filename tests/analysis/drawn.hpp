#pragma once
#include <initializer_list>
#include <string_view>

#include "analysis/account.hpp"
#include "base/tick.hpp"
#include "tape/tape.hpp"

namespace gapsound::drawn {

struct Place {
  const char* id;
  Group group;
  int level;
  Vec2 spot;
  const char* gap;
  double gap_x;
  FitRole role;
};

/// Power right from the I against an over front: the guard pulls, the fullback kicks the end out.
inline constexpr Place kPlaces[kMen] = {
    {"LT", Group::off_tackle, 0, {-2.75, -1.1}, "", 0, FitRole::out},
    {"LG", Group::guard, 0, {-1.35, -1.0}, "", 0, FitRole::out},
    {"C", Group::center, 0, {0.0, -0.5}, "", 0, FitRole::out},
    {"RG", Group::guard, 0, {1.35, -1.0}, "", 0, FitRole::out},
    {"RT", Group::off_tackle, 0, {2.75, -1.1}, "", 0, FitRole::out},
    {"Y", Group::tight_end, 0, {4.4, -1.0}, "", 0, FitRole::out},
    {"F", Group::fullback, 0, {0.0, -4.5}, "", 0, FitRole::out},
    {"T", Group::back, 0, {0.0, -7.2}, "", 0, FitRole::out},
    {"Q", Group::quarterback, 0, {0.0, -1.3}, "", 0, FitRole::out},
    {"X", Group::receiver, 0, {-16.0, -0.7}, "", 0, FitRole::out},
    {"Z", Group::receiver, 0, {15.0, -2.0}, "", 0, FitRole::out},
    {"SE", Group::edge, 1, {4.8, 0.8}, "D+", 5.3, FitRole::edge},
    {"DT", Group::tackle, 1, {1.75, 0.8}, "B+", 2.05, FitRole::interior},
    {"NT", Group::tackle, 1, {-0.4, 0.8}, "A-", -0.68, FitRole::interior},
    {"WE", Group::edge, 1, {-3.15, 0.8}, "C-", -3.6, FitRole::back_edge},
    {"S", Group::backer, 2, {3.6, 4.5}, "C+", 3.58, FitRole::first_backer},
    {"M", Group::backer, 2, {0.7, 4.5}, "A+", 0.68, FitRole::fill_backer},
    {"W", Group::backer, 2, {-2.05, 4.5}, "B-", -2.05, FitRole::overlap_backer},
    {"SS", Group::safety, 3, {6.0, 9.0}, "alley+", 8.0, FitRole::alley},
    {"FS", Group::safety, 3, {-6.0, 10.0}, "cutback", -5.0, FitRole::cutback},
    {"CR", Group::corner, 3, {15.0, 7.0}, "deep", 15.0, FitRole::corner},
    {"CL", Group::corner, 3, {-16.0, 7.0}, "deep", -16.0, FitRole::corner},
};

inline int man(std::string_view id) {
  for (int k = 0; k < kMen; ++k)
    if (kPlaces[k].id == id) return k;
  return kNobody;
}
inline std::size_t at(std::string_view id) { return static_cast<std::size_t>(man(id)); }

inline Setup power() {
  Setup s;
  s.title = "Power right, drawn by hand";
  for (std::size_t k = 0; k < kMen; ++k) {
    const Place& place = kPlaces[k];
    Man& m = s.men[k];
    m.id = place.id, m.group = place.group, m.spot = place.spot, m.attacks = k < kOffense;
    m.fit.level = place.level, m.fit.gap = place.gap, m.fit.gap_x = place.gap_x;
    m.fit.if_right = place.role, m.fit.if_left = place.role;
    m.body.shoulder = 0.4, m.body.chest = 0.2;
  }
  const auto job = [&](const char* id, BlockKind kind, const char* target) {
    s.men[at(id)].block.kind = kind;
    s.men[at(id)].block.target = man(target);
  };
  job("F", BlockKind::kick, "SE"), job("RG", BlockKind::post, "DT"), job("RT", BlockKind::drive, "DT");
  job("Y", BlockKind::climb, "M"), job("C", BlockKind::back, "NT"), job("LG", BlockKind::wrap, "S");
  job("LT", BlockKind::hinge, "WE");
  s.men[at("LG")].block.pull = PullStyle::skip;
  s.passer = man("Q"), s.carrier = man("T"), s.run.aim_x = 2.4;
  return s;
}

struct Moved {
  const char* id;
  Vec2 pos;
  Vec2 face{0.0, 1.0};
  const char* engaged = "";
};

/// The snap with some men moved; the ball with its carrier.
inline Frame picture(const Setup& setup, const char* carrier, std::initializer_list<Moved> moved) {
  Frame f;
  for (std::size_t k = 0; k < kMen; ++k) {
    f.men[k].pos = setup.men[k].spot;
    f.men[k].face = {0.0, k < kOffense ? 1.0 : -1.0};
  }
  for (const Moved& m : moved) {
    f.men[at(m.id)].pos = m.pos;
    f.men[at(m.id)].face = m.face;
    if (*m.engaged == 0) continue;
    f.men[at(m.id)].engaged = static_cast<std::int8_t>(man(m.engaged));
    f.men[at(m.engaged)].engaged = static_cast<std::int8_t>(man(m.id));
  }
  f.carrier = static_cast<std::int8_t>(man(carrier));
  f.ball = f.men[at(carrier)].pos;
  return f;
}

}  // namespace gapsound::drawn
