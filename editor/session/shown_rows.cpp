#include "editor/session/shown_rows.hpp"

namespace yardwright::session {

namespace {

bool applies_to(const Bin& bin, std::string_view key) {
  if (key == "hopper") return bin.floor == BinFloor::hopper;
  if (key == "floor-height") return bin.floor == BinFloor::raised;
  return true;
}

bool applies_to(const Dryer& dryer, std::string_view key) {
  const bool batch = dryer.operation == DryerOperation::batch;
  if (key == "batch" || key == "batch-time") return batch;
  if (key == "rate-5" || key == "rate-10") return !batch;
  return true;
}

bool applies_to(const Drive& drive, std::string_view key) {
  return (key != "crown" && key != "side-slope") || drive.is_graded();
}

/// Of a pit, under the name that the item gives it.
bool applies_to(const PitBody& pit, std::string_view key) {
  if (key == "rim" || key == "pump") return pit.depth_m > 0;
  if (key == "pump-on" || key == "pump-off") return pit.depth_m > 0 && pit.pump_m3_per_s > 0;
  return true;
}

bool applies_in(const PitBody& pit, std::string_view front, std::string_view key) {
  return !key.starts_with(front) || applies_to(pit, key.substr(front.size()));
}

bool applies_to(const Leg& leg, std::string_view key) { return applies_in(leg.boot, "boot-pit.", key); }
bool applies_to(const Pit& pit, std::string_view key) { return applies_in(pit.body, "body.", key); }

bool applies_to(const Receiving& dump, std::string_view key) {
  const bool of_doors = key == "door-width" || key == "door-height" || key == "clear-height";
  if (of_doors) return dump.type == ReceivingKind::drive_through;
  return applies_in(dump.pit, "pit.", key);
}

}  // namespace

bool applies(const Thing& thing, std::string_view key) {
  const auto of_kind = [&](const auto& kind) {
    if constexpr (requires { applies_to(kind, key); }) return applies_to(kind, key);
    return true;
  };
  return std::visit(of_kind, thing);
}

bool applies(const Storm& storm, std::string_view key) { return key != "distribution" || storm.type == StormType::own; }

std::vector<FieldRow> shown_rows(const Thing& thing, UnitSystem units, const Catalogs& catalogs) {
  std::vector<FieldRow> rows = field_rows(thing, units, catalogs);
  std::erase_if(rows, [&](const FieldRow& row) { return !applies(thing, row.key); });
  return rows;
}

}  // namespace yardwright::session
