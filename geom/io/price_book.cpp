#include "geom/io/price_book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "assets/assets.hpp"
#include "geom/io/json_value.hpp"
#include "geom/io/nearest_word.hpp"
#include "geom/io/whole_file.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr std::size_t most_bytes = 1'000'000;
constexpr std::size_t longest_text = 200;
constexpr double highest_price = 1e9;
constexpr std::string_view each = "each";

constexpr std::array<std::string_view, 6> book_keys{"prices", "name", "invented", "date", "currency", "list"};
constexpr std::array<std::string_view, 5> price_keys{"work", "size", "price", "per", "source"};

class Reader {
 public:
  explicit Reader(std::string_view name) : name_{name} {}

  Expected<PriceBook> read(const JsonValue& root) {
    if (root.object() == nullptr) {
      complain(root, "is no price book", "begin with a copy of the shipped one: yardwright cost SITE --write-prices");
      return tl::unexpected{problems_};
    }
    check_keys(root, book_keys);
    const JsonValue* version = member(root, "prices");
    if (version == nullptr || version->number() == nullptr || *version->number() != 1)
      complain(version == nullptr ? root : *version, "is no price book of version 1", "give \"prices\": 1");
    book_.name = text(root, "name", false);
    book_.date = text(root, "date", true);
    book_.currency = text(root, "currency", true);
    if (const JsonValue* invented = member(root, "invented")) read_invented(*invented);
    const JsonValue* list = member(root, "list");
    if (list == nullptr || list->array() == nullptr)
      complain(root, "has no list of prices", "give \"list\": [...], a price a line");
    else
      for (const JsonValue& price : *list->array()) read_price(price);
    if (!problems_.empty()) return tl::unexpected{problems_};
    return std::move(book_);
  }

 private:
  void complain(const JsonValue& at, std::string what, std::string mend) {
    problems_.push_back({std::move(what), fmt::format("{}, line {}", name_, at.line), std::move(mend)});
  }

  void check_keys(const JsonValue& value, std::span<const std::string_view> keys) {
    for (const JsonMember& one : *value.object()) {
      if (std::ranges::find(keys, one.key) == keys.end())
        complain(one.value, fmt::format("\"{}\" is no field of it", one.key), suggestion(one.key, keys));
    }
  }

  void read_invented(const JsonValue& value) {
    if (const bool* invented = value.yes_or_no())
      book_.invented = *invented;
    else
      complain(value, fmt::format("\"invented\" is {}", sort_of(value)), "give true or false");
  }

  std::string text(const JsonValue& of, std::string_view key, bool needed) {
    const JsonValue* value = member(of, key);
    if (value == nullptr && !needed) return {};
    if (value == nullptr) {
      complain(of, fmt::format("\"{}\" is not given", key), fmt::format("give \"{}\": \"...\"", key));
      return {};
    }
    const std::string* words = value->text();
    if (words == nullptr || words->size() > longest_text || (needed && words->empty())) {
      complain(*value, fmt::format("\"{}\" is {}", key, words == nullptr ? sort_of(*value) : "empty or too long"),
               "give it as a few words in quotes");
      return {};
    }
    return *words;
  }

  void read_price(const JsonValue& value) {
    if (value.object() == nullptr)
      return complain(value, fmt::format("a price is {}", sort_of(value)),
                      "give {\"work\": ..., \"price\": ..., \"per\": ...}");
    const std::size_t before = problems_.size();
    check_keys(value, price_keys);
    Price price;
    price.source = text(value, "source", false);
    const std::string work = text(value, "work", true);
    const auto works = names_of(Work{});
    const auto found = std::ranges::find(works, work);
    if (!work.empty() && found == works.end())
      complain(value, fmt::format("nothing is built that is called \"{}\"", work), suggestion(work, works));
    if (work.empty() || found == works.end()) return;
    price.work = static_cast<Work>(found - works.begin());
    read_money(value, price);
    read_per(value, price);
    read_size(value, price);
    if (problems_.size() > before) return;
    keep(value, std::move(price));
  }

  void read_money(const JsonValue& value, Price& price) {
    const JsonValue* money = member(value, "price");
    const double* number = money == nullptr ? nullptr : money->number();
    if (number != nullptr && *number >= 0 && *number <= highest_price) {
      price.price = *number;
      return;
    }
    complain(money == nullptr ? value : *money,
             number == nullptr ? "\"price\" is no number" : fmt::format("a price of {} is none", *number),
             "give a number of 0 or more; leave the line out where you have no price");
  }

  void read_per(const JsonValue& value, Price& price) {
    price.per = text(value, "per", true);
    if (price.per.empty() || price.per == each) return;
    const Quantity quantity = measure_of(price.work).quantity;
    const Unit* unit = quantity == Quantity::count ? nullptr : unit_typed(price.per, quantity);
    if (unit != nullptr) {
      price.per = unit->suffix;
      price.per_si = unit->factor;
      return;
    }
    std::string choices{each};
    if (quantity != Quantity::count)
      for (const Unit& one : units_of(quantity)) choices += fmt::format(", {}", one.suffix);
    complain(
        *member(value, "per"),
        fmt::format("{} are not measured in \"{}\"", names_of(Work{})[static_cast<std::size_t>(price.work)], price.per),
        "use " + choices);
  }

  void read_size(const JsonValue& value, Price& price) {
    const JsonValue* size = member(value, "size");
    if (size == nullptr) return;
    const WorkMeasure& measure = measure_of(price.work);
    if (measure.sizes == 0)
      return complain(*size, fmt::format("{} have no size here", measure.words), "leave \"size\" out");
    const std::string typed = text(value, "size", true);
    for (std::size_t at = 0; !typed.empty() && at != typed.npos;) {
      const std::size_t end = typed.find(" x ", at);
      const auto one =
          parse_quantity(typed.substr(at, end == typed.npos ? end : end - at), measure.size, UnitSystem::metric);
      if (!one) return complain(*size, one.error().what, one.error().mend);
      price.size_m.push_back(*one);
      at = end == typed.npos ? end : end + 3;
    }
    if (!typed.empty() && static_cast<int>(price.size_m.size()) != measure.sizes)
      complain(*size, fmt::format("\"{}\" is {} sizes", typed, price.size_m.size()),
               measure.sizes == 1 ? "give one, as in \"12 in\"" : "give two, as in \"36 ft x 24 ft\"");
  }

  void keep(const JsonValue& value, Price price) {
    const bool twice = std::ranges::any_of(book_.prices, [&](const Price& other) {
      return other.work == price.work && same_size(other.size_m, price.size_m);
    });
    if (twice)
      return complain(value, fmt::format("{} has two prices", names_of(Work{})[static_cast<std::size_t>(price.work)]),
                      "keep one of them, or give each its size");
    book_.prices.push_back(std::move(price));
  }

  std::string_view name_;
  PriceBook book_;
  Problems problems_;
};

}  // namespace

Expected<PriceBook> price_book_in(std::string_view text, std::string_view name) {
  const auto root = parse_json(text, name);
  if (!root) return tl::unexpected{root.error()};
  return Reader{name}.read(*root);
}

Expected<PriceBook> load_price_book(const std::filesystem::path& file) {
  const auto text = read_whole_file(file, most_bytes);
  if (!text) return tl::unexpected{text.error()};
  return price_book_in(*text, file.string());
}

std::string_view shipped_price_book_text() { return asset("prices.json"); }

const PriceBook& shipped_price_book() {
  static const PriceBook book = [] {
    auto read = price_book_in(shipped_price_book_text(), "the shipped prices.json");
    if (!read) throw std::runtime_error{sentence(read.error().front())};
    return *std::move(read);
  }();
  return book;
}

std::filesystem::path price_book_path(const std::filesystem::path& site_file) {
  return std::filesystem::path{site_file}.replace_extension(".prices.json");
}

Expected<std::optional<PriceBook>> price_book_beside(const std::filesystem::path& site_file) {
  const std::filesystem::path file = price_book_path(site_file);
  std::error_code none;
  if (!std::filesystem::exists(file, none)) return std::optional<PriceBook>{};
  auto book = load_price_book(file);
  if (!book) return tl::unexpected{book.error()};
  return std::optional<PriceBook>{*std::move(book)};
}

Expected<PriceBook> price_book_for(const std::filesystem::path& site_file) {
  auto beside = price_book_beside(site_file);
  if (!beside) return tl::unexpected{beside.error()};
  return *beside ? **beside : shipped_price_book();
}

}  // namespace yardwright
