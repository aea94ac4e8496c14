#include "geom/io/brief_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "geom/io/json_value.hpp"
#include "geom/io/nearest_word.hpp"
#include "geom/io/whole_file.hpp"
#include "geom/site/item.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr std::size_t most_bytes = 100'000;
constexpr std::size_t longest_text = 100;
constexpr double most_money = 1e12, most_grain_m3 = 1e7;

constexpr std::array<std::string_view, 9> brief_keys{"brief",   "wanted",    "grain",  "bins",  "leg-heights",
                                                     "outlets", "most-bins", "budget", "advice"};

/// What the field of a kind may hold at least and at most.
template <class Kind>
std::pair<double, double> bounds_of(std::string_view key) {
  std::pair<double, double> bounds{0, 0};
  Kind kind;
  visit_fields(kind, [&](const Field& field, auto&) {
    if (field.key == key) bounds = {field.least, field.most};
  });
  return bounds;
}

tl::expected<double, Problem> length_between(std::string_view text, std::pair<double, double> bounds,
                                             std::string_view what, UnitSystem bare) {
  auto value = parse_quantity(text, Quantity::length, bare);
  if (!value || (*value >= bounds.first && *value <= bounds.second)) return value;
  return tl::unexpected{Problem{fmt::format("{} of {} is none", what, text_of(*value, Quantity::length, bare)), "",
                                fmt::format("give {} to {}", text_of(bounds.first, Quantity::length, bare),
                                            text_of(bounds.second, Quantity::length, bare))}};
}

class Reader {
 public:
  Reader(std::string_view name, UnitSystem bare) : name_{name}, bare_{bare} {}

  Expected<GrowthBrief> read(const JsonValue& root) {
    if (root.object() == nullptr) {
      complain(root, "is no brief",
               "begin with {\"brief\": 1, \"wanted\": \"40000 bu\", \"bins\": [\"36 ft x 24 ft\"]}");
      return tl::unexpected{problems_};
    }
    for (const JsonMember& one : *root.object()) {
      if (std::ranges::find(brief_keys, one.key) == brief_keys.end())
        complain(one.value, fmt::format("\"{}\" is no field of it", one.key), suggestion(one.key, brief_keys));
    }
    const JsonValue* version = member(root, "brief");
    if (version == nullptr || version->number() == nullptr || *version->number() != 1)
      complain(version == nullptr ? root : *version, "is no brief of version 1", "give \"brief\": 1");
    read_fields(root);
    if (!problems_.empty()) return tl::unexpected{problems_};
    return std::move(brief_);
  }

 private:
  void complain(const JsonValue& at, std::string what, std::string mend) {
    problems_.push_back({std::move(what), fmt::format("{}, line {}", name_, at.line), std::move(mend)});
  }
  void complain(const JsonValue& at, const Problem& problem) { complain(at, problem.what, problem.mend); }

  void read_fields(const JsonValue& root) {
    if (const JsonValue* value = member(root, "wanted")) read_wanted(*value);
    if (const JsonValue* value = member(root, "grain")) read_grain(*value);
    if (const JsonValue* value = member(root, "bins")) read_bins(*value);
    if (const JsonValue* value = member(root, "leg-heights")) read_heights(*value);
    if (const JsonValue* value = member(root, "outlets")) read_count(*value, "outlets", 24, brief_.outlets);
    if (const JsonValue* value = member(root, "most-bins"))
      read_count(*value, "most-bins", most_bins_of_brief, brief_.most_bins);
    if (const JsonValue* value = member(root, "budget")) read_budget(*value);
    if (const JsonValue* value = member(root, "advice")) read_advice(*value);
  }

  /// A number, or text with a unit.
  std::string typed(const JsonValue& value, std::string_view key) {
    if (value.number() != nullptr) return fmt::format("{}", *value.number());
    if (value.text() != nullptr && value.text()->size() <= longest_text) return *value.text();
    complain(value, fmt::format("\"{}\" is {}", key, value.text() != nullptr ? "too long" : sort_of(value)),
             "give a number, or a number with its unit in quotes");
    return {};
  }

  void read_wanted(const JsonValue& value) {
    const std::string text = typed(value, "wanted");
    if (text.empty()) return;
    const auto wanted = parse_quantity(text, Quantity::grain_volume, bare_);
    if (!wanted) return complain(value, wanted.error());
    if (*wanted < 0 || *wanted > most_grain_m3)
      return complain(value, "\"wanted\" is beyond any yard", "give what is wanted more, as in \"40000 bu\"");
    brief_.wanted_m3 = *wanted;
  }

  void read_grain(const JsonValue& value) {
    if (value.text() == nullptr || value.text()->empty() || value.text()->size() > longest_text)
      return complain(value, "\"grain\" is no name of a grain", "give it in quotes, as in \"corn\"");
    brief_.grain = *value.text();
  }

  /// The parts of a list, each given to `read_one`; too many are refused.
  template <class ReadOne>
  void read_list(const JsonValue& value, std::string_view key, std::size_t most, const char* example,
                 ReadOne read_one) {
    if (value.array() == nullptr || value.array()->size() > most)
      return complain(value, fmt::format("\"{}\" is {}", key, value.array() ? "too long a list" : sort_of(value)),
                      fmt::format("give up to {} of them: \"{}\": {}", most, key, example));
    for (const JsonValue& one : *value.array()) read_one(one);
  }

  void read_bins(const JsonValue& value) {
    read_list(value, "bins", most_bin_sizes, "[\"36 ft x 24 ft\"]", [&](const JsonValue& one) {
      const std::string text = typed(one, "bins");
      if (text.empty()) return;
      const auto size = parse_bin_size(text, bare_);
      size ? brief_.bins.push_back(*size) : complain(one, size.error());
    });
  }

  void read_heights(const JsonValue& value) {
    read_list(value, "leg-heights", most_leg_heights, "[\"120 ft\", \"140 ft\"]", [&](const JsonValue& one) {
      const std::string text = typed(one, "leg-heights");
      if (text.empty()) return;
      const auto height_m = parse_leg_height(text, bare_);
      height_m ? brief_.discharge_m.push_back(*height_m) : complain(one, height_m.error());
    });
  }

  void read_count(const JsonValue& value, std::string_view key, int most, int& count) {
    const double* number = value.number();
    if (number != nullptr && *number >= 1 && *number <= most && *number == std::floor(*number))
      count = static_cast<int>(*number);
    else
      complain(value, fmt::format("\"{}\" is none", key), fmt::format("give a whole number from 1 to {}", most));
  }

  void read_budget(const JsonValue& value) {
    const double* number = value.number();
    if (number == nullptr || *number < 0 || *number > most_money)
      return complain(value, "\"budget\" is no sum of money", "give a number, in the currency of the price book");
    brief_.budget = *number;
  }

  void read_advice(const JsonValue& value) {
    if (const bool* borne = value.yes_or_no())
      brief_.bears_advice = *borne;
    else
      complain(value, fmt::format("\"advice\" is {}", sort_of(value)), "give true where cautions are borne, or false");
  }

  std::string_view name_;
  UnitSystem bare_;
  GrowthBrief brief_;
  Problems problems_;
};

}  // namespace

tl::expected<BinSize, Problem> parse_bin_size(std::string_view text, UnitSystem bare) {
  const std::size_t cross = text.find('x');
  if (cross == std::string_view::npos)
    return tl::unexpected{Problem{fmt::format("\"{}\" is no size of a bin", text), "",
                                  "give diameter and eave height, as in \"36ft x 24ft\""}};
  const auto diameter_m = length_between(text.substr(0, cross), bounds_of<Bin>("diameter"), "a diameter", bare);
  if (!diameter_m) return tl::unexpected{diameter_m.error()};
  const auto eave_m = length_between(text.substr(cross + 1), bounds_of<Bin>("eave"), "an eave height", bare);
  if (!eave_m) return tl::unexpected{eave_m.error()};
  return BinSize{*diameter_m, *eave_m};
}

tl::expected<double, Problem> parse_leg_height(std::string_view text, UnitSystem bare) {
  return length_between(text, bounds_of<Leg>("discharge"), "a discharge height", bare);
}

Expected<GrowthBrief> growth_brief_in(std::string_view text, std::string_view name, UnitSystem bare) {
  const auto root = parse_json(text, name);
  if (!root) return tl::unexpected{root.error()};
  return Reader{name, bare}.read(*root);
}

Expected<GrowthBrief> load_growth_brief(const std::filesystem::path& file, UnitSystem bare) {
  const auto text = read_whole_file(file, most_bytes);
  if (!text) return tl::unexpected{text.error()};
  return growth_brief_in(*text, file.string(), bare);
}

}  // namespace yardwright
