"""Chains drafts.json into entries.jsonl without any code of this program: members by code point, no white space, UTF-8, SHA-256."""
import hashlib
import json
import pathlib

here = pathlib.Path(__file__).parent


def canonical(value):
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode("utf-8")


prev = "0" * 64
lines = []
for n, draft in enumerate(json.loads((here / "drafts.json").read_text("utf-8")), start=1):
    entry = {**draft, "format": 1, "desk": "desk-golden", "n": n, "prev": prev, "written": "2026-03-14T17:00:00+13:00"}
    prev = hashlib.sha256(canonical(entry)).hexdigest()
    lines.append(canonical({**entry, "hash": prev}) + b"\n")
(here / "desk-golden.jsonl").write_bytes(b"".join(lines))
