#include "football/library.hpp"

#include "base/nearest.hpp"

namespace gapsound {
namespace {

template <class T>
const T* named(const std::vector<T>& entries, const std::string& name) {
  for (const T& entry : entries) {
    if (sameName(entry.id, name) || sameName(entry.name, name)) return &entry;
    for (const std::string& alias : entry.aliases) {
      if (sameName(alias, name)) return &entry;
    }
  }
  return nullptr;
}

template <class T>
std::vector<std::string> namesOf(const std::vector<T>& entries) {
  std::vector<std::string> names;
  for (const T& entry : entries) {
    names.push_back(entry.id);
    if (entry.name != entry.id) names.push_back(entry.name);
  }
  return names;
}

}  // namespace

const Formation* findFormation(const Library& library, const std::string& name) {
  return named(library.formations, name);
}
const Front* findFront(const Library& library, const std::string& name) {
  return named(library.fronts, name);
}
const Shell* findShell(const Library& library, const std::string& name) {
  return named(library.shells, name);
}
const Scheme* findScheme(const Library& library, const std::string& name) {
  return named(library.schemes, name);
}

const Motion* findMotion(const Library& library, const std::string& name) {
  return named(library.motions, name);
}

const Check* findCheck(const Library& library, const std::string& name) {
  for (const Check& check : library.checks) {
    if (sameName(check.name, name)) return &check;
    for (const std::string& alias : check.aliases) {
      if (sameName(alias, name)) return &check;
    }
  }
  return nullptr;
}

const SplitCall* findSplits(const Bodies& bodies, const std::string& name) {
  for (const SplitCall& call : bodies.split_calls) {
    if (sameName(call.name, name)) return &call;
  }
  return nullptr;
}

const Movement* findMovement(const Front& front, const std::string& name) {
  for (const Movement& movement : front.movements) {
    if (sameName(movement.name, name)) return &movement;
  }
  return nullptr;
}

std::vector<std::string> formationNames(const Library& library) { return namesOf(library.formations); }
std::vector<std::string> frontNames(const Library& library) { return namesOf(library.fronts); }
std::vector<std::string> shellNames(const Library& library) { return namesOf(library.shells); }
std::vector<std::string> schemeNames(const Library& library) { return namesOf(library.schemes); }
std::vector<std::string> motionNames(const Library& library) { return namesOf(library.motions); }

std::vector<std::string> checkNames(const Library& library) {
  std::vector<std::string> names;
  for (const Check& check : library.checks) names.push_back(check.name);
  return names;
}

std::vector<std::string> splitNames(const Bodies& bodies) {
  std::vector<std::string> names;
  for (const SplitCall& call : bodies.split_calls) names.push_back(call.name);
  return names;
}

std::vector<std::string> variantNames(const Scheme& scheme) {
  std::vector<std::string> names{"base"};
  for (const auto& [name, change] : scheme.variants) names.push_back(name);
  return names;
}

std::vector<std::string> movementNames(const Front& front) {
  std::vector<std::string> names{"none"};
  for (const Movement& movement : front.movements) names.push_back(movement.name);
  return names;
}

}  // namespace gapsound
