#include "io/rep_log.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <nlohmann/json.hpp>
#include <optional>
#include <string_view>
#include <type_traits>
#include <utility>

#include "base/error.hpp"
#include "base/stream.hpp"
#include "io/json_reader.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kKind = "reps";
constexpr std::size_t kGapName = 15;
constexpr std::size_t kLongestHead = 1U << 20;
constexpr std::size_t kFlushAt = 1U << 20;

[[noreturn]] void refuseAccess(const std::string& file, const char* what) {
  throw Error(ExitCode::noAccess, file + ": " + what + ": " + std::strerror(errno));
}

// A record: the fields below as eight bytes each, the name of the lane, then a key of all of it.

template <typename Rep, typename Visit>
void visitNumbers(Rep& r, const Visit& visit) {
  visit(r.yards), visit(r.t_handoff), visit(r.t_line), visit(r.t_first_contact), visit(r.t_end);
  visit(r.speed_handoff), visit(r.depth_handoff), visit(r.speed_line), visit(r.best_speed);
  visit(r.speed_1s), visit(r.speed_1_5s), visit(r.speed_2s), visit(r.cross_x);
  visit(r.cutback_open), visit(r.cutback_taken), visit(r.bounced), visit(r.kept), visit(r.stood_still);
  visit(r.nearest_defender_line), visit(r.defenders_within_3), visit(r.yards_after_contact);
  visit(r.first_contact_man), visit(r.tackle_tries), visit(r.tackle_misses);
  visit(r.line_forward_1s), visit(r.line_forward_2s), visit(r.line_forward_3s);
  visit(r.backers_forward_1s), visit(r.backers_forward_1_5s), visit(r.backers_forward_2s);
  visit(r.blockers), visit(r.blockers_touched), visit(r.pullers), visit(r.pullers_met);
  visit(r.pullers_through);
  visit(r.fitted_otherwise), visit(r.had_contact), visit(r.hash);
}

std::size_t numbersOf() {
  std::size_t n = 0;
  const Summary none;
  visitNumbers(none, [&](const auto&) { ++n; });
  return n;
}

const std::size_t kNumbers = numbersOf();
const std::size_t kBody = 8 * (kNumbers + 2) + kGapName + 1;
const std::size_t kRecord = kBody + 8;

void put(std::string& out, const void* bytes, std::size_t n) {
  out.append(static_cast<const char*>(bytes), n);
}

template <typename Value>
void putNumber(std::string& out, const Value& value) {
  std::array<char, 8> bytes{};
  std::memcpy(bytes.data(), &value, sizeof(Value));
  put(out, bytes.data(), bytes.size());
}

std::string recordOf(const Summary& rep) {
  std::string record;
  record.reserve(kRecord);
  visitNumbers(rep, [&](const auto& value) { putNumber(record, value); });
  putNumber(record, static_cast<std::uint64_t>(rep.ending));
  putNumber(record, static_cast<std::uint64_t>(rep.lane_relation));
  std::array<char, kGapName + 1> gap{};
  std::memcpy(gap.data(), rep.lane_gap.data(), std::min(rep.lane_gap.size(), kGapName));
  put(record, gap.data(), gap.size());
  putNumber(record, keyOf(record));
  return record;
}

template <typename Value>
void getNumber(const char*& from, Value& value) {
  if constexpr (std::is_same_v<Value, bool>)
    value = *from != 0;
  else
    std::memcpy(&value, from, sizeof(Value));
  from += 8;
}

bool isSound(const Summary& rep) {
  bool sound = rep.first_contact_man >= kNobody && rep.first_contact_man < kMen;
  visitNumbers(rep, [&](const auto& value) { sound = sound && std::isfinite(static_cast<double>(value)); });
  return sound;
}

/// Empty for a record that was cut short or spoilt.
std::optional<Summary> repIn(std::string_view record) {
  if (record.size() != kRecord) return {};
  const char* from = record.data() + kBody;
  std::uint64_t key = 0, ending = 0, relation = 0;
  getNumber(from, key);
  if (key != keyOf(record.substr(0, kBody))) return {};
  Summary rep;
  from = record.data();
  visitNumbers(rep, [&](auto& value) { getNumber(from, value); });
  getNumber(from, ending);
  getNumber(from, relation);
  if (ending > static_cast<std::uint64_t>(Ending::time) ||
      relation > static_cast<std::uint64_t>(Relation::cutback))
    return {};
  rep.ending = static_cast<Ending>(ending);
  rep.lane_relation = static_cast<Relation>(relation);
  rep.lane_gap = std::string(from, strnlen(from, kGapName));
  if (!isSound(rep)) return {};
  return rep;
}

std::string lineOf(const RepLogHead& head) {
  const Json line = {{"gapsound", 1},     {"kind", kKind},     {"record", kRecord},   {"study", head.study},
                     {"call", head.call}, {"part", head.part}, {"parts", head.parts}, {"reps", head.reps}};
  return line.dump() + "\n";
}

RepLogHead headIn(const std::string& file, const std::string& line) {
  const auto document = parsedJson(file, line);
  JsonReader root(file, document);
  static_cast<void>(root.whole("gapsound", 1, 1));
  static_cast<void>(root.word("kind", {std::string(kKind)}));
  static_cast<void>(root.whole("record", static_cast<int>(kRecord), static_cast<int>(kRecord)));
  RepLogHead head;
  head.study = root.text("study");
  head.call = root.child("call").texts();
  head.parts = root.whole("parts", 1, 100000);
  head.part = root.whole("part", 1, head.parts);
  head.reps = static_cast<std::uint64_t>(root.number("reps", 0.0, 1e12));
  root.finish();
  return head;
}

struct Opened {
  std::ifstream in;
  RepLogHead head;
  std::uint64_t body = 0;  // byte at which the records begin
};

Opened opened(const std::string& file) {
  Opened log{std::ifstream(file, std::ios::binary), {}, 0};
  if (!log.in) refuseAccess(file, "cannot be read");
  std::string line(kLongestHead, '\0');
  log.in.getline(line.data(), static_cast<std::streamsize>(line.size()));
  line.resize(std::strlen(line.c_str()));
  if (!log.in || log.in.eof() || line.empty() || line.front() != '{')
    throw InputError(file, "/", "no first line of a log of reps", "a file that --part wrote");
  log.head = headIn(file, line);
  log.body = line.size() + 1;
  return log;
}

/// Opened for this program alone.
int heldOpen(const std::string& file, int flags) {
  const int handle = ::open(file.c_str(), flags | O_WRONLY | O_APPEND | O_CLOEXEC, 0666);
  if (handle < 0) refuseAccess(file, "cannot be written");
  if (flock(handle, LOCK_EX | LOCK_NB) == 0) return handle;
  close(handle);
  throw Error(ExitCode::noAccess, file + ": cannot be written: the same study is being played into it");
}

}  // namespace

RepLog::RepLog(std::string file, int handle) : file_(std::move(file)), handle_(handle) {}
RepLog::RepLog(RepLog&& other) noexcept
    : file_(std::move(other.file_)),
      pending_(std::move(other.pending_)),
      handle_(std::exchange(other.handle_, -1)) {}

RepLog::~RepLog() {
  if (handle_ >= 0) close(handle_);
}

RepLog RepLog::create(const std::string& file, const RepLogHead& head) {
  RepLog log(file, heldOpen(file, O_CREAT));
  if (ftruncate(log.handle_, 0) != 0 && errno != EINVAL) refuseAccess(file, "cannot be written");
  log.pending_ = lineOf(head);
  log.flush();
  return log;
}

RepLog RepLog::open(const std::string& file) {
  const RepLogContent content = inspectRepLog(file);
  const auto sound = opened(file).body + content.reps * kRecord;
  RepLog log(file, heldOpen(file, 0));
  if (ftruncate(log.handle_, static_cast<off_t>(sound)) != 0) refuseAccess(file, "cannot be written");
  return log;
}

void RepLog::append(const Summary& rep) {
  pending_ += recordOf(rep);
  if (pending_.size() >= kFlushAt) flush();
}

void RepLog::flush() {
  std::string_view rest = pending_;
  while (!rest.empty()) {
    const ssize_t done = ::write(handle_, rest.data(), rest.size());
    if (done < 0 && errno == EINTR) continue;
    if (done < 0) refuseAccess(file_, "cannot be written");
    rest.remove_prefix(static_cast<std::size_t>(done));
  }
  pending_.clear();
}

void RepLog::moveTo(const std::string& name) {
  flush();
  if (fsync(handle_) != 0 || std::rename(file_.c_str(), name.c_str()) != 0)
    refuseAccess(name, "cannot be written");
  file_ = name;
}

RepLogContent readRepLog(const std::string& file, const std::function<bool(const Summary&)>& take) {
  Opened log = opened(file);
  RepLogContent content{log.head, 0};
  std::string record(kRecord, '\0');
  while (content.reps < content.head.reps &&
         log.in.read(record.data(), static_cast<std::streamsize>(kRecord))) {
    const auto rep = repIn(record);
    if (!rep || !take(*rep)) break;
    ++content.reps;
  }
  return content;
}

RepLogContent inspectRepLog(const std::string& file) {
  return readRepLog(file, [](const Summary&) { return true; });
}

}  // namespace gapsound
