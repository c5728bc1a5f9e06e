#include "io/seen_file.hpp"

#include <fmt/format.h>

#include <charconv>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"
#include "scenario/setup.hpp"

namespace gapsound {
namespace {

constexpr double kWidest = 60.0, kDeepest = 110.0;  // yd

std::vector<std::string> menOf(const Setup& look) {
  std::vector<std::string> ids;
  for (const Man& man : look.men) ids.push_back(man.id);
  return ids;
}

int indexOf(const Setup& look, const std::string& id) {
  for (int k = 0; k < kMen; ++k)
    if (const Man& man = look.men[static_cast<std::size_t>(k)];
        sameName(man.id, id) || sameName(man.drawn, id))
      return k;
  return kNobody;
}

[[noreturn]] void refuse(const std::string& value, const std::string& allowed) {
  throw InputError("options", "--saw", value, allowed);
}

double numberOf(const std::string& text, const std::string& whole, double most) {
  double value = 0.0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  if (text.empty() || read.ec != std::errc() || read.ptr != end || !(value >= -most && value <= most))
    refuse(whole, fmt::format("yards, {:g} to {:g}", -most, most));
  return value;
}

template <class State>
State stateOf(const std::string& word, int count) {
  std::vector<std::string> names;
  for (int k = 0; k < count; ++k) {
    names.emplace_back(nameOf(static_cast<State>(k)));
    if (sameName(names.back(), word)) return static_cast<State>(k);
  }
  refuse(word, fmt::format("{}", fmt::join(names, ", ")));
}

void layPlace(const std::string& who, const std::string& value, const Setup& look, Seen& seen) {
  const std::size_t dot = who.find('.');
  const std::string axis = dot == std::string::npos ? "" : who.substr(dot + 1);
  const int man = indexOf(look, who.substr(0, dot));
  if (man == kNobody) refuse(who, "end, backer, or a man: " + nameHint(who.substr(0, dot), menOf(look)));
  Seen::Place& place = seen.men[static_cast<std::size_t>(man)];
  const std::size_t comma = value.find(',');
  if (axis == "x" && comma == std::string::npos)
    place.x = numberOf(value, value, kWidest);
  else if (axis == "y" && comma == std::string::npos)
    place.y = numberOf(value, value, kDeepest);
  else if (axis.empty() && comma != std::string::npos)
    place = {numberOf(value.substr(0, comma), value, kWidest),
             numberOf(value.substr(comma + 1), value, kDeepest)};
  else
    refuse(who + "=" + value, "MAN=X,Y or MAN.x=X or MAN.y=Y");
}

}  // namespace

void readPlaces(const std::string& file, const Setup& look, Seen& seen) {
  const CsvTable table(file, readWhole(file));
  table.requireColumns({"id", "x", "y"}, {"side", "position"});
  std::array<bool, kMen> told{};
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string id = table.text(row, "id");
    const int man = indexOf(look, id);
    if (man == kNobody) table.refuse(row, "id", nameHint(id, menOf(look)));
    const auto k = static_cast<std::size_t>(man);
    if (std::exchange(told[k], true)) table.refuse(row, "id", "every man once");
    seen.men[k] = {table.number(row, "x", -kWidest, kWidest), table.number(row, "y", -kDeepest, kDeepest)};
  }
}

void laySighting(const std::string& text, const Setup& look, Seen& seen) {
  const std::size_t equals = text.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == text.size())
    refuse(text, "MAN=X,Y, MAN.x=X, MAN.y=Y, end=STATE or backer=STATE");
  const std::string who = text.substr(0, equals), value = text.substr(equals + 1);
  if (sameName(who, "end"))
    seen.end = stateOf<EndState>(value, kEndStates);
  else if (sameName(who, "backer"))
    seen.backer = stateOf<BackerState>(value, kBackerStates);
  else
    layPlace(who, value, look, seen);
}

void laySighting(const Start& start, const std::string& source, const Setup& look, Seen& seen) {
  seen.t = start.since_snap_s;
  for (const auto& [id, man] : start.men) {
    const int k = indexOf(look, id);
    if (k == kNobody) throw InputError(source, "/start/men/" + id, "unknown man", nameHint(id, menOf(look)));
    seen.men[static_cast<std::size_t>(k)] = {man.pos.x, man.pos.y};
  }
}

}  // namespace gapsound
