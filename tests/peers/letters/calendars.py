"""The letters' calendar entries in a real CalDAV server, handled as a calendar program would: a request is stored, an update replaces it, a
cancellation removes it. calendars.py URL MAILDIRS. CalDAV: RFC 4791 (4.1: a stored object has no METHOD); iTIP: RFC 5546."""
import email, email.policy, http.client, pathlib, sys, time, urllib.parse
import icalendar

url, boxes = urllib.parse.urlsplit(sys.argv[1]), pathlib.Path(sys.argv[2])
faults, counts = [], {"stored": 0, "moved": 0, "removed": 0}


def ask(method, path, body=None, **headers):
    for attempt in range(40):
        try:
            server = http.client.HTTPConnection(url.hostname, url.port, timeout=20)
            # Without authentication a name is still what makes a place one's own there.
            server.request(method, path, body, {"Authorization": "Basic bWFybG86eA=="} | {name.replace("_", "-"): value for name, value in headers.items()})
            answer = server.getresponse()
            return answer.status, answer.read()
        except ConnectionRefusedError:
            time.sleep(0.25)
    raise SystemExit("FAIL the calendar server does not answer")


ask("PROPFIND", "/", Depth="0")
status, _ = ask("MKCALENDAR", "/marlo/nights/")
if status != 201: faults.append(f"MKCALENDAR {status}")
entries = []
for path in (boxes / "marlo" / "new").glob("*"):
    message = email.message_from_bytes(path.read_bytes(), policy=email.policy.default)
    for part in message.walk():
        if part.get_content_type() != "application/ics": continue
        calendar = icalendar.Calendar.from_ical(part.get_payload(decode=True))
        event = calendar.walk("VEVENT")[0]
        entries.append((event["DTSTAMP"].dt, str(event["UID"]), int(event["SEQUENCE"]), str(calendar["METHOD"]), calendar, str(message["Subject"])))
there = {}
for _, uid, sequence, method, calendar, about in sorted(entries, key=lambda entry: (entry[0], entry[2])):
    place = f"/marlo/nights/{uid.split('@')[0]}.ics"
    if uid in there and sequence <= there[uid]: faults.append(f"{about}: sequence {sequence} after {there[uid]}")
    if method == "CANCEL":
        status, _ = ask("DELETE", place)
        if status not in (200, 204): faults.append(f"{about}: DELETE {status}")
        counts["removed"] += 1
    else:
        del calendar["METHOD"]
        status, answer = ask("PUT", place, calendar.to_ical(), Content_Type="text/calendar; charset=utf-8")
        if status not in (201, 204): faults.append(f"{about}: PUT {status} {answer[:200]}")
        counts["moved" if uid in there else "stored"] += 1
        status, kept = ask("GET", place)
        event = icalendar.Calendar.from_ical(kept).walk("VEVENT")[0] if status == 200 else {}
        wanted = calendar.walk("VEVENT")[0]
        if status != 200 or any(event[name].dt != wanted[name].dt for name in ("DTSTART", "DTEND")) or int(event["SEQUENCE"]) != sequence: faults.append(f"{about}: GET {status}")
    there[uid] = sequence
status, answer = ask("PROPFIND", "/marlo/nights/", b'<?xml version="1.0"?><propfind xmlns="DAV:"><prop><getetag/></prop></propfind>', Depth="1", Content_Type="application/xml")
last = {}
for _, uid, sequence, method, *_ in sorted(entries, key=lambda entry: (entry[0], entry[2])): last[uid] = method
kept, wanted = answer.count(b".ics</"), sum(method == "REQUEST" for method in last.values())
if kept != wanted: faults.append(f"{kept} entries are there, {wanted} wanted")
if not (counts["moved"] and counts["removed"]): faults.append(f"nothing to judge by: {counts}")
print(f"{'FAIL' if faults else 'PASS'} Radicale stores, moves and removes the nights ({counts['stored']} stored, {counts['moved']} moved, {counts['removed']} removed, {kept} left)")
for fault in faults[:5]: print("   " + fault)
sys.exit(1 if faults else 0)
