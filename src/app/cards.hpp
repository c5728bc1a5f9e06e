#pragma once
#include "app/screen.hpp"

namespace gapsound {

// What stands on each card. Each is drawn into the column that drawCards opens for it.
void drawLookCard(Screen& screen);
void drawCallCard(Screen& screen);
void drawManCard(Screen& screen);
void drawFilesCard(Screen& screen);
void drawStudyCard(Screen& screen);
/// What the look under edit comes to over many reps, beside the look of the rep held.
void drawReadout(Screen& screen);

}  // namespace gapsound
