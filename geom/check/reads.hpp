// What each question reads of a site, so that an edit asks again only those whose answer can change.
#pragma once

#include "geom/site/question.hpp"
#include "geom/site/site.hpp"

namespace yardwright {

/// The site with only what the question reads; two sites with equal slices have equal answers.
Site read_by(Question question, const Site& site);

/// The same for the design surface.
Site read_by_surface(const Site& site);

}  // namespace yardwright
