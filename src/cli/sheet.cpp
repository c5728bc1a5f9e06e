#include <fmt/core.h>

#include "cli/handout.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"
#include "teach/fit_sheet.hpp"

namespace gapsound {
namespace {

SheetLook lookOf(const SheetOptions& options) { return {paperOf(options), options.large}; }

std::vector<std::vector<FitSheet>> sheetsOf(const Handout& handout, const SheetOptions& options,
                                            const Model& model) {
  ProgressLine progress("fit sheets");
  const auto report = progress.reporter();
  std::vector<std::vector<FitSheet>> sheets(handout.runs.size());
  double done = 0.0;
  for (std::size_t run = 0; run < handout.runs.size(); ++run) {
    for (const Setup& setup : handout.setups[run]) {
      sheets[run].push_back(
          fitSheetOf(setup, library().phrases, model, options.seed, options.n, options.jobs));
      tagRows(sheets[run].back(), handout.tags);
      if (!options.no_faults && !options.master)
        sheets[run].back().faults = costlyFaultsOf(setup, model, options.seed, options.n, options.jobs);
      report(++done / static_cast<double>(handout.runs.size() * handout.calls.size()));
    }
  }
  return sheets;
}

MasterSheet masterOf(const Handout& handout, const std::vector<std::vector<FitSheet>>& sheets, int n) {
  MasterSheet master{handout.title, n, handout.runs, handout.calls, {}};
  for (std::size_t run = 0; run < sheets.size(); ++run) {
    master.cells.emplace_back();
    for (std::size_t call = 0; call < sheets[run].size(); ++call)
      master.cells.back().push_back(masterCellOf(handout.setups[run][call], sheets[run][call].gains));
  }
  return master;
}

}  // namespace

int runSheet(const SheetOptions& options) {
  requireWritable(options.out);
  requirePdf(options.out);
  const Model model = modelFor(options.model);
  const Handout handout = handoutOf(options, model);
  const auto sheets = sheetsOf(handout, options, model);
  std::vector<DisplayList> pages;
  const bool many = handout.runs.size() * handout.calls.size() > 1;
  if (many || options.master)
    pages.push_back(masterSheetPage(masterOf(handout, sheets, options.n), lookOf(options)).list);
  for (std::size_t call = 0; call < handout.calls.size() && !options.master; ++call)
    for (const auto& row : sheets) pages.push_back(fitSheetPage(row[call], lookOf(options)).list);
  writePdf(pages, shippedTheme("paper"), options.out, paperOf(options));
  return sayWritten(options.out, options.json);
}

}  // namespace gapsound
