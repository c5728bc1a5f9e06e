#pragma once
#include "base/model.hpp"
#include "football/library.hpp"
#include "scenario/look.hpp"

namespace gapsound {

/// A scenario that starts from film, checked and completed: kinds of men by their ids, spots given under
/// players moved into the picture, the side the run goes to. Throws InputError.
[[nodiscard]] Scenario readyToStart(const Scenario& scenario, const Library& library);

/// True when formation, scheme and front are named, so that the look before the snap is the library's.
[[nodiscard]] bool namesLook(const Scenario& scenario);

/// The look before the snap that fits the picture. `right` is ready and turned so that the run goes right;
/// `front` may be null. Spots follow from places and velocities: from rest at the snap, ever faster.
[[nodiscard]] Look filmedLook(const Scenario& right, const Front* front, const Splits& splits);

/// Lays the picture on a Setup for a run to the right: places, ball, and the jobs that neither the file nor a
/// scheme gives. Throws InputError when the men of the picture are not the men of the look.
void openFromFilm(Setup& setup, const Scenario& right);

}  // namespace gapsound
