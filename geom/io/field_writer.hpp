// Writes the fields of a struct as the members of one JSON object, through its visit_fields: numbers as they were
// typed in the file's units; where those cannot hold the value exactly, or only with a tail of digits that nobody
// typed, text with the SI unit. FieldReader reads back exactly the same struct.
#pragma once

#include <string>
#include <vector>

#include "geom/io/json_value.hpp"
#include "geom/site/field.hpp"
#include "geom/site/storm.hpp"

namespace yardwright {

/// A quantity as JSON: 36, or "8.53 m".
std::string quantity_json(double si, Quantity quantity, UnitSystem units);

class FieldWriter {
 public:
  explicit FieldWriter(UnitSystem units) : units_{units} {}

  template <class Member>
  void operator()(const Field& field, const Member& value) {
    add(field.key, json_of(field, value));
  }

  /// A member whose JSON the caller has made.
  void add(std::string_view key, std::string_view json);
  /// The object so far, on one line.
  std::string object() const { return "{" + members_ + "}"; }

  std::string json_of(const Field& field, double value) const { return quantity_json(value, field.quantity, units_); }
  std::string json_of(const Field&, int value) const { return std::to_string(value); }
  std::string json_of(const Field&, bool value) const { return value ? "true" : "false"; }
  std::string json_of(const Field&, const std::string& value) const { return json_text(value); }
  std::string json_of(const Field&, Angle value) const {
    return quantity_json(value.as_degrees(), Quantity::angle, units_);
  }
  std::string json_of(const Field&, Bearing value) const {
    return quantity_json(value.as_degrees(), Quantity::bearing, units_);
  }
  std::string json_of(const Field&, ItemId value) const { return value ? std::to_string(value.number) : "null"; }
  std::string json_of(const Field& field, SitePoint value) const;
  std::string json_of(const Field&, const MassCurve& value) const { return json_text(text_of(value)); }
  std::string json_of(const Field&, const RainTable& value) const { return json_text(text_of(value, units_)); }

  template <class Enum>
  requires std::is_enum_v<Enum> std::string json_of(const Field&, Enum value)
  const { return json_text(names_of(value)[static_cast<std::size_t>(value)]); }

  template <class Element>
  std::string json_of(const Field& field, const std::vector<Element>& elements) const {
    std::string list;
    for (const Element& element : elements) list += (list.empty() ? "" : ", ") + json_of(field, element);
    return "[" + list + "]";
  }

  template <Fielded Struct>
  std::string json_of(const Field&, const Struct& value) const {
    FieldWriter inner{units_};
    visit_fields(value, inner);
    return inner.object();
  }

 private:
  UnitSystem units_;
  std::string members_;
};

}  // namespace yardwright
