#include "geom/check/check.hpp"

#include "geom/check/live_check.hpp"

namespace yardwright {

std::shared_ptr<const Findings> room_not_asked() {
  static const auto not_asked = std::make_shared<const Findings>(Findings{
      not_checked(Question::grow, "grow.room", {}, "Where the next bin can go", "the search for room was not run")});
  return not_asked;
}

const Findings& findings_of(const Answers& answers, Question question) {
  switch (question) {
    case Question::reach: return answers.reach->findings;
    case Question::turn: return answers.turn->findings;
    case Question::drain: return answers.drain->findings;
    case Question::clear: return answers.clear->findings;
    case Question::pace: return answers.pace->findings;
    case Question::grow: break;
  }
  return *answers.grow;
}

Findings all_findings(const Answers& answers) {
  Findings all;
  for (const Question question : every_question) {
    const Findings& some = findings_of(answers, question);
    all.insert(all.end(), some.begin(), some.end());
  }
  return all;
}

Answers check(const Site& site, const Catalogs& catalogs) {
  LiveCheck once{catalogs};
  once.ask(site);
  once.seek_mends();
  return once.answers();
}

}  // namespace yardwright
