#pragma once
#include <map>
#include <string>
#include <vector>

#include "cli/options.hpp"
#include "picture/paper.hpp"
#include "scenario/plan.hpp"
#include "teach/card.hpp"
#include "teach/fit_sheet.hpp"

namespace gapsound {

/// What stands beside a man's letters on pages, by id.
using Tags = std::map<std::string, std::string>;

/// Looks to make pages of: every run against every call.
struct Handout {
  std::string title;
  std::vector<std::string> runs, calls;
  std::vector<std::vector<Scenario>> scenarios;  // [run][call]
  std::vector<std::vector<Setup>> setups;        // the same, resolved
  Tags tags;                                     // from the roster
};

/// A plan's pairs, or a scenario's look against the schemes asked for (its own without any). `calls` and
/// `runs` of the options pick by name from a plan. The roster is laid on every look. Throws InputError.
[[nodiscard]] Handout handoutOf(const HandoutOptions& options, const Model& model);
[[nodiscard]] Handout handoutOf(const Plan& plan, const HandoutOptions& options, const Model& model);

/// Numbers, or names, in the rows of a sheet.
void tagRows(FitSheet& sheet, const Tags& tags);
[[nodiscard]] Paper paperOf(const HandoutOptions& options);
/// Throws InputError when the name does not end in .pdf.
void requirePdf(const std::string& file);
/// A card for every run against one call, the run turned over as well when both ways are asked for.
[[nodiscard]] std::vector<ScoutCard> cardsOf(const Handout& handout, std::size_t call, bool both_ways,
                                             const Model& model, std::uint64_t seed, int jobs);
/// The answer of every verb that writes one file.
int sayWritten(const std::string& file, bool json);

}  // namespace gapsound
