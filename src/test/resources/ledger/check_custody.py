#!/usr/bin/env python3
"""Checks a custody export as docs/custody-verification.md says, and by nothing else: Python's standard library and the
openssl command. Usage: check_custody.py FILE [PROOF] [PUBLIC.pem]   Exit: 0 as recorded, 1 a difference."""
import base64
import hashlib
import json
import pathlib
import subprocess
import sys
import tempfile

ZEROS = "0" * 64
differences = []


def sha256(*parts):
    return hashlib.sha256(b"".join(parts)).digest()


def text_hash(text):
    return sha256(text.encode("utf-8")).hex()


def compare(where, what, expected, found):
    if expected != found:
        differences.append(f"{where}: {what}: expected {expected}, found {found}")


def leaf(event_hash):
    return sha256(b"\0", bytes.fromhex(event_hash))


def node(left, right):
    return sha256(b"\1", left, right)


def root(hashes):
    if not hashes:
        return sha256()
    if len(hashes) == 1:
        return hashes[0]
    split = 1
    while split * 2 < len(hashes):
        split *= 2
    return node(root(hashes[:split]), root(hashes[split:]))


def signed(text, key, signature):
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        (folder / "public.pem").write_text(f"-----BEGIN PUBLIC KEY-----\n{key}\n-----END PUBLIC KEY-----\n")
        (folder / "text").write_bytes(text.encode("utf-8"))
        (folder / "sig").write_bytes(base64.b64decode(signature))
        done = subprocess.run(
            ["openssl", "pkeyutl", "-verify", "-pubin", "-inkey", folder / "public.pem", "-rawin",
             "-in", folder / "text", "-sigfile", folder / "sig"], capture_output=True, check=False)
        return done.returncode == 0


def check_file(lines, key):
    chains, waiting, texts = {}, [], {}
    number, before = 0, None
    for at, line in enumerate(lines, start=1):
        record = json.loads(line)
        if "event" in record:
            compare(f"line {at}", "names", {"event", "hash"}, set(record))
            event = json.loads(record["event"])
            position, hashed = chains.get(event["chain"], (0, ZEROS))
            where = f"line {at}, event {event['id']} at position {event['sequence']} of chain {event['chain']}"
            compare(where, "hash", record["hash"], text_hash(record["event"]))
            compare(where, "position", position + 1, event["sequence"])
            compare(where, "predecessor", hashed, event["predecessor"])
            chains[event["chain"]] = (event["sequence"], record["hash"])
            waiting.append(record["hash"])
            texts[event["id"]] = record["event"]
        else:
            compare(f"line {at}", "names", {"checkpoint", "leaves", "signature"}, set(record))
            text = record["checkpoint"]
            checkpoint = json.loads(text)
            where = f"line {at}, checkpoint {checkpoint['number']}"
            key = key or checkpoint["key"]
            compare(where, "number", number + 1, checkpoint["number"])
            compare(where, "previous", text_hash(before) if before else ZEROS, checkpoint["previous"])
            compare(where, "tree size", checkpoint["treeSize"], len(record["leaves"]))
            compare(where, "root", checkpoint["root"], root([leaf(one) for one in record["leaves"]]).hex())
            compare(where, "key", key, checkpoint["key"])
            compare(where, "signature holds", True, signed(text, key, record["signature"]))
            compare(where, "leaves", record["leaves"], waiting)
            waiting, number, before = [], checkpoint["number"], text
            texts[number] = text
    compare("end of file", "events under no checkpoint", 0, len(waiting))
    compare("end of file", "a checkpoint", True, before is not None)
    return texts, key


def check_proof(proof, texts, key):
    checkpoint, event = json.loads(proof["checkpoint"]), json.loads(proof["event"])
    compare("proof", "key", key, checkpoint["key"])
    compare("proof", "signature holds", True, signed(proof["checkpoint"], key, proof["signature"]))
    h, i, n = leaf(text_hash(proof["event"])), proof["index"], checkpoint["treeSize"] - 1
    compare("proof", "index within the tree", True, 0 <= i <= n)
    for one in proof["path"]:
        p = bytes.fromhex(one)
        if n == 0:
            compare("proof", "path", "shorter", proof["path"])
            break
        if i % 2 == 1 or i == n:
            h = node(p, h)
            while i % 2 == 0 and i != 0:
                i, n = i // 2, n // 2
        else:
            h = node(h, p)
        i, n = i // 2, n // 2
    compare("proof", "end of path", 0, n)
    compare("proof", "root", checkpoint["root"], h.hex())
    compare("proof", "its checkpoint in the file", proof["checkpoint"], texts.get(checkpoint["number"]))
    compare("proof", "its event in the file", proof["event"], texts.get(event["id"]))


def main(arguments):
    key = None
    if arguments[-1].endswith(".pem"):
        key = "".join(pathlib.Path(arguments.pop()).read_text().split("-----")[2].split())
    try:
        texts, key = check_file(pathlib.Path(arguments[0]).read_text("utf-8").splitlines(), key)
        if len(arguments) > 1:
            check_proof(json.loads(pathlib.Path(arguments[1]).read_text("utf-8")), texts, key)
    except (ValueError, KeyError, TypeError) as unreadable:
        differences.append(f"not readable: {unreadable!r}")
    for difference in differences:
        print("DIFFERENCE", difference)
    return 1 if differences else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
