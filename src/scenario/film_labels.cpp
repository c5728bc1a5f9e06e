#include "scenario/film_labels.hpp"

#include <algorithm>
#include <cctype>
#include <map>

#include "scenario/film.hpp"

namespace gapsound {
namespace {

using G = Group;

std::string upper(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return text;
}

const std::map<std::string, FilmLabel>& attackerLabels() {
  static const std::map<std::string, FilmLabel> table = {
      {"LT", {G::off_tackle, "LT"}}, {"RT", {G::off_tackle, "RT"}}, {"OT", {G::off_tackle, ""}},
      {"T", {G::off_tackle, ""}},    {"LG", {G::guard, "LG"}},      {"RG", {G::guard, "RG"}},
      {"OG", {G::guard, ""}},        {"G", {G::guard, ""}},         {"C", {G::center, "C"}},
      {"OC", {G::center, "C"}},      {"OL", {G::guard, ""}},        {"TE", {G::tight_end, ""}},
      {"Y", {G::tight_end, ""}},     {"U", {G::tight_end, ""}},     {"V", {G::tight_end, ""}},
      {"H", {G::tight_end, ""}},     {"WR", {G::receiver, ""}},     {"X", {G::receiver, ""}},
      {"Z", {G::receiver, ""}},      {"A", {G::receiver, ""}},      {"B", {G::receiver, ""}},
      {"SE", {G::receiver, ""}},     {"FL", {G::receiver, ""}},     {"SL", {G::receiver, ""}},
      {"RB", {G::back, ""}},         {"HB", {G::back, ""}},         {"TB", {G::back, ""}},
      {"FB", {G::fullback, ""}},     {"F", {G::fullback, ""}},      {"QB", {G::quarterback, "Q"}},
      {"Q", {G::quarterback, "Q"}}};
  return table;
}

const std::map<std::string, FilmLabel>& defenderLabels() {
  static const std::map<std::string, FilmLabel> table = {
      {"DE", {G::edge, ""}},     {"EDGE", {G::edge, ""}},    {"ED", {G::edge, ""}},
      {"LDE", {G::edge, ""}},    {"RDE", {G::edge, ""}},     {"LE", {G::edge, ""}},
      {"RE", {G::edge, ""}},     {"SE", {G::edge, ""}},      {"WE", {G::edge, ""}},
      {"RUSH", {G::edge, ""}},   {"DT", {G::tackle, ""}},    {"LDT", {G::tackle, ""}},
      {"RDT", {G::tackle, ""}},  {"NT", {G::tackle, "NT"}},  {"NG", {G::tackle, "NT"}},
      {"N", {G::tackle, "NT"}},  {"DG", {G::tackle, ""}},    {"DL", {G::tackle, ""}},
      {"LB", {G::backer, ""}},   {"ILB", {G::backer, ""}},   {"MLB", {G::backer, ""}},
      {"OLB", {G::backer, ""}},  {"LOLB", {G::backer, ""}},  {"ROLB", {G::backer, ""}},
      {"SLB", {G::backer, ""}},  {"WLB", {G::backer, ""}},   {"M", {G::backer, ""}},
      {"W", {G::backer, ""}},    {"S", {G::backer, ""}},     {"CB", {G::corner, ""}},
      {"LCB", {G::corner, ""}},  {"RCB", {G::corner, ""}},   {"CR", {G::corner, ""}},
      {"CL", {G::corner, ""}},   {"DB", {G::corner, ""}},    {"NB", {G::safety, "NK"}},
      {"NK", {G::safety, "NK"}}, {"NCB", {G::safety, "NK"}}, {"FS", {G::safety, "FS"}},
      {"SS", {G::safety, "SS"}}, {"SAF", {G::safety, ""}},   {"OV", {G::safety, "OV"}}};
  return table;
}

}  // namespace

std::optional<FilmLabel> labelled(const std::string& label, bool attacks, double depth, bool line_full) {
  constexpr double kDeep = 6.5;  // yd
  const std::string name = upper(label);
  if (attacks && name == "T" && line_full) return FilmLabel{G::back, ""};
  if (!attacks && name == "S" && depth > kDeep) return FilmLabel{G::safety, ""};
  const auto& table = attacks ? attackerLabels() : defenderLabels();
  const auto found = table.find(name);
  if (found == table.end()) return std::nullopt;
  return found->second;
}

bool isPosition(const std::string& label) {
  return labelled(label, true, 0.0, false).has_value() || labelled(label, false, 0.0, false).has_value();
}

}  // namespace gapsound
