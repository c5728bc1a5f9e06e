#include "cli/study_run.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <charconv>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <optional>

#include "base/error.hpp"
#include "base/stream.hpp"
#include "cli/print.hpp"
#include "io/rep_log.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

constexpr std::size_t kFlushEvery = 32;  // reps
constexpr std::size_t kProbed = 8;       // looks whose first rep goes into the key of a study

std::atomic<bool> interrupted{false};

/// Turns Ctrl-C into a wish to stop for as long as it lives; a second one ends the program at once.
class InterruptGuard {
 public:
  InterruptGuard() {
    interrupted = false;
    for (std::size_t k = 0; k < kSignals.size(); ++k) {
      struct sigaction action {};
      action.sa_handler = [](int) { interrupted = true; };
      action.sa_flags = static_cast<int>(SA_RESETHAND);
      sigaction(kSignals[k], &action, &before_[k]);
    }
  }
  ~InterruptGuard() {
    for (std::size_t k = 0; k < kSignals.size(); ++k) sigaction(kSignals[k], &before_[k], nullptr);
  }
  InterruptGuard(const InterruptGuard&) = delete;
  InterruptGuard& operator=(const InterruptGuard&) = delete;

 private:
  static constexpr std::array<int, 2> kSignals = {SIGINT, SIGTERM};
  std::array<struct sigaction, 2> before_{};
};

std::string keyOfStudy(const StudyJob& job, std::uint64_t first_seed) {
  std::uint64_t key = mixed(first_seed, job.schedule.reps());
  for (const auto& text : job.looks.texts) key = mixed(key, keyOf(text));
  for (const auto& field : kModelFields) key = mixed(key, keyOf(fmt::format("{}", job.model.*field.value)));
  const auto& setups = job.looks.setups;
  for (std::size_t k = 0; k < setups.size(); k += std::max<std::size_t>(setups.size() / kProbed, 1))
    key = mixed(key, playTape(setups[k], job.model, first_seed).record.hash);
  return fmt::format("{:016x}", key);
}

struct PartOf {
  int part = 1, parts = 1;
};

PartOf partNamed(const std::string& text) {
  PartOf part;
  const char* const end = text.data() + text.size();
  const auto first = std::from_chars(text.data(), end, part.part);
  if (first.ec == std::errc{} && first.ptr != end && *first.ptr == '/') {
    const auto second = std::from_chars(first.ptr + 1, end, part.parts);
    const bool sound = second.ec == std::errc{} && second.ptr == end && part.parts <= 100000;
    if (sound && part.part >= 1 && part.part <= part.parts) return part;
  }
  throw InputError("options", "--part", text, "K/N with K from 1 to N, N at most 100000, as in 3/7");
}

std::filesystem::path stateFolder() {
  if (const char* state = std::getenv("XDG_STATE_HOME"); state && *state)
    return std::filesystem::path(state) / "gapsound";
  const char* home = std::getenv("HOME");
  return std::filesystem::path(home ? home : "/tmp") / ".local/state/gapsound";
}

/// Plays one schedule with a log beside it.
class Player {
 public:
  Player(const StudyJob& job, const ManyOptions& options)
      : job_(job), options_(options), schedule_(job.schedule), key_(keyOfStudy(job, options.seed)) {
    if (isPart()) {
      part_ = partNamed(options.part);
      schedule_ = job.schedule.part(part_.part, part_.parts);
      log_file_ = options.part_file + ".partial";
    } else {
      log_file_ =
          options.checkpoint.empty() ? (stateFolder() / (key_ + ".reps")).string() : options.checkpoint;
    }
  }

  void dropLog() const {
    std::error_code none;
    if (!isPart() && std::filesystem::is_regular_file(log_file_, none))
      std::filesystem::remove(log_file_, none);
  }

  StudyEnd run() {
    if (isPart() && alreadyThere()) return StudyEnd::part;
    if (options_.resume) resume();
    if (!enough_ && next_ < schedule_.size()) play();
    if (interrupted && !enough_ && next_ < schedule_.size()) return stop();
    return finish();
  }

 private:
  [[nodiscard]] bool isPart() const { return !options_.part.empty(); }
  [[nodiscard]] RepLogHead head() const {
    return {key_, options_.call, part_.part, part_.parts, schedule_.size()};
  }

  [[nodiscard]] bool alreadyThere() const {
    if (!std::filesystem::exists(options_.part_file)) return false;
    const RepLogContent there = inspectRepLog(options_.part_file);
    if (!(there.head == head()) || there.reps != there.head.reps)
      throw InputError(options_.part_file, "/", "a file of something else", "a new file for this part");
    fmt::print(stderr, "{}: part {}/{} is there already\n", options_.part_file, part_.part, part_.parts);
    return true;
  }

  /// Hands the reps of an earlier run to the taker.
  void resume() {
    std::error_code none;
    const bool there = std::filesystem::exists(log_file_, none);
    if (!there || inspectRepLog(log_file_).head.study != key_) {
      fmt::print(stderr, "nothing to go on from; starting at the beginning\n");
      return;
    }
    readRepLog(log_file_, [&](const Summary& rep) { return take(next_, rep); });
    log_.emplace(RepLog::open(log_file_));
    begun_ = true;
    fmt::print(stderr, "going on after {} of {} reps\n", next_, schedule_.size());
  }

  void openLog() {
    if (log_) return;
    try {
      if (!isPart() && options_.checkpoint.empty()) std::filesystem::create_directories(stateFolder());
      log_.emplace(RepLog::create(log_file_, head()));
      begun_ = true;
    } catch (const std::exception& error) {
      goOnWithout(error);
    }
  }

  /// A part is its file; any other study can do without one.
  void goOnWithout(const std::exception& error) {
    if (isPart()) throw;
    log_.reset();
    without_ = true;
    fmt::print(stderr, "gapsound: {}; going on, but this run cannot be resumed\n", error.what());
  }

  bool take(std::size_t k, const Summary& rep) {
    next_ = k + 1;
    enough_ = job_.take && !isPart() && !job_.take(schedule_.at(k), rep);
    if (next_ == schedule_.firstLook() && job_.first_look && !isPart()) job_.first_look();
    return !enough_;
  }

  void keep(const Summary& rep) {
    if (!log_) return;
    try {
      log_->append(rep);
      if (next_ % kFlushEvery == 0) log_->flush();
    } catch (const Error& error) {
      goOnWithout(error);
    }
  }

  void flushLog() {
    if (!log_) return;
    try {
      log_->flush();
    } catch (const Error& error) {
      goOnWithout(error);
    }
  }

  void play() {
    openLog();
    const InterruptGuard guard;
    ProgressLine progress(isPart() ? fmt::format("part {}/{}", part_.part, part_.parts) : "playing");
    const Progress show = progress.reporter();
    const Progress tell = [&](double share) { return show(share) && !interrupted; };
    const auto receive = [&](std::size_t k, const Summary& rep) {
      const bool more = take(k, rep);
      keep(rep);
      return more;
    };
    playInOrder({job_.looks.setups, job_.model, options_.seed}, schedule_, next_, options_.jobs, receive,
                tell);
  }

  StudyEnd stop() {
    flushLog();
    fmt::print(stderr, "stopped after {} of {} reps; ", next_, schedule_.size());
    fmt::print(stderr, "{}\n",
               without_ ? "they are not kept" : "they are kept: the same command with --resume goes on");
    return StudyEnd::stopped;
  }

  StudyEnd finish() {
    if (isPart()) {
      openLog();
      log_->moveTo(options_.part_file);
      fmt::print(stderr, "{}: part {}/{}, {} reps\n", options_.part_file, part_.part, part_.parts,
                 schedule_.size());
      return StudyEnd::part;
    }
    if (job_.keep_log)
      flushLog();
    else if (begun_)
      dropLog();
    return StudyEnd::whole;
  }

  const StudyJob& job_;
  const ManyOptions& options_;
  Schedule schedule_;
  std::string key_, log_file_;
  PartOf part_;
  std::optional<RepLog> log_;
  std::size_t next_ = 0;
  bool enough_ = false, begun_ = false, without_ = false;
};

/// Parts in order, each once, all of them and of this study.
std::vector<std::string> sortedParts(const std::vector<std::string>& files, const std::string& key) {
  const RepLogHead first = inspectRepLog(files.front()).head;
  std::vector<std::string> sorted(static_cast<std::size_t>(first.parts));
  for (const auto& file : files) {
    const auto [head, reps] = inspectRepLog(file);
    const std::string name = fmt::format("part {}/{}", head.part, head.parts);
    if (head.study != first.study || head.parts != first.parts)
      throw InputError(file, "/", name + " of another study", "the parts of one study, as " + files.front());
    if (head.study != key)
      throw InputError(file, "/", name + " of a scenario, model or program that has changed since",
                       "parts played with the files as they are now");
    if (reps != head.reps)
      throw InputError(
          file, "/", fmt::format("{} with {} of {} reps", name, reps, head.reps),
          fmt::format("a whole part; finish it with --part {}/{} --resume", head.part, head.parts));
    auto& place = sorted[static_cast<std::size_t>(head.part - 1)];
    if (!place.empty()) throw InputError(file, "/", name, "every part once; " + place + " is the same");
    place = file;
  }
  for (std::size_t k = 0; k < sorted.size(); ++k)
    if (sorted[k].empty())
      throw InputError("options", "PART", fmt::format("no part {}/{}", k + 1, sorted.size()),
                       "every part of the study");
  return sorted;
}

StudyEnd gather(const StudyJob& job, const ManyOptions& options) {
  const Schedule plain(job.schedule.cells(), job.schedule.reps());
  std::size_t next = 0;
  bool more = true;
  for (const auto& file : sortedParts(options.gathered, keyOfStudy(job, options.seed))) {
    if (!more) break;
    readRepLog(file, [&](const Summary& rep) { return more = job.take(plain.at(next++), rep); });
  }
  return StudyEnd::whole;
}

}  // namespace

void StudyLooks::add(const Scenario& scenario, const Model& model) {
  setups.push_back(resolve(scenario, library(), model));
  texts.push_back(toJson(scenario));
}

StudyEnd runStudy(const StudyJob& job, const ManyOptions& options) {
  return options.gathered.empty() ? Player(job, options).run() : gather(job, options);
}

void dropLog(const StudyJob& job, const ManyOptions& options) {
  if (options.gathered.empty()) Player(job, options).dropLog();
}

ManyOptions secondStage(const ManyOptions& options) {
  ManyOptions second = options;
  second.gathered.clear();
  if (!second.checkpoint.empty()) second.checkpoint += ".second";
  return second;
}

int exitCodeOf(StudyEnd end) { return end == StudyEnd::stopped ? 130 : 0; }

}  // namespace gapsound
