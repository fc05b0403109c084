#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Validates what the program writes as JSON against the schemas in docs/, with python3-jsonschema.

Every log of the demonstration data is reduced, fixed, summed up and
listed, alone and all together, under
several options, and declinations are asked for at strong and weak fields, early and late. The
schemas must also refuse documents that are wrong, or they would prove nothing.

usage: validate_json.py LODEBOOK REPOSITORY
"""

import copy
import json
import pathlib
import subprocess
import sys

import jsonschema


def schema_validator(path):
    schema = json.loads(path.read_text(encoding="utf-8"))
    validator = jsonschema.Draft202012Validator
    validator.check_schema(schema)
    if schema.get("$schema") != "https://json-schema.org/draft/2020-12/schema":
        sys.exit(f"{path}: not a schema of draft 2020-12")
    return validator(schema)


def refuse_constant(word):
    raise ValueError(f"{word} is not JSON")


def document(program, arguments, folder):
    done = subprocess.run([program, *arguments], cwd=folder, capture_output=True, timeout=60,
                          stdin=subprocess.DEVNULL)
    if done.returncode not in (0, 1):
        sys.exit(f"{arguments}: status {done.returncode}\n{done.stderr.decode()}")
    return json.loads(done.stdout.decode("utf-8"), parse_constant=refuse_constant)


def spoiled(instance):
    """Copies of a document, each with one thing wrong at its top: an unknown or a missing key."""
    extra = copy.deepcopy(instance)
    extra["surprise"] = 1
    yield extra
    for key in instance:
        missing = copy.deepcopy(instance)
        del missing[key]
        yield missing


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    program, repository = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2])
    logs = sorted(str(log.relative_to(repository)) for log in (repository / "data").glob("*.log"))
    if not logs:
        sys.exit("no logs to validate with")
    batches = [[log] for log in logs] + [logs]
    report_options = [[], ["--declination", "28.5W"], ["--declination", "model"]]
    options = report_options + [
        ["--north", "magnetic"], ["--repeats", "mean"], ["--grid"],
        ["--declination", "model", "--north", "grid", "--grid"]]
    kinds = [
        ("reduction.schema.json", ["reduce", "--quiet", "--format", "json"], options, batches),
        ("report.schema.json", ["check", "--report-format", "json"], report_options,
         batches),
        ("fix.schema.json", ["fix", "--format", "json"], report_options, batches),
        ("summary.schema.json", ["summary", "--quiet", "--format", "json"],
         [[*one, *by] for one in report_options + [["--north", "magnetic"], ["--repeats", "mean"],
                                                   ["--without-suspect"]]
          for by in ([], ["--by", "unit"], ["--by", "unit,station"])], batches),
        ("register.schema.json", ["register", "--quiet", "--format", "json"], report_options, batches),
        ("declination.schema.json", ["declination", "--format", "json"],
         [[], ["1978-07-19"], ["1900"], ["2029.99"], ["2015.0", "--elevation", "-430"]],
         [["44.65S 169.03E"], ["78N 96W"], ["82N 120W"], ["90S 0E"], ["59G 345210 5052310"]]),
    ]
    count = failures = 0
    for name, command, variants, batches in kinds:
        validator = schema_validator(repository / "docs" / name)
        for batch in batches:
            for variant in variants:
                instance = document(program, [*command, *batch, *variant], repository)
                count += 1
                for error in validator.iter_errors(instance):
                    failures += 1
                    where = "/".join(str(step) for step in error.absolute_path)
                    print(f"{batch} {variant}: {where}: {error.message[:200]}")
        for wrong in spoiled(instance):
            if validator.is_valid(wrong):
                failures += 1
                print(f"{name} accepts a document with the keys {sorted(wrong)}")
    print(f"{count} documents validated, {failures} faults")
    sys.exit(failures != 0)


if __name__ == "__main__":
    main()
