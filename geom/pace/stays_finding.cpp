#include "geom/pace/stays_finding.hpp"

namespace yardwright::pace {

namespace {

constexpr double tallest_eave_m = 40.0;  // a bin taller than this is no mend
constexpr double hair_m = 1e-4;
constexpr Angle hair_angle = Angle::degrees(0.01);

double stays_ratio(const Bin& bin, const Grain& grain) { return heaped(room_of(bin), grain).stays_ratio(); }

Mend put(const Item& item, const Bin& bin, std::string action, Quantity quantity, double change, double becomes) {
  Item changed = item;
  changed.thing = bin;
  return {std::move(action), quantity, change, becomes, {PutItem{changed}}};
}

std::optional<Mend> raise_eave(const Item& item, const Bin& bin, const Grain& grain, double most_ratio) {
  const auto at_eave = [&](double eave_m) {
    Bin taller = bin;
    taller.eave_height_m = eave_m;
    return taller;
  };
  double low_m = bin.eave_height_m, high_m = tallest_eave_m;
  if (low_m >= high_m || stays_ratio(at_eave(high_m), grain) > most_ratio) return std::nullopt;
  while (high_m - low_m > hair_m) {
    const double middle_m = (low_m + high_m) / 2;
    (stays_ratio(at_eave(middle_m), grain) <= most_ratio ? high_m : low_m) = middle_m;
  }
  return put(item, at_eave(high_m), "raise the eave of " + title_of(item), Quantity::length, high_m - bin.eave_height_m,
             high_m);
}

Mend give_hopper(const Item& item, Bin bin, const Grain& grain) {
  const Angle now = bin.floor == BinFloor::hopper ? bin.hopper_angle : Angle{};
  bin.floor = BinFloor::hopper;
  bin.hopper_angle = grain.emptying + hair_angle;
  return put(item, bin, "make the hopper floor of " + title_of(item) + " steeper", Quantity::angle,
             (bin.hopper_angle - now).as_degrees(), bin.hopper_angle.as_degrees());
}

}  // namespace

Finding stays_finding(const Item& item, const BinReport& report, const Grain& grain, const RuleBook& rules) {
  const Rule& rule = rules.at(report.wet_holding ? "pace.stays-wet" : "pace.stays");
  Finding finding =
      judged(Question::pace, rule, Bound::at_most, report.volume.stays_ratio(), {item.id}, Verdict::caution);
  const bool passes = finding.verdict == Verdict::pass;
  finding.title = title_of(item) + (passes ? " empties by its centre sump" : " keeps much of its grain on the floor");
  if (report.volume.heap_meets_roof)
    finding.note = "the heap is steeper than the roof: grain does not reach the eave at the wall";
  const Bin* bin = as<Bin>(item);
  if (passes || bin == nullptr) return finding;
  const auto taller = raise_eave(item, *bin, grain, rule.value);
  if (taller && !report.wet_holding) finding.mends.push_back(*taller);
  finding.mends.push_back(give_hopper(item, *bin, grain));
  if (taller && report.wet_holding) finding.mends.push_back(*taller);
  return finding;
}

}  // namespace yardwright::pace
