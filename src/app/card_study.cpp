#include "app/card_parts.hpp"
#include "app/cards.hpp"

namespace gapsound {

void drawStudyCard(Screen& screen) {
  cardTitle(screen, "Study");
  drawReadout(screen);
}

}  // namespace gapsound
