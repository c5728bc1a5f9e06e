#pragma once
#include <string>
#include <vector>

#include "scenario/setup.hpp"

namespace gapsound {

/// A man of a picture on his way to a name of the library; turned so that the run goes right.
struct NamedMan {
  std::string id;        // to be found
  std::string label_id;  // what his label names outright, or empty
  Group group = Group::backer;
  bool attacks = false, has_ball = false;
  StartMan start;
};

/// Ids by label and place: the line from the left, receivers by width, defenders from the strong side.
void nameByPlace(std::vector<NamedMan>& men, double since_snap_s);
/// Ids of the look's men, each to the one he is nearest to and most alike.
void nameByLook(std::vector<NamedMan>& men, double since_snap_s, const Setup& look);
/// Which way a run goes, "left" or "right": where the ball is headed, who pulls, where the back goes.
[[nodiscard]] std::string runDirection(const Start& start);

}  // namespace gapsound
