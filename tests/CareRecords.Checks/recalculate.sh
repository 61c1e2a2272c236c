#!/usr/bin/env bash
# Opens a workbook in LibreOffice with forced recalculation and compares every formula cell with the value that we stored.
set -euo pipefail
book=$1
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$work/profile/user"
cat >"$work/profile/user/registrymodifications.xcu" <<'XCU'
<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
XCU
soffice "-env:UserInstallation=file://$work/profile" --headless --convert-to 'xlsx:Calc MS Excel 2007 XML' --outdir "$work" "$book" >/dev/null 2>&1
dotnet run --project "$here" -- recalculated "$book" "$work/$(basename "$book")"
