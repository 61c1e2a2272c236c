"""The yardstick for a review: canonical tables in, gaps and weekly shares, a workbook with the data sheets and three charts out.

What a person who knows pandas and openpyxl would write for the job, with no uncertainty, no questions, no formulas and no drawn charts.
"""
import os
import sys

import pandas as pd
from openpyxl import Workbook
from openpyxl.chart import BarChart, LineChart, Reference, ScatterChart, Series
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter

TIMES = {"sessions": ["started", "ended"], "feeds": ["started", "ended"], "medicines": ["given"], "checks": ["checked"], "signs": ["noticed"]}
AREAS = ["left lower", "left upper", "left vibration", "right lower", "right upper", "right vibration"]


def tables(folder):
    for name, times in TIMES.items():
        path = os.path.join(folder, name + ".csv")
        if os.path.exists(path):
            table = pd.read_csv(path)
            for column in times:
                table[column] = pd.to_datetime(table[column], errors="coerce")
            yield name, table.sort_values(times[0]).reset_index(drop=True)


def with_zone(times):
    return times.dt.tz_localize("Europe/London", ambiguous="NaT", nonexistent="NaT").dt.tz_convert("UTC")


def gaps(sessions, feeds, medicines):
    """Minutes from the last feed's end, and from the last inhaler, to each session, as elapsed time."""
    sessions = sessions.assign(at=with_zone(sessions["started"]), minutes=sessions[AREAS].sum(axis=1))
    known = sessions.dropna(subset=["at"]).sort_values("at")
    fed = pd.DataFrame({"fed": with_zone(feeds["ended"])}).dropna().sort_values("fed")
    dosed = pd.DataFrame({"dosed": with_zone(medicines["given"])}).dropna().sort_values("dosed")
    known = pd.merge_asof(known, fed, left_on="at", right_on="fed")
    known = pd.merge_asof(known, dosed, left_on="at", right_on="dosed")
    known["feed gap"] = (known["at"] - known["fed"]).dt.total_seconds() / 60
    known["inhaler gap"] = (known["at"] - known["dosed"]).dt.total_seconds() / 60
    known["feed kept"] = known["feed gap"] >= 30
    known["inhaler kept"] = known["inhaler gap"].between(15, 60)
    return known.drop(columns=["at", "fed", "dosed"])


def weekly(gaps, checks):
    week = gaps["started"].dt.to_period("W").dt.start_time
    by_week = gaps.groupby(week).agg(sessions=("started", "size"), minutes=("minutes", "sum"), feed=("feed kept", "mean"), inhaler=("inhaler kept", "mean"))
    by_week["spo2"] = checks.groupby(checks["checked"].dt.to_period("W").dt.start_time)["spo2"].median()
    return by_week.rename_axis("week").reset_index()


def write(book, name, table):
    sheet = book.create_sheet(name)
    sheet.append(list(table.columns))
    for cell in sheet[1]:
        cell.font = Font(bold=True)
    for row in table.astype(object).where(table.notna(), None).itertuples(index=False):
        sheet.append([value.to_pydatetime() if isinstance(value, pd.Timestamp) else value for value in row])
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions
    for n, column in enumerate(table.columns, 1):
        sheet.column_dimensions[get_column_letter(n)].width = 17 if str(table[column].dtype).startswith("datetime") else 12
    return sheet


def charts(book, weeks, checks, saturations):
    sheet = book.create_sheet("charts")
    last = weeks.max_row
    shares = LineChart()
    shares.title = "Share of sessions with the gap kept, by week"
    shares.add_data(Reference(weeks, min_col=4, max_col=5, min_row=1, max_row=last), titles_from_data=True)
    shares.set_categories(Reference(weeks, min_col=1, min_row=2, max_row=last))
    sheet.add_chart(shares, "A1")
    minutes = BarChart()
    minutes.title = "Minutes of clearance, by week"
    minutes.add_data(Reference(weeks, min_col=3, min_row=1, max_row=last), titles_from_data=True)
    minutes.set_categories(Reference(weeks, min_col=1, min_row=2, max_row=last))
    sheet.add_chart(minutes, "A20")
    readings = ScatterChart()
    readings.title = "Saturation"
    readings.series.append(Series(Reference(saturations, min_col=checks.columns.get_loc("spo2") + 1, min_row=2, max_row=saturations.max_row),
                                  Reference(saturations, min_col=1, min_row=2, max_row=saturations.max_row), title="SpO2, %"))
    sheet.add_chart(readings, "A40")


def main(folder, out):
    read = dict(tables(folder))
    found = gaps(read["sessions"], read["feeds"], read["medicines"])
    book = Workbook()
    book.remove(book.active)
    weeks = write(book, "weeks", weekly(found, read["checks"]))
    write(book, "gaps", found)
    sheets = {name: write(book, name, table) for name, table in read.items()}
    charts(book, weeks, read["checks"], sheets["checks"])
    book.save(out)


main(*sys.argv[1:])
