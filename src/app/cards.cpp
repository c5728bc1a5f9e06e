#include "app/screen.hpp"

namespace gapsound {

void drawCards(Screen& screen) { static_cast<void>(screen); }

}  // namespace gapsound
