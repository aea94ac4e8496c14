#!/usr/bin/env python3
"""`yardwright storm` on the demo yards: its numbers, its files, its refusals. usage: storm_test.py YARDWRIGHT"""

import csv
import json
import os
import subprocess
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main

PART = ("--start", "11.7h", "--length", "20min")


class Storm(Case):
    def test_the_pits_of_the_old_yard_fill(self):
        out = self.answered("storm", OLD_YARD, *PART, code=1)
        self.assertGreater(sum(pit["full_h"] is not None for pit in out["pits"]), 0)
        self.assertIn("fail", {finding["verdict"] for finding in out["findings"]})
        water = out["water_m3"]
        gone = sum(water[key] for key in ("soaked", "left", "pumped", "on_ground", "in_pits"))
        self.assertAlmostEqual(gone / (water["stood"] + water["rain"]), 1, delta=1e-6)
        self.assertLess(out["error"], 1e-6)

    def test_the_pits_of_the_new_yard_stay_dry(self):
        out = self.answered("storm", NEW_YARD, *PART)
        self.assertEqual([pit["full_h"] for pit in out["pits"]], [None] * len(out["pits"]))

    def test_hydrographs_and_depths_are_written(self):
        with tempfile.TemporaryDirectory() as folder:
            table, depths = os.path.join(folder, "storm.csv"), os.path.join(folder, "deepest.tif")
            out = self.answered("storm", OLD_YARD, *PART, "--hydrographs", table, "--depth", depths, code=1)
            with open(table, newline="") as file:
                rows = list(csv.DictReader(file))
            self.assertAlmostEqual(float(rows[0]["time_h"]), 11.7, places=3)
            self.assertGreater(len(rows), 20)
            levels = [float(row["Leg: level_m"]) for row in rows]
            leg = next(pit for pit in out["pits"] if pit["item"] == 1)
            self.assertAlmostEqual(max(levels), leg["highest_m"], places=3)
            told = subprocess.run(["gdalinfo", "-json", "-stats", depths], capture_output=True, text=True, check=True)
            deepest = json.loads(told.stdout)["bands"][0]["maximum"]
            self.assertGreater(deepest, max(wall["deepest_m"] for wall in out["walls"]) - 1e-6)

    def test_the_rain_table_that_a_yard_has_is_shown_and_taken_from(self):
        with tempfile.TemporaryDirectory() as folder:
            yard = os.path.join(folder, "my.yard")
            self.answered("new", yard)
            given = self.answered("rain", yard, "--table", "2 3in, 25 5in, 100 7in")
            self.assertEqual(self.answered("rain", yard), given)
            self.assertEqual(self.answered("rain", yard, "--return-period", "100")["rain_m"], 7 * 0.0254)
            self.assertEqual(self.answered("rain", yard)["return_period_years"], 100)

    def test_a_pump_that_no_pit_has_cannot_fail(self):
        for words, said in ((("--pump-fails", "Leg"), "no pump"), (("--pump-fails", "Nobody"), "no pit is called"),
                            (("--length", "30h"), "cannot be run"), (("--start", "25h"), "over by then"),
                            (("--start=-1h",), "not begun"), (("--depth", "/no/such/folder/x.tif"), "no folder"),
                            (("--depth", "deepest.xyz"), "not named as one")):
            problems = self.refused("storm", OLD_YARD, *words)
            self.assertEqual(len(problems), 1)
            self.assertIn(said, problems[0]["what"])


if __name__ == "__main__":
    main()
