#include "editor/session/picture_fitting.hpp"

#include "geom/site/picture_fit.hpp"
#include "geom/units/text.hpp"

namespace yardwright::session {

namespace {

const Item* picture_in_hand(const Session& session) {
  const Item* item = session.tool.doing == Doing::fit ? find(session.site(), session.tool.from) : nullptr;
  return item != nullptr && as<Picture>(*item) != nullptr ? item : nullptr;
}

std::string rounded(double si, Quantity quantity, UnitSystem units) { return text_of(si, quantity, units); }

std::string place_text(SitePoint at, UnitSystem units) {
  return rounded(at.x, Quantity::length, units) + ", " + rounded(at.y, Quantity::length, units);
}

tl::expected<Picture, Problem> fitted_by(const Picture& picture, const PointPair& seen, std::string_view key,
                                         std::string_view text, UnitSystem units) {
  const SiteVector along = seen.b - seen.a;
  if (key == "a" || key == "b") {
    const auto place = parse_place(text, units);
    if (!place) return tl::unexpected{place.error()};
    return fitted(picture, seen, key == "a" ? PointPair{*place, *place + along} : PointPair{seen.a, *place});
  }
  const bool turns = key == "bearing";
  const auto value = parse_quantity(text, turns ? Quantity::bearing : Quantity::length, units);
  if (!value) return tl::unexpected{value.error()};
  if (!turns) return fitted_to_distance(picture, seen, *value);
  return fitted(picture, seen, {seen.a, seen.a + direction(Bearing::degrees(*value)) * length(along)});
}

}  // namespace

tl::expected<SitePoint, Problem> parse_place(std::string_view text, UnitSystem units) {
  const std::size_t comma = text.find(',');
  if (comma == std::string_view::npos)
    return tl::unexpected{Problem{"it is no place", "", "type east and north: 120ft, 40ft"}};
  const auto east = parse_quantity(text.substr(0, comma), Quantity::length, units),
             north = parse_quantity(text.substr(comma + 1), Quantity::length, units);
  if (!east) return tl::unexpected{east.error()};
  if (!north) return tl::unexpected{north.error()};
  return SitePoint{*east, *north};
}

std::vector<FieldRow> fit_rows(const Session& session) {
  if (picture_in_hand(session) == nullptr || session.tool.points.size() != 2) return {};
  const UnitSystem units = session.site().units;
  const SitePoint a = session.tool.points[0], b = session.tool.points[1];
  const auto row = [](const char* key, const char* label, const char* means, std::string text) {
    return FieldRow{key, "", label, means, RowKind::number, std::move(text), {}};
  };
  return {row("distance", "from A to B", "how far apart both points are: the picture is scaled about A",
              rounded(distance(a, b), Quantity::length, units)),
          row("bearing", "bearing, A to B", "the way from A to B, clockwise from north: the picture is turned about A",
              rounded(bearing_of(b - a).as_degrees(), Quantity::bearing, units)),
          row("a", "A lies at", "east, north: the picture is moved", place_text(a, units)),
          row("b", "B lies at", "east, north: the picture is scaled and turned about A", place_text(b, units))};
}

tl::expected<void, Problem> fit_by(Session& session, std::string_view key, std::string_view text) {
  const Item* item = picture_in_hand(session);
  if (item == nullptr || session.tool.points.size() != 2)
    return tl::unexpected{Problem{"no two points are chosen", "the picture", "click two points in it"}};
  const PointPair seen{session.tool.points[0], session.tool.points[1]};
  const auto picture = fitted_by(*as<Picture>(*item), seen, key, text, session.site().units);
  if (!picture) return tl::unexpected{picture.error()};
  Item other = *item;
  other.thing = *picture;
  perform(session, {PutItem{std::move(other)}});
  return {};
}

}  // namespace yardwright::session
