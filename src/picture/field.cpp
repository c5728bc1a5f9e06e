#include "picture/field.hpp"

#include "picture/calipers.hpp"
#include "picture/free_space.hpp"
#include "picture/ground.hpp"
#include "picture/men.hpp"

namespace gapsound {
namespace {

Panel emptyPanel(const FieldLook& look) {
  return {fieldCamera(look.box, look.low, look.high), look.box, look.stroke, {}};
}

}  // namespace

Panel fieldPanel(const Setup& setup, const Frame& frame, const FieldLook& look,
                 const std::vector<Lane>& lanes, const std::vector<Frame>& past) {
  Panel panel = emptyPanel(look);
  FreeSpace space(look.box);
  drawGround(panel, setup, look.yard_numbers ? look.text : 0.0);
  if (look.lanes) drawLanes(panel, lanes);
  drawTrails(panel, past, frame);
  drawMen(panel, setup, frame, look);
  drawContacts(panel, frame, look);
  drawNames(panel, setup, frame, look, space);
  drawCalipers(panel, lanes, look, space);
  return panel;
}

Panel shadowPanel(const Setup& setup, const Frame& frame, const FieldLook& look) {
  Panel panel = emptyPanel(look);
  drawShadows(panel, setup, frame, look);
  return panel;
}

}  // namespace gapsound
