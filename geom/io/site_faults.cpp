#include "geom/io/site_faults.hpp"

#include <fmt/format.h>

#include "geom/io/whole_file.hpp"

namespace yardwright {

namespace {

using Faults = std::vector<SiteFault>;

constexpr std::string_view plain_name_mend = "put the file in the folder of the site file and give its bare name";

/// Visits the fields of one item.
struct ItemVisit {
  const Item& item;
  const std::set<ItemId>& ids;
  Faults& faults;

  template <class Member>
  void operator()(const Field&, const Member&) const {}

  void operator()(const Field& field, const ItemId& named) const {
    if (!named || ids.contains(named)) return;
    note(field, fmt::format("names item {}, which is not there", named.number), "name an item of this site, or null");
  }

  void operator()(const Field& field, const std::vector<ItemId>& named) const {
    for (const ItemId id : named) (*this)(field, id);
  }

  void operator()(const Field& field, const SitePath& path) const {
    const std::size_t least = field.closed ? 3 : 2;
    const bool still_to_be_found = as<Route>(item) != nullptr && path.empty();
    if (path.size() >= least || still_to_be_found) return;
    note(field, fmt::format("has {} of the {} points that it needs", path.size(), least), "give more points");
  }

  void note(const Field& field, std::string what, std::string mend) const {
    faults.push_back({&item, "", field.key, std::move(what), std::move(mend)});
  }
};

void check_life(const Item& item, Faults& faults) {
  if (!item.gone_in || *item.gone_in > item.phase) return;
  faults.push_back({&item, "", "gone-in",
                    fmt::format("is phase {}, not after its own phase {}", *item.gone_in, item.phase),
                    "let it go in a later phase than the one it is built in"});
}

void check_picture(const Item& item, Faults& faults) {
  const Picture* picture = as<Picture>(item);
  if (picture == nullptr || picture->file.empty() || is_plain_file_name(picture->file)) return;
  faults.push_back({&item, "", "file", "is no plain file name", std::string{plain_name_mend}});
}

void check_ground(const Ground& ground, Faults& faults) {
  if (ground.file.empty() || is_plain_file_name(ground.file)) return;
  faults.push_back({nullptr, "ground", "file", "is no plain file name", std::string{plain_name_mend}});
}

void check_lot(const Lot& lot, Faults& faults) {
  if (lot.edges.size() != lot.corners.size()) {
    faults.push_back({nullptr, "lot", "edges",
                      fmt::format("are {} for {} corners", lot.edges.size(), lot.corners.size()),
                      "give one edge for each corner"});
  }
  const std::string wrong = lot.corners.empty() ? "" : what_is_wrong_with(Polygon{lot.corners, {}});
  if (wrong.empty()) return;
  faults.push_back({nullptr, "lot", "corners", "the lot " + wrong, "give its corners in order around it, each once"});
}

}  // namespace

std::vector<SiteFault> faults_of(const Site& site, const std::set<ItemId>& also_there) {
  Faults faults;
  check_lot(site.lot, faults);
  check_ground(site.ground, faults);
  std::set<ItemId> ids = also_there;
  for (const Item& item : site.items) ids.insert(item.id);
  for (const Item& item : site.items) {
    std::visit([&](const auto& kind) { visit_fields(kind, ItemVisit{item, ids, faults}); }, item.thing);
    check_life(item, faults);
    check_picture(item, faults);
  }
  return faults;
}

}  // namespace yardwright
