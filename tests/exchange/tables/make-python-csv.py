#!/usr/bin/env python3
"""Writes python-DIALECT-ENCODING.csv with the csv module and the codecs of Python, all of the same rows;
TableFileTest.cpp holds the rows."""
import csv

ROWS = [
    ["Code", "Titel", "Preis"],
    ["A", "plain", "12,50"],
    ["B", "with;semicolon, comma\tand tab", "-3"],
    ["C", 'say "hi"', ""],
    ["D", "two\nlines", " sp "],
    ["Ü", "Größe é", "1"],
]

DIALECTS = {
    "excel": dict(dialect="excel"),
    "tabs": dict(dialect="excel-tab"),
    "unix": dict(dialect="unix"),
    "semicolons": dict(delimiter=";", quoting=csv.QUOTE_MINIMAL),
    "all-quoted": dict(delimiter=";", quoting=csv.QUOTE_ALL, lineterminator="\n"),
}
ENCODINGS = ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252", "iso-8859-15",
             "mac-roman", "cp850"]

for number, encoding in enumerate(ENCODINGS):
    name, form = list(DIALECTS.items())[number % len(DIALECTS)]
    with open(f"python-{name}-{encoding}.csv", "w", newline="", encoding=encoding) as out:
        csv.writer(out, **form).writerows(ROWS)
