#!/usr/bin/env python3
"""Writes label-codes.csv: label codes computed from the definition of an ISO 7064 pure system (the weighted sum is 1
modulo 29, weights are powers of 2 from the right), independently of the service's own recursion.

Usage: python3 label-code-vectors.py > label-codes.csv
"""
import csv
import random
import sys

ALPHABET = "0123456789ACDFGHJKMNPQRTVWXYZ"
PARTS = {"J": "JAW", "P": "NODE_LEFT", "R": "NODE_RIGHT", "N": "NODES", "X": "OBEX", "T": "TONSIL", "H": "HEAD",
         "F": "FORM", "C": "STUB", "K": "BOX", "A": "EAR", "D": "BLOOD", "G": "LUNG", "Q": "SPLEEN", "M": "SUBMISSION",
         "Z": "INCISOR", **{str(n): f"SPARE_{n}" for n in range(1, 10)}}
OURS = "definition, computed by label-code-vectors.py"


def fits(code):
    return sum(ALPHABET.index(c) * 2 ** i for i, c in enumerate(reversed(code))) % 29 == 1


def whole(payload):
    return payload + next(c for c in ALPHABET if fits(payload + c))


def main():
    rng = random.Random(20261125)
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["desc", "source", "typed", "code", "part", "expectError", "position"])
    codes = []
    for letter, part in PARTS.items():
        stem = rng.choice(ALPHABET[10:]) + "".join(rng.choice(ALPHABET) for _ in range(7))
        codes.append(whole(stem + letter))
        out.writerow([f"a label for {part}", OURS, codes[-1], codes[-1], part, "", ""])
    zero = whole("A0000000J")
    one = whole("K1111111H")
    forgiven = [
        ("small letters", zero.lower(), zero),
        ("printed hyphens", f"{one[:4]}-{one[4:8]}-{one[8:]}", one),
        ("spaces before, after and between", f"  {one[:4]} {one[4:8]} {one[8:]} ", one),
        ("the letter O typed for zero", zero.replace("0", "O"), zero),
        ("a small o typed for zero", zero.replace("0", "o"), zero),
        ("the letter I typed for one", one.replace("1", "I"), one),
        ("a scanner's return and line feed after", one + "\r\n", one),
        ("a scanner's STX and ETX around", "\x02" + one + "\x03", one),
        ("a scanner's tab before", "\t" + one, one),
        ("a symbology identifier for Code 128 (ISO/IEC 15424)", "]C0" + one, one),
        ("a symbology identifier for Data Matrix (ISO/IEC 15424)", "]d1" + one, one),
        ("a dash that a word processor made", f"{one[:4]}\u2013{one[4:8]}\u2013{one[8:]}", one),
        ("a byte order mark before", "\ufeff" + one, one),
    ]
    for desc, typed, code in forgiven:
        out.writerow([desc, OURS, typed, code, PARTS[code[8]], "", ""])
    for i, code in enumerate(codes[:20]):
        at = i % 10
        other = rng.choice([c for c in ALPHABET if c != code[at] and (at > 0 or c > "9")])
        out.writerow([f"character {at + 1} of a right code changed", OURS, code[:at] + other + code[at + 1:], "", "",
                      "CHECK", ""])
    foreign = [("B", "looks like 8"), ("E", "left out: spreadsheets"), ("L", "looks like 1"), ("S", "looks like 5"),
               ("U", "looks like V"), ("*", "a supplementary character of other systems"), ("\u00c4", "an umlaut"),
               ("\u0391", "a Greek capital that looks like A"), ("\u0131", "a dotless i, whose capital is I")]
    for i, (c, why) in enumerate(foreign):
        code = codes[i]
        out.writerow([f"{c}: {why}", OURS, code[:i + 1] + c + code[i + 2:], "", "", "FOREIGN", i + 2])
    out.writerow(["a digit first, check right", OURS, whole("7A00000" + "0J"), "", "", "FIRST", 1])
    for c in "0VWY":
        out.writerow([f"ninth character {c} names no part, check right", OURS, whole("HA00000Z" + c), "", "", "PART", 9])
    out.writerow(["nothing", "common practice, no source", "", "", "", "EMPTY", 0])
    out.writerow(["only hyphens and spaces", "common practice, no source", " - - ", "", "", "EMPTY", 0])
    out.writerow(["one character short", OURS, one[:9], "", "", "LENGTH", 0])
    out.writerow(["one character twice", OURS, one[:3] + one[2:], "", "", "LENGTH", 0])
    out.writerow(["only the kit", OURS, one[:8], "", "", "LENGTH", 0])
    out.writerow(["two labels in one field", OURS, one + zero, "", "", "LENGTH", 0])


main()
