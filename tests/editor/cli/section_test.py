#!/usr/bin/env python3
"""`yardwright section` on the demo yards: its table, its numbers, its drawing, its refusals. usage: section_test.py YARDWRIGHT"""

import json
import os
import shutil
import subprocess
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run

FOOT = 0.3048


class Section(Case):
    def test_levels_are_those_that_another_program_reads_from_the_ground(self):
        out = self.answered("section", OLD_YARD, "--line", "100,100", "400,350")
        ground = os.path.join(os.path.dirname(OLD_YARD), "old-yard-ground.tif")
        seen = 0
        for point in out["points"][::25]:
            # It tells the cell that a place lies in; the ground is level within a cell's slope. The yard has no tie.
            told = subprocess.run(["gdallocationinfo", "-valonly", "-geoloc", ground, str(point["east_m"]), str(point["north_m"])],
                                  capture_output=True, text=True, check=True)
            self.assertAlmostEqual(point["existing_m"], float(told.stdout), delta=0.15, msg=point)
            seen += 1
        self.assertGreater(seen, 3)

    def test_chainage_is_the_distance_walked(self):
        out = self.answered("section", OLD_YARD, "--line", "100,100", "400,100", "400,500")
        self.assertAlmostEqual(out["length_m"], 700 * FOOT, places=6)
        self.assertEqual(out["points"][0]["chainage_m"], 0)
        last = out["points"][-1]
        self.assertAlmostEqual(last["east_m"], 400 * FOOT, places=6)
        self.assertAlmostEqual(last["north_m"], 500 * FOOT, places=6)

    def test_a_bin_is_crossed_by_its_diameter_through_its_middle(self):
        out = self.answered("section", NEW_YARD, "--line", "100,140", "200,140")
        store = next(c for c in out["crossings"] if c["name"] == "Store 1")
        self.assertAlmostEqual((store["from_m"] + store["to_m"]) / 2, 39, places=6)
        pad = next(c for c in out["crossings"] if c["name"] == "Pad of Store 1")
        self.assertLessEqual(pad["from_m"], store["from_m"])
        on_pad = min(out["points"], key=lambda p: abs(p["chainage_m"] - 39))
        self.assertAlmostEqual(on_pad["design_m"], store["base_m"][0], places=3)
        self.assertGreater(on_pad["design_m"], on_pad["existing_m"])

    def test_a_table_a_row_each_step_and_the_end(self):
        ran = run("section", OLD_YARD, "--along", "Loop", "--every", "200ft")
        self.assertEqual(ran.code, 0)
        rows = ran.out.split("\n\n")[1].splitlines()[1:]
        self.assertEqual([row.split(" ft")[0].strip() for row in rows], ["0.0", "200.0", "400.0", "600.0", "800.0", "960.0"])

    def test_it_is_drawn_with_its_scale_in_words(self):
        with tempfile.TemporaryDirectory() as folder:
            path = os.path.join(folder, "section.pdf")
            ran = run("section", OLD_YARD, "--line", "300,0", "300,500", "-o", path)
            self.assertEqual((ran.code, ran.err), (0, ""))
            text = subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, text=True, check=True).stdout
        for words in ("1 in = 40 ft along the line", "times as large", "existing ground", "Dump", "Leg", "North 2", "Farm line"):
            self.assertIn(words, text)

    def test_west_and_south_of_the_origin_are_places_too(self):
        out = self.answered("section", OLD_YARD, "--line=-20,-10", "100,100")
        self.assertAlmostEqual(out["points"][0]["east_m"], -20 * FOOT, places=6)

    def test_what_cannot_be_cut_is_refused(self):
        for words, said in ((("--line", "1,1", "1,1"), "no length"), (("--along", "Nobody"), "no item is called"),
                            (("--along", "Leg"), "is no line"), ((), "one line is needed"),
                            (("--line", "1,1", "9,9", "--along", "Loop"), "one line is needed"),
                            (("--line", "a,b", "1,2"), "not understood"), (("--line", "9000,0", "9100,0"), "beyond the known ground"),
                            (("--line", "0,0", "100,100", "--every", "1mm"), "too many rows"),
                            (("--line", "0,0", "100,100", "-o", "x.txt"), "cannot be written")):
            problems = self.refused("section", OLD_YARD, *words)
            self.assertEqual(len(problems), 1)
            self.assertIn(said, problems[0]["what"])

    def test_the_storm_of_a_section_is_asked_for_as_that_of_storm(self):
        cut = ("section", OLD_YARD, "--line", "300,260", "300,130", "--storm", "--start", "11.7h", "--length", "20min")
        whole = self.answered(*cut)
        dump = next(c for c in whole["crossings"] if c["name"] == "Dump" and c["below"])
        self.assertGreater(dump["water_m"], dump["base_m"][0])
        early = self.answered("section", OLD_YARD, "--line", "300,260", "300,130", "--storm", "--start", "1h", "--length", "1min")
        deepest = lambda out: max(p["water_m"] or 0 for p in out["points"])
        self.assertLess(deepest(early), deepest(whole))

    def test_a_return_period_is_that_of_the_rain_table(self):
        with tempfile.TemporaryDirectory() as folder:
            for file in (OLD_YARD, os.path.join(os.path.dirname(OLD_YARD), "old-yard-ground.tif")):
                shutil.copy(file, folder)
            yard = os.path.join(folder, os.path.basename(OLD_YARD))
            with open(yard) as file:
                bare = json.load(file)
            bare["storm"].pop("table", None)
            with open(yard, "w") as file:
                json.dump(bare, file)
            cut = ("--line", "300,260", "300,130", "--storm", "--start", "11.7h", "--length", "10min", "--return-period")
            self.assertIn("no rain table", self.refused("section", yard, *cut, "100")[0]["what"])
            run("rain", yard, "--table", "2 2.0in, 25 5.0in, 100 8.0in", "--return-period", "25")
            self.assertIn("no row of 7 years", self.refused("section", yard, *cut, "7")[0]["what"])
            for years, depth in (("2", "2.00 in"), ("100", "8.00 in")):
                ran = run("section", yard, *cut, years)
                self.assertIn("water: deepest water of %s in 24 h" % depth, ran.out)

    def test_what_is_asked_of_a_storm_needs_one(self):
        for words in (("--power-fails",), ("--return-period", "2"), ("--length", "1h")):
            self.assertIn("--storm", self.refused("section", OLD_YARD, "--line", "1,1", "90,90", *words)[0]["what"])

    def test_a_yard_without_ground_has_no_section(self):
        with tempfile.TemporaryDirectory() as folder:
            run("new", "a.yard", "--length", "200ft", "--width", "200ft", folder=folder)
            problems = self.refused("section", "a.yard", "--line", "0,0", "100,100", folder=folder)
            self.assertIn("no ground", problems[0]["what"])


if __name__ == "__main__":
    main()
