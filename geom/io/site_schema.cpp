#include "geom/io/site_schema.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "geom/io/field_bounds.hpp"
#include "geom/io/site_file.hpp"

namespace yardwright {

namespace {

using Json = nlohmann::ordered_json;

Json reference(std::string_view name) { return {{"$ref", fmt::format("#/$defs/{}", name)}}; }

/// Builds the "properties" of an object from the fields that it visits.
class Properties {
 public:
  template <class Member>
  void operator()(const Field& field, const Member& member) {
    Json schema = of(field, member);
    const std::string words = described(field, bounded_quantity(field, member));
    if (!words.empty()) schema["description"] = words;
    properties_[std::string{field.key}] = std::move(schema);
    if constexpr (std::is_same_v<Member, SitePoint> || std::is_same_v<Member, SitePath>) required_.push_back(field.key);
  }

  void add(const std::string& key, Json schema) { properties_[key] = std::move(schema); }
  void require(std::string_view key) { required_.push_back(key); }

  Json object() const {
    Json schema{{"type", "object"}, {"additionalProperties", false}};
    if (!required_.empty()) schema["required"] = required_;
    schema["properties"] = properties_;
    return schema;
  }

 private:
  static std::string described(const Field& field, std::optional<Quantity> quantity) {
    const std::string bounds = quantity ? bounds_words(field, *quantity) : "";
    return std::string{field.means} + (bounds.empty() ? "" : "; " + bounds);
  }

  /// Bounds can be stated where both systems show the quantity in the same unit.
  static Json quantity(const Field& field, Quantity of) {
    const Unit& us = shown_unit(of, UnitSystem::us);
    Json schema{{"type", {"number", "string"}}};
    if (us.suffix != shown_unit(of, UnitSystem::metric).suffix) return schema;
    if (std::isfinite(field.least)) schema["minimum"] = field.least / us.factor;
    if (std::isfinite(field.most)) schema["maximum"] = field.most / us.factor;
    return schema;
  }

  static Json of(const Field& field, double) { return quantity(field, field.quantity); }
  static Json of(const Field& field, Angle) { return quantity(field, Quantity::angle); }
  static Json of(const Field&, Bearing) { return {{"type", {"number", "string"}}}; }
  static Json of(const Field& field, int) {
    Json schema{{"type", "integer"}};
    if (std::isfinite(field.least)) schema["minimum"] = static_cast<int>(field.least);
    if (std::isfinite(field.most)) schema["maximum"] = static_cast<int>(field.most);
    return schema;
  }
  static Json of(const Field&, bool) { return {{"type", "boolean"}}; }
  static Json of(const Field&, const std::string&) { return {{"type", "string"}}; }
  static Json of(const Field&, const MassCurve&) { return {{"type", "string"}}; }
  static Json of(const Field&, const RainTable&) { return {{"type", "string"}}; }
  static Json of(const Field&, ItemId) { return {{"type", {"integer", "null"}}, {"minimum", 1}}; }
  static Json of(const Field&, SitePoint) { return reference("point"); }
  static Json of(const Field& field, const SitePath&) { return reference(field.closed ? "ring" : "path"); }
  template <class Enum>
  requires std::is_enum_v<Enum>
  static Json of(const Field&, Enum) { return {{"enum", names_of(Enum{})}}; }
  template <class Element>
  static Json of(const Field& field, const std::vector<Element>&) {
    return {{"type", "array"}, {"items", of(field, Element{})}};
  }
  template <Fielded Struct>
  static Json of(const Field&, const Struct& value) {
    Properties inner;
    visit_fields(value, inner);
    return inner.object();
  }

  Json properties_ = Json::object();
  std::vector<std::string_view> required_;
};

Json item_schema(const Thing& thing) {
  Properties item;
  item.add("id", {{"type", "integer"}, {"minimum", 1}});
  item.add("kind", {{"const", kind_key(thing)}});
  item.add("name", {{"type", "string"}});
  item.add("phase", {{"type", "integer"}, {"minimum", 0}});
  item.add("gone-in", {{"type", "integer"}, {"minimum", 0}});
  item.require("id");
  item.require("kind");
  std::visit([&](const auto& kind) { visit_fields(kind, item); }, thing);
  return item.object();
}

/// Each item by its kind, so that a checker's message is about that kind alone.
Json items_schema() {
  std::vector<std::string_view> keys;
  Json choices = Json::array();
  for (const Thing& thing : every_kind()) {
    const std::string_view key = kind_key(thing);
    keys.push_back(key);
    const Json is_this{{"required", {"kind"}}, {"properties", {{"kind", {{"const", key}}}}}};
    choices.push_back({{"if", is_this}, {"then", reference(key)}});
  }
  const Json item{{"type", "object"},
                  {"required", {"id", "kind"}},
                  {"properties", {{"kind", {{"enum", keys}}}}},
                  {"allOf", choices}};
  return {{"type", "array"}, {"items", item}};
}

Json rules_schema() {
  Properties rule;
  rule.add("rule", {{"type", "string"}, {"description", "id in the rule book"}});
  rule.add("value", {{"type", {"number", "string"}}});
  rule.add("basis", {{"enum", names_of(Basis{})}});
  rule.add("reason", {{"type", "string"}});
  rule.require("rule");
  rule.require("value");
  return {{"type", "array"}, {"items", rule.object()}};
}

Json lot_schema() {
  Properties lot;
  const Lot none;
  visit_fields(none, lot);
  Json schema = lot.object();
  schema["properties"]["corners"] = {{"type", "array"}, {"items", reference("point")}};  // none: no lot yet
  return schema;
}

Json definitions() {
  const Json coordinate{{"type", {"number", "string"}}};
  Json all;
  all["point"] = {{"type", "array"}, {"items", coordinate}, {"minItems", 2}, {"maxItems", 2}};
  all["path"] = {{"type", "array"}, {"items", reference("point")}, {"minItems", 2}};
  all["ring"] = {{"type", "array"}, {"items", reference("point")}, {"minItems", 3}};
  for (const Thing& thing : every_kind()) all[std::string{kind_key(thing)}] = item_schema(thing);
  // The one path that may be empty: it is still to be found.
  all["route"]["properties"]["path"] = {{"anyOf", {reference("path"), {{"type", "array"}, {"maxItems", 0}}}}};
  return all;
}

Json members() {
  Properties members;
  const Site site;
  members.add("yardwright", {{"type", "integer"}, {"minimum", 1}, {"maximum", site_file_version}});
  members(Field{"name", "", "of the yard"}, site.name);
  members(Field{"units", "", "of every bare number of the file"}, site.units);
  members(Field{"title", "", "words for the title block of the sheets"}, site.title);
  members(Field{"tie", "", "what ties the site frame to the earth"}, site.tie);
  members.add("lot", lot_schema());
  members(Field{"ground", "", "the ground as it lies today"}, site.ground);
  members(Field{"storm", "", "the rain that Drain is asked about"}, site.storm);
  members.add("phases", {{"type", "array"}, {"items", {{"type", "string"}}}, {"minItems", 1}, {"maxItems", 100}});
  members.add("rules", rules_schema());
  members.add("items", items_schema());
  members.require("yardwright");
  return members.object();
}

}  // namespace

std::string site_schema() {
  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
              {"title", "yardwright site file"},
              {"description", "NAME.yard; numbers are in the file's units, text may carry any unit: see format.md"}};
  schema.update(members());
  schema["$defs"] = definitions();
  return schema.dump(1) + "\n";
}

}  // namespace yardwright
