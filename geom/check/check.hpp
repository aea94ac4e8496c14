// All questions asked of a yard at once. This is where they meet; none of them knows another.
#pragma once

#include <array>
#include <cstdint>
#include <memory>

#include "geom/clear/clear.hpp"
#include "geom/drain/drain.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/pace/pace.hpp"
#include "geom/reach/reach.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"
#include "geom/turn/turn.hpp"

namespace yardwright {

/// That room to grow was not asked for.
std::shared_ptr<const Findings> room_not_asked();

/// Cheap to copy: the parts are shared and never change. None of them is null.
struct Answers {
  DesignSurface surface;
  std::shared_ptr<const reach::Answer> reach = std::make_shared<reach::Answer>();
  std::shared_ptr<const turn::Answer> turn = std::make_shared<turn::Answer>();
  std::shared_ptr<const drain::Answer> drain = std::make_shared<drain::Answer>();
  std::shared_ptr<const clear::Answer> clear = std::make_shared<clear::Answer>();
  std::shared_ptr<const pace::Answer> pace = std::make_shared<pace::Answer>();
  std::shared_ptr<const Findings> grow = room_not_asked();  ///< asked by geom/grow, which needs the others
  std::array<bool, every_question.size()> stale{};          ///< asked of the site as it was, and being asked again
  std::uint64_t revision = 0;                               ///< of this value, while a site is edited

  bool is_stale(Question question) const { return stale[static_cast<std::size_t>(question)]; }
};

/// The findings of one question, worst first.
const Findings& findings_of(const Answers& answers, Question question);
/// Those of every question, in the order of the questions.
Findings all_findings(const Answers& answers);

/// Asks everything but Grow. `catalogs` are the shipped ones; the site's own rule values are put in here.
Answers check(const Site& site, const Catalogs& catalogs);

}  // namespace yardwright
