// Writes the fields of any struct that has visit_fields as rows of text. Used by the .cpp files of this room.
#pragma once

#include <fmt/format.h>

#include "editor/session/field_rows.hpp"
#include "geom/units/text.hpp"

namespace yardwright::session {

template <class Member>
concept Enumeration = std::is_enum_v<Member>;
template <class Member>
concept Group = requires(Member& member) {
  visit_fields(member, [](const Field&, auto&) {});
};

/// What a field of this key may name in the catalogues; empty where it names nothing there.
std::vector<Choice> catalog_choices(std::string_view key, const Catalogs& catalogs);

/// Fills the rows, one overload for each type of member.
struct RowWriter {
  std::vector<FieldRow>& rows;
  UnitSystem units;
  const Catalogs& catalogs;
  std::string prefix = {};
  std::string group = {};

  FieldRow& add(const Field& field, RowKind kind, std::string text, std::string_view part = "") const {
    const std::string key = part.empty() ? std::string{field.key} : fmt::format("{}.{}", field.key, part);
    const std::string label = part.empty() ? std::string{field.label} : fmt::format("{}, {}", field.label, part);
    rows.push_back({prefix + key, group, label, std::string{field.means}, kind, std::move(text), {}});
    return rows.back();
  }
  void operator()(const Field& field, double value) const {
    add(field, RowKind::number, text_for_typing(value, field.quantity, units));
  }
  void operator()(const Field& field, int value) const { add(field, RowKind::number, fmt::format("{}", value)); }
  void operator()(const Field& field, bool value) const {
    add(field, RowKind::flag, value ? "yes" : "no").choices = {{"no", "no"}, {"yes", "yes"}};
  }
  void operator()(const Field& field, Angle value) const {
    add(field, RowKind::number, text_for_typing(value.as_degrees(), Quantity::angle, units));
  }
  void operator()(const Field& field, Bearing value) const {
    add(field, RowKind::number, text_for_typing(value.as_degrees(), Quantity::bearing, units));
  }
  void operator()(const Field& field, ItemId id) const { add(field, RowKind::item, fmt::format("{}", id.number)); }
  void operator()(const Field& field, SitePoint point) const {
    add(field, RowKind::number, text_for_typing(point.x, Quantity::length, units), "east");
    add(field, RowKind::number, text_for_typing(point.y, Quantity::length, units), "north");
  }
  void operator()(const Field& field, const std::string& words) const {
    auto choices = catalog_choices(field.key, catalogs);
    FieldRow& row = add(field, choices.empty() ? RowKind::words : RowKind::choice, words);
    row.choices = std::move(choices);
  }
  void operator()(const Field& field, const MassCurve& curve) const { add(field, RowKind::words, text_of(curve)); }
  void operator()(const Field& field, const RainTable& table) const {
    add(field, RowKind::words, text_of(table, units));
  }
  void operator()(const Field& field, const std::vector<ItemId>& list) const {
    std::string text;
    for (const ItemId id : list) text += fmt::format("{}{}", text.empty() ? "" : " ", id.number);
    add(field, RowKind::item_list, text);
  }
  void operator()(const Field& field, const SitePath& path) const {
    add(field, RowKind::line,
        fmt::format("{} points, {}", path.size(), text_of(length(path), Quantity::length, units)));
  }
  template <Enumeration Member>
  void operator()(const Field& field, Member value) const {
    const auto names = names_of(value);
    FieldRow& row = add(field, RowKind::choice, std::string{names[static_cast<std::size_t>(value)]});
    for (const std::string_view name : names) row.choices.push_back({std::string{name}, spoken(name)});
  }
  template <Group Member>
  void operator()(const Field& field, const Member& member) const {
    visit_fields(member,
                 RowWriter{rows, units, catalogs, fmt::format("{}{}.", prefix, field.key), std::string{field.label}});
  }
};

}  // namespace yardwright::session
