// All questions asked of a yard at once. This is where they meet; none of them knows another.
#pragma once

#include <array>
#include <optional>

#include "geom/clear/clear.hpp"
#include "geom/drain/drain.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/pace/pace.hpp"
#include "geom/reach/reach.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"
#include "geom/turn/turn.hpp"

namespace yardwright {

struct Answers {
  DesignSurface surface;
  reach::Answer reach;
  turn::Answer turn;
  drain::Answer drain;
  clear::Answer clear;
  pace::Answer pace;
};

/// The findings of one question, worst first.
const Findings& findings_of(const Answers& answers, Question question);
/// Those of every question, in the order of the questions.
Findings all_findings(const Answers& answers);

/// Asks everything. `catalogs` are the shipped ones; the site's own rule values are put in here.
Answers check(const Site& site, const Catalogs& catalogs);

/// The same while a site is being edited: remembers what each question read, and asks again only those that read
/// something else now.
class LiveCheck {
 public:
  explicit LiveCheck(const Catalogs& catalogs) : catalogs_{catalogs} {}
  const Answers& ask(const Site& site);
  /// How often a question has been asked so far: tests and the window's status read it.
  int times_asked(Question question) const { return times_asked_[static_cast<std::size_t>(question)]; }

 private:
  bool reads_anew(Question question, const Site& site);

  Catalogs catalogs_;
  Answers answers_;
  std::optional<Site> surface_read_;
  std::array<std::optional<Site>, every_question.size()> read_;
  std::array<int, every_question.size()> times_asked_{};
};

}  // namespace yardwright
