#!/usr/bin/env python3
"""Drives the real window under a virtual display with the pointer and the keys that a person uses: a new yard from
its lot's size, a leg and three bins placed and joined, a bin dragged out of reach and back and the drags undone, saved, opened again, killed, brought back, saved by a link.
What it believes is the saved file. Usage: end_to_end.py EDITOR. Exit 77 (skipped) where a tool is missing."""
import glob
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time

TOOLS = ["Xvfb", "xdotool"]
SIZE = (1400, 900)
NEAR_LEG, FAR = (597, 356), (800, 560)  # within reach of a spout from the leg, and out of it
TRAY = {"bin": (31, 133), "leg": (84, 133), "spout": (31, 280)}


class Display:
    """A virtual display of its own, on the number that the server picks."""

    def __enter__(self):
        reading, writing = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writing), "-noreset", "-screen", "0", "%dx%dx24" % SIZE],
            pass_fds=[writing], stderr=subprocess.DEVNULL)
        os.close(writing)
        with os.fdopen(reading) as number:
            self.name = ":" + number.readline().strip()
        return self

    def __exit__(self, *_):
        self.server.terminate()
        self.server.wait()


class Window:
    """The editor, worked from outside."""

    def __init__(self, editor, display, folder, *arguments):
        self.environment = dict(os.environ, DISPLAY=display.name, XDG_STATE_HOME=folder, YARDWRIGHT_UI_SCALE="1")
        self.process = subprocess.Popen([editor, *arguments], cwd=folder, env=self.environment, stderr=subprocess.DEVNULL)
        self.id = self.wait_for_window()
        self.x("windowmove", self.id, "0", "0")
        self.x("windowfocus", self.id)
        time.sleep(1)

    def x(self, *words):
        done = subprocess.run(["xdotool", *words], env=self.environment, capture_output=True, text=True)
        return done.stdout.strip()

    def wait_for_window(self):
        for _ in range(100):
            found = self.x("search", "--onlyvisible", "--name", "^yardwright$")
            if found:
                return found.splitlines()[0]
            time.sleep(0.2)
        raise SystemExit("the window did not open")

    def move(self, x, y):
        self.x("mousemove", str(x), str(y))
        time.sleep(0.15)

    def click(self, x, y):
        self.move(x, y)
        self.x("mousedown", "1")
        time.sleep(0.1)
        self.x("mouseup", "1")
        time.sleep(0.2)

    def keys(self, *names):
        for name in names:
            self.x("key", name)
            time.sleep(0.2)

    def type(self, text):
        self.x("type", "--delay", "40", text)
        time.sleep(0.2)

    def place(self, kind, x, y):
        self.click(*TRAY[kind])
        self.click(x, y)

    def drag(self, start, end):
        self.move(*start)
        self.x("mousedown", "1")
        for part in (0.3, 0.7, 1):
            self.move(*(round(a + (b - a) * part) for a, b in zip(start, end)))
        self.x("mouseup", "1")
        time.sleep(0.3)

    def end(self):
        self.process.terminate()
        self.process.wait()


def autosave_in(folder):
    return os.path.join(folder, "yardwright", "autosave", "drawn-*.yard")


def spout_slope(editor, path):
    """What the program without a window says of the one spout in the saved file."""
    program = os.path.join(os.path.dirname(editor), "yardwright")
    done = subprocess.run([program, "reach", path, "--json"], capture_output=True, text=True)
    verdicts = [f["verdict"] for f in json.loads(done.stdout)["findings"] if f["rule"] == "reach.slope-dry"]
    assert len(verdicts) == 1 and done.returncode == 1, done  # two bins of three have no spout
    return verdicts[0]


def saved(pattern, wanted=lambda yard: True, wait_s=10):
    """The yard of the file, once it is there and as wanted; saving takes a moment."""
    yard = None
    for _ in range(wait_s * 5):
        for path in glob.glob(pattern):
            with open(path) as file:
                yard = json.load(file)
            if wanted(yard):
                return yard
        time.sleep(0.2)
    raise SystemExit("%s is not as it should be: %s" % (pattern, json.dumps(yard)))


def of_kind(yard, kind):
    return [item for item in yard["items"] if item["kind"] == kind]


def draw_yard(window):
    window.keys("ctrl+n")
    window.keys("ctrl+a")
    window.type("500 ft")
    window.keys("Return")
    window.place("leg", 560, 380)
    for x, y in ((520, 340), NEAR_LEG, (560, 440)):
        window.place("bin", x, y)
    window.click(*TRAY["spout"])
    window.click(560, 380)
    window.click(*NEAR_LEG)
    window.keys("Escape", "Escape", "Escape")


def main(editor):
    with tempfile.TemporaryDirectory() as folder, Display() as display:
        path = os.path.join(folder, "drawn.yard")
        window = Window(editor, display, folder)
        try:
            draw_yard(window)
            window.keys("ctrl+s", "ctrl+a")
            window.type("drawn")
            window.keys("Return")
            drawn = saved(path, lambda yard: len(yard["items"]) == 5)
            assert drawn["lot"]["corners"][1] == [500, 0], drawn["lot"]
            assert len(of_kind(drawn, "bin")) == 3 and len(of_kind(drawn, "leg")) == 1, drawn["items"]
            assert of_kind(drawn, "spout")[0]["from"] == of_kind(drawn, "leg")[0]["id"]

            assert spout_slope(editor, path) == "pass"

            window.drag(NEAR_LEG, FAR)
            window.keys("ctrl+s")
            away = saved(path, lambda yard: yard != drawn)
            assert of_kind(away, "bin")[1]["at"] != of_kind(drawn, "bin")[1]["at"]
            assert spout_slope(editor, path) == "fail"

            window.drag(FAR, (NEAR_LEG[0] + 3, NEAR_LEG[1]))
            window.keys("ctrl+s")
            saved(path, lambda yard: yard not in (away, drawn))
            assert spout_slope(editor, path) == "pass"

            window.keys("ctrl+z", "ctrl+z", "ctrl+s")
            saved(path, lambda yard: yard == drawn)
        finally:
            window.end()

        again = Window(editor, display, folder, path)
        try:
            again.keys("ctrl+a", "Delete", "ctrl+s")
            empty = saved(path, lambda yard: not yard["items"])
            assert empty["lot"] == drawn["lot"]
            again.keys("ctrl+z")
            autosaved = saved(autosave_in(folder), lambda yard: yard["items"] == drawn["items"], wait_s=40)
            assert autosaved["lot"] == drawn["lot"]
        finally:
            again.process.kill()
            again.process.wait()
        assert saved(path) == empty, "what was not saved is not in the file"

        linked = os.path.join(folder, "link.yard")
        os.symlink(path, linked)
        back = Window(editor, display, folder, path)
        try:
            back.keys("ctrl+s")
            saved(path, lambda yard: yard["items"] == drawn["items"])
        finally:
            back.end()
        by_link = Window(editor, display, folder, linked)
        try:
            by_link.keys("ctrl+a", "Delete", "ctrl+s")
            saved(path, lambda yard: not yard["items"])
            assert os.path.islink(linked) and not os.path.islink(path)
        finally:
            by_link.end()
    print("a yard was drawn, dragged out of reach and back, undone, saved, brought back after a kill, and saved by a link")


if __name__ == "__main__":
    if any(shutil.which(tool) is None for tool in TOOLS):
        sys.exit(77)
    main(os.path.abspath(sys.argv[1]))
