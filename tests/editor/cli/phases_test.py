#!/usr/bin/env python3
"""`yardwright phases`: each phase by itself, and what is in the way of a later one. usage: phases_test.py YARDWRIGHT"""

import json
import os
import shutil
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run


class Phases(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = folder.name
        self.yard = os.path.join(self.folder, "new-yard.yard")
        for end in ("new-yard.yard", "new-yard-ground.tif"):
            shutil.copy(os.path.join(os.path.dirname(NEW_YARD), end), self.folder)

    def changed(self, change):
        with open(self.yard) as file:
            yard = json.load(file)
        change(yard)
        with open(self.yard, "w") as file:
            json.dump(yard, file)

    def test_each_phase_stands_as_check_says(self):
        for yard, code in ((NEW_YARD, 0), (OLD_YARD, 1)):
            out = self.answered("phases", yard, code=code)
            for phase in out["phases"]:
                ran = run("check", yard, "--phase", str(phase["phase"]), "--json")
                asked = json.loads(ran.out)
                self.assertEqual(phase["verdicts"], asked["verdicts"])
                wanting = {one["id"] for one in asked["findings"] if one["verdict"] in ("fail", "caution")}
                self.assertLessEqual({one["id"] for one in phase["broken"]}, wanting)

    def test_a_phase_costs_what_cost_says(self):
        out = self.answered("phases", NEW_YARD)
        built = self.answered("cost", NEW_YARD, "--from-phase", "0", "--to-phase", "1")
        self.assertAlmostEqual(out["phases"][1]["cost"], built["sum"], places=3)
        self.assertEqual(out["phases"][1]["lines"], built["lines"])
        self.assertAlmostEqual(out["phases"][0]["cost"], self.answered("cost", NEW_YARD, "--phase", "0")["sum"], places=3)

    def test_what_stands_in_the_way_of_a_later_phase_is_named(self):
        def shed_first(yard):
            yard["phases"].insert(1, "a shed")
            for item in yard["items"]:
                if item.get("phase") == 1:
                    item["phase"] = 2
                if item["name"] == "Store 4":
                    place = item["at"]
            office = next(item for item in yard["items"] if item["name"] == "Office")
            yard["items"].append(dict(office, id=90, name="Shed", phase=1, at=[place[0] + 4, place[1] + 3]))
        self.changed(shed_first)
        out = self.answered("phases", self.yard, code=1)
        self.assertEqual([phase["name"] for phase in out["phases"]], ["first build", "a shed", "two more bins"])
        hindrances = out["phases"][2]["hindrances"]
        self.assertIn([90], [one["items"] for one in hindrances])
        broken = {one["id"] for one in out["phases"][2]["broken"]}
        for one in hindrances:
            self.assertIn(one["finding"], broken)
        ran = run("phases", self.yard)
        self.assertEqual((ran.code, ran.err), (1, ""))
        self.assertIn('not so without Shed, of "a shed"', ran.out)

    def test_they_are_drawn_side_by_side(self):
        picture = os.path.join(self.folder, "phases.svg")
        self.assertEqual(self.answered("phases", NEW_YARD, "--picture", picture)["picture"], picture)
        with open(picture) as file:
            self.assertIn("<svg", file.read())

    def test_refusals(self):
        self.assertIn("no file", self.refused("phases", os.path.join(self.folder, "none.yard"))[0]["what"])
        self.assertTrue(self.refused("phases", NEW_YARD, "--picture", os.path.join(self.folder, "a.doc")))


if __name__ == "__main__":
    main()
