#!/usr/bin/env python3
"""Writes demo-data/family-month: 31 invented days of an invented family, as canonical tables.

The story is fixed below by hand (plan, illness, steps, setback, odd days); ordinary times and readings around it come from
a fixed seed. Run from anywhere: python3 demo-data/scripts/make-family-month.py
"""
import csv
import datetime as dt
import pathlib
import random

OUT = pathlib.Path(__file__).resolve().parent.parent / "family-month"
rnd = random.Random(20260309)
FIRST = dt.date(2026, 3, 9)
DAYS = [FIRST + dt.timedelta(days=n) for n in range(31)]  # 9 March to 8 April 2026, Europe/London


def d(month, day):
    return dt.date(2026, month, day)


NOT_WRITTEN = {d(3, 13), d(4, 5)}

# What was done: sessions a day and minutes per area, by the day from which it held.
DONE = [(d(3, 9), 2, 2.5), (d(3, 16), 3, 3), (d(3, 17), 4, 3), (d(3, 18), 5, 3), (d(3, 21), 4, 3), (d(3, 23), 3, 3),
        (d(3, 25), 2, 2.5), (d(3, 27), 4, 3), (d(3, 30), 3, 2.5), (d(4, 1), 2, 2.5), (d(4, 4), 2, 2)]
# What the plan asked: the family stepped down on 25 March, the plan said 27.
PLAN = [(d(3, 9), 2, 2.5), (d(3, 17), 4, 3), (d(3, 18), 5, 3), (d(3, 21), 4, 3), (d(3, 23), 3, 3), (d(3, 27), 2, 2.5),
        (d(3, 28), 4, 3), (d(3, 30), 3, 2.5), (d(4, 1), 2, 2.5), (d(4, 4), 2, 2)]
# Oxygen in L/min by day and clock hour from which it held.
OXYGEN = [("2026-03-09 00", 0.5), ("2026-03-16 15", 1.0), ("2026-03-17 20", 1.5), ("2026-03-20 12", 1.0), ("2026-03-22 10", 0.75),
          ("2026-03-24 09", 0.5), ("2026-03-26 16", 1.0), ("2026-03-28 11", 0.75), ("2026-03-30 09", 0.5)]
# Points of saturation under her usual, by day: what the oxygen left uncovered.
DEFICIT = {d(3, 15): 0.5, d(3, 16): 2.5, d(3, 17): 4, d(3, 18): 4.5, d(3, 19): 4, d(3, 20): 3, d(3, 21): 2, d(3, 22): 1.5, d(3, 23): 1,
           d(3, 24): 0.5, d(3, 26): 2.5, d(3, 27): 3, d(3, 28): 2, d(3, 29): 1, d(3, 30): 0.5}
CLOCKS = {2: ["07:10", "18:40"], 3: ["07:10", "13:20", "18:40"], 4: ["07:10", "11:30", "15:40", "19:30"],
          5: ["07:00", "10:30", "14:00", "17:30", "21:00"]}


def in_force(rows, day):
    return [r for r in rows if r[0] <= day][-1]


def oxygen_at(at):
    return [flow for key, flow in OXYGEN if dt.datetime.strptime(key, "%Y-%m-%d %H") <= at][-1]


def t(at):
    return at.strftime("%Y-%m-%d %H:%M")


def at(day, clock, shift=0):
    h, m = map(int, clock.split(":"))
    return dt.datetime(day.year, day.month, day.day, h, m) + dt.timedelta(minutes=shift)


def five(minutes):
    """People write clock times to five minutes, mostly."""
    return 5 * round(minutes / 5) if rnd.random() < 0.8 else minutes


sessions, feeds, medicines, checks, signs, not_done = [], [], [], [], [], []


def reading(when, deficit):
    return max(80, min(99, round(95.2 - deficit + rnd.gauss(0, 0.9))))


# Days on which one thing was different. Keys: (day, session number from 0).
SHORT_FEED = {(d(3, 11), 1): 20, (d(3, 18), 2): 15, (d(3, 19), 1): 10, (d(3, 19), 3): 25, (d(3, 20), 2): 20, (d(3, 26), 1): 25, (d(4, 6), 0): 20}
NO_FEED_END = {(d(3, 12), 1), (d(3, 17), 1), (d(3, 22), 2), (d(3, 28), 1), (d(4, 2), 1)}
NO_FEED = {(d(3, 20), 0), (d(3, 29), 1)}
ABOUT = {(d(3, 14), 1), (d(3, 19), 4), (d(3, 29), 0)}
RUNNING = {(d(3, 18), 3)}
NO_INHALER = {(d(3, 12), 0), (d(3, 19), 2), (d(3, 24), 1), (d(4, 3), 0)}
LATE_INHALER = {(d(3, 10), 1): 5, (d(3, 18), 1): 8, (d(3, 21), 0): 10, (d(3, 27), 3): 5}
EARLY_INHALER = {(d(3, 15), 1): 95, (d(4, 1), 1): 80}
OMIT = {(d(3, 18), 4): "asleep at last, left her", (d(3, 21), 3): "vomited at tea", (d(3, 28), 3): "at the hospital for bloods",
        (d(4, 7), 1): "grandad's birthday, home too late"}
SHORTENED = {(d(3, 17), 2): "crying, stopped", (d(3, 20), 1): "coughing fit, sat her up", (d(3, 27), 2): "too tired"}
UPPER_LEFT_OUT = {(d(3, 19), 0), (d(3, 26), 0)}

for day in DAYS:
    if day in NOT_WRITTEN:
        continue
    _, count, minutes = in_force(DONE, day)
    deficit = DEFICIT.get(day, 0)
    night_off = at(day, "06:30" if count < 5 else "06:15", five(rnd.uniform(-6, 4)))
    before = day - dt.timedelta(days=1)
    if day != FIRST and before not in NOT_WRITTEN:  # nobody wrote when that night's pump went on, so nobody wrote it at all
        feeds.append([t(at(before, "22:00", five(rnd.uniform(0, 12)))), t(night_off), rnd.choice([480, 500, 520]), "pump", ""])
    for n, clock in enumerate(CLOCKS[count]):
        key = (day, n)
        start = at(day, clock, five(rnd.uniform(-8, 12)))
        if key in OMIT:
            not_done.append([t(at(day, clock)), OMIT[key], ""])
            continue
        parts = [minutes] * 6
        stopped = SHORTENED.get(key, "")
        if stopped:
            parts = [minutes, 0, 0, minutes, 0, 0]
        if key in UPPER_LEFT_OUT:
            parts[1] = parts[4] = 0
        total = sum(parts)
        by = "mum" if n < 2 and day.weekday() < 5 else rnd.choice(["mum", "grandad", "dad"])
        started = ("about " if key in ABOUT else "") + t(start)
        ended = "" if key in ABOUT or rnd.random() < 0.15 else t(start + dt.timedelta(minutes=round(total) + rnd.randint(2, 5)))
        cough = {0: "dry", 1: "loose"}.get(int(deficit > 0.9), "loose") if deficit < 3.5 else "wet"
        secretions = "" if deficit < 1 else ("thick, yellow" if deficit > 2.5 else "clear")
        sessions.append([started, ended] + [("%g" % p) for p in parts] + ["", "percussion, vibration", by, cough, secretions, "", stopped,
                        "yes" if key == (d(3, 19), 1) else "", ""])
        # The feed before: the night pump feed for the first session, a daytime feed for the others.
        if n > 0 and key not in NO_FEED:
            gap = SHORT_FEED.get(key, five(rnd.uniform(32, 70)))
            if key in RUNNING:
                feeds.append([t(start - dt.timedelta(minutes=20)), t(start + dt.timedelta(minutes=15)), 120, "pump", "forgot the pump was on"])
            else:
                end = start - dt.timedelta(minutes=gap)
                length = rnd.choice([25, 30, 35])
                feeds.append([t(end - dt.timedelta(minutes=length)), "" if key in NO_FEED_END else t(end), rnd.choice([120, 130, 150]), "bolus", ""])
        elif n == 0 and key in SHORT_FEED:
            feeds[-1][1] = t(start - dt.timedelta(minutes=SHORT_FEED[key]))
        # The inhaler before.
        if key not in NO_INHALER:
            before = LATE_INHALER.get(key, EARLY_INHALER.get(key, five(rnd.uniform(15, 28))))
            medicines.append([t(start - dt.timedelta(minutes=max(before, 15) if key not in LATE_INHALER else before)), "salbutamol",
                              "6 puffs" if deficit > 2 else "4 puffs", "spacer", ""])
        if n == 0 and deficit > 1:
            medicines.append([t(start - dt.timedelta(minutes=12)), "hypertonic saline 3%", "4 ml", "neb", ""])
        if n == len(CLOCKS[count]) - 1:
            medicines.append([t(start + dt.timedelta(minutes=35)), "budesonide", "0.5 mg", "neb", ""])
        # Checks before and after, at the same flow, not always written.
        flow = oxygen_at(start)
        if rnd.random() < 0.88:
            checks.append([t(start - dt.timedelta(minutes=5)), reading(start, deficit), rnd.randint(104, 118) + round(5 * deficit), "%g" % flow, "before", ""])
        if rnd.random() < 0.85:
            checks.append([t(start + dt.timedelta(minutes=round(total) + 8)), reading(start, deficit - 1.2), rnd.randint(108, 124) + round(5 * deficit),
                           "%g" % flow, "after", ""])
    for clock in ("10:00", "14:30", "20:15") + (("02:30",) if deficit > 1.5 else ()):
        when = at(day if clock != "02:30" else day + dt.timedelta(days=1), clock, five(rnd.uniform(-20, 20)))
        flow = oxygen_at(when)
        written = "" if rnd.random() < 0.06 else "%g" % flow
        checks.append([t(when), reading(when, deficit), rnd.randint(100, 114) + round(5 * deficit), written, "", ""])

# Antibiotic for seven days from 17 March, three times a day.
for k in range(7):
    for clock in ("08:00", "14:00", "20:00"):
        medicines.append([t(at(d(3, 17) + dt.timedelta(days=k), clock)), "amoxicillin", "5 ml", "tube", ""])
for clock in ("16:10", "22:20"):
    medicines.append([t(at(d(3, 16), clock)), "paracetamol", "5 ml", "tube", ""])

checks += [[t(at(d(3, 18), "03:40")), 86, 148, "1.5", "", "blue lips for a minute, sat her up"],
           [t(at(d(3, 26), "16:05")), "", "", "1", "", "turned up from 0.5"]]
signs += [[t(at(d(3, 16), "09:15")), "unwell", "not herself, off her feed", ""], [t(at(d(3, 16), "15:50")), "temperature", "38.6", ""],
          [t(at(d(3, 17), "07:45")), "temperature", "38.4", ""], [t(at(d(3, 17), "08:00")), "antibiotic", "amoxicillin started", "after ringing the nurse"],
          [t(at(d(3, 17), "10:20")), "secretions", "thick yellow, more suction", ""], [t(at(d(3, 18), "03:40")), "colour change", "blue lips, better upright", ""],
          [t(at(d(3, 18), "09:00")), "distress", "ribs sucking in", ""], [t(at(d(3, 19), "11:05")), "vomit", "after session", ""],
          [t(at(d(3, 19), "16:00")), "unwell", "very tired", ""], [t(at(d(3, 20), "09:30")), "secretions", "still thick", ""],
          [t(at(d(3, 21), "17:10")), "vomit", "", "tea came back"], [t(at(d(3, 22), "10:00")), "better", "smiling again", ""],
          [t(at(d(3, 26), "15:30")), "unwell", "wet cough is back", ""], [t(at(d(3, 27), "09:10")), "secretions", "yellow again", ""],
          [t(at(d(3, 28), "12:00")), "unwell", "tired", "bloods fine, they said"], [t(at(d(3, 30), "10:00")), "better", "", ""]]

plan = [["2026-03-09", "time zone", "Europe/London"], ["2026-03-09", "child", "Wren"], ["2026-03-09", "day starts", "04:00"],
        ["2026-03-09", "feed gap minutes", "30"], ["2026-03-09", "inhaler gap minutes", "15"], ["2026-03-09", "medicine before session", "salbutamol"],
        ["2026-03-09", "usual oxygen", "0.5"], ["2026-03-09", "target saturation low", "92"], ["2026-03-09", "target saturation high", "97"],
        ["2026-03-09", "stop saturation", "88"], ["2026-03-09", "usual feed minutes", "45"]]
last = (None, None)
for day, count, minutes in PLAN:
    if count != last[0]:
        plan.append([day.isoformat(), "sessions per day", "%g" % count])
    if minutes != last[1]:
        plan.append([day.isoformat(), "minutes per area", "%g" % minutes])
    last = (count, minutes)


def write(name, header, rows, sort=True):
    if sort:
        rows.sort(key=lambda r: r[0].replace("about ", ""))
    with open(OUT / name, "w", newline="", encoding="utf-8") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(header)
        w.writerows(rows)


OUT.mkdir(exist_ok=True)
write("sessions.csv", ["started", "ended", "left lower", "left upper", "left vibration", "right lower", "right upper", "right vibration", "minutes",
                       "techniques", "by", "cough", "secretions", "colour", "stopped early", "vomited", "note"], sessions)
write("feeds.csv", ["started", "ended", "ml", "route", "note"], feeds)
write("medicines.csv", ["given", "medicine", "amount", "route", "note"], medicines)
write("checks.csv", ["checked", "spo2", "pulse", "oxygen", "phase", "note"], checks)
write("signs.csv", ["noticed", "sign", "value", "note"], signs)
write("not-done.csv", ["due", "reason", "note"], not_done)
write("plan.csv", ["from", "item", "value"], plan)
write("questions-for-clinic.csv", ["question"], [["Was stepping down on the 25th too soon?"], ["Can the last session be before eight so she sleeps?"],
                                                 ["What should we do with the feed when she needs five sessions?"]], sort=False)
