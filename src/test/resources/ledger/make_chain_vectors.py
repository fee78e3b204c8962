#!/usr/bin/env python3
"""Writes chain.json: five events of one chain, hashed by Python's hashlib and json, not by the service.

Every name in an event is ASCII, so sorting by code point is sorting by UTF-16 unit as RFC 8785 asks.
The second half lists what is done to the chain and what must be said about it.
"""
import hashlib
import json
import pathlib
import uuid

KINDS = ["COLLECTED", "STORED", "HANDOVER_OFFERED", "HANDOVER_ACCEPTED", "RECEIVED"]
HASHED_HERE = "Python 3.11 hashlib and json, by make_chain_vectors.py"
DEFINED_HERE = "docs/custody-verification.md"


def canonical(content):
    return json.dumps(content, sort_keys=True, separators=(",", ":"), ensure_ascii=False)


def events():
    before = "0" * 64
    for position, kind in enumerate(KINDS, start=1):
        content = {
            "id": str(uuid.uuid5(uuid.NAMESPACE_URL, f"event {position}")),
            "chain": "K7MQ2RTVJ4",
            "sequence": position,
            "predecessor": before,
            "kind": kind,
            "occurredAt": f"2026-11-14T15:0{position}:00.000000Z",
            "enteredAt": f"2026-11-14T15:0{position}:30.500000Z",
            "receivedAt": f"2026-11-14T21:0{position}:00.123456Z",
            "zone": "America/Chicago",
            "actor": "person-7",
        }
        if kind.startswith("HANDOVER"):
            content["counterparty"] = "person-9"
            content["handOver"] = "5b1c2f64-4c4e-4a52-9d53-0c1df1d2ad01"
        if kind == "STORED":
            content["place"] = "store-é-3"
            content["fields"] = {"temperatureCelsius": "-18.50", "count": 2, "late": False}
        text = canonical(content)
        before = hashlib.sha256(text.encode()).hexdigest()
        yield {"desc": f"{kind} at position {position}", "source": HASHED_HERE, "content": content, "bytes": text,
               "hash": before, "expectError": None}


def spoilt():
    def case(desc, do, position, error, at):
        return {"desc": desc, "source": DEFINED_HERE, "do": do, "position": position, "expectError": error,
                "expectPosition": at}

    yield case("one bit of the first event's bytes", "FLIP_BIT", 1, "hash", 1)
    yield case("one bit of a middle event's bytes", "FLIP_BIT", 3, "hash", 3)
    yield case("one bit of the last event's bytes", "FLIP_BIT", 5, "hash", 5)
    yield case("one bit, and the hash made to fit", "FLIP_BIT_AND_REHASH", 3, "predecessor", 4)
    yield case("one hexadecimal digit of a stored hash", "SPOIL_HASH", 2, "hash", 2)
    yield case("index + 1 in bytes and column, hash made to fit", "SEQUENCE_PLUS_ONE", 4, "sequence", 4)
    yield case("index + 1 in the column alone", "COLUMN_SEQUENCE_PLUS_ONE", 4, "sequence", 4)
    yield case("another kind in the column alone", "COLUMN_KIND", 2, "kind beside its bytes", 2)
    yield case("first event dropped", "DROP", 1, "sequence", 1)
    yield case("middle event dropped", "DROP", 3, "sequence", 3)
    yield case("two neighbours swapped", "SWAP_WITH_NEXT", 2, "sequence", 2)
    yield case("last event cut off, seen against the noted head", "TRUNCATE", 4, "events up to position", 4)
    yield case("all events cut off, seen against the noted head", "TRUNCATE", 0, "events up to position", 0)
    yield case("an event repeated", "REPEAT", 2, "sequence", 3)
    yield case("an event of another chain put in", "FOREIGN_CHAIN", 3, "chain", 3)
    yield case("bytes that are no JSON", "NO_JSON", 5, "bytes", 5)


if __name__ == "__main__":
    target = pathlib.Path(__file__).with_name("chain.json")
    vectors = {"events": list(events()), "spoilt": list(spoilt())}
    target.write_text(json.dumps(vectors, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
