#pragma once
#include <string>

#include "app/rep.hpp"

namespace gapsound {

/// Writes what can be handed out of a rep, by the ending of the file: .mp4 and .gif a clip, with the held rep
/// beside it when there is one; .png, .svg and .pdf a strip. Returns what to tell the user; never throws.
[[nodiscard]] std::string writeHandout(const RepPtr& rep, const RepPtr& held, const std::string& difference,
                                       const std::string& file);
/// "counter-left-rep-7.mp4" in the present folder, for a look from this file.
[[nodiscard]] std::string handoutName(const std::string& look_file, std::uint64_t seed,
                                      const std::string& ending);

}  // namespace gapsound
