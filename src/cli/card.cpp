#include <fmt/core.h>

#include "cli/handout.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"
#include "scenario/mirror.hpp"
#include "scenario/resolve.hpp"
#include "teach/card.hpp"
#include "teach/fit_sheet.hpp"

namespace gapsound {

std::vector<ScoutCard> cardsOf(const Handout& handout, std::size_t call, bool both_ways, const Model& model,
                               std::uint64_t seed, int jobs) {
  std::vector<ScoutCard> cards;
  for (std::size_t run = 0; run < handout.runs.size(); ++run) {
    std::vector<Scenario> ways{handout.scenarios[run][call]};
    if (both_ways) ways.push_back(mirrored(ways.front()));
    for (const Scenario& scenario : ways) {
      const Setup setup = resolve(scenario, library(), model);
      const std::string number = fmt::format("{}{}", run + 1, setup.direction > 0 ? "R" : "L");
      const bool turned = &scenario != ways.data();
      const std::string play = handout.runs[run] + (turned ? ", turned over" : "");
      cards.push_back(scoutCardOf(typicalTape(setup, model, seed, jobs), number, play, handout.calls[call]));
    }
  }
  return cards;
}

int runCard(const CardOptions& options) {
  requireWritable(options.out);
  requirePdf(options.out);
  const Model model = modelFor(options.model);
  const Handout handout = handoutOf(options, model);
  std::vector<DisplayList> pages;
  for (std::size_t call = 0; call < handout.calls.size(); ++call) {
    const auto cards = cardsOf(handout, call, !options.one_way, model, options.seed, options.jobs);
    for (LaidPage& page : cardPages(cards, {paperOf(options), options.to_a_page}))
      pages.push_back(std::move(page.list));
  }
  writePdf(pages, shippedTheme("paper"), options.out, paperOf(options));
  return sayWritten(options.out, options.json);
}

}  // namespace gapsound
