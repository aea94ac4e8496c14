#include "geom/grow/differences.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "geom/grow/field_texts.hpp"
#include "geom/shape/polygon.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

constexpr double moved_from_m = 1e-3;  // less is no move that anybody stakes out

std::string changed_words(const FieldText& was, const FieldText& becomes) {
  if (was.drawn) return fmt::format("{} drawn anew, {} instead of {}", was.label, becomes.shown, was.shown);
  const bool told = was.shown != becomes.shown;
  return fmt::format("{} {} becomes {}", was.label, told ? was.shown : was.full, told ? becomes.shown : becomes.full);
}

std::vector<std::string> changes(const FieldTexts& was, const FieldTexts& becomes) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < was.size(); ++i) {
    if (was[i].exact != becomes[i].exact) words.push_back(changed_words(was[i], becomes[i]));
  }
  return words;
}

/// Whether every place and line is drawn alike.
bool drawn_alike(const FieldTexts& a, const FieldTexts& b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i].drawn && a[i].exact != b[i].exact) return false;
  }
  return true;
}

class Compare {
 public:
  Compare(const Site& from, const Site& to) : from_{from}, to_{to}, units_{from.units} {}

  std::vector<Difference> items() {
    for (const Item& was : from_.items) {
      const Item* becomes = find(to_, was.id);
      if (becomes == nullptr || becomes->thing.index() != was.thing.index())
        put(Differs::gone, was, "is gone");
      else
        compare(was, *becomes);
    }
    for (const Item& fresh : to_.items) {
      const Item* was = find(from_, fresh.id);
      if (was == nullptr || was->thing.index() != fresh.thing.index()) put(Differs::added, fresh, "is added");
    }
    return std::move(found_);
  }

 private:
  /// "North 1 (bin) is added"; "bin 4 is added" where it has no name.
  void put(Differs how, const Item& item, std::string_view words) {
    const std::string kind = item.name.empty() ? "" : fmt::format(" ({})", kind_label(item.thing));
    found_.push_back({how, item.id, fmt::format("{}{} {}", title_of(item), kind, words)});
  }

  void compare(const Item& was, const Item& becomes) {
    std::vector<std::string> words = thing_words(was.thing, becomes.thing);
    if (was.name != becomes.name) words.push_back(fmt::format("named \"{}\"", title_of(becomes)));
    if (was.phase != becomes.phase)
      words.push_back(fmt::format("built in phase {} instead of {}", becomes.phase, was.phase));
    if (was.gone_in != becomes.gone_in)
      words.push_back(becomes.gone_in ? fmt::format("gone in phase {}", *becomes.gone_in) : "no longer taken away");
    if (!words.empty())
      found_.push_back({Differs::changed, was.id, fmt::format("{}: {}", title_of(was), fmt::join(words, "; "))});
  }

  /// A thing that has moved as it is tells how far; one that is drawn otherwise, that.
  std::vector<std::string> thing_words(const Thing& was, const Thing& becomes) const {
    const FieldTexts after = field_texts(becomes, to_, units_);
    const SiteVector by = place_of(becomes) - place_of(was);
    const FieldTexts shifted = field_texts(moved(was, by), from_, units_);
    const double by_m = std::hypot(by.x, by.y);
    if (!(by_m > moved_from_m) || !drawn_alike(shifted, after)) return changes(field_texts(was, from_, units_), after);
    std::vector<std::string> words = changes(shifted, after);
    words.insert(words.begin(), fmt::format("moved {} to the {}", text_of(by_m, Quantity::length, units_),
                                            compass_point(Bearing::of(by.x, by.y))));
    return words;
  }

  const Site& from_;
  const Site& to_;
  UnitSystem units_;
  std::vector<Difference> found_;
};

void add_lot(std::vector<Difference>& found, const Site& from, const Site& to) {
  const auto acres = [&](const Site& site) {
    return site.lot.corners.size() < 3 ? std::string{"none"}
                                       : text_of(area_m2(Polygon{site.lot.corners, {}}), Quantity::area, from.units);
  };
  if (from.lot.corners != to.lot.corners)
    found.push_back(
        {Differs::yard, {}, fmt::format("the lot is another one: {} instead of {}", acres(to), acres(from))});
  else if (from.lot.edges != to.lot.edges)
    found.push_back({Differs::yard, {}, "other things lie across the lot's edges"});
}

void add_parts(std::vector<Difference>& found, const Site& from, const Site& to) {
  const auto put = [&](std::string_view part, const std::vector<std::string>& words) {
    for (const std::string& one : words) found.push_back({Differs::yard, {}, fmt::format("{}: {}", part, one)});
  };
  put("the ground", changes(field_texts(from.ground, from, from.units), field_texts(to.ground, to, from.units)));
  if (!(from.ground.levels == to.ground.levels)) found.push_back({Differs::yard, {}, "the ground: other levels"});
  put("the storm", changes(field_texts(from.storm, from, from.units), field_texts(to.storm, to, from.units)));
  if (from.phases != to.phases)
    found.push_back({Differs::yard,
                     {},
                     fmt::format("phases {} instead of {}", fmt::join(to.phases, ", "), fmt::join(from.phases, ", "))});
}

void add_rules(std::vector<Difference>& found, const Site& from, const Site& to, const RuleBook& rules) {
  const RuleBook was = rules.with(from.rule_overrides), becomes = rules.with(to.rule_overrides);
  for (const Rule& rule : was.rules()) {
    const double old = rule.value, fresh = becomes.at(rule.id).value;
    if (old == fresh) continue;
    const auto of = [&](double value) {
      return FieldText{fmt::format("rule \"{}\"", rule.label), "", text_of(value, rule.quantity, from.units),
                       exact_text_of(value, rule.quantity, from.units)};
    };
    found.push_back({Differs::yard, {}, changed_words(of(old), of(fresh))});
  }
}

}  // namespace

std::vector<Difference> differences(const Site& from, const Site& to, const RuleBook& rules) {
  std::vector<Difference> found = Compare{from, to}.items();
  add_lot(found, from, to);
  add_parts(found, from, to);
  add_rules(found, from, to, rules);
  return found;
}

}  // namespace yardwright::grow
