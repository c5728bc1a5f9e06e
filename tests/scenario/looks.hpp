#pragma once
#include <doctest/doctest.h>

#include <string>

#include "../shipped.hpp"
#include "base/error.hpp"
#include "scenario/resolve.hpp"

namespace gapsound::looks {

inline Scenario scenario(const std::string& formation, const std::string& scheme, const std::string& front,
                         const std::string& shell = "quarters") {
  Scenario s;
  s.source = "look.json";
  s.offense.formation = formation;
  s.offense.scheme = scheme;
  s.defense.front = front;
  s.defense.shell = shell;
  return s;
}

inline Setup resolved(const Scenario& s) { return resolve(s, library(), model()); }
inline Setup resolved(const std::string& formation, const std::string& scheme, const std::string& front,
                      const std::string& shell = "quarters") {
  return resolved(scenario(formation, scheme, front, shell));
}

inline int indexOf(const Setup& setup, const std::string& id) {
  for (int i = 0; i < kMen; ++i) {
    if (setup.men[static_cast<std::size_t>(i)].id == id) return i;
  }
  FAIL("no man " << id);
  return kNobody;
}

inline const Man& man(const Setup& setup, const std::string& id) {
  return setup.men[static_cast<std::size_t>(indexOf(setup, id))];
}

inline std::string idOf(const Setup& setup, int index) {
  return index == kNobody ? "-" : setup.men[static_cast<std::size_t>(index)].id;
}

/// The InputError that resolving it throws.
inline InputError refusal(const Scenario& s) {
  try {
    static_cast<void>(resolved(s));
  } catch (const InputError& e) {
    return e;
  }
  FAIL("not refused");
  return InputError("", "", "", "");
}

}  // namespace gapsound::looks
