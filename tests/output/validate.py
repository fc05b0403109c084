# SPDX-License-Identifier: MIT
# Exits with 0 if a JSON document fits a JSON Schema, judged by the jsonschema package.
import json
import sys

import jsonschema

schema = json.load(open(sys.argv[1], encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
document = json.load(open(sys.argv[2], encoding="utf-8"))
faults = list(jsonschema.Draft202012Validator(schema).iter_errors(document))
for fault in faults:
    print(fault.json_path, fault.message[:300])
sys.exit(1 if faults else 0)
