#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "cli/options.hpp"
#include "cli/session.hpp"
#include "study/reps.hpp"

namespace gapsound {

/// The looks of a study, resolved, with a text of each that tells it from any other.
struct StudyLooks {
  std::vector<Setup> setups;
  std::vector<std::string> texts;
  /// Throws InputError like resolve().
  void add(const Scenario& scenario, const Model& model);
};

/// Gets the reps of a study: each cell's in the order of the seeds. Returns false when it has seen enough.
using TakeRep = std::function<bool(const RepPlace& place, const Summary& rep)>;

struct StudyJob {
  const StudyLooks& looks;
  const Model& model;
  Schedule schedule;
  TakeRep take;
  std::function<void()> first_look = {};  // called once when the schedule's first look is complete
  bool keep_log = false;  // the log stays when the study is whole, for one that follows on it: dropLog()
};

enum class StudyEnd {
  whole,    // every rep there, or the taker had enough
  stopped,  // interrupted: what is there is kept, and how to go on was said
  part      // the part's file is written; there is nothing to answer yet
};

/// Plays a study on all cores, or reads it from the parts that are being gathered. Keeps a log of the reps as
/// it goes, so that an interrupted or killed run can be resumed. Throws Error(noAccess) when a part cannot be
/// written, InputError for parts that do not belong together, are not whole or are of another study.
StudyEnd runStudy(const StudyJob& job, const ManyOptions& options);

/// Takes away the log of a study that was kept.
void dropLog(const StudyJob& job, const ManyOptions& options);
/// For a second stage that is played here even when the first was gathered from parts.
[[nodiscard]] ManyOptions secondStage(const ManyOptions& options);

/// True once a study may stop because its interval is narrow enough; asked after every rep, answers after
/// every 64 of all looks so that it is the same on any machine.
class UntilNarrow {
 public:
  UntilNarrow(const ManyOptions& options, std::size_t looks) : width_(options.until_width), looks_(looks) {}
  /// `width` is called only when it counts.
  template <typename Width>
  [[nodiscard]] bool reached(const Width& width) {
    constexpr std::size_t kEvery = 64;
    ++seen_;
    return width_ && seen_ % (kEvery * looks_) == 0 && width() <= *width_;
  }

 private:
  std::optional<double> width_;
  std::size_t looks_, seen_ = 0;
};

/// 0, or 130 after an interruption, as shells have it.
[[nodiscard]] int exitCodeOf(StudyEnd end);

}  // namespace gapsound
