#include "geom/pace/bin_volume.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

using namespace yardwright;
using namespace yardwright::pace;

namespace {

constexpr double ft = 0.3048;

Grain grain(double filling_deg, double emptying_deg) {
  return {"test", "test", 56, Angle::degrees(filling_deg), Angle::degrees(emptying_deg), ""};
}

BinRoom flat_bin(double diameter_ft, double depth_ft, double sump_ft = 0) {
  return {diameter_ft / 2 * ft, depth_ft * ft, Angle::degrees(30), {}, sump_ft * ft};
}

struct Integrated {
  double total_m3 = 0, stays_m3 = 0;
};

/// Rings of grain between floor, heap and crater, added up: knows nothing of the closed forms.
Integrated integrated(const BinRoom& room, const Grain& g, bool with_heap = true) {
  const double radius_m = room.radius_m, filling = with_heap ? tan(g.filling) : 0, hopper = tan(room.hopper);
  const double peak_m = room.wall_depth_m + (with_heap ? radius_m * std::min(filling, tan(room.roof)) : 0);
  const int rings = 200000;
  Integrated sum;
  for (int i = 0; i < rings; ++i) {
    const double r = radius_m * (i + 0.5) / rings;
    const double floor_m = -hopper * (radius_m - r);
    const double top_m = std::max(floor_m, peak_m - filling * r);
    const double crater_m = tan(g.emptying) * std::max(0.0, r - room.sump_radius_m) - hopper * radius_m +
                            hopper * std::min(r, room.sump_radius_m);
    const double stays_to_m = std::min(top_m, std::max(floor_m, crater_m));
    const double area_m2 = 2 * std::numbers::pi * r * radius_m / rings;
    sum.total_m3 += area_m2 * (top_m - floor_m);
    sum.stays_m3 += area_m2 * (stays_to_m - floor_m);
  }
  return sum;
}

}  // namespace

// Cases 1 to 3 and 6: S1 = "Test weight" article citing USDA, 2150.42 in3 (read); the rest is arithmetic.
TEST_CASE("A bushel is 2150.42 cubic inches") {
  CHECK(GrainVolume::bushels(1).as_cubic_metres() / (ft * ft * ft) == Approx(1.244456).margin(1e-6));
  CHECK(GrainVolume::cubic_metres(ft * ft * ft).as_bushels() == Approx(0.803564).margin(1e-6));
  CHECK(GrainVolume::bushels(1).as_cubic_metres() == Approx(0.0352391).margin(1e-7));
}

// Cases 4 to 6: bushel weights 56, 60 and 32 lb (read), densities and bushels a tonne computed.
TEST_CASE("A test weight turns bushels into density and tonnes") {
  const double bushels_per_ft3 = GrainVolume::cubic_metres(ft * ft * ft).as_bushels();
  CHECK(56 * bushels_per_ft3 == Approx(45.00).margin(0.01));
  CHECK(60 * bushels_per_ft3 == Approx(48.21).margin(0.01));
  CHECK(32 * bushels_per_ft3 == Approx(25.71).margin(0.01));
  CHECK(GrainVolume::cubic_metres(1).as_tonnes(56) == Approx(0.7208).margin(1e-4));
  CHECK(1 / GrainVolume::bushels(1).as_tonnes(56) == Approx(39.368).margin(0.001));
  CHECK(1 / GrainVolume::bushels(1).as_tonnes(60) == Approx(36.744).margin(0.001));
  CHECK(1 / GrainVolume::bushels(1).as_tonnes(32) == Approx(68.894).margin(0.001));
}

// Cases 7, 10, 15, 17, 18: exact geometry (computed); the filling angle 23 deg is read (S5).
TEST_CASE("Level and heap of a bin are the cylinder and the cone") {
  CHECK(heaped(flat_bin(36, 24), grain(23, 27)).level.as_bushels() == Approx(19630.3).margin(0.5));
  CHECK(heaped(flat_bin(36, 24), grain(23, 27)).heap.as_bushels() == Approx(2083.1).margin(0.5));
  CHECK(heaped(flat_bin(36, 24), grain(23, 27)).total.as_bushels() == Approx(21713.4).margin(0.5));
  const BinVolume wide = heaped(flat_bin(48, 24), grain(23, 27));
  CHECK(wide.level.as_bushels() == Approx(34898).margin(1));
  CHECK(wide.total.as_bushels() == Approx(39836).margin(1));
  CHECK((wide.level + wide.roof_cone).as_bushels() == Approx(41614).margin(1));
  CHECK(struck(flat_bin(105, 16 * 44 / 12.0), grain(23, 27)).total.as_bushels() == Approx(408207).margin(5));
  const double bu_per_ft[][2] = {{18, 204.5}, {30, 568.0}, {48, 1454.1}, {105, 6958.1}};
  for (const auto& [diameter_ft, bushels] : bu_per_ft) {
    CHECK(struck(flat_bin(diameter_ft, 1), grain(23, 27)).total.as_bushels() == Approx(bushels).margin(0.1));
  }
}

// Cases 8, 9 and 11: the rules of a State warehouse bureau (S3) and of a university sheet (S2), both read.
TEST_CASE("The published rules of thumb agree within their own rounding") {
  const BinVolume bin = heaped(flat_bin(36, 24), grain(23, 27));
  CHECK(36 * 36 * 24 * 0.7854 * 0.80385 == Approx(bin.level.as_bushels()).epsilon(0.0004));  // S3: 19,637
  CHECK(0.628 * 36 * 36 * 24 == Approx(bin.level.as_bushels()).epsilon(0.005));              // S2: 19,533
  const double average_depth_ft = 24 + 18 * std::tan(23 * std::numbers::pi / 180) / 3;
  CHECK(0.628 * 36 * 36 * average_depth_ft == Approx(bin.total.as_bushels()).epsilon(0.005));  // S2: 21,606
}

// Cases 12 to 14: S3 (read) gives the heap's height as 0.4 R for corn and 0.5 R for soybeans.
TEST_CASE("A heap given by its height is that of the angle") {
  const Angle corn = Angle::of_slope(0.4, 1), soybeans = Angle::of_slope(0.5, 1);
  CHECK(corn.as_degrees() == Approx(21.801).margin(0.001));
  CHECK(soybeans.as_degrees() == Approx(26.565).margin(0.001));
  // The State's own 0.80385 bu/ft3 is 0.036 % over the exact bushel.
  CHECK(heaped(flat_bin(36, 24), grain(corn.as_degrees(), 27)).heap.as_bushels() * 0.80385 / 0.803564 ==
        Approx(1963.7).margin(0.5));
  CHECK(heaped(flat_bin(36, 24), grain(soybeans.as_degrees(), 27)).heap.as_bushels() * 0.80385 / 0.803564 ==
        Approx(2454.7).margin(0.5));
}

// Case 16: arithmetic on 44 in wall rings (from memory).
TEST_CASE("Eleven rings of 44 inches and a 30 degree roof stand 57.654 ft") {
  CHECK(11 * 44 / 12.0 + 30 * tan(Angle::degrees(30)) == Approx(57.654).margin(0.001));
}

// Case 19: S4 (read): D = (bushels x VF)^(1/3) for a free pile, VF computed. A bin that is all heap is such a pile.
TEST_CASE("A bin too wide for its grain holds a free cone") {
  const double diameter_ft = std::cbrt(10000 * 22.397);
  CHECK(diameter_ft == Approx(60.73).margin(0.01));
  CHECK(heaped(flat_bin(diameter_ft, 0), grain(23, 27)).total.as_bushels() == Approx(10000).margin(1));
}

TEST_CASE("The centre sump leaves a ring in a deep bin and a crater in a shallow one") {
  struct Case {
    double diameter_ft, depth_ft, filling, emptying, total, flows, stays;
  };
  // Cases 20 to 29: exact geometry (computed); a filling angle of 0 stands for a level surface.
  constexpr Case ring[] = {{36, 24, 0, 27, 19630, 14629, 5001},           {36, 24, 23, 27, 21713, 16712, 5001},
                           {36, 24, 25, 29, 21919, 16478, 5441},          {48, 24, 23, 27, 39836, 27982, 11854},
                           {60, 40.3333, 23, 27, 101282, 78129, 23153},   {90, 51.3333, 23, 27, 294968, 216826, 78142},
                           {105, 58.6667, 23, 27, 459894, 335808, 124086}};
  constexpr Case crater[] = {
      {90, 15, 23, 27, 109230, 38253, 70976}, {90, 15, 0, 27, 76681, 10939, 65741}, {60, 8, 0, 27, 18176, 1660, 16517}};
  const auto check = [](const Case& c, Remainder remainder) {
    const BinRoom room = flat_bin(c.diameter_ft, c.depth_ft);
    const BinVolume volume =
        c.filling > 0 ? heaped(room, grain(c.filling, c.emptying)) : struck(room, grain(23, c.emptying));
    INFO(c.diameter_ft << " ft, " << c.depth_ft << " ft deep");
    CHECK(volume.total.as_bushels() == Approx(c.total).margin(1));
    CHECK(volume.flows.as_bushels() == Approx(c.flows).margin(1));
    CHECK(volume.stays.as_bushels() == Approx(c.stays).margin(1));
    CHECK(volume.remainder == remainder);
  };
  for (const Case& c : ring) check(c, Remainder::ring);
  for (const Case& c : crater) check(c, Remainder::crater);
  CHECK(heaped(flat_bin(90, 15), grain(23, 27)).crater_radius_m / ft == Approx(36.51).margin(0.01));
  CHECK(struck(flat_bin(90, 15), grain(23, 27)).crater_radius_m / ft == Approx(29.44).margin(0.01));
  CHECK(struck(flat_bin(60, 8), grain(23, 27)).crater_radius_m / ft == Approx(15.70).margin(0.01));
}

// Case 30: exact geometry (computed).
TEST_CASE("A sump that is no point lets more grain flow") {
  CHECK(struck(flat_bin(36, 24, 1), grain(23, 27)).stays.as_bushels() == Approx(4584.7).margin(0.5));
}

// Cases 31 and 32: S3 (read): the ring left is 2/3 of the cone's depth over the floor, twice the heap of that angle.
TEST_CASE("The ring left on the floor is twice the heap of the same angle") {
  const double corn = Angle::of_slope(0.4, 1).as_degrees();
  const BinVolume bin = heaped(flat_bin(36, 24), grain(corn, corn));
  CHECK(bin.stays.as_bushels() * 0.80385 / 0.803564 == Approx(3927.5).margin(0.5));
  CHECK(bin.stays.as_cubic_metres() / bin.heap.as_cubic_metres() == Approx(2.0).epsilon(1e-9));
}

// Cases 33 to 35: geometry (computed); the W of a cored bin is read (S6).
TEST_CASE("A core to a W takes a quarter of the heap where both angles are the same") {
  const BinVolume same = heaped(flat_bin(36, 24), grain(23, 23));
  CHECK(same.core.as_cubic_metres() / same.heap.as_cubic_metres() == Approx(0.25).epsilon(1e-9));
  CHECK(same.core.as_bushels() == Approx(520.8).margin(0.2));
  CHECK(heaped(flat_bin(48, 24), grain(25, 25)).core.as_bushels() == Approx(1356.1).margin(0.2));
  CHECK(heaped(flat_bin(36, 24), grain(23, 27)).core.as_bushels() == Approx(430.3).margin(0.2));
}

TEST_CASE("The closed forms agree with rings of grain added up, for any bin") {
  std::mt19937 random{20261125};
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>{low, high}(random);
  };
  for (int i = 0; i < 60; ++i) {
    const bool hopper = i % 3 == 0;
    const BinRoom room{between(2, 16), between(0, 20), Angle::degrees(between(5, 35)),
                       Angle::degrees(hopper ? between(5, 50) : 0), between(0, 2)};
    const Grain g = grain(between(15, 34), between(15, 40));
    const BinVolume volume = heaped(room, g);
    const Integrated sum = integrated(room, g);
    INFO("seed 20261125, bin " << i << ": R " << room.radius_m << " H " << room.wall_depth_m << " hopper "
                               << room.hopper.as_degrees());
    REQUIRE(volume.total.as_cubic_metres() == Approx(sum.total_m3).epsilon(1e-4).margin(1e-3));
    REQUIRE(volume.stays.as_cubic_metres() == Approx(sum.stays_m3).epsilon(1e-4).margin(1e-3));
    REQUIRE((volume.flows + volume.stays).as_cubic_metres() == Approx(volume.total.as_cubic_metres()));
  }
}

TEST_CASE("A hopper as steep as the emptying angle keeps nothing and adds its cone") {
  Bin bin;
  bin.floor = BinFloor::hopper;
  bin.hopper_angle = Angle::degrees(45);
  const BinVolume volume = heaped(room_of(bin), grain(23, 27));
  CHECK(volume.remainder == Remainder::none);
  CHECK(volume.stays.as_cubic_metres() == 0);
  const double radius_m = bin.diameter_m / 2;
  CHECK((volume.level - struck({radius_m, bin.eave_height_m, {}, {}, 0}, grain(23, 27)).level).as_cubic_metres() ==
        Approx(std::numbers::pi * radius_m * radius_m * radius_m / 3));
}

TEST_CASE("A raised floor takes its height off every bushel") {
  Bin raised, flat;
  raised.floor_height_m = 1.5 * ft;
  flat.floor = BinFloor::flat_channels;
  const double less =
      (heaped(room_of(flat), grain(23, 27)).total - heaped(room_of(raised), grain(23, 27)).total).as_bushels();
  CHECK(less == Approx(1.5 * 817.9).margin(0.2));  // 817.9 bu a foot of a 36 ft bin: computed
}

TEST_CASE("A heap steeper than the roof is stopped by it") {
  BinRoom room = flat_bin(36, 24);
  room.roof = Angle::degrees(20);
  const BinVolume volume = heaped(room, grain(23, 27));
  CHECK(volume.heap_meets_roof);
  CHECK(volume.heap < volume.roof_cone);
}

TEST_CASE("A bin without any room holds nothing and is no trouble") {
  const BinVolume nothing = struck({0, 0, {}, {}, 0}, grain(23, 27));
  CHECK(nothing.total == GrainVolume{});
  CHECK(nothing.stays_ratio() == 0);
  const BinVolume all_sump = heaped({3, 2, Angle::degrees(30), {}, 5}, grain(23, 27));
  CHECK(all_sump.stays.as_cubic_metres() == Approx(0).margin(1e-9));
}
