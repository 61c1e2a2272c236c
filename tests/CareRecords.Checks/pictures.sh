#!/usr/bin/env bash
# Renders a workbook with LibreOffice and makes the pictures that docs/workbook.md shows: pictures.sh BOOK FOLDER.
# Fails when a sheet has no page or a picture is empty. Needs LibreOffice and poppler.
set -euo pipefail
book=$1
out=$2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out"
soffice "-env:UserInstallation=file://$work/profile" --headless --convert-to pdf --outdir "$work" "$book" >/dev/null 2>&1
pdf="$work/$(basename "${book%.xlsx}").pdf"

# The foot of each page names its sheet: "Gaps, page 14 of 58".
pages=$(pdfinfo "$pdf" | awk '/^Pages/ {print $2}')
pdftotext "$pdf" - | awk 'BEGIN { RS = "\f" } { if (match($0, /[A-Z][A-Za-z ]*, page [0-9]+ of [0-9]+/)) print substr($0, RSTART, RLENGTH) "|" NR }' |
  sed 's/, page [0-9]* of [0-9]*|/|/' >"$work/sheets"

# picture NAME SHEET NTH DPI: the NTH page of a sheet.
picture() {
  local page
  page=$(grep -E "^$2\|" "$work/sheets" | sed -n "${3}p" | cut -d'|' -f2)
  [ -n "$page" ] || { echo "No page $3 of the sheet '$2'."; exit 1; }
  pdftoppm -r "$4" -f "$page" -l "$page" -singlefile -png "$pdf" "$out/$1"
  [ "$(stat -c %s "$out/$1.png")" -gt 4000 ] || { echo "$1.png is empty."; exit 1; }
}

picture summary Summary 1 85
picture charts-days Charts 1 64
picture charts-saturation Charts 2 64
picture charts-gaps Charts 3 64
picture charts-taper Charts 5 64
picture charts-recovery Charts 6 64
picture days Days 1 64
picture weeks Weeks 1 64
picture gaps Gaps 1 64
picture illness Illness 1 64
picture illness-course "Illness course" 1 64
picture taper Taper 1 64
picture saturation Saturation 1 64
picture lines-to-look-at "Lines to look at" 1 64
picture questions-to-check "Questions to check" 1 64
picture plan Plan 1 64
picture sessions Sessions 1 64
picture what-was-read "What was read" 1 64
picture checks-of-totals "Checks of totals" 1 64
picture how-worked-out "How worked out" 1 64
echo "$(ls "$out" | grep -c '\.png$') pictures of $pages pages in $out."
