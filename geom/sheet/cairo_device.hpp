// Pages as PDF, SVG or PNG through Cairo, with Inter as the letters (found by fontconfig; where Inter is not
// installed or lacks a letter, fontconfig's nearest sans serif stands in). PDF and SVG are vectors, and the PDF's
// words are text that can be searched.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "geom/sheet/page.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

/// The bytes of a file; a Problem where Cairo could not make it.
Expected<std::string> pdf_of(const std::vector<Page>& pages, const std::string& title);
Expected<std::string> svg_of(const Page& page);
Expected<std::string> png_of(const Page& page, double dots_per_inch);

/// Measures words as the pages set them; keeps its font open between calls.
class TextMeasure {
 public:
  TextMeasure();
  ~TextMeasure();
  TextMeasure(TextMeasure&&) noexcept;
  TextMeasure& operator=(TextMeasure&&) noexcept;

  double width_mm(const std::string& text, double height_mm, bool bold = false) const;
  /// Cut at spaces into lines no wider than `width_mm`; a word that is wider is cut where it must be.
  std::vector<std::string> wrapped(const std::string& text, double height_mm, double width_mm, bool bold = false) const;

 private:
  struct Fonts;
  std::unique_ptr<Fonts> fonts_;
};

}  // namespace yardwright
