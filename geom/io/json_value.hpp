// JSON text as plain values that know their line, so that every problem of a file can name it. Bounded in
// depth and number of values, and a key given twice is refused: neither can be used against the reader.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "geom/units/problem.hpp"

namespace yardwright {

struct JsonValue;
struct JsonMember;
using JsonArray = std::vector<JsonValue>;
using JsonObject = std::vector<JsonMember>;  ///< in the order of the text

struct JsonValue {
  std::variant<std::monostate, bool, double, std::string, JsonArray, JsonObject> value;
  int line = 0;  ///< where it begins, from 1

  const double* number() const { return std::get_if<double>(&value); }
  const bool* yes_or_no() const { return std::get_if<bool>(&value); }
  const std::string* text() const { return std::get_if<std::string>(&value); }
  const JsonArray* array() const { return std::get_if<JsonArray>(&value); }
  const JsonObject* object() const { return std::get_if<JsonObject>(&value); }
  bool is_null() const { return std::holds_alternative<std::monostate>(value); }
};

struct JsonMember {
  std::string key;
  JsonValue value;
};

/// The member of an object with this key, or null; null too where `value` is no object.
const JsonValue* member(const JsonValue& value, std::string_view key);

/// What a value is, in words: "a number".
std::string_view sort_of(const JsonValue& value);

struct JsonLimits {
  std::size_t depth = 24;
  std::size_t values = 2'000'000;
};

/// `name` is the file's name for the Problem, which gives line and column.
Expected<JsonValue> parse_json(std::string_view text, std::string_view name, const JsonLimits& limits = {});

/// Text in quotes, escaped; bytes that are no UTF-8 become the replacement mark.
std::string json_text(std::string_view text);

}  // namespace yardwright
