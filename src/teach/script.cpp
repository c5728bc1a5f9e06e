#include "teach/script.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapsound {
namespace {

constexpr double kMargin = 50.0, kTitle = 34.0, kText = 19.0, kCaution = 14.0;  // page units

bool isFull(const std::string& contact) { return contact == "thud" || contact == "live"; }

/// Whole reps for each run, adding up to `reps`: shares by largest remainder.
std::vector<int> repsOf(const std::vector<ScriptRun>& runs, int reps) {
  double total = 0.0;
  for (const ScriptRun& run : runs) total += run.share;
  std::vector<int> counts;
  std::vector<std::pair<double, std::size_t>> rests;
  int given = 0;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const double due = total > 0.0 ? reps * runs[i].share / total
                                   : static_cast<double>(reps) / static_cast<double>(runs.size());
    counts.push_back(static_cast<int>(due));
    rests.emplace_back(due - counts.back(), i);
    given += counts.back();
  }
  std::stable_sort(rests.begin(), rests.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  for (std::size_t i = 0; given < reps && i < rests.size(); ++i, ++given) ++counts[rests[i].second];
  return counts;
}

/// Runs in the order they are repped: round after round through those with reps left.
std::vector<std::size_t> orderOf(std::vector<int> counts) {
  std::vector<std::size_t> order;
  for (bool any = true; any;) {
    any = false;
    for (std::size_t i = 0; i < counts.size(); ++i) {
      if (counts[i] == 0) continue;
      --counts[i], any = true;
      order.push_back(i);
    }
  }
  return order;
}

DayScript scriptOf(const PracticeDay& day, const std::vector<ScriptRun>& runs,
                   const std::vector<std::string>& calls) {
  DayScript script{day.day, day, {}};
  const auto order = orderOf(repsOf(runs, day.reps));
  for (std::size_t i = 0; i < order.size(); ++i) {
    const ScriptRun& run = runs[order[i]];
    const std::size_t round = i / runs.size();
    const std::size_t call = (order[i] + round) % calls.size();
    script.rows.push_back({static_cast<int>(i) + 1, run.card + (round % 2 == 0 ? "R" : "L"), run.name,
                           calls[call], run.intents[call], day.contact,
                           day.minutes * static_cast<double>(i) / static_cast<double>(order.size())});
  }
  return script;
}

std::string clockOf(double minutes) {
  const int seconds = static_cast<int>(std::lround(60.0 * minutes));
  return fmt::format("{}:{:02}", seconds / 60, seconds % 60);
}

Table tableOf(const DayScript& day, double width, double size) {
  Table table;
  table.size = size;
  table.widths = {0.06 * width, 0.08 * width, 0.25 * width, 0.18 * width,
                  0.27 * width, 0.09 * width, 0.07 * width};
  table.rows.push_back({"rep", "card", "run", "our call", "intent", "contact", "min"});
  for (const ScriptRow& row : day.rows)
    table.rows.push_back(
        {std::to_string(row.rep), row.card, row.run, row.call, row.intent, row.contact, clockOf(row.minute)});
  return table;
}

LaidPage pageOf(const DayScript& day, const std::vector<std::string>& warnings, Paper paper) {
  const Vec2 sheet = sheetSize(paper);
  const double width = sheet.x - 2.0 * kMargin;
  Layout layout(sheet.x, sheet.y);
  const double foot = layout.caution(kMargin, kCaution);
  double y = layout.line(kMargin, kMargin, width, "Inside run, " + day.day, kTitle, StyleId::title);
  y = layout.words(
          kMargin, y, width,
          fmt::format("{} reps in {:.0f} minutes, {}. Full contact this day, the rest of practice included: "
                      "{:.0f} minutes.",
                      day.period.reps, day.period.minutes, day.period.contact, fullContact(day.period)),
          kText, StyleId::text) +
      6.0;
  for (const std::string& warning : warnings)
    y = layout.words(kMargin, y, width, warning, kText, StyleId::strong) + 4.0;
  y += 8.0;
  double size = kText;
  while (size > 8.0 && heightOf(tableOf(day, width, size)) > foot - y) size *= 0.97;
  put(layout, tableOf(day, width, size), kMargin, y);
  return std::move(layout).done();
}

}  // namespace

double fullContact(const PracticeDay& day) {
  return (isFull(day.contact) ? day.minutes : 0.0) + day.other_full_contact_minutes;
}

std::vector<DayScript> scriptsOf(const std::vector<PracticeDay>& days, const std::vector<ScriptRun>& runs,
                                 const std::vector<std::string>& calls) {
  std::vector<DayScript> scripts;
  if (runs.empty() || calls.empty()) return scripts;
  for (const PracticeDay& day : days) scripts.push_back(scriptOf(day, runs, calls));
  return scripts;
}

std::vector<std::string> contactWarnings(const std::vector<PracticeDay>& days,
                                         const ContactGuidance& guidance) {
  std::vector<std::string> warnings;
  double week = 0.0;
  int full_days = 0;
  for (const PracticeDay& day : days) {
    const double minutes = fullContact(day);
    week += minutes;
    full_days += minutes > 0.0 ? 1 : 0;
    if (minutes > guidance.a_day)
      warnings.push_back(
          fmt::format("Warning: {} has {:.0f} minutes of full contact; the guidance is {:.0f} a day.",
                      day.day, minutes, guidance.a_day));
  }
  if (week > guidance.a_week)
    warnings.push_back(
        fmt::format("Warning: the week has {:.0f} minutes of full contact; the guidance is {:.0f} to {:.0f}.",
                    week, guidance.a_week_low, guidance.a_week));
  if (full_days > guidance.days)
    warnings.push_back(fmt::format("Warning: {} days have full contact; the guidance is {} at most.",
                                   full_days, guidance.days));
  return warnings;
}

std::vector<LaidPage> scriptPages(const std::vector<DayScript>& days, Paper paper) {
  std::vector<PracticeDay> periods;
  periods.reserve(days.size());
  for (const DayScript& day : days) periods.push_back(day.period);
  std::vector<LaidPage> pages;
  pages.reserve(days.size());
  for (const DayScript& day : days) pages.push_back(pageOf(day, contactWarnings(periods), paper));
  return pages;
}

}  // namespace gapsound
