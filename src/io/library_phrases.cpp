#include "io/library_parts.hpp"

namespace gapsound {
namespace {

constexpr std::array kRoleNames{"edge",        "back_edge",      "interior", "first_backer",
                                "fill_backer", "overlap_backer", "force",    "alley",
                                "cutback",     "corner",         "out"};
static_assert(kRoleNames.size() == kFitRoles);
constexpr std::array kStructureNames{"spill", "box"};

RoleWords::Way wayFrom(JsonReader place) {
  RoleWords::Way way{place.text("landmark"), place.text("technique")};
  place.finish();
  return way;
}

RoleWords roleFrom(JsonReader place) {
  RoleWords role;
  role.name = place.text("name");
  for (std::size_t s = 0; s < role.ways.size(); ++s) role.ways[s] = wayFrom(place.child(kStructureNames[s]));
  if (place.has("no_kick")) role.no_kick = wayFrom(place.child("no_kick"));
  place.finish();
  return role;
}

LineRead lineReadFrom(JsonReader place) {
  LineRead read;
  read.seen = place.text("if");
  for (std::size_t s = 0; s < read.does.size(); ++s) read.does[s] = place.text(kStructureNames[s]);
  place.finish();
  return read;
}

template <class State, std::size_t N>
void readWords(JsonReader place, std::array<std::string, N>& words) {
  for (std::size_t i = 0; i < N; ++i) words[i] = place.text(std::string(nameOf(static_cast<State>(i))));
  place.finish();
}

}  // namespace

void readPhrases(JsonReader file, Library& library) {
  Phrases& phrases = library.phrases;
  JsonReader roles = file.child("roles");
  for (std::size_t i = 0; i < phrases.roles.size(); ++i)
    phrases.roles[i] = roleFrom(roles.child(kRoleNames[i]));
  roles.finish();
  for (const JsonReader& item : file.child("line_reads").items())
    phrases.line_reads.push_back(lineReadFrom(item));
  readWords<EndState>(file.child("ends"), phrases.ends);
  readWords<BackerState>(file.child("backers"), phrases.backers);
  readWords<Fit>(file.child("fits"), phrases.fits);
  file.finish();
}

}  // namespace gapsound
