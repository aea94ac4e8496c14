#include "geom/sheet/cairo_device.hpp"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <cairo.h>

#include <cmath>

#include "geom/sheet/cairo_marks.hpp"

namespace yardwright {

namespace {

constexpr double points_per_mm = 72 / 25.4;
constexpr double largest_picture_px = 20000;

cairo_status_t keep(void* bytes, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

struct EndSurface {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct EndContext {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using SurfacePointer = std::unique_ptr<cairo_surface_t, EndSurface>;
using ContextPointer = std::unique_ptr<cairo_t, EndContext>;

void draw_page(cairo_t* context, const Page& page, cairo::Letters& letters) {
  const Colour paper = page.paper;
  cairo_set_source_rgba(context, paper.red / 255.0, paper.green / 255.0, paper.blue / 255.0, paper.alpha / 255.0);
  cairo_paint(context);
  for (const PlacedDrawing& placed : page.drawings) {
    cairo_save(context);
    if (placed.window) {
      cairo_rectangle(context, placed.window->low.x, placed.window->low.y, placed.window->width_mm(),
                      placed.window->height_mm());
      cairo_clip(context);
    }
    cairo::draw(context, placed.drawing, placed.placement, letters);
    cairo_restore(context);
  }
}

ContextPointer context_on(const SurfacePointer& surface, double per_mm) {
  ContextPointer context{cairo_create(surface.get())};
  cairo_scale(context.get(), per_mm, per_mm);
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_set_font_options(context.get(), options);
  cairo_font_options_destroy(options);
  return context;
}

tl::unexpected<Problems> could_not_draw(cairo_status_t status) {
  return refused(std::string{"the drawing could not be made: "} + cairo_status_to_string(status), "the sheet",
                 "try a smaller paper or picture");
}

}  // namespace

Expected<std::string> pdf_of(const std::vector<Page>& pages, const std::string& title) {
  std::string bytes;
  SurfacePointer surface{cairo_pdf_surface_create_for_stream(keep, &bytes, 72, 72)};
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE, cairo::printable(title).c_str());
  cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATOR, "yardwright");
  cairo::Letters letters;
  for (const Page& page : pages) {
    cairo_pdf_surface_set_size(surface.get(), page.width_mm * points_per_mm, page.height_mm * points_per_mm);
    const ContextPointer context = context_on(surface, points_per_mm);
    draw_page(context.get(), page, letters);
    cairo_show_page(context.get());
    if (const cairo_status_t status = cairo_status(context.get()); status != CAIRO_STATUS_SUCCESS)
      return could_not_draw(status);
  }
  cairo_surface_finish(surface.get());
  if (const cairo_status_t status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
    return could_not_draw(status);
  return bytes;
}

Expected<std::string> svg_of(const Page& page) {
  std::string bytes;
  cairo::Letters letters;
  SurfacePointer surface{cairo_svg_surface_create_for_stream(keep, &bytes, page.width_mm, page.height_mm)};
  cairo_svg_surface_set_document_unit(surface.get(), CAIRO_SVG_UNIT_MM);
  const ContextPointer context = context_on(surface, 1);
  draw_page(context.get(), page, letters);
  cairo_show_page(context.get());
  cairo_surface_finish(surface.get());
  if (const cairo_status_t status = cairo_surface_status(surface.get()); status != CAIRO_STATUS_SUCCESS)
    return could_not_draw(status);
  return bytes;
}

Expected<std::string> png_of(const Page& page, double dots_per_inch) {
  const double per_mm = dots_per_inch / 25.4;
  const double wide = std::ceil(page.width_mm * per_mm), high = std::ceil(page.height_mm * per_mm);
  if (!(wide >= 1 && high >= 1 && wide <= largest_picture_px && high <= largest_picture_px)) {
    return refused("a picture of this size cannot be made", "the sheet", "choose fewer dots per inch");
  }
  cairo::Letters letters;
  SurfacePointer surface{
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, static_cast<int>(wide), static_cast<int>(high))};
  const ContextPointer context = context_on(surface, per_mm);
  draw_page(context.get(), page, letters);
  std::string bytes;
  const cairo_status_t status = cairo_surface_write_to_png_stream(surface.get(), keep, &bytes);
  if (status != CAIRO_STATUS_SUCCESS) return could_not_draw(status);
  return bytes;
}

struct TextMeasure::Fonts {
  SurfacePointer surface{cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1)};
  ContextPointer context = context_on(surface, 1);
  cairo::Letters letters;
};

TextMeasure::TextMeasure() : fonts_{std::make_unique<Fonts>()} {}
TextMeasure::~TextMeasure() = default;
TextMeasure::TextMeasure(TextMeasure&&) noexcept = default;
TextMeasure& TextMeasure::operator=(TextMeasure&&) noexcept = default;

double TextMeasure::width_mm(const std::string& text, double height_mm, bool bold) const {
  constexpr double measured_height = 100;  // large, so that no rounding to a pixel matters
  return cairo::text_width_mm(fonts_->context.get(), fonts_->letters, text, measured_height, bold) * height_mm /
         measured_height;
}

namespace {

/// Where a word is cut so that its first part is as long as `fits` allows, at a whole UTF-8 letter.
template <class Fits>
std::size_t cut_of(const std::string& word, Fits fits) {
  std::size_t cut = 0;
  for (std::size_t at = 1; at <= word.size(); ++at) {
    if (at < word.size() && (static_cast<unsigned char>(word[at]) & 0xC0U) == 0x80U) continue;
    if (cut > 0 && !fits(word.substr(0, at))) break;
    cut = at;
  }
  return cut;
}

}  // namespace

std::vector<std::string> TextMeasure::wrapped(const std::string& text, double height_mm, double width_mm,
                                              bool bold) const {
  const auto fits = [&](const std::string& words) { return this->width_mm(words, height_mm, bold) <= width_mm; };
  std::vector<std::string> lines;
  std::string current;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    std::string word = text.substr(at, end - at);
    at = end + 1;
    if (!current.empty() && fits(current + " " + word)) {
      current += " " + word;
      continue;
    }
    if (!current.empty()) lines.push_back(std::move(current));
    while (!fits(word)) {
      const std::size_t cut = cut_of(word, fits);
      if (cut >= word.size()) break;
      lines.push_back(word.substr(0, cut));
      word = word.substr(cut);
    }
    current = std::move(word);
  }
  if (!current.empty()) lines.push_back(std::move(current));
  return lines;
}

}  // namespace yardwright
