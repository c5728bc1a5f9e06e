#include "app/window.hpp"

#include <chrono>
#include <filesystem>

#include "app/desk.hpp"
#include "app/hands.hpp"
#include "app/screen.hpp"
#include "app/tell.hpp"
#include "base/error.hpp"
#include "cli/session.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/scenario_file.hpp"
#include "io/theme_file.hpp"
#include "painters/window/display.hpp"
#include "painters/window/stage.hpp"

namespace gapsound {
namespace {

constexpr const char* kFirstLook = "counter-right-guard-and-h.json";
constexpr double kFrame = 1.0 / 60.0;  // s

double now() {
  const auto since = std::chrono::steady_clock::now().time_since_epoch();
  return std::chrono::duration<double>(since).count();
}

/// What the file holds, as it would be written; "" where it is gone or broken.
std::string savedText(const std::string& file) {
  try {
    return toFile(readScenario(file));
  } catch (const Error&) {
    return "";
  }
}

/// Unsaved work of a window that went down, unless it can no longer be read.
std::optional<Document> recovered(const StateFolder& folder, const std::string& file) {
  const auto lost = folder.recover(file);
  if (!lost) return std::nullopt;
  try {
    const std::string saved = lost->file.empty() ? "" : savedText(lost->file);
    return Document(parseScenario(lost->text, lost->file.empty() ? "recovered" : lost->file), lost->file,
                    saved);
  } catch (const Error&) {
    return std::nullopt;
  }
}

/// What was lost comes first; then the file asked for, else a shipped look.
Document documentFor(const OpenOptions& options, const StateFolder& folder) {
  if (auto lost = recovered(folder, options.file)) return std::move(*lost);
  if (options.file.empty()) return Document::read(scenarioFolder() + "/" + kFirstLook);
  const bool changed = !options.changes.sets.empty() || !options.changes.faults.empty();
  if (!changed) return Document::read(options.file);
  return {readScenario(options.file, options.changes), options.file, savedText(options.file)};
}

/// One window with one desk in it.
class Window {
 public:
  Window(const OpenOptions& options, Desk& desk)
      : desk_(desk),
        stage_("Gapsound", {options.width, options.height}, 0.01 * desk.settings.ui_scale),
        theme_(shippedTheme(desk.settings.theme)),
        full_screen_(options.shot.empty()),
        tell_(options.tell) {
    book_.dress(theme_, stage_.fonts(), stage_.scale());
  }

  void run() {
    double last = now();
    int fresh = kSettle;
    while (!desk_.quits()) {
      const bool moving = desk_.playback.playing();
      const bool told = stage_.gather(moving || fresh > 0 ? 0.0 : desk_.busy() ? 0.01 : 0.05);
      const bool brought = desk_.collect();
      if (told || brought || stage_.behind()) fresh = kSettle;
      if (stage_.wantsToClose()) desk_.askQuit();
      for (const std::string& file : stage_.dropped()) {
        desk_.askOpen(file);
        fresh = kSettle;
      }
      const double time = now();
      if (moving || fresh > 0) {
        draw(time - last);
        measure(moving, time - last, now() - time);
        pace(time);
      }
      fresh = std::max(0, fresh - 1);
      last = time;
      tell(time);
    }
  }

  /// Does what is asked, one thing after the other, each answered before the next.
  void act(const std::string& deeds) {
    calm();
    for (const std::string& deed : deedsIn(deeds)) {
      for (const InputEvent& event : eventsFor(deed, book_.places())) stage_.pretend(event);
      calm();
    }
  }

  void shoot(const std::string& file) {
    calm();
    stage_.keepNext(file);
    draw(0.0);
  }

 private:
  static constexpr int kSettle = 4;  // frames until ImGui has come to rest after an event

  /// Until every event has had its frame and every rep that was asked for is played.
  void calm() {
    int left = kSettle;
    while (left > 0) {
      draw(0.0);
      left = stage_.behind() ? kSettle : left - 1;
      if (!desk_.busy() && !desk_.collect()) continue;
      desk_.settle(true);
      left = kSettle;
    }
  }

  void draw(double dt) {
    desk_.playback.advance(dt);
    restyle();
    stage_.fullScreen(desk_.view.meeting && full_screen_);
    const auto keys = stage_.begin(dt);
    book_.draw(desk_, theme_, stage_.fonts(), keys);
    stage_.retitle(titleNow());
    stage_.end(theme_[StyleId::ground].fill);
  }

  [[nodiscard]] std::string titleNow() const {
    return (desk_.document().unsaved() ? "* " : "") + desk_.document().scenario().title + " - Gapsound";
  }

  void measure(bool moving, double since_last, double took) {
    constexpr int kWarm = 20;  // frames
    ++smoothness_.frames;
    if (smoothness_.frames > kWarm) smoothness_.worst_ms = std::max(smoothness_.worst_ms, 1000.0 * took);
    if (!moving || smoothness_.frames <= kWarm) return;
    smoothness_.playing_s += since_last;
    ++smoothness_.playing_frames;
  }

  /// A few times a second, for the script that listens.
  void tell(double time) {
    constexpr double kEvery = 0.1;  // s
    if (tell_.empty() || time - told_at_ < kEvery) return;
    told_at_ = time;
    std::string words = tellingOf(desk_, book_.places(), smoothness_);
    if (words == told_) return;
    writeAtomically(tell_, words);
    told_ = std::move(words);
  }

  void restyle() {
    const double scale = 0.01 * desk_.settings.ui_scale;
    if (theme_.name == desk_.settings.theme && scale == stage_.scale()) return;
    if (scale != stage_.scale()) stage_.rescale(scale);
    theme_ = shippedTheme(desk_.settings.theme);
    book_.dress(theme_, stage_.fonts(), scale);
  }

  /// Leaves the processor alone for what is left of a frame.
  void pace(double began) {
    const double left = kFrame - (now() - began);
    if (left > 0.0) static_cast<void>(stage_.gather(left));
  }

  Desk& desk_;
  Stage stage_;
  Theme theme_;
  ScreenBook book_;
  Smoothness smoothness_;
  std::string told_;
  double told_at_ = 0.0;
  bool full_screen_;  // a meeting takes the whole screen; a picture keeps its size
  std::string tell_;  // file that is told what is shown
};

}  // namespace

int openWindow(const OpenOptions& options) {
  if (!options.shot.empty()) requireWritable(options.shot);
  const StateFolder folder = options.shot.empty() ? StateFolder::usual() : StateFolder("");
  Document document = documentFor(options, folder);
  const Model model = modelFor(options.model);
  const DisplayHold display;
  Desk desk(std::move(document), model, folder);
  if (options.ui_scale) desk.settings.ui_scale = *options.ui_scale;
  if (!options.theme.empty()) desk.settings.theme = options.theme;
  desk.settle();
  if (!desk.rep()) throw Error(ExitCode::badInput, desk.notice());
  desk.chooseSeed(options.seed);
  desk.settle();
  if (options.at) desk.playback.seek(*options.at);
  Window window(options, desk);
  if (!options.shot.empty()) {
    window.act(options.deeds);
    if (options.at) desk.playback.seek(*options.at);
    window.shoot(options.shot);
    return 0;
  }
  if (!options.at) desk.playback.play();
  window.run();
  return 0;
}

}  // namespace gapsound
