#!/usr/bin/env python3
"""`yardwright propose`: layouts from a brief, written as versions of the yard. usage: propose_test.py YARDWRIGHT"""

import json
import os
import shutil
import signal
import subprocess
import tempfile
import time

from program import NEW_YARD, PROGRAM, Case, main, run

BINS = ["--bin", "36ft x 24ft", "--bin", "48ft x 29ft"]
WANTED = ["--wanted", "60000bu", *BINS, "--leg", "140ft", "--tries", "64"]


class Propose(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = folder.name
        self.yard = os.path.join(self.folder, "new-yard.yard")
        for end in ("new-yard.yard", "new-yard-ground.tif"):
            shutil.copy(os.path.join(os.path.dirname(NEW_YARD), end), self.folder)

    def written(self):
        return sorted(name for name in os.listdir(self.folder) if "-proposal-" in name)

    def test_each_proposal_opens_as_a_version_that_breaks_nothing(self):
        before = {finding["id"]: finding["verdict"] for finding in self.answered("check", self.yard)["findings"]}
        told = self.answered("propose", self.yard, *WANTED, "-o", self.folder)
        self.assertGreater(len(told["proposals"]), 1)
        self.assertEqual([os.path.basename(one["file"]) for one in told["proposals"]], self.written())
        for one in told["proposals"]:
            self.assertTrue(one["meets"])
            for finding in self.answered("check", one["file"])["findings"]:
                if finding["question"] == "grow":
                    continue
                was = before.get(finding["id"], "pass")
                if was == "pass":
                    self.assertIn(finding["verdict"], ("pass", "not-checked"), (one["name"], finding["id"]))
        two = [one["file"] for one in told["proposals"][:2]]
        options = self.answered("compare", self.yard, *two)["options"]
        for one, option in zip(told["proposals"], options[1:]):
            more = option["capacity"][0]["dry_m3"] - options[0]["capacity"][0]["dry_m3"]
            self.assertAlmostEqual(more, one["stored_m3"], places=6)
            added = [each for each in option["differences"] if each["how"] == "added"]
            self.assertGreaterEqual(len(added), 2 * len(one["bins"]))

    def test_the_yard_itself_is_not_touched_and_nothing_is_written_unasked(self):
        with open(self.yard, "rb") as file:
            before = file.read()
        self.answered("propose", self.yard, *WANTED)
        self.assertEqual(self.written(), [])
        self.answered("propose", self.yard, *WANTED, "-o", self.folder)
        with open(self.yard, "rb") as file:
            self.assertEqual(file.read(), before)

    def test_the_same_seed_proposes_the_same(self):
        once = self.answered("propose", self.yard, *WANTED, "--seed", "3")
        self.assertEqual(once, self.answered("propose", self.yard, *WANTED, "--seed", "3"))
        self.assertNotEqual(once["proposals"], self.answered("propose", self.yard, *WANTED, "--seed", "4")["proposals"])

    def test_a_brief_from_a_file_is_the_same_as_by_options(self):
        brief = os.path.join(self.folder, "more.brief")
        with open(brief, "w") as file:
            json.dump({"brief": 1, "wanted": "60000 bu", "bins": ["36 ft x 24 ft", "48 ft x 29 ft"], "leg-heights": ["140 ft"]}, file)
        by_file = self.answered("propose", self.yard, "--brief", brief, "--tries", "64")
        self.assertEqual(by_file, self.answered("propose", self.yard, *WANTED))
        # An option takes the place of what the file has.
        less = self.answered("propose", self.yard, "--brief", brief, "--tries", "64", "--budget", "170000")
        for one in less["proposals"]:
            self.assertLessEqual(one["cost"], 170000)
            self.assertFalse(one["meets"])

    def test_control_c_gives_what_was_found_so_far(self):
        words = [PROGRAM, "propose", self.yard, *WANTED[:-2], "--tries", "1000000", "--json"]
        with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as running:
            time.sleep(4)
            running.send_signal(signal.SIGINT)
            out, err = running.communicate(timeout=30)
        told = json.loads(out)
        self.assertEqual(running.returncode, 0 if told["proposals"] else 1, err)
        self.assertLess(told["search"]["tried"], 1000000)

    def test_seconds_end_the_search(self):
        begun = time.monotonic()
        told = self.answered("propose", self.yard, *WANTED[:-2], "--tries", "1000000", "--seconds", "2")
        self.assertLess(time.monotonic() - begun, 30)
        self.assertLess(told["search"]["tried"], 1000000)

    def test_nothing_to_propose_is_a_sentence(self):
        told = self.answered("propose", self.yard, "--wanted", "60000bu", *BINS, "--budget", "900", code=1)
        self.assertEqual(told["proposals"], [])
        self.assertIn("pays for no bin", told["why_none"])
        plain = run("propose", self.yard, "--wanted", "60000bu", *BINS, "--budget", "900")
        self.assertEqual((plain.code, plain.err), (1, ""))
        self.assertIn("no proposal: " + told["why_none"], plain.out)

    def test_people_read_the_same(self):
        told, plain = self.answered("propose", self.yard, *WANTED), run("propose", self.yard, *WANTED)
        self.assertEqual((plain.code, plain.err), (0, ""))
        for one in told["proposals"]:
            self.assertIn(one["name"] + ": ", plain.out)
            self.assertIn("{:,.0f} USD".format(one["cost"]), plain.out)
        self.assertIn("invented prices", plain.out)
        self.assertIn("not checked: Emptying the bins back to a leg", plain.out)
        self.assertIn("Local code, the utility and licensed practice decide", plain.out)

    def test_refusals(self):
        def first(*words):
            return self.refused("propose", self.yard, *words)[0]

        self.assertIn("no more storage is wanted", first(*BINS)["what"])
        self.assertIn("no size of bin", first("--wanted", "5000bu")["what"])
        self.assertEqual(first("--wanted", "5000bu", "--bin", "36ft")["where"], "--bin")
        self.assertEqual(first("--wanted", "far", *BINS)["where"], "--wanted")
        self.assertEqual(first("--wanted", "5000bu", *BINS, "--leg", "1ft")["where"], "--leg")
        self.assertIn("no leg is as low", first("--wanted", "5000bu", *BINS, "--leg", "20ft")["what"])
        self.assertIn("is no folder", first(*WANTED, "-o", os.path.join(self.folder, "nowhere"))["what"])
        self.answered("propose", self.yard, *WANTED, "-o", self.folder)
        self.assertIn("is there already", first(*WANTED, "-o", self.folder)["what"])
        self.answered("propose", self.yard, *WANTED, "-o", self.folder, "--force")


if __name__ == "__main__":
    main()
