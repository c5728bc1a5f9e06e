#pragma once
#include <array>
#include <functional>
#include <optional>
#include <set>
#include <string>

#include "app/document.hpp"
#include "app/errand.hpp"
#include "app/playback.hpp"
#include "app/question.hpp"
#include "app/readout.hpp"
#include "app/rep.hpp"
#include "app/state_folder.hpp"
#include "app/study_job.hpp"
#include "picture/field.hpp"

namespace gapsound {

enum class Card { look, call, man, study, files };
enum class Holding { none, shadow, beside };

/// A man being dragged, from where he was gripped.
struct Drag {
  int man = kNobody;
  Vec2 grip;             // from the mouse to his middle, yd
  bool moved = false;    // far enough that it is no click
  std::string landmark;  // he stands on just now
};

/// What waits while the user is asked about work that is not saved.
struct Leaving {
  enum class To { open, fresh, quit };
  To to = To::quit;
  std::string file;
};
enum class LeaveBy { save, discard, stay };

/// What the user has chosen to see; none of it is part of the scenario.
struct View {
  Calipers calipers = Calipers::none;
  bool names = true, jobs = false;  // jobs: what each defender is called to, beside his sign
  bool in_cards = false;            // the keyboard walks the rows of the cards
  bool study_page = false;          // the study's picture stands in place of the field
  SweepRange sweep, second_sweep{"", "read", 0.5, 1.4, 0.3};
  bool two_settings = false;
  int study_reps = 100;
  bool free_drag = false;  // men are put down where they are dropped, no snapping
  bool meeting = false, help = false, caution = false;
  bool asks = false;  // the tape stops where somebody decides, and he is asked
  std::set<Card> cards;
  std::string selected;  // id of a man, "" for nobody
  Holding holding = Holding::none;
  std::optional<Drag> drag;
  std::optional<PutQuestion> question;  // being asked
  std::array<bool, 3> hints_done{};     // a man was selected, the tape was stopped, the ladder was used
};

/// Everything the window is about, without the window: the scenario under edit, the rep it gives, the tape's
/// moment, the rep held against it. Reps are played on threads; collect() brings them in.
class Desk {
 public:
  /// `readout_reps`: how many reps the figures of a look rest on.
  Desk(Document document, Model model, StateFolder folder, int readout_reps = 400);
  ~Desk();
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  // What is shown.
  [[nodiscard]] const Document& document() const { return document_; }
  [[nodiscard]] const Model& model() const { return model_; }
  /// The last rep that was played; not null after the first settle().
  [[nodiscard]] const RepPtr& rep() const { return rep_; }
  [[nodiscard]] const RepPtr& held() const { return held_; }
  [[nodiscard]] const std::optional<Readout>& readout() const { return readout_; }
  /// The readout of the look the held rep comes from.
  [[nodiscard]] const std::optional<Readout>& heldReadout() const { return held_readout_; }
  /// What was changed since the rep was held, in words; "" for nothing.
  [[nodiscard]] std::string changedSinceHeld() const { return document_.wordsSince(held_step_); }
  /// What the rep does differently from the held one, in a sentence; "" while they are one.
  [[nodiscard]] const std::string& difference() const { return difference_; }
  /// Set while the user is asked what becomes of unsaved work.
  [[nodiscard]] const std::optional<Leaving>& leaving() const { return leaving_; }
  [[nodiscard]] bool quits() const { return quits_; }
  [[nodiscard]] const std::string& notice() const { return notice_; }
  void say(const std::string& notice) { notice_ = notice; }
  [[nodiscard]] const StateFolder& folder() const { return folder_; }

  Playback playback;
  View view;
  Settings settings;

  // What the user does. None of these throws; what is not allowed becomes the notice and changes nothing.
  /// Edits a copy of the scenario, checks it against the library, makes it the one under edit and plays it.
  void change(const std::string& words, const std::function<void(Scenario&)>& edit,
              const std::string& gesture = "");
  void endGesture() { document_.endGesture(); }
  void undo();
  void redo();
  void chooseSeed(std::uint64_t seed);
  void open(const std::string& file);
  void startNew();
  void replace(Document document);
  /// The same, but work that is not saved is asked about first.
  void askOpen(const std::string& file) { ask({Leaving::To::open, file}); }
  void askNew() { ask({Leaving::To::fresh, ""}); }
  void askQuit() { ask({Leaving::To::quit, ""}); }
  void answer(LeaveBy answer);
  bool saveAs(const std::string& file);
  void hold();
  void letGo();
  void select(const std::string& man);
  /// Stops the tape for the next question while questions are wanted; once a frame.
  void arrangeQuestion();
  /// A hint has served; the last of them is not shown again at the next start.
  void hintDone(std::size_t hint);
  /// Remembers settings for the next start.
  void keepSettings() const { folder_.keep(settings); }

  // Studies of the look under edit.
  /// `ranges` of a sweep; the others need none.
  void startStudy(StudyKind kind, const std::vector<SweepRange>& ranges, int reps);
  void stopStudy() { study_errand_.cancel(); }
  [[nodiscard]] const std::optional<StudyPicture>& study() const { return study_; }
  /// [0, 1].
  [[nodiscard]] double studyShare() const { return study_share_; }
  [[nodiscard]] bool studying() const { return study_errand_.busy(); }
  /// The look of a cell becomes the one under edit and its rep plays.
  void openCell(std::size_t cell);

  /// Writes a clip or a strip of the rep shown while the window goes on; the notice says when it is there.
  void handOut(const std::string& file);

  // Threads.
  /// Takes in what the threads have finished; true when there is something new to show.
  bool collect();
  [[nodiscard]] bool busy() const {
    return rep_errand_.busy() || readout_errand_.busy() || studying() || handout_errand_.busy();
  }
  /// Waits until the rep is played, and everything in the background too when `all`, and takes it in.
  void settle(bool all = false);

 private:
  struct Played {
    std::uint64_t edition = 0;
    RepPtr rep, held;  // held: the held look on the same seed, where it had to be played again
    std::string fault;
  };
  void playAgain(bool readout_too);
  [[nodiscard]] RepPtr heldToPlayAgain() const;
  void keepUnsaved() const;
  void take(const Played& played);
  void compare();
  void ask(const Leaving& leaving);
  void leave(const Leaving& leaving);

  Document document_;
  Model model_;
  StateFolder folder_;
  int readout_reps_;
  RepPtr rep_, held_;
  std::optional<Readout> readout_, held_readout_;
  std::size_t held_step_ = 0;
  std::string difference_, notice_;
  std::optional<Leaving> leaving_;
  bool quits_ = false;
  std::optional<PutQuestion> coming_;
  std::uint64_t edition_ = 0, readout_edition_ = 0;
  Mailbox<Played> played_;
  Mailbox<Readout> counted_;
  Mailbox<StudyPicture> studied_;
  Mailbox<std::string> handed_out_;
  std::optional<StudyPicture> study_;
  std::atomic<double> study_share_{0.0};
  std::uint64_t study_edition_ = 0;
  Errand rep_errand_, readout_errand_{true}, study_errand_{true}, handout_errand_{true};
};

}  // namespace gapsound
