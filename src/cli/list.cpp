#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "football/faults.hpp"
#include "io/scenario_file.hpp"

namespace gapsound {
namespace {

/// One line of a list: the names a file may use for it, and what it is.
struct Entry {
  std::vector<std::string> names;
  std::string words;
};
using Entries = std::vector<Entry>;

template <typename List>
Entries namedEntries(const List& list) {
  Entries entries;
  for (const auto& item : list) {
    entries.push_back({{item.id}, ""});
    if (item.name != item.id) entries.back().names.push_back(item.name);
  }
  return entries;
}

/// Names shared by several owners once each, with who has them.
Entries grouped(const std::vector<std::pair<std::string, std::string>>& name_and_owner) {
  std::map<std::string, std::string> owners;
  for (const auto& [name, owner] : name_and_owner) {
    auto& list = owners[name];
    list += (list.empty() ? "" : ", ") + owner;
  }
  Entries entries;
  for (const auto& [name, list] : owners) entries.push_back({{name}, list});
  return entries;
}

Entries variantEntries() {
  std::vector<std::pair<std::string, std::string>> found;
  for (const Scheme& scheme : library().schemes) {
    for (const auto& name : variantNames(scheme)) found.emplace_back(name, scheme.id);
  }
  return grouped(found);
}

Entries movementEntries() {
  std::vector<std::pair<std::string, std::string>> found;
  for (const Front& front : library().fronts) {
    for (const auto& name : movementNames(front)) found.emplace_back(name, front.id);
  }
  return grouped(found);
}

Entries checkEntries() {
  Entries entries;
  for (const Check& check : library().checks) {
    const char* against = check.against == Check::Against::nub     ? "a nub"
                          : check.against == Check::Against::trips ? "trips"
                                                                   : "an unbalanced line";
    entries.push_back({{check.name}, fmt::format("against {}; costs: {}", against, check.cost)});
  }
  return entries;
}

Entries splitEntries() {
  Entries entries;
  for (const SplitCall& call : library().bodies.split_calls) {
    entries.push_back(
        {{call.name},
         fmt::format("guard {}, tackle {}, end {} yd from the ball", call.guard, call.tackle, call.end)});
  }
  return entries;
}

Entries faultEntries() {
  Entries entries;
  for (const FaultFacts& f : faultTable()) {
    entries.push_back(
        {{std::string(f.name)},
         fmt::format("{} ({}; usually {} {}, up to {})", f.words, f.who, f.usual, f.unit, f.most)});
  }
  return entries;
}

Entries attributeEntries() {
  Entries entries;
  for (const Attribute& a : manAttributes()) entries.push_back({{a.name}, a.allowed});
  return entries;
}

Entries entriesOf(const std::string& kind) {
  const std::vector<std::string> kinds = {"formations", "fronts",   "shells",    "schemes",
                                          "motions",    "variants", "movements", "checks",
                                          "splits",     "faults",   "attributes"};
  if (kind == "formations") return namedEntries(library().formations);
  if (kind == "fronts") return namedEntries(library().fronts);
  if (kind == "shells") return namedEntries(library().shells);
  if (kind == "schemes") return namedEntries(library().schemes);
  if (kind == "motions") return namedEntries(library().motions);
  if (kind == "variants") return variantEntries();
  if (kind == "movements") return movementEntries();
  if (kind == "checks") return checkEntries();
  if (kind == "splits") return splitEntries();
  if (kind == "faults") return faultEntries();
  if (kind == "attributes") return attributeEntries();
  throw InputError("options", "kind", kind, nameHint(kind, kinds));
}

void printEntries(const Entries& entries) {
  std::size_t width = 0;
  for (const Entry& entry : entries) width = std::max(width, entry.names.front().size());
  for (const Entry& entry : entries) {
    const std::string words = entry.names.size() > 1 ? entry.names[1] : entry.words;
    fmt::print("{:<{}}  {}\n", entry.names.front(), width, words);
  }
}

}  // namespace

int runList(const ListOptions& options) {
  const Entries entries = entriesOf(options.kind);
  if (!options.json) {
    printEntries(entries);
    return 0;
  }
  Answer names = Answer::array();
  for (const Entry& entry : entries) {
    for (const auto& name : entry.names) names.push_back(name);
  }
  printAnswer({{"names", names}});
  return 0;
}

}  // namespace gapsound
