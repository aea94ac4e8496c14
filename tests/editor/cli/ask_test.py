#!/usr/bin/env python3
"""`yardwright ask` answers published and hand-computed cases. usage: ask_test.py YARDWRIGHT"""

from program import Case, main, run


class Ask(Case):
    def asked(self, *words):
        out = self.answered("ask", *words)
        self.assertEqual(set(out), {"question", "answers", "basis"})
        self.assertEqual(out["question"], words[0])
        self.assertTrue(out["basis"])
        for name, answer in out["answers"].items():
            self.assertTrue({"value", "unit"} <= set(answer) or set(answer) == {"words"}, name)
        return out["answers"]

    def near(self, words, tolerance, **expected):
        """expected: name=(value, unit)"""
        answers = self.asked(*words.split())
        for name, (value, unit) in expected.items():
            answer = answers[name]
            shown = answer["value"] if answer.get("unit") == unit else answer[unit]
            self.assertAlmostEqual(shown, value, delta=tolerance, msg="%s: %s" % (words, name))

    # Geometry: a right triangle of the run and the rise; slopes dry 9:12 and wet 12:12 of MWPS-13 (from memory).
    def test_a_spout_is_a_right_triangle(self):
        self.near("spout --discharge 105.213ft --inlet 60ft --run 60ft", 0.001, slope=(37, "deg"), length=(75.128, "ft"))
        self.near("spout --discharge 120ft --inlet 60ft --run 60ft --state wet", 0.001, slope=(45, "deg"), length=(84.853, "ft"))
        self.near("spout --discharge 163.923ft --inlet 60ft --run 60ft", 0.001, slope=(60, "deg"), length=(120, "ft"))

    # Closed form: inlet = 1 ft foundation + eave + D/2 tan 30; leg = inlet + run tan 45. Three bins of three sizes.
    def test_the_leg_height_that_a_spout_needs(self):
        for inlet, run_ft, needed in (("35.392", 30, 65.392), ("38.856", 55, 93.856), ("58.654", 45, 103.654)):
            self.near("spout --discharge 60ft --inlet %sft --run %dft --state wet" % (inlet, run_ft), 0.001,
                      required=(45, "deg"), discharge_needed=(needed, "ft"))

    def test_an_inlet_above_the_outlet_is_out_of_reach(self):
        answers = self.asked(*"spout --discharge 30ft --inlet 36ft --run 60ft".split())
        self.assertIn("none", answers["reach"]["words"])
        self.assertLess(answers["slope"]["value"], 0)

    # US bushel of 2150.42 in3 (read); cylinder, cone and centre-sump ring in closed form; the ring checked by integration.
    def test_a_bin_holds_its_cylinder_and_its_cone(self):
        self.near("bin --diameter 36ft --eave 24ft --fill 23 --empty 27", 0.5, level=(19630.3, "bu"), heap=(2083.1, "bu"),
                  total=(21713.4, "bu"), flows=(16712.4, "bu"), stays=(5001.1, "bu"))
        self.near("bin --diameter 48ft --eave 24ft --fill 23 --empty 27", 1, level=(34898, "bu"), total=(39836, "bu"),
                  flows=(27982, "bu"), stays=(11854, "bu"))
        self.near("bin --diameter 36ft --eave 24ft --fill 25 --empty 29 --grain soybeans", 1, total=(21919, "bu"), stays=(5441, "bu"))
        self.near("bin --diameter 105ft --eave 58.667ft --fill 23 --empty 27", 5, total=(459894, "bu"), stays=(124086, "bu"))
        self.near("bin --diameter 36ft --eave 24ft --fill 0 --empty 27 --sump 1ft", 0.5, stays=(4584.7, "bu"))
        self.near("bin --diameter 36ft --eave 25ft --floor 1ft --fill 23 --empty 27", 0.5, level=(19630.3, "bu"))

    def test_a_shallow_bin_keeps_its_wall_covered(self):
        self.near("bin --diameter 90ft --eave 15ft --fill 23 --empty 27", 1, total=(109230, "bu"), flows=(38253, "bu"), stays=(70976, "bu"))
        self.near("bin --diameter 90ft --eave 15ft --fill 23 --empty 27", 0.01, crater_radius=(36.51, "ft"))
        self.near("bin --diameter 60ft --eave 8ft --fill 0 --empty 27", 1, total=(18176, "bu"), stays=(16517, "bu"))

    # AASHTO 2018, tables 2-4a and 2-5: least inside radius in a 180-degree turn (P to WB-40 read in the Texas DOT roadway
    # manual, WB-62 in a military turning page, WB-67 from memory).
    def test_the_inside_radii_of_the_green_book(self):
        for vehicle, radius, inside in (("p", 21.0, 14.4), ("su-30", 38.0, 28.4), ("su-40", 47.4, 36.4), ("wb-40", 36.0, 19.3),
                                        ("wb-62", 41.0, 7.4), ("wb-67", 41.0, 1.9)):
            self.near("turn --vehicle %s --radius %sft" % (vehicle, radius), 0.1, inside=(inside, "ft"))

    # Sum of squares of wheelbases: R2 = sqrt(R1^2 - L1^2 - L2^2) - width / 2; the ring from a converged integration.
    def test_a_typed_truck_turns_as_the_named_one(self):
        self.near("turn --wheelbase 19.5ft --trailer 41ft --width 8.5ft --radius 75ft", 1e-3, inside_steady=(59.697 - 4.25, "ft"))
        self.near("turn --wheelbase 19.5ft --trailer 45.5ft --width 8.5ft --radius 41ft --sweep 90", 0.05, inside=(15.58, "ft"))
        self.near("turn --vehicle wb-67 --radius 60ft", 0.05, inside=(32.58, "ft"), outside=(65.36, "ft"), width=(32.78, "ft"))

    def test_no_steady_state_is_said_and_no_number(self):
        self.assertEqual(self.asked(*"turn --vehicle wb-67 --radius 41ft".split())["inside_steady"], {"words": "no steady state"})

    # NESC envelope for portable filling as two utilities' leaflets print it (read): D = 2.5 V + 18 ft, line at 18.5 ft.
    def test_the_distance_to_a_line_is_the_leaflets_table(self):
        for port, distance in ((15, 55.5), (20, 68), (25, 80.5), (30, 93), (35, 105.5), (40, 118), (60, 168), (80, 218)):
            self.near("line --port %dft --conductor 18.5ft" % port, 1e-6, distance=(distance, "ft"))
        self.near("line --port 35ft --conductor 35ft", 1e-6, distance=(80, "ft"))
        self.near("line --port 25ft --conductor 30ft", 1e-6, clears_from_height=(43, "ft"), permanent=(15, "ft"))

    # 29 CFR 1926.1408 table A (read): 10 ft up to 50 kV.
    def test_machines_keep_ten_feet(self):
        self.near("line --port 35ft --conductor 30ft --voltage 7.2kV", 1e-6, machines=(10, "ft"))

    # TR-55 (1986) examples 2-1 to 2-4 (runoff depth) and 4-1 (peak 345 cfs with a chart, 344 by table F-1).
    def test_runoff_as_tr_55_prints_it(self):
        for number, depth in ((70, 2.81), (75, 3.28), (77, 3.48), (74, 3.19)):
            self.near("runoff --area 250ac --cn %d --rain 6in" % number, 0.01, depth=(depth, "in"))
        self.near("runoff --area 250ac --cn 75 --rain 6in --tc 1.53h --type II", 3.45, peak=(345, "cfs"))
        self.near("runoff --area 10ac --cn 89 --rain 5in --tc 0.25h", 0.43, peak=(43.1, "cfs"))

    # The 484 unit hydrograph with NRCS Type II, and the rational peak by the hardest part of the storm (computed apart).
    def test_three_peaks_stand_side_by_side(self):
        self.near("runoff --area 10ac --cn 89 --rain 5in --tc 0.25h --c 0.7", 1.4, peak=(43.1, "cfs"), hydrograph_peak=(45.2, "cfs"))
        answers = self.asked(*"runoff --area 250ac --cn 75 --rain 6in --tc 1.53h --c 0.7".split())
        self.assertAlmostEqual(answers["hydrograph_peak"]["value"] / 0.0283168, 342, delta=3.4)
        self.assertAlmostEqual(answers["hydrograph_peak_at"]["value"] / 3600, 12.83, delta=0.05)
        self.near("runoff --area 1ac --cn 89 --rain 1in --tc 30min --c 1", 0.003, rational_peak=(0.7662, "cfs"))  # 0.38 in in half an hour

    def test_each_storm_type_peaks_at_its_hour(self):
        for storm, hour in (("I", 10.03), ("IA", 8.0), ("II", 12.03), ("III", 12.18)):
            answers = self.asked(*("runoff --area 10ac --cn 89 --rain 5in --tc 0.25h --type %s" % storm).split())
            self.assertAlmostEqual(answers["hydrograph_peak_at"]["value"] / 3600, hour, delta=0.1, msg=storm)

    # Even rain of 24 hours on ground that takes up nothing: C i A is all of it.
    def test_a_storm_of_ones_own(self):
        even = ["runoff", "--area", "1ha", "--cn", "100", "--rain", "240mm", "--tc", "10min", "--c", "1", "--type", "own"]
        answers = self.asked(*even, "--distribution", "0 0, 24 1")
        for name in ("rational_peak", "hydrograph_peak"):
            self.assertAlmostEqual(answers[name]["value"], 1e4 * 0.010 / 3600, delta=1e-6, msg=name)
        self.assertIn("no coefficients", answers["peak"]["words"])
        self.assertIn("--distribution", self.asked(*even)["hydrograph_peak"]["words"])

    def test_rain_under_the_initial_abstraction_runs_nowhere(self):
        answers = self.asked(*"runoff --area 10ac --cn 85 --rain 0.30in".split())
        self.assertEqual(answers["depth"]["value"], 0)
        self.assertIn("no runoff", answers["peak"]["words"])

    # HEC-22 (2024) example 6.1 (read): 55.7 cfs, 4.7 ft/s at 1.6 ft. The others are Manning's formula worked by hand.
    def test_pipes_and_channels_by_manning(self):
        self.near("manning --bottom 2.6ft --side 3 --slope 1% --n 0.03 --flow 55.7cfs", 0.01, depth=(1.6, "ft"))
        self.near("manning --bottom 2.6ft --side 3 --slope 1% --n 0.03 --flow 55.7cfs", 0.05, velocity=(4.7, "ft/s"))
        self.near("manning --diameter 18in --slope 1% --n 0.013", 0.02, flow=(10.50, "cfs"), velocity=(5.94, "ft/s"))
        self.near("manning --diameter 15in --slope 0.5% --n 0.013 --flow 3cfs", 0.008, depth=(0.7390, "ft"), velocity=(3.972, "ft/s"),
                  full_flow=(4.568, "cfs"))
        self.near("manning --bottom 0 --side 4 --slope 1% --n 0.035 --flow 10cfs", 0.005, depth=(0.9824, "ft"), velocity=(2.590, "ft/s"),
                  critical_depth=(0.8276, "ft"))
        self.near("manning --bottom 1m --side 2 --slope 0.1% --n 0.025 --flow 1m3/s", 0.0013, depth=(0.65101, "m"))

    # A textbook's corrugated drain, half full at 1/500 (read): 51.29 cfs and 3.628 ft/s.
    def test_a_pipe_half_full(self):
        self.near("manning --diameter 6ft --slope 0.2% --n 0.024 --flow 51.29267cfs", 0.004, depth=(3, "ft"), velocity=(3.628, "ft/s"))

    def test_a_pipe_that_carries_no_more_says_so(self):
        answers = self.asked(*"manning --diameter 12in --slope 1% --n 0.013 --flow 20cfs".split())
        self.assertIn("surcharged", answers["depth"]["words"])
        self.assertIn("full", self.asked(*"manning --diameter 12in --slope 1% --n 0.013".split())["froude"]["words"])

    def test_lines_for_people_carry_both_units(self):
        ran = run(*"ask bin --diameter 36ft --eave 24ft --fill 23 --empty 27".split())
        self.assertEqual((ran.code, ran.err), (0, ""))
        self.assertRegex(ran.out, r"(?m)^total +21,713 bu  \(765 m3\)$")
        self.assertRegex(ran.out, r"(?m)^basis: geometry")

    def test_units_may_be_mixed(self):
        feet = self.asked(*"spout --discharge 80ft --inlet 36ft --run 60ft".split())
        metres = self.asked(*"spout --discharge 24.384m --inlet 432in --run 18288mm".split())
        for name in feet:
            self.assertAlmostEqual(feet[name]["value"], metres[name]["value"], delta=1e-9, msg=name)


if __name__ == "__main__":
    main()
