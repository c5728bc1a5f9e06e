#pragma once
#include <string>
#include <vector>

#include "scenario/look.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

/// Tells the man the call makes force on either side, whatever the coverage says; `look` and `right` are in
/// the frame of a run to the right, `turned` says the file has its sides the other way round. Throws
/// InputError where the call names a man who is not there; one word for both sides needs him on one of them,
/// and what is returned says on which side he is not.
[[nodiscard]] std::vector<std::string> callForce(Look& look, const Scenario& right, bool turned);

}  // namespace gapsound
