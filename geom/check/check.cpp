#include "geom/check/check.hpp"

#include "geom/check/reads.hpp"

namespace yardwright {

namespace {

const Findings& grow_findings() {
  static const Findings findings{not_checked(Question::grow, "grow.room", {}, "Where the next bin can go",
                                             "not asked yet: this version does not search for room")};
  return findings;
}

}  // namespace

const Findings& findings_of(const Answers& answers, Question question) {
  switch (question) {
    case Question::reach: return answers.reach.findings;
    case Question::turn: return answers.turn.findings;
    case Question::drain: return answers.drain.findings;
    case Question::clear: return answers.clear.findings;
    case Question::pace: return answers.pace.findings;
    case Question::grow: break;
  }
  return grow_findings();
}

Findings all_findings(const Answers& answers) {
  Findings all;
  for (const Question question : every_question) {
    const Findings& some = findings_of(answers, question);
    all.insert(all.end(), some.begin(), some.end());
  }
  return all;
}

Answers check(const Site& site, const Catalogs& catalogs) { return LiveCheck{catalogs}.ask(site); }

bool LiveCheck::reads_anew(Question question, const Site& site) {
  auto& remembered = read_[static_cast<std::size_t>(question)];
  Site slice = read_by(question, site);
  if (remembered && *remembered == slice) return false;
  remembered = std::move(slice);
  ++times_asked_[static_cast<std::size_t>(question)];
  return true;
}

const Answers& LiveCheck::ask(const Site& site) {
  Site shaped = read_by_surface(site);
  if (!surface_read_ || *surface_read_ != shaped) {
    answers_.surface = design_surface(site);
    surface_read_ = std::move(shaped);
  }
  Catalogs catalogs = catalogs_;
  catalogs.rules = catalogs_.rules.with(site.rule_overrides);
  const DesignSurface& surface = answers_.surface;
  if (reads_anew(Question::reach, site)) answers_.reach = reach::ask(site, surface, catalogs);
  if (reads_anew(Question::turn, site)) answers_.turn = turn::ask(site, surface, catalogs);
  if (reads_anew(Question::drain, site)) answers_.drain = drain::ask(site, surface, catalogs);
  if (reads_anew(Question::clear, site)) answers_.clear = clear::ask(site, surface, catalogs);
  if (reads_anew(Question::pace, site)) answers_.pace = pace::ask(site, surface, catalogs);
  return answers_;
}

}  // namespace yardwright
