#!/usr/bin/env python3
"""`yardwright grow`: spots, why not elsewhere, how many fit, taller legs, placing. usage: grow_test.py YARDWRIGHT"""

import json
import os
import shutil
import tempfile

from program import NEW_YARD, Case, main, run


class Grow(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.yard = os.path.join(folder.name, "new-yard.yard")
        for end in ("new-yard.yard", "new-yard-ground.tif"):
            shutil.copy(os.path.join(os.path.dirname(NEW_YARD), end), folder.name)

    def bytes(self):
        with open(self.yard, "rb") as file:
            return file.read()

    def test_what_is_placed_on_a_spot_fails_nothing(self):
        before = {finding["id"] for finding in self.answered("check", self.yard)["findings"]}
        told = self.answered("grow", self.yard, "--place", "1")
        self.assertIn(told["placed"], [item["id"] for item in json.loads(self.bytes())["items"]])
        after = self.answered("check", self.yard)
        new = [finding for finding in after["findings"] if finding["id"] not in before]
        self.assertGreater(len(new), 0)
        for finding in new:
            self.assertNotEqual(finding["verdict"], "fail", finding)
        margins = [spot["margin_m"] for spot in told["spots"]]
        self.assertEqual(margins, sorted(margins, reverse=True))
        # It stands there now, so another one cannot.
        at = told["spots"][0]["at"]
        place = "%.3fm,%.3fm" % (at["east_m"], at["north_m"])
        reasons = self.answered("grow", self.yard, "--at", place)["at"]["reasons"]
        self.assertIn("fail", [reason["verdict"] for reason in reasons])

    def test_nothing_is_written_unless_it_is_placed(self):
        before = self.bytes()
        self.answered("grow", self.yard, "--spots", "2", "--at", "10m,10m")
        self.assertEqual(self.bytes(), before)

    def test_the_way_out_of_a_reason_leads_out_of_it(self):
        there = self.answered("grow", self.yard, "--at", "10m,10m")["at"]
        self.assertGreater(len(there["reasons"]), 0)
        for reason in there["reasons"]:
            out = reason["way_out"]
            gone = ((out["east_m"] - 10) ** 2 + (out["north_m"] - 10) ** 2) ** 0.5
            self.assertAlmostEqual(gone, reason["inside_m"], places=6)
            beyond = [10 + (out[key] - 10) * (1 + 0.3 / gone) for key in ("east_m", "north_m")]
            again = self.answered("grow", self.yard, "--at", "%.6fm,%.6fm" % tuple(beyond))["at"]["reasons"]
            self.assertNotIn((reason["rule"], reason["item"]), [(one["rule"], one["item"]) for one in again])

    def test_the_same_seed_finds_the_same_room(self):
        once = self.answered("grow", self.yard, "--room", "--seed", "7")["room"]
        self.assertEqual(once, self.answered("grow", self.yard, "--room", "--seed", "7")["room"])
        self.assertLessEqual(len(once["places"]), once["at_most"])

    def test_a_taller_leg_gains(self):
        taller = self.answered("grow", self.yard, "--taller")["taller"]
        for low, high in zip(taller, taller[1:]):
            self.assertGreater(high["discharge_m"], low["discharge_m"])
            self.assertGreaterEqual(high["reached_m2"], low["reached_m2"])
            self.assertGreaterEqual(high["bins"], low["bins"])

    def test_what_stands_where_a_later_phase_builds_is_named_as_of_the_phase_before(self):
        drawn = json.loads(self.bytes())
        asked = (("check", 1), ("grow", 0))  # today's bins do not hold the harvest
        bins = {item["name"]: item for item in drawn["items"] if item.get("name", "").startswith("Store")}
        for verb, code in asked:
            told = self.answered(verb, self.yard, "--phase", "0", code=code)["findings"]
            self.assertEqual([one["verdict"] for one in told if one["rule"] == "grow.later-ground"], ["pass"])
        bins["Store 4"]["at"] = [bins["Store 1"]["at"][0] - 9, bins["Store 1"]["at"][1]]
        with open(self.yard, "w") as file:
            json.dump(drawn, file)
        for verb, code in asked:
            told = self.answered(verb, self.yard, "--phase", "0", code=code)["findings"]
            named = [one["title"] for one in told if one["rule"] == "grow.later-ground" and one["verdict"] == "caution"]
            self.assertIn("Store 1 stands on ground that Store 4 needs later", named)

    def test_people_read_the_same(self):
        told, plain = self.answered("grow", self.yard), run("grow", self.yard)
        self.assertEqual((plain.code, plain.err), (0, ""))
        for finding in told["findings"]:
            self.assertIn(finding["title"], plain.out)
        self.assertIn("Local code, the utility and licensed practice decide", plain.out)

    def test_refusals(self):
        self.assertIn("nothing is called", self.refused("grow", self.yard, "--like", "Nowhere")[0]["what"])
        self.assertIn("covers no ground", self.refused("grow", self.yard, "--like", "Loop")[0]["what"])
        self.assertIn("--at", self.refused("grow", self.yard, "--at", "here")[0]["where"])
        before = self.bytes()
        self.assertIn("spots", self.refused("grow", self.yard, "--spots", "1", "--place", "9")[0]["what"])
        self.assertEqual(self.bytes(), before)


if __name__ == "__main__":
    main()
