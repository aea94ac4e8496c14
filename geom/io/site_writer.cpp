// write_site: a Site as the text of a site file.
#include <fmt/format.h>

#include "geom/io/field_writer.hpp"
#include "geom/io/rule_book.hpp"
#include "geom/io/site_file.hpp"

namespace yardwright {

namespace {

std::string item_json(const Item& item, UnitSystem units) {
  FieldWriter writer{units};
  writer(Field{"id", "", ""}, item.id);
  writer.add("kind", json_text(kind_key(item.thing)));
  writer(Field{"name", "", ""}, item.name);
  writer(Field{"phase", "", ""}, item.phase);
  if (item.gone_in) writer(Field{"gone-in", "", ""}, *item.gone_in);
  std::visit([&](const auto& kind) { visit_fields(kind, writer); }, item.thing);
  return writer.object();
}

std::string rule_json(const RuleOverride& own, const RuleBook& book, UnitSystem units) {
  FieldWriter writer{units};
  const Quantity quantity = book.has(own.rule) ? book.at(own.rule).quantity : Quantity::ratio;
  writer(Field{"rule", "", ""}, own.rule);
  writer(Field{"value", "", "", quantity}, own.value);
  writer(Field{"basis", "", ""}, own.basis);
  writer(Field{"reason", "", ""}, own.reason);
  return writer.object();
}

/// Members of the site, one a line.
class LineWriter {
 public:
  void add(std::string_view key, const std::string& json) {
    text_ += fmt::format("{}{}: {}", text_.empty() ? "{" : ",\n ", json_text(key), json);
  }
  /// A list with each element on a line of its own.
  void add(std::string_view key, const std::vector<std::string>& elements) {
    std::string list;
    for (const std::string& element : elements) list += (list.empty() ? "\n  " : ",\n  ") + element;
    add(key, "[" + list + "]");
  }
  std::string text() const { return text_ + "}\n"; }

 private:
  std::string text_;
};

}  // namespace

std::string write_site(const Site& site) {
  const FieldWriter fields{site.units};
  const Field plain;
  LineWriter writer;
  writer.add("yardwright", std::to_string(site_file_version));
  writer.add("name", json_text(site.name));
  writer.add("units", fields.json_of(plain, site.units));
  writer.add("title", fields.json_of(plain, site.title));
  writer.add("tie", fields.json_of(plain, site.tie));
  writer.add("lot", fields.json_of(plain, site.lot));
  writer.add("ground", fields.json_of(plain, site.ground));
  writer.add("storm", fields.json_of(plain, site.storm));
  writer.add("phases", fields.json_of(plain, site.phases));
  std::vector<std::string> rules, items;
  const RuleBook book = shipped_rule_book();
  for (const RuleOverride& own : site.rule_overrides) rules.push_back(rule_json(own, book, site.units));
  for (const Item& item : site.items) items.push_back(item_json(item, site.units));
  writer.add("rules", rules);
  writer.add("items", items);
  return writer.text();
}

}  // namespace yardwright
