// `yardwright picture`: lays a picture under a yard's plan, fitted by two of its points.
#include <fmt/format.h>

#include <charconv>
#include <nlohmann/json.hpp>

#include "editor/cli/site_place.hpp"
#include "editor/cli/verb.hpp"
#include "geom/io/picture_import.hpp"
#include "geom/io/site_file.hpp"
#include "geom/site/edit.hpp"
#include "geom/site/picture_fit.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

struct AskedPicture {
  std::filesystem::path site, from;
  std::vector<std::string> points, at;
  std::string distance;
  double strength = 0.6;
};

std::optional<double> plain_number(const std::string& text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

/// Where the two pixels lie while the picture is not fitted yet.
Expected<PointPair> seen_points(const AskedPicture& asked, const ImportedPicture& imported) {
  PointPair pair;
  for (std::size_t i = 0; i < 2; ++i) {
    const auto pixel =
        pair_of(asked.points[i], "--points", "give pixels from the top left corner: 120,340", plain_number);
    if (!pixel) return tl::unexpected{pixel.error()};
    (i == 0 ? pair.a : pair.b) =
        place_in_picture(imported.picture, pixel->x / imported.width_px, pixel->y / imported.height_px);
  }
  return pair;
}

Expected<PointPair> known_places(const AskedPicture& asked, UnitSystem units) {
  PointPair pair;
  for (std::size_t i = 0; i < 2; ++i) {
    const auto place = site_place(asked.at[i], "--at", units);
    if (!place) return tl::unexpected{place.error()};
    (i == 0 ? pair.a : pair.b) = *place;
  }
  return pair;
}

tl::expected<Picture, Problems> as_problems(const tl::expected<Picture, Problem>& fit) {
  if (!fit) return tl::unexpected{Problems{fit.error()}};
  return *fit;
}

Expected<Picture> fitted_as_asked(const AskedPicture& asked, const ImportedPicture& imported, UnitSystem units) {
  if (asked.points.empty()) return imported.picture;
  const auto seen = seen_points(asked, imported);
  if (!seen) return tl::unexpected{seen.error()};
  if (!asked.at.empty()) {
    const auto places = known_places(asked, units);
    if (!places) return tl::unexpected{places.error()};
    return as_problems(fitted(imported.picture, *seen, *places));
  }
  const auto distance_m = parse_quantity(asked.distance, Quantity::length, units);
  if (!distance_m) return refused(distance_m.error().what, "--distance", distance_m.error().mend);
  return as_problems(fitted_to_distance(imported.picture, *seen, *distance_m));
}

std::string how_it_lies(const AskedPicture& asked, const ImportedPicture& imported) {
  if (asked.points.empty()) return imported.note;
  return asked.at.empty() ? "it is scaled by two points of known distance" : "it lies by two points of known place";
}

void print(const Picture& picture, const std::string& note, const AskedPicture& asked, UnitSystem units,
           const Console& console) {
  if (console.json) {
    const nlohmann::ordered_json out{{"site", asked.site.string()},
                                     {"file", picture.file},
                                     {"east_m", picture.at.x},
                                     {"north_m", picture.at.y},
                                     {"width_m", picture.width_m},
                                     {"height_m", height_m(picture)},
                                     {"facing_deg", picture.facing.as_degrees()},
                                     {"note", note}};
    fmt::print("{}\n", out.dump());
    return;
  }
  const auto length = [units](double m) { return text_of(m, Quantity::length, units); };
  fmt::print("{}: {} lies under the plan\n", asked.site.string(), picture.file);
  fmt::print("{:<8} {} by {}\n", "size", length(picture.width_m), length(height_m(picture)));
  fmt::print("{:<8} {} east, {} north\n", "middle", length(picture.at.x), length(picture.at.y));
  fmt::print("{:<8} {}\n", "top", text_of(picture.facing.as_degrees(), Quantity::bearing, units));
  fmt::print("note: {}\n", note);
}

void lay(const AskedPicture& asked, Console& console) {
  if (!asked.points.empty() && asked.at.empty() == asked.distance.empty()) {
    return refuse(
        {{"two points alone fit nothing", "--points", "give --distance between them, or --at for where both lie"}},
        console);
  }
  const auto site = load_site(asked.site);
  if (!site) return refuse(site.error(), console);
  const auto imported = import_picture(asked.from, asked.site, *site);
  if (!imported) return refuse(imported.error(), console);
  auto picture = fitted_as_asked(asked, *imported, site->units);
  if (!picture) return refuse(picture.error(), console);
  picture->strength_ratio = asked.strength;
  Item item{next_id(*site), asked.from.stem().string(), 0, {}, *picture};
  if (const auto saved = save_site(apply(*site, PutItem{std::move(item)}), asked.site); !saved)
    return refuse(saved.error(), console);
  print(*picture, how_it_lies(asked, *imported), asked, site->units, console);
}

}  // namespace

void add_picture_verb(CLI::App& program, Console& console) {
  const auto asked = std::make_shared<AskedPicture>();
  CLI::App* verb = program.add_subcommand("picture", "lay a picture under a yard's plan, to trace from");
  verb->footer(
      "examples: yardwright picture home.yard --from sky.png --points 120,340 880,350 --distance 240ft\n"
      "          yardwright picture home.yard --from sky.png --points 120,340 880,350 --at 0ft,500ft 600ft,500ft\n"
      "          yardwright picture home.yard --from sky.tif     (a GeoTIFF, where the site has an EPSG code)");
  verb->add_option("SITE", asked->site, "NAME.yard")->required();
  verb->add_option("--from", asked->from, "PNG, JPEG or GeoTIFF; copied beside the site file")->required();
  CLI::Option* points = verb->add_option("--points", asked->points,
                                         "two points of the picture, in pixels from its top left corner: X,Y X,Y")
                            ->expected(2);
  verb->add_option("--distance", asked->distance, "between the two points, on the ground")->needs(points);
  verb->add_option("--at", asked->at, "where the two points lie, east and north of the site's origin: E,N E,N")
      ->expected(2)
      ->needs(points);
  verb->add_option("--strength", asked->strength, "1 is opaque, 0 is unseen")
      ->check(CLI::Range(0.0, 1.0))
      ->capture_default_str();
  verb->callback([asked, &console] { lay(*asked, console); });
}

}  // namespace yardwright::cli
