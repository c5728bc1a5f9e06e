#pragma once
#include <array>
#include <functional>
#include <optional>
#include <set>
#include <string>

#include "app/document.hpp"
#include "app/errand.hpp"
#include "app/playback.hpp"
#include "app/readout.hpp"
#include "app/rep.hpp"
#include "app/state_folder.hpp"
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
enum class Answer { save, discard, stay };

/// What the user has chosen to see; none of it is part of the scenario.
struct View {
  Calipers calipers = Calipers::none;
  bool names = true, jobs = false;
  bool free_drag = false;  // men are put down where they are dropped, no snapping
  bool meeting = false, help = false, caution = false;
  bool asks = false;  // meeting mode: the tape stops where somebody decides
  std::set<Card> cards;
  std::string selected;  // id of a man, "" for nobody
  Holding holding = Holding::none;
  std::optional<Drag> drag;
  std::array<bool, 3> hints_done{};  // a man was selected, the tape was stopped, the ladder was used
};

/// Everything the window is about, without the window: the scenario under edit, the rep it gives, the tape's
/// moment, the rep held against it. Reps are played on threads; collect() brings them in.
class Desk {
 public:
  Desk(Document document, Model model, StateFolder folder);
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
  [[nodiscard]] const std::string& changedSinceHeld() const { return changed_since_held_; }
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
  void change(const std::string& words, const std::function<void(Scenario&)>& edit, const std::string& gesture = "");
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
  void answer(Answer answer);
  bool saveAs(const std::string& file);
  void hold();
  void letGo();
  void select(const std::string& man);
  /// A hint has served; the last of them is not shown again at the next start.
  void hintDone(std::size_t hint);
  /// Remembers settings for the next start.
  void keepSettings() const { folder_.keep(settings); }

  // Threads.
  /// Takes in what the threads have finished; true when there is something new to show.
  bool collect();
  [[nodiscard]] bool busy() const { return rep_errand_.busy() || readout_errand_.busy(); }
  /// Waits until the rep is played, and the readout too when `all`, and takes it in.
  void settle(bool all = false);

 private:
  struct Played {
    std::uint64_t edition = 0;
    RepPtr rep;
    std::string fault;
  };
  void playAgain(bool readout_too);
  void keepUnsaved() const;
  void take(const Played& played);
  void compare();
  void ask(const Leaving& leaving);
  void leave(const Leaving& leaving);

  Document document_;
  Model model_;
  StateFolder folder_;
  RepPtr rep_, held_;
  std::optional<Readout> readout_, held_readout_;
  std::string changed_since_held_, difference_, notice_;
  std::optional<Leaving> leaving_;
  bool quits_ = false;
  std::uint64_t edition_ = 0, readout_edition_ = 0;
  Mailbox<Played> played_;
  Mailbox<Readout> counted_;
  Errand rep_errand_, readout_errand_;
};

}  // namespace gapsound
