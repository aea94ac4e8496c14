#include <fmt/format.h>

#include <cmath>

#include "editor/cli/ask.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/turn/body.hpp"
#include "geom/turn/off_tracking.hpp"
#include "geom/turn/turn_ring.hpp"

namespace yardwright::cli {

namespace {

/// What was typed: a catalogue vehicle, or a truck (and trailer) by its wheelbases.
struct TurnAsked {
  std::string vehicle;
  double wheelbase_m = 0;
  double trailer_m = 0;
  double width_m = 2.5908;
  double radius_m = 0;
  double sweep_deg = 180;
};

Expected<Vehicle> vehicle_of(const TurnAsked& asked) {
  if (!asked.vehicle.empty()) {
    if (const Vehicle* known = find(shipped_catalogs().vehicles, asked.vehicle)) return *known;
    std::string names;
    for (const Vehicle& one : shipped_catalogs().vehicles) names += (names.empty() ? "" : ", ") + one.id;
    return refused("there is no vehicle " + asked.vehicle, "--vehicle", "choose one of " + names);
  }
  if (asked.wheelbase_m <= 0)
    return refused("no vehicle is given", "ask turn", "give --vehicle, or --wheelbase above nought");
  if (asked.trailer_m < 0 || asked.width_m <= 0)
    return refused("a length is nought or less", "ask turn", "give lengths above nought");
  Vehicle vehicle;
  vehicle.units.push_back({"truck", asked.wheelbase_m, 0, 0, 0, asked.width_m, 0});
  if (asked.trailer_m > 0) vehicle.units.push_back({"trailer", asked.trailer_m, 0, 0, 0, asked.width_m, 0});
  return vehicle;
}

AskedValue length_value(std::string name, double si) { return {std::move(name), Quantity::length, si, ""}; }

Asked answer(const Vehicle& vehicle, const TurnAsked& asked) {
  const turn::TurnRing ring = turn::turn_ring(vehicle, asked.radius_m, Angle::degrees(asked.sweep_deg));
  Asked out{"turn",
            {length_value("inside", ring.inside_m), length_value("outside", ring.outer_m),
             length_value("width", ring.width_m())},
            ""};
  const auto steady = turn::steady_state(vehicle, asked.radius_m);
  AskedValue inside_steady = length_value("inside_steady", steady ? steady->inside_m : 0);
  if (!steady) inside_steady.words = "no steady state";
  out.answers.push_back(std::move(inside_steady));
  out.answers.push_back({"hitch_angle", Quantity::angle, ring.greatest_hitch.angle.as_degrees(), ""});
  out.basis = "geometry: the front axle's centre on an arc between straights, every axle rolling without slip";
  if (vehicle.least_front_radius_m > asked.radius_m) out.basis += "; the vehicle cannot turn this tightly";
  if (!vehicle.source.empty()) out.basis += "; " + vehicle.source;
  return out;
}

void run(const TurnAsked& asked, Console& console) {
  auto vehicle = vehicle_of(asked);
  if (!vehicle) return refuse(vehicle.error(), console);
  if (asked.radius_m < vehicle->units.front().wheelbase_m) {
    return refuse(
        {{"the radius is smaller than the wheelbase", "--radius", "give a larger radius of the front axle's centre"}},
        console);
  }
  if (asked.radius_m > 1e4 || std::abs(asked.sweep_deg) > 720 || asked.sweep_deg == 0) {
    return refuse({{"the turn is out of range", "--sweep", "give a sweep up to 720 degrees and a radius up to 10 km"}},
                  console);
  }
  print(answer(*vehicle, asked), console);
}

}  // namespace

void add_ask_turn(CLI::App& ask, Console& console) {
  auto asked = std::make_shared<TurnAsked>();
  CLI::App* verb = ask.add_subcommand("turn", "ring that a vehicle sweeps in a turn");
  verb->footer("example: yardwright ask turn --vehicle wb-67 --radius 60ft --sweep 90");
  verb->add_option("--vehicle", asked->vehicle, "of the vehicle catalogue: wb-67, su-30, tractor-wagon ...");
  add_quantity(*verb, "--wheelbase", asked->wheelbase_m, Quantity::length, "of the truck or tractor");
  add_quantity(*verb, "--trailer", asked->trailer_m, Quantity::length, "from kingpin to the trailer's axle group");
  add_quantity(*verb, "--width", asked->width_m, Quantity::length, "of the bodies");
  add_quantity(*verb, "--radius", asked->radius_m, Quantity::length, "of the arc of the front axle's centre")
      ->required();
  add_quantity(*verb, "--sweep", asked->sweep_deg, Quantity::angle, "angle of the arc");
  verb->callback([asked, &console] { run(*asked, console); });
}

}  // namespace yardwright::cli
