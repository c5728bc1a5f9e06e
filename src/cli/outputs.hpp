#pragma once
#include <functional>
#include <string>

#include "cli/options.hpp"
#include "picture/display_list.hpp"

namespace gapsound {

/// Throws Error(noAccess) for a file that could not be written, before any work is done.
void requireFiles(const OutputFiles& files);
/// Writes the files that were asked for, all or none. `page` is only drawn when one of them is a picture.
void writeFiles(const OutputFiles& files, const std::string& table, const std::function<DisplayList()>& page);

}  // namespace gapsound
