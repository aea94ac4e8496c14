// read_site: the text of a site file into a Site, noting everything that is wrong on the way.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "geom/io/field_reader.hpp"
#include "geom/io/nearest_word.hpp"
#include "geom/io/rule_book.hpp"
#include "geom/io/site_faults.hpp"
#include "geom/io/site_file.hpp"

namespace yardwright {

namespace {

constexpr std::size_t most_problems_told = 200;
constexpr std::size_t most_phases = 100;

std::vector<std::string_view> kind_keys() {
  std::vector<std::string_view> keys;
  for (const Thing& thing : every_kind()) keys.push_back(kind_key(thing));
  return keys;
}

class SiteReader {
 public:
  SiteReader(const JsonValue& root, std::string_view name) : root_{root}, name_{name} {}

  Expected<Site> read() {
    read_units();
    read_parts();
    check_phases();
    if (const JsonValue* items = list_member("items")) read_items(*items);
    for (const SiteFault& fault : faults_of(site_, unreadable_)) note(fault);
    if (problems_.empty()) return std::move(site_);
    return tl::unexpected{told()};
  }

 private:
  FilePart part(std::string words) const { return {name_, std::move(words)}; }
  void note(int line, std::string words, std::string_view field, std::string what, std::string mend) {
    problems_.push_back({std::move(what), where_words(part(std::move(words)), line, field), std::move(mend)});
  }

  /// First of all, since every number hangs on them.
  void read_units() {
    FieldReader reader{root_, part(""), UnitSystem::us, problems_};
    reader(Field{"units", "units", ""}, site_.units);
  }

  void read_parts() {
    FieldReader reader{root_, part(""), site_.units, problems_};
    for (const char* key : {"yardwright", "units", "rules", "items"}) reader.take(key);
    reader(Field{"name", "name", ""}, site_.name);
    reader(Field{"title", "title", ""}, site_.title);
    reader(Field{"tie", "tie", ""}, site_.tie);
    reader(Field{"lot", "lot", ""}, site_.lot);
    reader(Field{"ground", "ground", ""}, site_.ground);
    reader(Field{"storm", "storm", ""}, site_.storm);
    reader(Field{"phases", "phases", ""}, site_.phases);
    reader.refuse_unknown();
    if (const JsonValue* rules = list_member("rules")) read_rules(*rules);
  }

  const JsonValue* list_member(std::string_view key) {
    const JsonValue* value = member(root_, key);
    if (value == nullptr || value->array() != nullptr) return value;
    note(value->line, "", key, fmt::format("{} will not do", sort_of(*value)), "write a list: [ ..., ... ]");
    return nullptr;
  }

  void check_phases() {
    if (!site_.phases.empty() && site_.phases.size() <= most_phases) return;
    const JsonValue* given = member(root_, "phases");
    note(given == nullptr ? 1 : given->line, "", "phases", fmt::format("are {}", site_.phases.size()),
         fmt::format("name 1 to {} phases; the first stands today", most_phases));
  }

  void read_rules(const JsonValue& rules) {
    const RuleBook book = shipped_rule_book();
    for (const JsonValue& rule : *rules.array()) read_rule(rule, book);
    auto& own = site_.rule_overrides;
    std::ranges::stable_sort(own, {}, &RuleOverride::rule);
    const auto twice = std::ranges::adjacent_find(own, {}, &RuleOverride::rule);
    if (twice != own.end()) note(rules.line, "rules", twice->rule, "is given twice", "keep one of them");
  }

  void read_rule(const JsonValue& value, const RuleBook& book) {
    const std::size_t before = problems_.size();
    RuleOverride own;
    const JsonValue* id = member(value, "rule");
    FieldReader reader{value, part(id != nullptr && id->text() != nullptr ? "rule " + *id->text() : "rules"),
                       site_.units, problems_};
    if (value.object() == nullptr) return;
    reader(Field{"rule", "rule", ""}, own.rule);
    reader(Field{"basis", "basis", ""}, own.basis);
    reader(Field{"reason", "reason", ""}, own.reason);
    const JsonValue* limit = reader.take("value");
    reader.refuse_unknown();
    if (!book.has(own.rule)) {
      std::vector<std::string_view> ids;
      for (const Rule& rule : book.rules()) ids.push_back(rule.id);
      const std::string_view nearest = nearest_word(own.rule, ids);
      return reader.note(
          value.line, "rule", fmt::format("{} is no rule of the book", json_text(own.rule)),
          nearest.empty() ? "see the ids of assets/rules.json" : fmt::format("did you mean \"{}\"?", nearest));
    }
    if (limit == nullptr) return reader.note(value.line, "value", "is missing", "give the site's own value");
    reader.read(Field{"value", "value", "", book.at(own.rule).quantity}, *limit, own.value);
    if (problems_.size() == before) site_.rule_overrides.push_back(std::move(own));
  }

  void read_items(const JsonValue& items) {
    site_.items.reserve(items.array()->size());
    for (const JsonValue& value : *items.array()) {
      const std::size_t before = problems_.size();
      Item item = read_item(value);
      if (problems_.size() != before) {
        unreadable_.insert(item.id);
        continue;
      }
      lines_[item.id] = value.line;
      site_.items.push_back(std::move(item));
    }
  }

  Item read_item(const JsonValue& value) {
    Item item;
    const std::string words = item_words(value);
    FieldReader reader{value, part(words), site_.units, problems_};
    if (value.object() == nullptr) return item;
    read_id(value, reader, item.id);
    reader(Field{"name", "name", ""}, item.name);
    const double last_phase = static_cast<double>(site_.phases.size()) - 1;
    reader(Field{"phase", "phase", "", Quantity::count, 0, last_phase}, item.phase);
    if (const JsonValue* gone = reader.take("gone-in")) {
      reader.read(Field{"gone-in", "gone in", "", Quantity::count, 0, last_phase}, *gone, item.gone_in.emplace());
    }
    if (read_kind(value, reader, item.thing)) {
      std::visit([&](auto& kind) { visit_fields(kind, reader); }, item.thing);
      reader.refuse_unknown();
    }
    return item;
  }

  /// "item 4 (North 1)", as far as the item tells.
  static std::string item_words(const JsonValue& value) {
    const JsonValue* id = member(value, "id");
    const JsonValue* name = member(value, "name");
    std::string words = id != nullptr && id->number() != nullptr ? fmt::format("item {:g}", *id->number()) : "an item";
    if (name != nullptr && name->text() != nullptr && !name->text()->empty())
      words += fmt::format(" ({})", *name->text());
    return words;
  }

  void read_id(const JsonValue& value, FieldReader& reader, ItemId& id) {
    const JsonValue* given = reader.take("id");
    if (given == nullptr || given->is_null())
      return reader.note(value.line, "id", "is missing", "give a whole number of its own");
    reader.read(Field{"id", "id", ""}, *given, id);
    if (id && !ids_.insert(id).second) {
      reader.note(value.line, "id", "is that of an earlier item too", "give each item a number of its own");
    }
  }

  static bool read_kind(const JsonValue& value, FieldReader& reader, Thing& thing) {
    const JsonValue* given = reader.take("kind");
    const std::string* key = given == nullptr ? nullptr : given->text();
    std::optional<Thing> known = key == nullptr ? std::nullopt : thing_of_kind(*key);
    if (known) {
      thing = std::move(*known);
      return true;
    }
    const std::string what = given == nullptr ? "is missing"
                             : key == nullptr ? "is no text"
                                              : json_text(*key) + " is no kind";
    reader.note(value.line, "kind", what, suggestion(key == nullptr ? "" : *key, kind_keys()));
    return false;
  }

  void note(const SiteFault& fault) {
    const JsonValue* value = fault.item == nullptr ? member(root_, fault.part) : nullptr;
    const int line = fault.item != nullptr ? lines_[fault.item->id] : value != nullptr ? value->line : 1;
    std::string words{fault.part};
    if (fault.item != nullptr) words = fmt::format("item {}", fault.item->id.number);
    if (fault.item != nullptr && !fault.item->name.empty()) words += fmt::format(" ({})", fault.item->name);
    note(line, std::move(words), fault.field, fault.what, fault.mend);
  }

  /// All of them, up to a number that a person would read.
  Problems told() {
    if (problems_.size() <= most_problems_told) return std::move(problems_);
    const std::size_t more = problems_.size() - most_problems_told;
    problems_.resize(most_problems_told);
    problems_.push_back({fmt::format("{} more problems are not listed", more), name_, "mend these first"});
    return std::move(problems_);
  }

  const JsonValue& root_;
  std::string name_;
  Site site_;
  Problems problems_;
  std::set<ItemId> ids_, unreadable_;
  std::map<ItemId, int> lines_;
};

/// Says whether this is a site file of a version that can be read.
tl::expected<void, Problems> check_version(const JsonValue& root, std::string_view name) {
  const JsonValue* version = member(root, "yardwright");
  if (version == nullptr || version->number() == nullptr || *version->number() < 1) {
    return refused("is no yard file", std::string{name}, "a yard file begins with {\"yardwright\": 1");
  }
  if (*version->number() > site_file_version) {
    return refused(fmt::format("was saved by a newer yardwright, as version {:g}; this one reads up to {}",
                               *version->number(), site_file_version),
                   std::string{name}, "open it with the newer program");
  }
  return {};
}

}  // namespace

Expected<Site> read_site(std::string_view text, std::string_view name) {
  if (text.size() > most_site_file_bytes) {
    return refused(fmt::format("is larger than {} MB", most_site_file_bytes >> 20), std::string{name},
                   "no yard file is");
  }
  const auto root = parse_json(text, name);
  if (!root) return tl::unexpected{root.error()};
  if (const auto version = check_version(*root, name); !version) return tl::unexpected{version.error()};
  return SiteReader{*root, name}.read();
}

}  // namespace yardwright
