#include "editor/session/brief_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

#include "geom/grow/proposal_words.hpp"
#include "geom/io/brief_file.hpp"
#include "geom/units/text.hpp"

namespace yardwright::session {

namespace {

constexpr int taller_steps = 3, most_tries = 1'000'000;
constexpr double most_money = 1e12;

template <class Values, class ToWords>
std::string listed(const Values& values, const ToWords& to_words) {
  std::string all;
  for (const auto& value : values) all += (all.empty() ? "" : ", ") + to_words(value);
  return all;
}

/// The words between commas, without the blanks around them.
std::vector<std::string> parted(std::string_view text) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == ',' || c == ';')
      parts.emplace_back();
    else if (c != ' ' || !parts.back().empty())
      parts.back() += c;
  }
  std::erase(parts, "");
  return parts;
}

template <class Value, class Read>
tl::expected<std::vector<Value>, Problem> list_of(std::string_view text, std::size_t most, const Read& read) {
  std::vector<Value> values;
  for (const std::string& part : parted(text)) {
    auto value = read(part);
    if (!value) return tl::unexpected{value.error()};
    values.push_back(*value);
  }
  if (values.size() > most)
    return tl::unexpected{
        Problem{fmt::format("{} are too many", values.size()), "", fmt::format("give {} at most", most)}};
  return values;
}

tl::expected<double, Problem> number_between(std::string_view text, double least, double most) {
  std::string digits{text};
  std::erase_if(digits, [](char c) { return c == ',' || c == ' '; });
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error == std::errc{} && end == digits.data() + digits.size() && value >= least && value <= most) return value;
  return tl::unexpected{Problem{fmt::format("\"{}\" is no number that can be taken", text), "",
                                fmt::format("give {} to {}", number_text(least, 0), number_text(most, 0))}};
}

tl::expected<int, Problem> count_between(std::string_view text, int least, int most) {
  return number_between(text, least, most).map([](double value) { return static_cast<int>(value); });
}

class Taker {
 public:
  Taker(ProposalAsk ask, UnitSystem units) : ask_{std::move(ask)}, units_{units} {}

  tl::expected<ProposalAsk, Problem> taken(std::string_view key, std::string_view text) {
    GrowthBrief& brief = ask_.brief;
    if (key == "wanted") return take(parse_quantity(text, Quantity::grain_volume, units_), brief.wanted_m3);
    if (key == "grain") return take(tl::expected<std::string, Problem>{text}, brief.grain);
    if (key == "bins")
      return take(
          list_of<BinSize>(text, most_bin_sizes, [&](const auto& part) { return parse_bin_size(part, units_); }),
          brief.bins);
    if (key == "legs")
      return take(
          list_of<double>(text, most_leg_heights, [&](const auto& part) { return parse_leg_height(part, units_); }),
          brief.discharge_m);
    if (key == "budget") return take_budget(text);
    if (key == "most-bins") return take(count_between(text, 1, most_bins_of_brief), brief.most_bins);
    if (key == "advice") return take(tl::expected<bool, Problem>{text == "yes"}, brief.bears_advice);
    if (key == "seed") return take(number_between(text, 1, 1e9), ask_.seed);
    return take(count_between(text, 1, most_tries), ask_.tries);
  }

 private:
  template <class Value, class Field>
  tl::expected<ProposalAsk, Problem> take(tl::expected<Value, Problem> read, Field& field) {
    if (!read) return tl::unexpected{read.error()};
    field = static_cast<Field>(*std::move(read));
    return std::move(ask_);
  }

  tl::expected<ProposalAsk, Problem> take_budget(std::string_view text) {
    if (parted(text).empty() || text == "any") {
      ask_.brief.budget.reset();
      return std::move(ask_);
    }
    return take(number_between(text, 0, most_money), ask_.brief.budget);
  }

  ProposalAsk ask_;
  UnitSystem units_;
};

std::vector<Choice> grain_choices(const Catalogs& catalogs) {
  std::vector<Choice> choices{{"", "as the last bin"}};
  for (const Grain& grain : catalogs.grains) choices.push_back({grain.id, grain.name});
  return choices;
}

}  // namespace

GrowthBrief usual_brief(const Site& site, const Answers& answers, const RuleBook& rules) {
  GrowthBrief brief;
  for (const pace::GrainCapacity& one : answers.pace->capacity) brief.wanted_m3 += one.dry.as_cubic_metres();
  for_each<Bin>(site, [&](const Item&, const Bin& bin) {
    const BinSize size{bin.diameter_m, bin.eave_height_m};
    const bool known = std::ranges::find(brief.bins, size) != brief.bins.end();
    if (bin.use == BinUse::dry_store && !known && brief.bins.size() < most_bin_sizes) brief.bins.push_back(size);
  });
  if (brief.bins.empty()) brief.bins.push_back({Bin{}.diameter_m, Bin{}.eave_height_m});
  double tallest_m = 0;
  for_each<Leg>(site, [&](const Item&, const Leg& leg) { tallest_m = std::max(tallest_m, leg.discharge_height_m); });
  const double step_m = rules.at("grow.leg-step").value;
  for (int i = 1; i <= taller_steps && tallest_m > 0; ++i) brief.discharge_m.push_back(tallest_m + i * step_m);
  return brief;
}

std::vector<FieldRow> brief_rows(const ProposalAsk& ask, UnitSystem units, const Catalogs& catalogs) {
  const GrowthBrief& brief = ask.brief;
  const auto size = [&](const BinSize& one) { return grow::bin_size_words(one, units); };
  const auto height = [&](double m) { return text_for_typing(m, Quantity::length, units); };
  return {
      {"wanted",
       "",
       "storage more",
       "dry, heaped and packed",
       RowKind::number,
       text_of(brief.wanted_m3, Quantity::grain_volume, units),
       {}},
      {"grain", "", "of", "the grain that the new bins hold", RowKind::choice, brief.grain, grain_choices(catalogs)},
      {"bins",
       "",
       "in bins of",
       "diameter x eave height, one size or more with commas between them",
       RowKind::words,
       listed(brief.bins, size),
       {}},
      {"legs",
       "",
       "legs raised to",
       "discharge heights that a leg may be raised to, with commas between them; each may stay as it is",
       RowKind::words,
       listed(brief.discharge_m, height),
       {}},
      {"budget",
       "",
       "budget",
       "at most, in the currency of the price book; \"any\" for no limit",
       RowKind::words,
       brief.budget ? number_text(*brief.budget, 0) : "any",
       {}},
      {"most-bins", "", "bins at most", "in one proposal", RowKind::number, std::to_string(brief.most_bins), {}},
      {"advice",
       "",
       "cautions borne",
       "no: what is new must pass; yes: it must only not fail",
       RowKind::flag,
       brief.bears_advice ? "yes" : "no",
       {{"no", "no"}, {"yes", "yes"}}},
      {"tries",
       "",
       "layouts to try",
       "more find better ones and take longer",
       RowKind::number,
       std::to_string(ask.tries),
       {}},
      {"seed",
       "",
       "seed",
       "the same seed and number of tries propose the same",
       RowKind::number,
       std::to_string(ask.seed),
       {}},
  };
}

tl::expected<ProposalAsk, Problem> with_brief_row(ProposalAsk ask, std::string_view key, std::string_view text,
                                                  UnitSystem units) {
  auto taken = Taker{std::move(ask), units}.taken(key, text);
  if (!taken && taken.error().where.empty()) taken.error().where = key;
  return taken;
}

}  // namespace yardwright::session
