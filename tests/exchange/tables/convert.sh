#!/usr/bin/env bash
# Makes the CSV files beside this script from old-lists.fods with LibreOffice 7.4 (Debian 12:
# libreoffice-calc-nogui). The numbers of the filter: separator, text mark, character set (76 UTF-8,
# 65535 UTF-16, 1 Windows-1252), first line, column formats, language (0x0407 German),
# quote all text, store as shown, and which sheet (-1: all).
set -euo pipefail
cd "$(dirname "$0")"
python3 make-old-lists.py
folder=$(mktemp -d)
convert() {  # name, tokens
    LC_ALL=C soffice --headless -env:UserInstallation=file://$folder/profile --convert-to \
        "csv:Text - txt - csv (StarCalc):$2" --outdir "$folder/$1" old-lists.fods >/dev/null
    for sheet in editions tins sales; do
        mv "$folder/$1/old-lists-$sheet.csv" "$sheet-$1.csv"
    done
}
convert semicolons-windows-1252 59,34,1,1,,1031,false,true,false,false,false,-1
convert commas-utf-8 44,34,76,1,,1031,true,true,false,false,false,-1
convert tabs-utf-16 9,34,65535,1,,1031,false,true,false,false,false,-1
rm -rf "$folder"
