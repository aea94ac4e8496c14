#include "geom/drain/storm/how_often.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "geom/drain/storm/storm_findings.hpp"

namespace yardwright::drain::storm {

namespace {

using Happened = std::set<std::pair<std::string, Event>>;

Happened happened_in(const StormStory& story, const Findings& findings) {
  Happened happened;
  for (const Finding& finding : findings) {
    if (finding.items.empty()) continue;
    if (finding.verdict == Verdict::fail || finding.verdict == Verdict::caution)
      happened.insert({finding.id, Event::falls_short});
    const auto pit = std::ranges::find(story.pits, finding.items.front(), &PitStory::item);
    if (pit != story.pits.end() && finding.rule == "drain.storm-pit" && pit->overflows_s)
      happened.insert({finding.id, Event::pit_full});
  }
  return happened;
}

/// The storms of the table's depths, each run when it is first asked about.
class StormsOfTable {
 public:
  StormsOfTable(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const StormOptions& options,
                const Progress& progress)
      : site_{site}, surface_{surface}, catalogs_{catalogs}, options_{options}, progress_{progress} {
    options_.frame_every_s = 0;
  }

  bool happens(double rain_m, const std::pair<std::string, Event>& event) { return of(rain_m).contains(event); }

  /// What is asked about: everything that is judged.
  Findings judged(double rain_m) {
    of(rain_m);
    return judged_;
  }
  int storms() const { return static_cast<int>(by_rain_.size()); }
  bool stopped() const { return stopped_; }
  const Problems& refusal() const { return refusal_; }

 private:
  const Happened& of(double rain_m) {
    if (const auto known = by_rain_.find(rain_m); known != by_rain_.end()) return known->second;
    Happened happened;
    if (!stopped_ && refusal_.empty()) happened = run(rain_m);
    return by_rain_.emplace(rain_m, std::move(happened)).first->second;
  }

  Happened run(double rain_m) {
    Site rained = site_;
    rained.storm.rain_m = rain_m;
    const double all = static_cast<double>(site_.storm.table.rows.size()), before = storms();
    const auto told = [&](double ratio) { return !progress_ || progress_((before + ratio) / all); };
    const auto story = run_storm(rained, surface_, catalogs_, options_, told);
    if (!story) {
      refusal_ = story.error();
      return {};
    }
    stopped_ = story->stopped;
    judged_ = judge_storm(rained, *story, catalogs_.rules.with(site_.rule_overrides));
    return happened_in(*story, judged_);
  }

  const Site& site_;
  const DesignSurface& surface_;
  const Catalogs& catalogs_;
  StormOptions options_;
  const Progress& progress_;
  std::map<double, Happened> by_rain_;
  Findings judged_;
  bool stopped_ = false;
  Problems refusal_;
};

const char* words_of(Event event) {
  return event == Event::pit_full ? "; by the rain table it fills to its rim "
                                  : "; by the rain table it is over the limit ";
}

}  // namespace

tl::unexpected<Problems> no_rain_table() {
  return refused("how often much rain falls is not known", "the storm's rain table",
                 "read it with yardwright rain, or type it beside the storm");
}

Expected<Frequencies> how_often(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                const StormOptions& options, const Progress& progress) {
  if (!site.storm.table.known()) return no_rain_table();
  StormsOfTable storms{site, surface, catalogs, options, progress};
  Frequencies frequencies;
  const auto& rows = site.storm.table.rows;
  for (const Finding& finding : storms.judged(rows[rows.size() / 2].rain_m)) {
    if (finding.items.empty()) continue;
    for (const Event event : {Event::falls_short, Event::pit_full}) {
      if (event == Event::pit_full && finding.rule != "drain.storm-pit") continue;
      const auto happens = [&](double rain_m) { return storms.happens(rain_m, {finding.id, event}); };
      frequencies.all.push_back({finding.id, finding.items.front(), event, recurrence_of(site.storm.table, happens)});
    }
  }
  if (!storms.refusal().empty()) return tl::unexpected{storms.refusal()};
  frequencies.storms = storms.storms();
  frequencies.stopped = storms.stopped();
  if (frequencies.stopped) frequencies.all.clear();
  return frequencies;
}

void tell_how_often(Findings& findings, const Frequencies& frequencies, double yard_life_years) {
  for (const HowOften& one : frequencies.all) {
    const auto finding = std::ranges::find(findings, one.finding, &Finding::id);
    if (finding != findings.end())
      finding->note += words_of(one.event) + recurrence_words(one.recurrence, yard_life_years);
  }
}

}  // namespace yardwright::drain::storm
