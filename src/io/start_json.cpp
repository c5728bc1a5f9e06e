#include "io/start_json.hpp"

#include <nlohmann/json.hpp>

namespace gapsound {
namespace {

using Json = nlohmann::ordered_json;

StartMan startManFrom(JsonReader place) {
  StartMan man;
  man.pos = {place.number("x"), place.number("y")};
  man.vel = {place.maybeNumber("vx").value_or(0.0), place.maybeNumber("vy").value_or(0.0)};
  man.facing_deg = place.maybeNumber("facing_deg", -360.0, 360.0);
  man.group = place.maybeText("group").value_or("");
  man.block = place.maybeText("block").value_or("");
  man.on = place.maybeText("on").value_or("");
  man.role = place.maybeText("role").value_or("");
  place.finish();
  return man;
}

Json written(const StartMan& man) {
  Json object = Json::object();
  if (!man.group.empty()) object["group"] = man.group;
  object["x"] = man.pos.x;
  object["y"] = man.pos.y;
  object["vx"] = man.vel.x;
  object["vy"] = man.vel.y;
  if (man.facing_deg) object["facing_deg"] = *man.facing_deg;
  for (const auto& [key, text] : {std::pair{"block", man.block}, {"on", man.on}, {"role", man.role}}) {
    if (!text.empty()) object[key] = text;
  }
  return object;
}

}  // namespace

Start startFrom(JsonReader place) {
  Start start;
  start.since_snap_s = place.number("since_snap_s", 0.0, 8.0);
  start.ball = place.text("ball");
  start.left_sideline = place.maybeNumber("left_sideline", -54.0, 0.0);
  auto men = place.child("men");
  for (const auto& [id, man] : men.members()) start.men[id] = startManFrom(man);
  place.finish();
  return start;
}

Json written(const Start& start) {
  Json object = {{"since_snap_s", start.since_snap_s}, {"ball", start.ball}};
  if (start.left_sideline) object["left_sideline"] = *start.left_sideline;
  for (const auto& [id, man] : start.men) object["men"][id] = written(man);
  return object;
}

}  // namespace gapsound
