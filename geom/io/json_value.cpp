#include "geom/io/json_value.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <nlohmann/json.hpp>

namespace yardwright {

namespace {

/// Reads characters and counts the lines that have gone by.
struct LineCounter {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  const char* at = nullptr;
  int* line = nullptr;

  reference operator*() const { return *at; }
  LineCounter& operator++() {
    if (*at == '\n') ++*line;
    ++at;
    return *this;
  }
  LineCounter operator++(int) {
    LineCounter before = *this;
    ++*this;
    return before;
  }
  bool operator==(const LineCounter& other) const { return at == other.at; }
};

/// Builds the value as nlohmann's reader goes through the text; a `false` stops it.
class Builder {
 public:
  Builder(const int& line, const JsonLimits& limits) : line_{line}, limits_{limits} {}

  bool null() { return put({std::monostate{}, line_}); }
  bool boolean(bool value) { return put({value, line_}); }
  bool number_integer(std::int64_t value) { return put({static_cast<double>(value), line_}); }
  bool number_unsigned(std::uint64_t value) { return put({static_cast<double>(value), line_}); }
  bool number_float(double value, const std::string&) { return put({value, line_}); }
  bool string(std::string& value) { return put({std::move(value), line_}); }
  bool binary(std::vector<std::uint8_t>&) { return false; }
  bool start_object(std::size_t) { return open({JsonObject{}, line_}); }
  bool start_array(std::size_t) { return open({JsonArray{}, line_}); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }

  bool key(std::string& name) {
    const JsonObject& object = *open_.back().object();
    if (std::ranges::find(object, name, &JsonMember::key) != object.end()) {
      return stop(fmt::format("\"{}\" is given twice", name), "keep one of them");
    }
    if (object.size() >= most_keys)
      return stop("an object has too many fields", "keep to the fields of docs/format.md");
    keys_.push_back(std::move(name));
    return true;
  }

  bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception&) {
    error_at_ = position;
    return false;
  }

  JsonValue root;
  const Problem& stopped() const { return stopped_; }
  std::size_t error_at() const { return error_at_; }

 private:
  static constexpr std::size_t most_keys = 200;

  bool stop(std::string what, std::string mend) {
    stopped_ = {std::move(what), fmt::format("line {}", line_), std::move(mend)};
    return false;
  }

  bool open(JsonValue value) {
    if (open_.size() >= limits_.depth) {
      return stop(fmt::format("is nested more than {} deep", limits_.depth),
                  "no yard file is; look for stray brackets");
    }
    if (!counted()) return false;
    open_.push_back(std::move(value));
    return true;
  }

  bool close() {
    JsonValue done = std::move(open_.back());
    open_.pop_back();
    attach(std::move(done));
    return true;
  }

  bool put(JsonValue value) {
    if (!counted()) return false;
    attach(std::move(value));
    return true;
  }

  bool counted() {
    return ++count_ <= limits_.values ||
           stop(fmt::format("holds more than {} values", limits_.values), "no yard file does");
  }

  void attach(JsonValue value) {
    if (open_.empty()) {
      root = std::move(value);
    } else if (auto* array = std::get_if<JsonArray>(&open_.back().value)) {
      array->push_back(std::move(value));
    } else {
      std::get<JsonObject>(open_.back().value).push_back({std::move(keys_.back()), std::move(value)});
      keys_.pop_back();
    }
  }

  const int& line_;
  JsonLimits limits_;
  std::vector<JsonValue> open_;
  std::vector<std::string> keys_;
  std::size_t count_ = 0;
  std::size_t error_at_ = 0;
  Problem stopped_;
};

Problem syntax_problem(std::string_view text, std::string_view name, std::size_t position) {
  const std::string_view before = text.substr(0, std::min(position > 0 ? position - 1 : 0, text.size()));
  const auto line = std::ranges::count(before, '\n') + 1;
  const std::size_t line_start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
  return {"the text is no JSON from here on",
          fmt::format("{}, line {}, column {}", name, line, before.size() - line_start + 1),
          "look here and just before for a missing comma, quote or bracket, or a number that is none"};
}

}  // namespace

const JsonValue* member(const JsonValue& value, std::string_view key) {
  const JsonObject* object = value.object();
  if (object == nullptr) return nullptr;
  const auto found = std::ranges::find(*object, key, &JsonMember::key);
  return found == object->end() ? nullptr : &found->value;
}

std::string_view sort_of(const JsonValue& value) {
  constexpr std::array<std::string_view, 6> sorts{"null", "true or false", "a number", "text", "a list", "an object"};
  return sorts[value.value.index()];
}

Expected<JsonValue> parse_json(std::string_view text, std::string_view name, const JsonLimits& limits) {
  int line = 1;
  Builder builder{line, limits};
  const LineCounter first{text.data(), &line}, last{text.data() + text.size(), &line};
  if (nlohmann::json::sax_parse(first, last, &builder)) return std::move(builder.root);
  Problem problem = builder.stopped();
  if (problem.what.empty()) return tl::unexpected{Problems{syntax_problem(text, name, builder.error_at())}};
  problem.where = fmt::format("{}, {}", name, problem.where);
  return tl::unexpected{Problems{std::move(problem)}};
}

std::string json_text(std::string_view text) {
  return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace yardwright
