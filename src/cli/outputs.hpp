#pragma once
#include <string>

#include "cli/options.hpp"
#include "picture/display_list.hpp"

namespace gapsound {

/// Throws Error(noAccess) for a file that could not be written, before any work is done.
void requireFiles(const OutputFiles& files);
/// Writes the files that were asked for. `page` is only drawn when one of them is a picture.
template <typename Page>
void writeFiles(const OutputFiles& files, const std::string& table, const Page& page);

void writeTable(const OutputFiles& files, const std::string& table);
void writePictures(const OutputFiles& files, const DisplayList& page);

template <typename Page>
void writeFiles(const OutputFiles& files, const std::string& table, const Page& page) {
  writeTable(files, table);
  if (!files.png.empty() || !files.svg.empty() || !files.pdf.empty()) writePictures(files, page());
}

}  // namespace gapsound
