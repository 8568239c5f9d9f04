#!/usr/bin/env python3
"""Writes old-lists.fods: the lists of an invented studio as a spreadsheet keeps them, with errors in
them. LibreOffice makes the CSV files of this folder from it (see README.md)."""
from xml.sax.saxutils import escape

# (value, what it shows) or plain text; numbers and dates are typed cells, as people enter them.
def number(value, shown=None):
    return ("float", value, shown if shown is not None else str(value))


def date(iso, shown):
    return ("date", iso, shown)


EDITIONS = [
    ["Auflagen der Druckwerkstatt Moorwinkel (erfunden)", "", "", "", "", "", "", ""],
    ["Kürzel", "Titel", "Jahr", "Technik", "Format (cm)", "Papier", "Auflage", "Bemerkung"],
    ["REUSE", "Reusen im Nebel", number(1998), "Linolschnitt, 5 Farben", "30 x 20",
     "Kozo, 40 g", number(12), "Platte zerschnitten"],
    ["DEICH", "Deich; nach dem Sturm", "um 2003", "Linolschnitt, verlorene Form", "29,7 × 21",
     "Bütten „weiß“", number(8), "Zwei Zeilen:\nerst hell, dann dunkel"],
    ["KRAN", "Kran am Südufer", "2005?", "Holzschnitt", "40x60", "Kozo, 40 g", number(20),
     "=kein Zettel mehr da"],
    ["MÖWE", "Möwe, sitzend", "Mai 2009", "Linolschnitt", "15 x 15", "-", "zehn", ""],
    ["Summe", "", "", "", "", "", number(50), ""],
]

TINS = [
    ["Nr", "Art", "Farbe", "Pigment", "Gebinde", "Inhalt g", "Preis €", "Gekauft am", "Angebrochen"],
    [number(1), "Farbe", "Lampenschwarz", "PBk6", "Dose", number(500), number(31.5, "31,50"),
     date("2004-03-12", "12.03.2004"), date("2004-04-02", "02.04.2004")],
    [number(2), "Transparentweiß", "Lasurweiß, zäh", "", "Dose", number(1000, "1.000"),
     number(42, "42,00"), date("2004-03-12", "12.03.2004"), "Frühjahr"],
    [number(3), "Farbe", "Kobaltblau, Ton", "PB28; PW6", "Tube", number(62.5, "62,5"),
     number(1234.5, "1.234,50"), date("2006-11-30", "30.11.2006"), ""],
    [number(4), "Trockner", "Trockner, ohne Kobalt", "", "Flasche", number(100),
     number(9.8, "9,80"), "31.11.2006", ""],
    [number(5), "Firnis", "Stand; dick", "", "Glas", "250 ml", number(12, "12,00"),
     date("2007-01-08", "08.01.2007"), ""],
]

SALES = [
    ["Datum", "Vorgang", "Kürzel", "Nr", "An", "Preis", "Bemerkung"],
    [date("1999-02-14", "14.02.1999"), "verkauft", "REUSE", "1", "Almut Ræder", number(120), ""],
    [date("1999-06-01", "01.06.1999"), "in Kommission", "REUSE", "2-4", "Galerie Salzhafen",
     number(360), "bis Herbst"],
    [date("2003-12-24", "24.12.2003"), "Geschenk", "DEICH", "3", "Jón Þórsson", "", ""],
    [date("2004-05-05", "05.05.2004"), "verkauft", "DEICH", "1, 2", "Galerie Salzhafen",
     number(300), "beide gerahmt"],
    [date("2005-10-10", "10.10.2005"), "verkauft", "KRAN", "21", "Almut Ræder", number(150), ""],
    [date("2006-01-20", "20.01.2006"), "getauscht", "KRAN", "4", "Ines", number(0), "gegen Holz"],
]


def cell(value):
    if isinstance(value, tuple):
        kind, data, shown = value
        name = "date-value" if kind == "date" else "value"
        style = "dates" if kind == "date" else "numbers"
        return (f'<table:table-cell table:style-name="{style}" office:value-type="{kind}" '
                f'office:{name}="{data}"><text:p>{escape(shown)}</text:p></table:table-cell>')
    lines = "".join(f"<text:p>{escape(line)}</text:p>" for line in value.split("\n"))
    return ("<table:table-cell/>" if value == "" else
            f'<table:table-cell office:value-type="string">{lines}</table:table-cell>')


def sheet(name, rows):
    body = "".join("<table:table-row>" + "".join(cell(v) for v in row) + "</table:table-row>"
                   for row in rows)
    return f'<table:table table:name="{name}">{body}</table:table>'


NS = " ".join(f'xmlns:{p}="urn:oasis:names:tc:opendocument:xmlns:{u}:1.0"' for p, u in [
    ("office", "office"), ("table", "table"), ("text", "text"), ("style", "style"),
    ("number", "datastyle")])
DATES = ('<number:day number:style="long"/><number:text>.</number:text>'
         '<number:month number:style="long"/><number:text>.</number:text>')
STYLES = f"""<office:styles><style:style style:name="Default" style:family="table-cell"/></office:styles>
<office:automatic-styles>
<number:date-style style:name="d4" number:language="de" number:country="DE">{DATES}<number:year number:style="long"/></number:date-style>
<style:style style:name="dates" style:family="table-cell" style:parent-style-name="Default" style:data-style-name="d4"/>
<number:number-style style:name="n" number:language="de" number:country="DE"><number:number number:min-integer-digits="1"/></number:number-style>
<style:style style:name="numbers" style:family="table-cell" style:parent-style-name="Default" style:data-style-name="n"/>
</office:automatic-styles>"""

with open("old-lists.fods", "w", encoding="utf-8") as out:
    out.write('<?xml version="1.0" encoding="UTF-8"?>\n'
              f'<office:document {NS} office:version="1.3" '
              'office:mimetype="application/vnd.oasis.opendocument.spreadsheet">\n'
              f"{STYLES}\n<office:body><office:spreadsheet>\n"
              + "\n".join(sheet(n, r) for n, r in
                          [("editions", EDITIONS), ("tins", TINS), ("sales", SALES)])
              + "\n</office:spreadsheet></office:body></office:document>\n")
