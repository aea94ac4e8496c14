#!/usr/bin/env python3
"""The schema is a valid one, it accepts the example yards and what the program saves, and it refuses bad files.

usage: schema_validates.py SOURCE_FOLDER PROGRAM
Fails where python3-jsonschema is missing: a check that cannot run must not pass.
"""
import copy
import json
import pathlib
import subprocess
import sys
import tempfile

import jsonschema


def validator_of(source):
    schema = json.loads((source / "docs/yard.schema.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def example_yards(source):
    return [path for folder in ("assets", "tests", "docs") for path in sorted((source / folder).rglob("*.yard"))]


def new_yards(program, folder):
    for units in ("us", "metric"):
        path = pathlib.Path(folder) / f"{units}.yard"
        subprocess.run([program, "new", path, "--units", units, "--length", "123.4567ft"], check=True)
        yield path


def bad_yards(good):
    """Copies of a good yard with one thing wrong each."""
    def changed(change):
        yard = copy.deepcopy(good)
        change(yard)
        return yard

    yield "newer version", changed(lambda yard: yard.update(yardwright=2))
    yield "unknown member", changed(lambda yard: yard.update(colour="red"))
    yield "unknown kind", changed(lambda yard: yard["items"][0].update(kind="silo"))
    yield "unknown field", changed(lambda yard: yard["items"][0].update(diametre=36))
    yield "wrong sort", changed(lambda yard: yard["items"][0].update(at="here"))
    yield "no place", changed(lambda yard: yard["items"][0].pop("at"))
    yield "id zero", changed(lambda yard: yard["items"][0].update(id=0))
    yield "unknown choice", changed(lambda yard: yard["storm"].update(type="IV"))


def main(source, program):
    validator = validator_of(source)
    failures = []
    with tempfile.TemporaryDirectory() as folder:
        for path in [*example_yards(source), *new_yards(program, folder)]:
            errors = [error.message for error in validator.iter_errors(json.loads(path.read_text()))]
            failures += [f"{path.name}: {message}" for message in errors]
            print(f"{path.name}: {'refused' if errors else 'valid'}")
    for what, yard in bad_yards(json.loads((source / "tests/geom/io/every_kind.yard").read_text())):
        if validator.is_valid(yard):
            failures.append(f"a yard with {what} was accepted")
    print("\n".join(failures))
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(pathlib.Path(sys.argv[1]), sys.argv[2]))
