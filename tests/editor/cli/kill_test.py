#!/usr/bin/env python3
"""A save that is killed leaves the old yard or the new one, and a link stays a link. usage: kill_test.py YARDWRIGHT"""

import json
import os
import random
import signal
import subprocess
import tempfile
import time

from program import PROGRAM, Case, main, run

SEED, KILLS = 20240611, 120


class Kill(Case):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.yard = os.path.join(folder.name, "my.yard")

    def name(self):
        with open(self.yard) as file:
            return json.load(file)["name"]

    def test_a_killed_save_leaves_a_whole_file(self):
        dice, names = random.Random(SEED), set()
        began = time.time()
        self.answered("new", self.yard, "--name", "0")
        whole_run_s = time.time() - began
        for number in range(1, KILLS):
            saving = subprocess.Popen([PROGRAM, "new", self.yard, "--force", "--name", str(number)], stdout=subprocess.DEVNULL)
            time.sleep(dice.uniform(0, 1.5 * whole_run_s))
            saving.send_signal(signal.SIGKILL)
            saving.wait()
            names.add(self.name() == str(number))
        self.assertEqual(names, {True, False}, "some were killed before they saved, and some after")

    def test_saving_by_a_link_writes_the_file_behind_it(self):
        self.answered("new", self.yard, "--name", "before")
        link = os.path.join(os.path.dirname(self.yard), "link.yard")
        os.symlink("my.yard", link)
        self.assertEqual(run("new", link, "--force", "--name", "after").code, 0)
        self.assertTrue(os.path.islink(link))
        self.assertFalse(os.path.islink(self.yard))
        self.assertEqual(self.name(), "after")


if __name__ == "__main__":
    main()
