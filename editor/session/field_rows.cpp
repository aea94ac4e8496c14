#include "editor/session/field_rows.hpp"

#include "editor/session/row_reader.hpp"
#include "editor/session/row_writer.hpp"

namespace yardwright::session {

std::vector<FieldRow> field_rows(const Thing& thing, UnitSystem units, const Catalogs& catalogs) {
  std::vector<FieldRow> rows;
  std::visit([&](const auto& kind) { visit_fields(kind, RowWriter{rows, units, catalogs}); }, thing);
  return rows;
}

tl::expected<Thing, Problem> with_field(Thing thing, std::string_view key, std::string_view text, UnitSystem units) {
  const auto typed = [&](const auto& kind) -> tl::expected<Thing, Problem> {
    return with_typed(kind, key, text, units);
  };
  return std::visit(typed, thing);
}

}  // namespace yardwright::session
