#include "geom/check/live_check.hpp"

#include <tbb/parallel_for_each.h>

#include "geom/check/reads.hpp"

namespace yardwright {

namespace {

/// The slowest first, so that the others run beside it.
constexpr std::array asked_in_order{Question::drain, Question::turn, Question::reach, Question::clear, Question::pace};

std::size_t at(Question question) { return static_cast<std::size_t>(question); }

}  // namespace

Answers LiveCheck::answers() const {
  const std::scoped_lock lock{answers_lock_};
  return answers_;
}

bool LiveCheck::reads_anew(Question question, const Site& site) {
  auto& remembered = read_[at(question)];
  Site slice = read_by(question, site);
  if (remembered && *remembered == slice) return false;
  remembered = std::move(slice);
  ++times_asked_[at(question)];
  return true;
}

void LiveCheck::mark_stale(const Site& site) {
  for (const Question question : asked_in_order) {
    const bool anew = reads_anew(question, site);
    const std::scoped_lock lock{answers_lock_};
    if (answers_.stale[at(question)] != anew) ++answers_.revision;
    answers_.stale[at(question)] = anew;
  }
}

void LiveCheck::shape_ground(const Site& site) {
  Site shaped = read_by_surface(site);
  if (surface_read_ && *surface_read_ == shaped) return;
  DesignSurface surface = design_surface(site);
  surface_read_ = std::move(shaped);
  const std::scoped_lock lock{answers_lock_};
  answers_.surface = std::move(surface);
  ++answers_.revision;
}

template <class Part>
void LiveCheck::publish(Question question, std::shared_ptr<const Part> Answers::*part, Part answer) {
  auto shared = std::make_shared<const Part>(std::move(answer));
  const std::scoped_lock lock{answers_lock_};
  answers_.*part = std::move(shared);
  answers_.stale[at(question)] = false;
  ++answers_.revision;
}

void LiveCheck::ask_one(Question question, const Site& site) {
  const Answers before = answers();
  const DesignSurface& surface = before.surface;
  switch (question) {
    case Question::reach: return publish(question, &Answers::reach, reach::ask(site, surface, in_force_));
    case Question::turn:
      return publish(question, &Answers::turn,
                     turn::ask(site, surface, in_force_, {MendSearch{false}, before.turn.get()}));
    case Question::drain:
      return publish(question, &Answers::drain,
                     drain::ask(site, surface, in_force_, {MendSearch{false}, before.drain.get()}));
    case Question::clear: return publish(question, &Answers::clear, clear::ask(site, surface, in_force_));
    case Question::pace: return publish(question, &Answers::pace, pace::ask(site, surface, in_force_));
    case Question::grow: return;
  }
}

void LiveCheck::ask(const Site& site) {
  asked_ = site;
  in_force_ = catalogs_;
  in_force_.rules = catalogs_.rules.with(site.rule_overrides);
  mark_stale(site);
  shape_ground(site);
  const Answers now = answers();
  std::vector<Question> due;
  std::ranges::copy_if(asked_in_order, std::back_inserter(due),
                       [&](Question question) { return now.is_stale(question); });
  tbb::parallel_for_each(due, [&](Question question) { ask_one(question, site); });
}

void LiveCheck::seek_mends(std::stop_token stop) {
  const Answers now = answers();
  const MendSearch search{true, std::move(stop)};
  if (!now.drain->mends_sought)
    publish(Question::drain, &Answers::drain, drain::ask(asked_, now.surface, in_force_, {search, now.drain.get()}));
  if (!now.turn->mends_sought)
    publish(Question::turn, &Answers::turn, turn::ask(asked_, now.surface, in_force_, {search, now.turn.get()}));
}

}  // namespace yardwright
