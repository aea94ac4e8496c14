#include "tests/geom/io/random_site.hpp"

#include <algorithm>

#include "geom/io/rule_book.hpp"

namespace yardwright::tests {

namespace {

/// Fills any member with a random value that its field allows.
class RandomFields {
 public:
  RandomFields(std::mt19937& random, int items) : random_{random}, items_{items} {}

  void operator()(const Field& field, double& value) { value = typed(field.least, field.most, 1e4); }
  void operator()(const Field& field, int& value) {
    value = static_cast<int>(
        whole(static_cast<int>(std::max(field.least, -50.0)), static_cast<int>(std::min(field.most, 50.0))));
  }
  void operator()(const Field&, bool& value) { value = whole(0, 1) == 1; }
  void operator()(const Field& field, std::string& value) {
    static const std::vector<std::string> words{"", "plain", "with \"quotes\" and \\", "söja, ünïcode 麦",
                                                "line\nbreak\ttab"};
    value = field.key == "file" ? "picture.png" : words[static_cast<std::size_t>(whole(0, 4))];
  }
  void operator()(const Field& field, Angle& value) { value = Angle::degrees(typed(field.least, field.most, 90)); }
  void operator()(const Field&, Bearing& value) { value = Bearing::degrees(typed(0, 359.9, 360)); }
  void operator()(const Field&, ItemId& value) { value = {whole(0, items_)}; }
  void operator()(const Field&, std::vector<ItemId>& values) {
    values.resize(static_cast<std::size_t>(whole(0, 4)));
    for (ItemId& id : values) id = {whole(1, items_)};
  }
  void operator()(const Field&, MassCurve& curve) {
    curve.points = {{0, 0}};
    for (int i = whole(0, 6); i > 0; --i)
      curve.points.push_back({curve.points.back().time_s + typed(1, 7000, 7000),
                              std::min(1.0, curve.points.back().fallen_ratio + typed(0, 0.2, 0.2))});
    curve.points.push_back({86400, 1});
    if (whole(0, 3) == 0) curve.points.clear();
  }
  void operator()(const Field&, RainTable& table) {
    for (int i = whole(0, 5); i > 0; --i)
      table.rows.push_back({(table.rows.empty() ? 0.5 : table.rows.back().years) + typed(0.5, 90, 90),
                            (table.rows.empty() ? 0.01 : table.rows.back().rain_m) + typed(0.001, 0.05, 0.05)});
  }
  void operator()(const Field&, SitePoint& value) { value = {typed(-900, 900, 900), typed(-900, 900, 900)}; }
  void operator()(const Field& field, SitePath& path) {
    path.resize(static_cast<std::size_t>(whole(field.closed ? 3 : 2, 6)));
    for (SitePoint& point : path) (*this)(field, point);
  }
  template <class Enum>
  requires std::is_enum_v<Enum>
  void operator()(const Field&, Enum& value) {
    value = static_cast<Enum>(whole(0, static_cast<int>(names_of(Enum{}).size()) - 1));
  }
  template <Fielded Struct>
  void operator()(const Field&, Struct& value) {
    visit_fields(value, *this);
  }

  int whole(int least, int most) { return std::uniform_int_distribution{least, most}(random_); }

 private:
  /// A value as people type them in feet, inches or metres, or one with all its digits.
  double typed(double least, double most, double cap) {
    const double low = std::max(least, -cap), high = std::min(most, cap);
    const double any = std::uniform_real_distribution{low, high}(random_);
    constexpr double factors[] = {0.3048, 0.0254, 1, 0.01, 0.44704};
    const double factor = factors[whole(0, 4)];
    const double rounded = std::round(any / factor * 4) / 4 * factor;
    return whole(0, 2) == 0 || rounded < low || rounded > high ? any : rounded;
  }

  std::mt19937& random_;
  int items_;
};

std::vector<Item> random_items(RandomFields& fields, std::mt19937& random, int phases) {
  std::vector<Item> items;
  for (const Thing& thing : every_kind())
    items.push_back({{static_cast<int>(items.size()) + 1}, "", 0, std::nullopt, thing});
  std::ranges::shuffle(items, random);
  for (Item& item : items) {
    fields(Field{}, item.name);
    item.phase = fields.whole(0, phases - 1);
    if (item.phase + 1 < phases) item.gone_in = fields.whole(item.phase + 1, phases - 1);
    std::visit([&](auto& kind) { visit_fields(kind, fields); }, item.thing);
  }
  return items;
}

std::vector<RuleOverride> random_rules(RandomFields& fields) {
  std::vector<RuleOverride> own;
  const RuleBook book = shipped_rule_book();
  for (const Rule& rule : book.rules()) {
    if (fields.whole(0, 1) == 0) continue;
    RuleOverride& added = own.emplace_back();
    added.rule = rule.id;
    fields(Field{"value", "", "", rule.quantity, 0, 100}, added.value);
    fields(Field{}, added.basis);
    fields(Field{}, added.reason);
  }
  std::ranges::sort(own, {}, &RuleOverride::rule);
  return own;
}

}  // namespace

Site random_site(std::mt19937& random, UnitSystem units) {
  RandomFields fields{random, static_cast<int>(every_kind().size())};
  Site site;
  site.units = units;
  site.phases = {"existing", "next year", "some day"};
  fields(Field{}, site.name);
  fields(Field{}, site.title);
  fields(Field{}, site.storm);
  site.lot = rectangular_lot(std::uniform_real_distribution{50.0, 400.0}(random), 123.456);
  for (LotEdge& edge : site.lot.edges) fields(Field{}, edge);
  site.tie = {26915, 451234.5, 4649876.25};
  site.ground.source = "levelled by hand";
  site.rule_overrides = random_rules(fields);
  site.items = random_items(fields, random, 3);
  return site;
}

LevelGrid random_levels(std::mt19937& random) {
  std::uniform_real_distribution<double> place{-300, 300}, level{280, 290}, cell{0.3, 3};
  std::uniform_int_distribution<int> count{1, 40};
  const GridFrame frame{{place(random), place(random)}, cell(random), count(random), count(random)};
  std::vector<float> values(frame.cells());
  for (float& value : values) value = static_cast<float>(level(random));
  return {frame, std::move(values)};
}

}  // namespace yardwright::tests
