#pragma once
#include <string>

#include "../picture/made_up_tape.hpp"
#include "../picture/shapes.hpp"

namespace gapsound {

/// True when some label of the page has exactly this text.
inline bool says(const DisplayList& page, const std::string& text) {
  for (const Panel& panel : page.panels) {
    for (const Label& label : all<Label>(panel)) {
      if (label.text == text) return true;
    }
  }
  return false;
}

}  // namespace gapsound
