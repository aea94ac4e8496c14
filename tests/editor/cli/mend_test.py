#!/usr/bin/env python3
"""`yardwright mend`: the least changes of the demo yards, told and done. usage: mend_test.py YARDWRIGHT"""

import json
import os
import shutil
import tempfile

from program import NEW_YARD, OLD_YARD, Case, main, run

WANTING = ("fail", "caution")


def verdicts(out):
    return {finding["id"]: finding["verdict"] for finding in out["findings"]}


class Mend(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.yard = os.path.join(folder.name, "my.yard")
        for end in ("old-yard.yard", "old-yard-ground.tif"):
            shutil.copy(os.path.join(os.path.dirname(OLD_YARD), end), folder.name)
        os.rename(os.path.join(folder.name, "old-yard.yard"), self.yard)

    def bytes(self):
        with open(self.yard, "rb") as file:
            return file.read()

    @classmethod
    def setUpClass(cls):
        cls.told = json.loads(run("mend", OLD_YARD, "--json").out)

    def test_every_finding_that_fails_or_wants_caution_is_told(self):
        found = self.answered("check", OLD_YARD, code=1)["findings"]
        told = self.told
        self.assertEqual([one["finding"] for one in told["changes"]], [f["id"] for f in found if f["verdict"] in WANTING and f["question"] != "grow"])
        self.assertFalse(told["applied"])
        for one in told["changes"]:
            if one["least"]:
                self.assertTrue(one["least"]["proven"])
                self.assertEqual(one["least"]["breaks"], [])
            for harmful in one["harmful"]:
                self.assertFalse(harmful["proven"])
                self.assertGreater(len(harmful["breaks"]), 0)

    def test_people_read_the_same(self):
        plain, told = run("mend", OLD_YARD), self.told
        self.assertEqual(plain.err, "")
        for one in told["changes"]:
            self.assertIn("[%s]" % one["finding"], plain.out)
            if one["least"]:
                self.assertIn("least     %s; proven" % one["least"]["words"], plain.out)

    def test_what_is_done_mends_the_finding_and_breaks_nothing(self):
        one = next(one for one in self.told["changes"] if one["verdict"] == "fail" and one["least"])
        before = verdicts(self.answered("check", self.yard, code=1))
        out = self.answered("mend", self.yard, "--finding", one["finding"], "--apply")
        self.assertTrue(out["applied"])
        self.assertEqual(out["changes"], [one])
        checked = run("check", self.yard, "--json")
        after = verdicts(json.loads(checked.out))
        self.assertEqual(after.get(one["finding"], "pass"), "pass")
        for name, verdict in before.items():
            if verdict == "pass":
                self.assertEqual(after.get(name, "pass"), "pass", name)
        self.assertEqual([name for name in after if name not in before and after[name] == "fail"], [])

    def test_without_apply_the_file_stays(self):
        before = self.bytes()
        self.answered("mend", self.yard, "--finding", self.told["changes"][0]["finding"])
        self.assertEqual(self.bytes(), before)

    def test_a_yard_in_order_has_nothing_to_mend(self):
        self.assertEqual(self.answered("mend", NEW_YARD)["changes"], [])
        self.assertIn("nothing fails and nothing wants caution", run("mend", NEW_YARD).out)

    def test_a_finding_that_is_not_there_is_refused(self):
        before = self.bytes()
        problem = self.refused("mend", self.yard, "--finding", "reach.slope-dry:999", "--apply")[0]
        self.assertEqual(problem["where"], "--finding")
        self.assertIn("there is no finding", problem["what"])
        self.assertIn("not mended", self.refused("mend", self.yard, "--finding", "grow.room")[0]["what"])
        passing = next(f["id"] for f in self.answered("check", self.yard, code=1)["findings"] if f["verdict"] == "pass")
        self.assertIn("neither fails", self.refused("mend", self.yard, "--finding", passing)[0]["what"])
        self.assertEqual(self.bytes(), before)

    def test_to_apply_a_finding_must_be_named(self):
        self.refused("mend", self.yard, "--apply")

    def test_what_is_new_to_a_phase_takes_no_number_of_a_later_one(self):
        """A bin of today is put on a new pad, in a file whose last things are built later."""
        text = self.bytes().decode().replace('"Yard gravel", "phase": 0', '"Yard gravel", "phase": 1')
        with open(self.yard, "w") as file:
            file.write(text)
        before = [item["id"] for item in json.loads(text)["items"]]
        self.assertEqual(json.loads(text)["items"][-1]["phase"], 1)
        self.assertTrue(self.answered("mend", self.yard, "--phase", "0", "--finding", "drain.slope-away-flat:4", "--apply")["applied"])
        with open(self.yard) as file:
            after = [item["id"] for item in json.load(file)["items"]]
        self.assertEqual(after, before + [max(before) + 1])


if __name__ == "__main__":
    main()
