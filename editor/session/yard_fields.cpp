#include "editor/session/yard_fields.hpp"

#include <algorithm>

#include "editor/session/row_reader.hpp"
#include "editor/session/row_writer.hpp"
#include "editor/session/shown_rows.hpp"

namespace yardwright::session {

namespace {

template <class Fields>
std::vector<FieldRow> rows_of(const Fields& fields, const char* prefix, const Site& site, const Catalogs& catalogs) {
  std::vector<FieldRow> rows;
  visit_fields(fields, RowWriter{rows, site.units, catalogs, prefix});
  return rows;
}

FieldRow words_row(std::string key, std::string label, std::string means, std::string text) {
  return {std::move(key), "", std::move(label), std::move(means), RowKind::words, std::move(text), {}};
}

std::vector<FieldRow> title_rows(const Site& site, const Catalogs& catalogs) {
  std::vector<FieldRow> rows{
      words_row("title.name", "name", "of the yard, on the sheets and on the top row", site.name)};
  for (FieldRow& row : rows_of(site.title, "title.", site, catalogs)) rows.push_back(std::move(row));
  return rows;
}

std::vector<FieldRow> storm_rows(const Site& site, const Catalogs& catalogs) {
  constexpr std::string_view front = "storm.";
  std::vector<FieldRow> rows = rows_of(site.storm, front.data(), site, catalogs);
  std::erase_if(rows, [&](const FieldRow& row) { return !applies(site.storm, row.key.substr(front.size())); });
  return rows;
}

std::vector<FieldRow> phase_rows(const Site& site) {
  std::vector<FieldRow> rows;
  for (std::size_t i = 0; i < site.phases.size(); ++i) {
    rows.push_back(words_row(fmt::format("phases.{}", i), i == 0 ? "today" : fmt::format("phase {}", i),
                             "how this phase is called", site.phases[i]));
  }
  return rows;
}

/// A struct with one field typed, and the edit that puts it into the site.
template <class Fields, class Put>
tl::expected<Edit, Problem> typed_into(const Fields& fields, std::string_view key, std::string_view text,
                                       UnitSystem units, Put put) {
  auto typed = with_typed(fields, key, text, units);
  if (!typed) return tl::unexpected{typed.error()};
  return Edit{put(std::move(*typed))};
}

tl::expected<Edit, Problem> with_phase(const Site& site, std::string_view key, std::string_view text) {
  std::size_t which = site.phases.size();
  std::from_chars(key.data(), key.data() + key.size(), which);
  if (which >= site.phases.size())
    return tl::unexpected{Problem{"there is no such phase", std::string{key}, "add it first"}};
  if (text.empty()) return tl::unexpected{Problem{"a phase needs a name", "the phase", "type one"}};
  SetPhases set{site.phases};
  set.phases[which] = text;
  return Edit{std::move(set)};
}

}  // namespace

std::vector<FieldRow> yard_rows(const Site& site, YardPart part, const Catalogs& catalogs) {
  switch (part) {
    case YardPart::title: return title_rows(site, catalogs);
    case YardPart::storm: return storm_rows(site, catalogs);
    case YardPart::tie: return rows_of(site.tie, "tie.", site, catalogs);
    case YardPart::phases: return phase_rows(site);
  }
  return {};
}

tl::expected<Edit, Problem> with_yard_field(const Site& site, std::string_view key, std::string_view text) {
  const std::size_t dot = std::min(key.find('.'), key.size());
  const std::string_view part = key.substr(0, dot), field = key.substr(std::min(dot + 1, key.size()));
  if (key == "title.name") return Edit{SetName{std::string{text}, site.title}};
  if (part == "title")
    return typed_into(site.title, field, text, site.units, [&](TitleBlock title) {
      return SetName{site.name, std::move(title)};
    });
  if (part == "storm")
    return typed_into(site.storm, field, text, site.units, [](Storm storm) { return SetStorm{std::move(storm)}; });
  if (part == "tie")
    return typed_into(site.tie, field, text, site.units, [&](EarthTie tie) { return SetGround{site.ground, tie}; });
  if (part == "phases") return with_phase(site, field, text);
  return tl::unexpected{Problem{"there is no such field", std::string{key}, "name a field of the yard"}};
}

Edit phase_added(const Site& site) {
  SetPhases set{site.phases};
  set.phases.push_back(fmt::format("phase {}", site.phases.size()));
  return set;
}

std::optional<Edit> last_phase_removed(const Site& site) {
  const int last = static_cast<int>(site.phases.size()) - 1;
  const auto is_of_it = [last](const Item& item) { return item.phase >= last || item.gone_in.value_or(0) >= last; };
  if (last <= 0 || std::ranges::any_of(site.items, is_of_it)) return std::nullopt;
  SetPhases set{site.phases};
  set.phases.pop_back();
  return set;
}

}  // namespace yardwright::session
