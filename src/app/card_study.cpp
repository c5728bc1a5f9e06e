#include <fmt/format.h>

#include <algorithm>

#include "analysis/cast.hpp"
#include "app/card_parts.hpp"
#include "app/cards.hpp"

namespace gapsound {
namespace {

std::vector<std::string> idsOf(const Setup& setup) {
  std::vector<std::string> ids;
  for (int man = kOffense; man < kMen; ++man) ids.push_back(setup.men[static_cast<std::size_t>(man)].id);
  for (int man = 0; man < kOffense; ++man) ids.push_back(setup.men[static_cast<std::size_t>(man)].id);
  return ids;
}

std::vector<std::string> settingWords() {
  std::vector<std::string> words;
  for (const SweepSetting& setting : sweepSettings()) words.emplace_back(setting.word);
  return words;
}

void choose(SweepRange& range, const std::string& word) {
  const SweepSetting& setting = sweepSettingNamed(word);
  range = {range.man, word, setting.low, setting.high, setting.step};
}

std::string playSideSafety(const Setup& setup) {
  const int safety = castOf(setup).safety;
  return safety == kNobody ? setup.men[kOffense].id : setup.men[static_cast<std::size_t>(safety)].id;
}

/// A man who is no longer in the look gives way to the play-side safety.
void keepMan(SweepRange& range, const Setup& setup) {
  if (manNamed(setup, range.man) == kNobody) range.man = playSideSafety(setup);
}

void rangeRows(Screen& screen, SweepRange& range, const std::string& suffix) {
  const Setup& setup = screen.desk.rep()->tape.setup;
  keepMan(range, setup);
  const char* unit = sweepSettingNamed(range.setting).unit;
  if (const auto pick = choiceRow(screen, "Man" + suffix, range.man, idsOf(setup))) range.man = *pick;
  if (const auto pick = choiceRow(screen, "Setting" + suffix, range.setting, settingWords()))
    choose(range, *pick);
  if (const auto value = numberRow(screen, "From" + suffix, range.low, range.step, unit)) range.low = *value;
  if (const auto value = numberRow(screen, "To" + suffix, range.high, range.step, unit)) range.high = *value;
  if (const auto value = numberRow(screen, "Step" + suffix, range.step, 0.1, unit)) range.step = *value;
}

void run(Desk& desk) {
  View& view = desk.view;
  std::vector<SweepRange> ranges{view.sweep};
  if (view.two_settings) ranges.insert(ranges.begin(), view.second_sweep);
  desk.startStudy(StudyKind::sweep, ranges, view.study_reps);
}

void runRow(Screen& screen) {
  Desk& desk = screen.desk;
  if (wordButton(screen, "Run")) run(desk);
  ImGui::SameLine(0.0F, screen.px(18.0));
  if (desk.study() && wordButton(screen, desk.view.study_page ? "field" : "picture"))
    desk.view.study_page = !desk.view.study_page;
  ImGui::NewLine();
}

/// How far a study is, and a way to stop it.
void progressRow(Screen& screen) {
  Desk& desk = screen.desk;
  if (!desk.studying()) return;
  if (wordButton(screen, "Stop")) desk.stopStudy();
  ImGui::SameLine(0.0F, screen.px(12.0));
  ImGui::ProgressBar(static_cast<float>(desk.studyShare()), {-1.0F, screen.px(14.0)}, "");
}

/// The questions the program is for, in one click each.
void askQuestions(Screen& screen) {
  Desk& desk = screen.desk;
  View& view = desk.view;
  if (wordButton(screen, "How fast may the safety come?")) {
    view.sweep.man = playSideSafety(desk.rep()->tape.setup);
    choose(view.sweep, "downhill");
    view.two_settings = false;
    run(desk);
  }
  if (wordButton(screen, "What does each mistake cost?"))
    desk.startStudy(StudyKind::mistakes, {}, view.study_reps);
  if (wordButton(screen, "Which front stands up?")) desk.startStudy(StudyKind::fronts, {}, view.study_reps);
  progressRow(screen);
}

}  // namespace

void drawStudyCard(Screen& screen) {
  View& view = screen.desk.view;
  cardTitle(screen, "Study");
  askQuestions(screen);
  ImGui::Separator();
  rangeRows(screen, view.sweep, "");
  if (const auto pick =
          switchRow(screen, "And", view.two_settings ? "another" : "nothing", {"nothing", "another"}))
    view.two_settings = *pick == "another";
  if (view.two_settings) rangeRows(screen, view.second_sweep, " 2");
  if (const auto reps = numberRow(screen, "Reps each", view.study_reps, 50.0, "", 0))
    view.study_reps = static_cast<int>(std::clamp(*reps, 10.0, 2000.0));
  runRow(screen);
  ImGui::Separator();
  drawReadout(screen);
}

}  // namespace gapsound
