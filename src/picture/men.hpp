#pragma once
#include <vector>

#include "picture/field.hpp"
#include "picture/free_space.hpp"

namespace gapsound {

/// Paths of the men over `past`, oldest first, up to `frame`.
void drawTrails(Panel& panel, const std::vector<Frame>& past, const Frame& frame);
/// Two bars that touch where two men have hands on each other, each square to its man's chest.
void drawContacts(Panel& panel, const Frame& frame, const FieldLook& look);
/// 22 signs with their shoulder lines, letters inside circles and boxes, and the ball.
void drawMen(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look);
/// The eleven of the offense alone, the carrier heavy.
void drawOffense(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look);
/// Names of the men whose sign has no room for letters, set where there is space; takes the signs' space.
void drawNames(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look, FreeSpace& space);
/// Bare outlines, no letters.
void drawShadows(Panel& panel, const Setup& setup, const Frame& frame, const FieldLook& look);

}  // namespace gapsound
