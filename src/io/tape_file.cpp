#include "io/tape_file.hpp"

#include <fmt/format.h>

#include <array>
#include <nlohmann/json.hpp>
#include <string_view>

#include "base/tick.hpp"
#include "io/atomic_file.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<std::string_view, 24> kHappenings = {
    "snap",          "handoff", "crosses_line", "saw_key",       "decides",      "engages",
    "whiffs",        "sheds",   "climbs",       "first_contact", "tries_tackle", "misses_tackle",
    "wraps",         "down",    "shoots",       "slants",        "end_state",    "backer_state",
    "out_of_bounds", "score",   "keeps",        "tosses",        "errs",         "line_state"};
static_assert(kHappenings.size() == static_cast<std::size_t>(Happening::line_state) + 1);

constexpr std::array<std::string_view, 5> kEndings = {"tackled", "forward_progress", "out", "score", "time"};
static_assert(kEndings.size() == static_cast<std::size_t>(Ending::time) + 1);

float single(double value) { return static_cast<float>(value); }

Json written(const Pose& pose) {
  return Json::array({single(pose.pos.x), single(pose.pos.y), single(pose.vel.x), single(pose.vel.y),
                      single(pose.face.x), single(pose.face.y), static_cast<int>(pose.engaged), pose.down});
}

Json written(const Frame& frame) {
  Json men = Json::array();
  for (const Pose& pose : frame.men) men.push_back(written(pose));
  return {{"men", men},
          {"ball", Json::array({single(frame.ball.x), single(frame.ball.y)})},
          {"carrier", static_cast<int>(frame.carrier)}};
}

Json written(const Event& event) {
  return {{"tick", event.tick},
          {"what", kHappenings[static_cast<std::size_t>(event.what)]},
          {"man", event.man},
          {"other", event.other},
          {"code", event.code}};
}

Json written(const Man& man) {
  return {{"id", man.id}, {"attacks", man.attacks}, {"mass_kg", man.body.mass_kg}};
}

template <typename List>
Json listed(const List& list) {
  Json written_list = Json::array();
  for (const auto& entry : list) written_list.push_back(written(entry));
  return written_list;
}

}  // namespace

void writeTape(const std::string& file, const Tape& tape) {
  const Json document = {{"gapsound_tape", Tape::kFormat},
                         {"seed", tape.seed},
                         {"title", tape.setup.title},
                         {"rate", kTicksPerSecond},
                         {"direction", tape.setup.direction},
                         {"men", listed(tape.setup.men)},
                         {"frames", listed(tape.record.frames)},
                         {"events", listed(tape.record.events)},
                         {"ended", kEndings[static_cast<std::size_t>(tape.record.ending)]},
                         {"yards", tape.record.yards},
                         {"hash", fmt::format("{:016x}", tape.record.hash)}};
  const auto bytes = Json::to_cbor(document);
  writeAtomically(file, {reinterpret_cast<const char*>(bytes.data()), bytes.size()});
}

}  // namespace gapsound
