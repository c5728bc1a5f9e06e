#include "study/faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>

#include "scenario/settings.hpp"

namespace gapsound {
namespace {

constexpr double kDifference = 1.0;  // yd: from here on fitting off the man in front made the difference
constexpr double kSure = 0.05;       // p below which a repair is called one

const Man& manOf(const Setup& look, int k) { return look.men[static_cast<std::size_t>(k)]; }

Setup played(Setup look, const Mistakes& mistakes, bool off_the_man_in_front) {
  for (Man& man : look.men) man.fit.off_the_man_in_front = off_the_man_in_front;
  for (const Mistake& m : mistakes) look.men[static_cast<std::size_t>(m.man)].faults.push_back(m.fault);
  return look;
}

Paired between(const std::vector<Outcome>& a, const std::vector<Outcome>& b) {
  return pairedDifference(yardsOf(a), yardsOf(b));
}

bool isHis(const Mistakes& mistakes, int man) {
  return std::any_of(mistakes.begin(), mistakes.end(), [&](const Mistake& m) { return m.man == man; });
}

/// Yards of each snap.
struct Snaps {
  std::vector<double> loss, loss_fixed;
};

std::vector<double> differences(const std::vector<Outcome>& a, const std::vector<Outcome>& b) {
  std::vector<double> found(a.size());
  for (std::size_t k = 0; k < a.size(); ++k) found[k] = b[k].yards - a[k].yards;
  return found;
}

/// Counts who fitted otherwise than called and got to the ball, in the snaps it made a difference.
void findRepairer(FaultRow& row, const std::vector<Outcome>& fixed, const Snaps& snaps) {
  if (row.won_back.difference <= 0.0 || row.won_back.p_value >= kSure) return;
  std::array<int, kMen> credit{};
  int repaired = 0;
  for (std::size_t k = 0; k < fixed.size(); ++k) {
    if (snaps.loss[k] - snaps.loss_fixed[k] < kDifference) continue;
    ++repaired;
    const std::uint32_t did = fixed[k].fitted_otherwise & fixed[k].had_contact;
    for (int man = kOffense; man < kMen; ++man)
      if ((did >> (man - kOffense) & 1U) != 0U && !isHis(row.mistakes, man))
        ++credit[static_cast<std::size_t>(man)];
  }
  const auto most = std::max_element(credit.begin(), credit.end());
  if (repaired == 0 || *most == 0) return;
  row.repaired_by = static_cast<int>(most - credit.begin());
  row.repairs = static_cast<double>(*most) / repaired;
}

FaultRow rowOf(const Mistakes& mistakes, const Rows& rows, std::size_t fixed_cell) {
  const auto& fixed = rows[fixed_cell];
  const auto& called = rows[fixed_cell + 1];
  const Snaps snaps{differences(rows[1], called), differences(rows[0], fixed)};
  FaultRow row;
  row.mistakes = mistakes;
  row.mean_fixed = meanOf(yardsOf(fixed));
  row.mean_called = meanOf(yardsOf(called));
  row.loss = between(rows[1], called);
  row.loss_fixed = between(rows[0], fixed);
  row.won_back = pairedDifference(snaps.loss_fixed, snaps.loss);
  if (row.loss.difference > 0.0) row.share_won_back = row.won_back.difference / row.loss.difference;
  findRepairer(row, fixed, snaps);
  return row;
}

std::string sizeOf(const Paired& p) {
  return fmt::format("{:.1f} yd a snap ({:.1f} to {:.1f})", p.difference, p.ci.low, p.ci.high);
}

std::string repairWords(const Setup& look, const FaultRow& row) {
  if (row.won_back.p_value >= kSure || row.won_back.difference <= 0.0)
    return "fitting off the man in front wins nothing of it back for sure";
  std::string text = fmt::format("fitting off the man in front wins {} back", sizeOf(row.won_back));
  if (row.repaired_by != kNobody) text += ", most often through " + manOf(look, row.repaired_by).id;
  return text;
}

std::string wordsOf(const Mistakes& mistakes) {
  std::vector<std::string_view> words;
  for (const Mistake& m : mistakes) words.push_back(factsOf(m.fault.kind).words);
  return fmt::format("{}", fmt::join(words, "; "));
}

std::string sentenceOf(const Setup& look, const FaultResult& result) {
  if (result.rows.empty()) return "No man of this look can make a mistake that is known.";
  const FaultRow& top = result.rows.front();
  if (top.loss.difference <= 0.0) return "No mistake costs anything on this look.";
  const char* sure = top.loss.p_value < kSure ? "" : ", which is not sure,";
  return fmt::format("The costliest mistake is {} ({}): on the call it costs {}{} and {}.",
                     nameOf(look, top.mistakes), wordsOf(top.mistakes), sizeOf(top.loss), sure,
                     repairWords(look, top));
}

}  // namespace

std::vector<Mistakes> everyMistake(const Setup& look, bool blockers) {
  std::vector<Mistakes> all;
  for (int man = 0; man < kMen; ++man) {
    if (isOffense(man) && !blockers) continue;
    for (const FaultFacts& facts : faultTable())
      if (mayHave(manOf(look, man), facts)) all.push_back({{man, {facts.kind, facts.usual}}});
  }
  return all;
}

std::vector<Mistakes> pairsOf(const std::vector<FaultRow>& ranked, std::size_t most) {
  std::vector<Mistakes> pairs;
  const std::size_t n = std::min(most, ranked.size());
  for (std::size_t a = 0; a < n; ++a) {
    for (std::size_t b = a + 1; b < n; ++b) {
      const Mistake &first = ranked[a].mistakes.front(), &second = ranked[b].mistakes.front();
      if (first.man != second.man) pairs.push_back({first, second});
    }
  }
  return pairs;
}

std::vector<Setup> faultSetups(const Setup& look, const std::vector<Mistakes>& mistakes) {
  std::vector<Setup> setups{played(look, {}, true), played(look, {}, false)};
  for (const Mistakes& m : mistakes)
    for (const bool off_the_man_in_front : {true, false})
      setups.push_back(played(look, m, off_the_man_in_front));
  return setups;
}

std::vector<Setup> calledSetups(const Setup& look, const std::vector<Mistakes>& mistakes) {
  std::vector<Setup> setups{played(look, {}, false)};
  for (const Mistakes& m : mistakes) setups.push_back(played(look, m, false));
  return setups;
}

std::vector<Mistakes> costliestFirst(const std::vector<Mistakes>& mistakes, const Rows& rows) {
  std::vector<std::size_t> order(mistakes.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::vector<double> cost;
  for (const std::size_t k : order) cost.push_back(between(rows[0], rows[k + 1]).difference);
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return cost[a] > cost[b]; });
  std::vector<Mistakes> first;
  for (const std::size_t k : order) first.push_back(mistakes[k]);
  return first;
}

FaultResult faultsOf(const Setup& look, const std::vector<Mistakes>& mistakes, const Rows& rows) {
  FaultResult result{meanOf(yardsOf(rows[0])), meanOf(yardsOf(rows[1])), {}, ""};
  for (std::size_t k = 0; k < mistakes.size(); ++k)
    result.rows.push_back(rowOf(mistakes[k], rows, 2 + 2 * k));
  std::stable_sort(result.rows.begin(), result.rows.end(), [](const FaultRow& a, const FaultRow& b) {
    return a.loss.difference > b.loss.difference;
  });
  result.sentence = sentenceOf(look, result);
  return result;
}

std::string nameOf(const Setup& look, const Mistakes& mistakes) {
  std::vector<std::string> names;
  for (const Mistake& m : mistakes)
    names.push_back(fmt::format("{} {}", manOf(look, m.man).id, factsOf(m.fault.kind).name));
  return fmt::format("{}", fmt::join(names, ", "));
}

}  // namespace gapsound
