#!/usr/bin/python3
"""Compares NightWatch's places and events with an independent computation: Sun and Moon of JPL DE431 (de431.c), everything else of ERFA
(precession-nutation pnm06a, sidereal time gst06a, aberration, WGS84), events by scanning the altitude. Run by run.sh.

Usage: compare.py DE431_PROGRAM SE1_FOLDER BENCH_DLL SERVICE_DLL OUT_FOLDER SITE_NIGHTS
Leaves requests.jsonl and answers.jsonl in OUT_FOLDER.
Exit code 1 when a bar is missed: Sun 0.1", Moon 0.3", sidereal time 0.002 s; events 0.5 s, or 1" where slower than 1" a second."""
import json
import subprocess
import sys
import warnings

import erfa
import numpy as np

DE431, FOLDER, BENCH, SERVICE, OUT = sys.argv[1:6]
COUNT = int(sys.argv[6])
AU = 149597870.7
ARC = np.pi / 648000
J2000 = 2451545.0
MOON_KM = 1737.4
warnings.simplefilter("ignore", erfa.ErfaWarning)  # leap seconds of years to come are "dubious"
rng = np.random.default_rng(20261125)
failed = False


def run(command, text):
    return subprocess.run(command, input=text, capture_output=True, text=True, check=True).stdout


def lines(values):
    return "\n".join(values) + "\n"


def numbers(text):
    return np.array([[float(x) for x in line.split()] for line in text.splitlines()])


def reference(tt_days):
    """Apparent Sun and Moon on the true equator and equinox of date, km."""
    icrs = numbers(run([DE431, FOLDER], lines("%.17g" % d for d in tt_days))) * AU
    matrix = erfa.pnm06a(J2000, tt_days)
    return np.einsum("nij,nj->ni", matrix, icrs[:, :3]), np.einsum("nij,nj->ni", matrix, icrs[:, 3:]), matrix


def apart(a, b):
    return np.arctan2(np.linalg.norm(np.cross(a, b), axis=1), np.sum(a * b, axis=1)) / ARC


def row(name, errors, unit, bar):
    global failed
    errors = np.abs(np.asarray(errors))
    good = len(errors) == 0 or errors.max() <= bar
    failed |= not good
    if len(errors):
        print("%-44s %7d  max %.4f%s  rms %.4f%s  bar %g%s  %s" % (
            name, len(errors), errors.max(), unit, np.sqrt(np.mean(errors ** 2)), unit, bar, unit, "ok" if good else "MISSED"))


# --- places at the same TT, 2000 to 2050
ut = rng.uniform(0, 18627, 4000)
tt = ut + 69.184 / 86400
ours = numbers(run(["dotnet", BENCH, "places"], lines("%.17g %.17g" % p for p in zip(tt, ut))))
sun, moon, matrix = reference(tt)
print("Places of date against JPL DE431 and ERFA, 2000-2050")
row("Sun, apparent place", apart(ours[:, :3], sun), '"', 0.1)
row("Moon, apparent place", apart(ours[:, 3:6], moon), '"', 0.3)
row("Moon, distance", np.linalg.norm(ours[:, 3:6], axis=1) - np.linalg.norm(moon, axis=1), " km", 1.0)
gast = erfa.gst06(J2000, ut, J2000, tt, matrix)
row("Greenwich apparent sidereal time", ((ours[:, 6] - gast + np.pi) % (2 * np.pi) - np.pi) / (2 * np.pi) * 86400, " s", 0.002)

# --- site-nights
CORE = (266.4168166666667, -29.007825)
sites = []
for i in range(COUNT):
    high = i % 3 == 0
    lat = rng.choice([-1, 1]) * rng.uniform(60, 90) if high else rng.uniform(-90, 90)
    if i % 50 == 0:
        lat = float(rng.choice([-90, 90]))
    lon = rng.uniform(-180, 180)
    hours = int(round(lon / 15))
    core = rng.random() < 0.5
    site = {
        "lat": round(float(lat), 6), "lon": round(float(lon), 6), "elevation": round(float(rng.uniform(0, 6000)), 1),
        "zone": "Etc/GMT%+d" % -hours if hours else "UTC",
        "night": str(np.datetime64("2000-01-01") + int(rng.integers(0, 18627))),
        "minAltitude": round(float(rng.uniform(-5, 60)), 3),
    }
    if not core:
        site["ra"], site["dec"] = round(float(rng.uniform(0, 360)), 6), round(float(rng.uniform(-90, 90)), 6)
    sites.append(site)
with open(OUT + "/requests.jsonl", "w") as file:
    file.write(lines(json.dumps(s) for s in sites))
told = run(["dotnet", SERVICE, "sky", "--batch", OUT + "/requests.jsonl", "--json"], "")
with open(OUT + "/answers.jsonl", "w") as file:
    file.write(told)
answers = [json.loads(a) for a in told.splitlines()]
assert len(answers) == COUNT and not any("error" in a for a in answers), [a for a in answers if "error" in a][:3]


def unix(text):
    return (np.datetime64(text.rstrip("Z"), "us") - np.datetime64("1970-01-01", "us")) / np.timedelta64(1, "s")


# All nights' Chebyshev nodes go through the reference at once.
NODES = 28
x = np.cos(np.pi * (np.arange(NODES) + 0.5) / NODES)
spans = np.array([(unix(a["span"]["start"]), unix(a["span"]["end"])) for a in answers])
middle, half = spans.mean(axis=1), (spans[:, 1] - spans[:, 0]) / 2 + 600


def tt_minus_utc(seconds):
    day = np.datetime64(int(seconds), "s").astype("datetime64[D]").astype(object)
    return erfa.dat(day.year, day.month, day.day, 0.0) + 32.184


offset = np.array([tt_minus_utc(m) for m in middle])
times = middle[:, None] + half[:, None] * x[None, :]
ut_nodes = times / 86400 - 10957.5
tt_nodes = ut_nodes + offset[:, None] / 86400
sun, moon, matrix = reference(tt_nodes.ravel())
shape = (COUNT, NODES, 3)
sun, moon, matrix = sun.reshape(shape), moon.reshape(shape), matrix.reshape(COUNT, NODES, 3, 3)
gast = erfa.gst06(J2000, ut_nodes.ravel(), J2000, tt_nodes.ravel(), matrix.reshape(-1, 3, 3)).reshape(COUNT, NODES)
velocity = erfa.epv00(J2000, tt_nodes.ravel())[1]["v"].reshape(shape) / 173.1446326742403
turning = 2 * np.pi * 1.00273781191135448 / 86400


class Night:
    def __init__(self, i):
        site = sites[i]
        self.middle, self.half, self.span = middle[i], half[i], spans[i]
        self.lat, self.lon = np.radians(site["lat"]), np.radians(site["lon"])
        xyz = erfa.gd2gc(1, 0.0, self.lat, site["elevation"]) / 1000
        self.axis, self.north = xyz[0], xyz[2]
        star = erfa.s2c(*np.radians((site.get("ra", CORE[0]), site.get("dec", CORE[1]))))
        b = velocity[i]
        seen = np.array([erfa.ab(star, b[k], 1.0, np.sqrt(1 - b[k] @ b[k])) for k in range(NODES)])
        seen = np.einsum("nij,nj->ni", matrix[i], seen)
        drift = np.unwrap(gast[i] - turning * (times[i] - self.middle), period=2 * np.pi)
        fit = lambda v: np.polynomial.chebyshev.chebfit(x, v, NODES - 6)
        self.tracks = {"sun": fit(sun[i]), "moon": fit(moon[i]), "subject": fit(seen)}
        self.drift = fit(drift)
        self.min = site["minAltitude"]

    def local(self, body, t):
        u = (t - self.middle) / self.half
        x, y, z = np.polynomial.chebyshev.chebval(u, self.tracks[body])
        theta = np.polynomial.chebyshev.chebval(u, self.drift) + turning * (t - self.middle) + self.lon
        c, s = np.cos(theta), np.sin(theta)
        m, e = x * c + y * s, y * c - x * s
        if body != "subject":
            m, z = m - self.axis, z - self.north
        up = np.cos(self.lat) * m + np.sin(self.lat) * z
        horizontal = np.hypot(e, np.cos(self.lat) * z - np.sin(self.lat) * m)
        return up, horizontal, e, x * c + y * s

    def height(self, body, level, t):
        """Degrees above the level; for the Moon the upper limb above the refracted horizon."""
        up, flat, _, _ = self.local(body, t)
        altitude = np.degrees(np.arctan2(up, flat))
        if body == "moon":
            altitude = altitude + 34 / 60 + np.degrees(np.arcsin(MOON_KM / np.hypot(up, flat)))
        return altitude - level

    def hour_angle(self, body, t, at):
        _, _, east, toward = self.local(body, t)
        return (np.arctan2(-east, toward) - at + np.pi) % (2 * np.pi) - np.pi

    def roots(self, f):
        """Crossings of zero in the span, with their direction: a scan by the minute with refined extrema, then bisection."""
        t = np.append(np.arange(self.span[0], self.span[1], 60.0), self.span[1])
        v = f(t)
        inner = np.flatnonzero(((v[1:-1] - v[:-2]) * (v[2:] - v[1:-1]) <= 0) & (np.abs(v[1:-1]) < 0.6)) + 1
        for k in inner:
            sign = 1 if v[k] >= v[k - 1] else -1
            low, high = t[k - 1], t[k + 1]
            for _ in range(60):
                a, b = low + 0.382 * (high - low), low + 0.618 * (high - low)
                low, high = (a, high) if sign * f(a) < sign * f(b) else (low, b)
            t, v = np.append(t, low), np.append(v, f(low))
        order = np.argsort(t)
        t, v = t[order], v[order]
        found = []
        for k in np.flatnonzero((v[:-1] >= 0) != (v[1:] >= 0)):
            low, high, rising = t[k], t[k + 1], v[k + 1] >= 0
            for _ in range(60):
                mid = (low + high) / 2
                low, high = (low, mid) if (f(mid) >= 0) == rising else (mid, high)
            found.append((low, rising))
        return found, bool(v[0] >= 0)

    def windows(self, body, level, above):
        found, start_above = self.roots(lambda t: self.height(body, level, t))
        edges = [self.span[0]] + [t for t, _ in found] + [self.span[1]]
        first = 0 if start_above == above else 1
        return [(edges[k], edges[k + 1]) for k in range(first, len(edges) - 1, 2)], found


def both(a, b):
    out = [(max(p[0], q[0]), min(p[1], q[1])) for p in a for q in b]
    return sorted(w for w in out if w[1] > w[0])


seconds, slow, moon_altitude, mismatches = {}, {}, [], []


def judge(name, night, body, level, reference_time, our_time):
    rate = abs(night.height(body, level, reference_time + 0.5) - night.height(body, level, reference_time - 0.5)) * 3600
    if rate < 1:
        slow.setdefault(name, []).append(night.height(body, level, our_time) * 3600)
    else:
        seconds.setdefault(name, []).append(our_time - reference_time)


def pair(name, i, ours, theirs, body, level):
    ours = [] if ours is None else [unix(o) for o in (ours if isinstance(ours, list) else [ours])]
    if len(ours) != len(theirs):
        mismatches.append((name, sites[i], ours, theirs))
        return
    for o, t in zip(ours, theirs):
        judge(name, nights, body, level, t, o)


for i, answer in enumerate(answers):
    nights = night = Night(i)
    s = answer["sun"]
    for level, dusk, dawn in ((-50 / 60, "set", "rise"), (-6, "civilDusk", "civilDawn"), (-12, "nauticalDusk", "nauticalDawn"),
                              (-18, "astronomicalDusk", "astronomicalDawn")):
        found, _ = night.roots(lambda t: night.height("sun", level, t))
        pair("Sun set and rise" if dusk == "set" else "twilights", i, s[dusk], [t for t, up in found if not up][:1], "sun", level)
        pair("Sun set and rise" if dusk == "set" else "twilights", i, s[dawn], [t for t, up in found if up][-1:], "sun", level)
    moon_down, found = night.windows("moon", 0, False)
    pair("Moon rise and set", i, answer["moon"]["rises"], [t for t, up in found if up], "moon", 0)
    pair("Moon rise and set", i, answer["moon"]["sets"], [t for t, up in found if not up], "moon", 0)
    found, _ = night.roots(lambda t: night.height("subject", 0, t))
    pair("subject rise and set", i, answer["subject"]["rise"], [t for t, up in found if up][:1], "subject", 0)
    pair("subject rise and set", i, answer["subject"]["set"], [t for t, up in found if not up][:1], "subject", 0)
    found, _ = night.roots(lambda t: np.where(np.abs(night.hour_angle("subject", t, 0)) < 1, night.hour_angle("subject", t, 0), np.nan))
    transits = [t for t, up in found if up and abs(night.hour_angle("subject", t, 0)) < 0.01][:1]
    ours_transit = answer["subject"]["transit"]
    if (ours_transit is None) != (not transits):
        mismatches.append(("transit", sites[i], ours_transit, transits))
    elif transits and abs(sites[i].get("dec", 0)) < 89.9:
        seconds.setdefault("subject transit", []).append(unix(ours_transit) - transits[0])

    night_sun, _ = night.windows("sun", -18, False)
    up, _ = night.windows("subject", night.min, True)
    dark = both(night_sun, moon_down)
    for name, key, theirs in (("dark windows", "darkWindows", dark), ("subject windows", "subjectWindows", up),
                              ("shooting windows", "shootingWindows", both(dark, up))):
        ours_list = [(unix(w["start"]), unix(w["end"])) for w in answer[key]]
        # A sliver of milliseconds between two edges may be a window for one and none for the other.
        ours_list, theirs = [[w for w in ws if w[1] - w[0] > 1] for ws in (ours_list, theirs)]
        if len(ours_list) != len(theirs):
            mismatches.append((name, sites[i], ours_list, theirs))
            continue
        for o, t in zip(ours_list, theirs):
            for k in (0, 1):
                body, level = min((("sun", -18), ("moon", 0), ("subject", night.min)),
                                  key=lambda b: abs(night.height(b[0], b[1], t[k])))
                if t[k] in (night.span[0], night.span[1]):
                    seconds.setdefault(name, []).append(o[k] - t[k])
                else:
                    judge(name, night, body, level, t[k], o[k])

    found, _ = night.roots(lambda t: np.where(np.abs(night.hour_angle("sun", t, np.pi)) < 1, night.hour_angle("sun", t, np.pi), np.nan))
    anti = [t for t, up_ in found if up_ and abs(night.hour_angle("sun", t, np.pi)) < 0.01][:1]
    if anti:
        moon_altitude.append((answer["moon"]["altitudeAtMidnight"] - (night.height("moon", 0, anti[0]) - 34 / 60
                              - np.degrees(np.arcsin(MOON_KM / np.hypot(*night.local("moon", anti[0])[:2]))))) * 3600)

print("\nEvents of %d site-nights, a third of them beyond 60 degrees, some at the poles, against DE431, ERFA and a scan" % COUNT)
for name in seconds:
    row(name, seconds[name], " s", 0.5)
for name in slow:
    row(name + ", climbing slower than 1\"/s", slow[name], '"', 1.0)
row("Moon's altitude at solar anti-transit", moon_altitude, '"', 0.3)
print("events missed or invented: %d" % len(mismatches))
for m in mismatches[:10]:
    print("  ", m)
sys.exit(1 if failed or mismatches else 0)
