// Reads the fields of one JSON object into a struct through its visit_fields, and notes everything that is wrong
// with them, each with file, line, part and field. A field left out keeps its default, save a place or path,
// which is asked for. Numbers are in the file's units, or text with a unit of its own.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geom/io/json_value.hpp"
#include "geom/site/field.hpp"
#include "geom/site/storm.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

/// Which part of which file is read: "item 4 (North 1)" of "north.yard".
struct FilePart {
  std::string file;
  std::string part;
};

/// "north.yard, line 12, item 4 (North 1), diameter".
std::string where_words(const FilePart& part, int line, std::string_view field = {});

class FieldReader {
 public:
  FieldReader(const JsonValue& object, FilePart part, UnitSystem units, Problems& problems);

  template <class Member>
  void operator()(const Field& field, Member& into) {
    const JsonValue* value = take(field.key);
    if (value != nullptr) return read(field, *value, into);
    if constexpr (std::is_same_v<Member, SitePoint> || std::is_same_v<Member, SitePath>) missing(field);
  }

  /// The value of a key that the caller reads, now known; null where it is left out.
  const JsonValue* take(std::string_view key);
  /// Notes every key that was neither visited nor taken; call it last.
  void refuse_unknown();

  void read(const Field& field, const JsonValue& value, double& into);
  void read(const Field& field, const JsonValue& value, int& into);
  void read(const Field& field, const JsonValue& value, bool& into);
  void read(const Field& field, const JsonValue& value, std::string& into);
  void read(const Field& field, const JsonValue& value, Angle& into);
  void read(const Field& field, const JsonValue& value, Bearing& into);
  void read(const Field& field, const JsonValue& value, ItemId& into);
  void read(const Field& field, const JsonValue& value, SitePoint& into);
  void read(const Field& field, const JsonValue& value, MassCurve& into);
  void read(const Field& field, const JsonValue& value, RainTable& into);

  template <class Enum>
  requires std::is_enum_v<Enum>
  void read(const Field& field, const JsonValue& value, Enum& into) {
    const auto names = names_of(Enum{});
    if (const auto index = index_of_name(field, value, names)) into = static_cast<Enum>(*index);
  }

  template <class Element>
  void read(const Field& field, const JsonValue& value, std::vector<Element>& into) {
    const JsonArray* elements = list(field, value);
    if (elements == nullptr) return;
    into.assign(elements->size(), Element{});
    for (std::size_t i = 0; i < into.size(); ++i) read(field, (*elements)[i], into[i]);
  }

  template <Fielded Struct>
  void read(const Field& field, const JsonValue& value, Struct& into) {
    FieldReader inner{value, {part_.file, inner_part(field.key)}, units_, problems_};
    visit_fields(into, inner);
    inner.refuse_unknown();
  }

  void note(int line, std::string_view field, std::string what, std::string mend);

 private:
  std::optional<double> quantity_in(const Field& field, const JsonValue& value, Quantity quantity);
  bool within(const Field& field, const JsonValue& value, Quantity quantity, double si);
  std::optional<std::size_t> index_of_name(const Field& field, const JsonValue& value,
                                           std::span<const std::string_view> names);
  const JsonArray* list(const Field& field, const JsonValue& value);
  void wrong_sort(const Field& field, const JsonValue& value, std::string mend);
  void missing(const Field& field);
  std::string inner_part(std::string_view key) const;

  const JsonValue& object_;
  FilePart part_;
  UnitSystem units_;
  Problems& problems_;
  std::vector<std::string_view> known_;
};

}  // namespace yardwright
