#include "painters/cairo_painter.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <map>
#include <regex>

#include "base/error.hpp"
#include "io/atomic_file.hpp"
#include "painters/cairo_canvas.hpp"

namespace gapsound {
namespace {

struct CloseSurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct CloseContext {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, CloseSurface>;
using Context = std::unique_ptr<cairo_t, CloseContext>;

cairo_status_t append(void* content, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(content)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

void requireFine(cairo_status_t status, const std::string& what) {
  if (status == CAIRO_STATUS_SUCCESS) return;
  throw Error(ExitCode::ourFault, what + ": drawing failed: " + cairo_status_to_string(status));
}

Surface pixels(double width, double height) {
  return Surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::lround(width)),
                                            static_cast<int>(std::lround(height))));
}

/// Points of a sheet, as the list lies.
Vec2 sheetFor(const DisplayList& list, Paper paper) {
  const Vec2 upright = paper == Paper::letter ? Vec2{612.0, 792.0} : Vec2{595.276, 841.89};
  return list.width > list.height ? Vec2{upright.y, upright.x} : upright;
}

void fit(cairo_t* cr, const DisplayList& list, Vec2 sheet) {
  const double scale = std::min(sheet.x / list.width, sheet.y / list.height);
  cairo_translate(cr, 0.5 * (sheet.x - scale * list.width), 0.5 * (sheet.y - scale * list.height));
  cairo_scale(cr, scale, scale);
}

}  // namespace

std::string pngBytes(const DisplayList& list, const Theme& theme, const std::string& what, double scale) {
  Typesetter typesetter;
  const Surface surface = pixels(scale * list.width, scale * list.height);
  const Context cr(cairo_create(surface.get()));
  cairo_scale(cr.get(), scale, scale);
  paint(cr.get(), list, theme, typesetter);
  std::string content;
  requireFine(cairo_surface_write_to_png_stream(surface.get(), append, &content), what);
  return content;
}

void writePng(const DisplayList& list, const Theme& theme, const std::string& file, double scale) {
  writeAtomically(file, pngBytes(list, theme, file, scale));
}

void writePixels(std::span<std::uint8_t> pixels, int width, int height, const std::string& file) {
  const Surface surface(
      cairo_image_surface_create_for_data(pixels.data(), CAIRO_FORMAT_RGB24, width, height, 4 * width));
  std::string content;
  requireFine(cairo_surface_write_to_png_stream(surface.get(), append, &content), file);
  writeAtomically(file, content);
}

namespace {

/// Cairo counts its surfaces through the life of the program; counted within the picture, the same picture is
/// the same bytes whatever was drawn before it.
std::string numberedAnew(const std::string& svg) {
  static const std::regex kSurface("surface[0-9]+");
  std::map<std::string, std::size_t> numbers;
  std::string text;
  auto rest = svg.cbegin();
  for (std::sregex_iterator at(svg.begin(), svg.end(), kSurface), end; at != end; ++at) {
    text.append(rest, (*at)[0].first);
    text += "surface" + std::to_string(numbers.emplace(at->str(), numbers.size() + 1).first->second);
    rest = (*at)[0].second;
  }
  return text.append(rest, svg.cend());
}

}  // namespace

std::string svgText(const DisplayList& list, const Theme& theme, const std::string& what) {
  Typesetter typesetter;
  std::string content;
  const Surface surface(cairo_svg_surface_create_for_stream(append, &content, list.width, list.height));
  const Context cr(cairo_create(surface.get()));
  paint(cr.get(), list, theme, typesetter);
  cairo_surface_finish(surface.get());
  requireFine(cairo_surface_status(surface.get()), what);
  return numberedAnew(content);
}

void writeSvg(const DisplayList& list, const Theme& theme, const std::string& file) {
  writeAtomically(file, svgText(list, theme, file));
}

std::string pdfBytes(const std::vector<DisplayList>& pages, const Theme& theme, const std::string& what,
                     Paper paper) {
  Typesetter typesetter;
  std::string content;
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &content, 612.0, 792.0));
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, "2000-01-01T00:00:00Z");
  const Context cr(cairo_create(surface.get()));
  for (const DisplayList& page : pages) {
    const Vec2 sheet = sheetFor(page, paper);
    cairo_pdf_surface_set_size(surface.get(), sheet.x, sheet.y);
    cairo_save(cr.get());
    fit(cr.get(), page, sheet);
    paint(cr.get(), page, theme, typesetter);
    cairo_restore(cr.get());
    cairo_show_page(cr.get());
  }
  cairo_surface_finish(surface.get());
  requireFine(cairo_surface_status(surface.get()), what);
  return content;
}

void writePdf(const std::vector<DisplayList>& pages, const Theme& theme, const std::string& file,
              Paper paper) {
  writeAtomically(file, pdfBytes(pages, theme, file, paper));
}

void writePicture(const DisplayList& list, const Theme& theme, const std::string& file) {
  const std::string ending = std::filesystem::path(file).extension().string();
  if (ending == ".png")
    writePng(list, theme, file);
  else if (ending == ".svg")
    writeSvg(list, theme, file);
  else if (ending == ".pdf")
    writePdf({list}, theme, file);
  else
    throw InputError(file, "ending", ending.empty() ? "none" : ending, ".png, .svg, .pdf");
}

struct FramePainter::Parts {
  Theme theme;
  Typesetter typesetter;
  Surface surface;
};

FramePainter::FramePainter(int width, int height, const Theme& theme)
    : parts_(new Parts{theme, {}, pixels(width, height)}) {}

FramePainter::~FramePainter() = default;

std::span<const std::uint8_t> FramePainter::paint(const DisplayList& list) {
  cairo_surface_t* surface = parts_->surface.get();
  const int width = cairo_image_surface_get_width(surface);
  const Context cr(cairo_create(surface));
  cairo_scale(cr.get(), width / list.width, width / list.width);
  gapsound::paint(cr.get(), list, parts_->theme, parts_->typesetter);
  cairo_surface_flush(surface);
  const std::size_t bytes = static_cast<std::size_t>(cairo_image_surface_get_stride(surface)) *
                            static_cast<std::size_t>(cairo_image_surface_get_height(surface));
  return {cairo_image_surface_get_data(surface), bytes};
}

}  // namespace gapsound
