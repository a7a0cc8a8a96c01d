"""Reads the Maildir that Postfix filled: read_letters.py MAILDIRS SENT-FOLDER DKIM-PUBLIC-KEY PAGES. Prints PASS or FAIL a check.

Sources: RFC 5322 (lines, header), 2046 (alternative), 2392 (cid), 2369 and 8058 (unsubscribe), 3834 (Auto-Submitted), 5545 and 5546 (calendar),
6047 2.4 (method parameter), 6376 (DKIM).
"""
import base64, email, email.policy, pathlib, re, sys, zoneinfo
import dkim, icalendar

boxes, sent_folder, key_file, pages = map(pathlib.Path, sys.argv[1:5])
pages.mkdir()
key = key_file.read_bytes()
faults = {}
seen = {}


def check(name, good, about=""):
    seen[name] = seen.get(name, 0) + 1
    if not good: faults.setdefault(name, []).append(about)


def read(path):
    raw = path.read_bytes()
    return raw, email.message_from_bytes(raw, policy=email.policy.default)


letters = [read(path) for box in ("marlo", "ada") for path in sorted((boxes / box / "new").glob("*"))]
originals = {}
for path in sorted(sent_folder.glob("*.eml")):
    raw, message = read(path)
    originals[message["Message-ID"]] = raw.replace(b"\r\n", b"\n")
delivered = [message["Message-ID"] for _, message in letters]
check("every letter arrives once", sorted(set(delivered)) == sorted(delivered) and set(originals) < set(delivered), f"{len(delivered)} of {len(originals) + 1}")

entries = []
for raw, message in letters:
    about = str(message["Subject"])
    original = originals.get(message["Message-ID"])
    check("the relay left the letter as it was queued", original is None or raw.endswith(original), about)
    check("python's email finds no defect", not any(part.defects for part in message.walk()) and not any(
        getattr(value, "defects", ()) for part in message.walk() for value in part.values()), about)
    check("no line is longer than 998 octets and all of it is ASCII", all(len(line) <= 998 for line in raw.split(b"\n")) and raw.isascii(), about)
    check("Subject has at most 78 characters", len(about) <= 78, about)
    check("From, To, Date, Message-ID stand once", all(len(message.get_all(name, [])) == 1 for name in ("From", "To", "Date", "Message-ID", "Subject", "MIME-Version")), about)
    check("Auto-Submitted and List-Id", message["Auto-Submitted"] == "auto-generated" and "<letters." in (message["List-Id"] or ""), about)

    # A resolver of our own in place of the DNS.
    signature = message["DKIM-Signature"] or ""
    check("DKIM verifies", dkim.verify(raw, dnsfunc=lambda name, timeout=5: b"v=DKIM1; k=rsa; p=" + key if name.startswith(b"nw._domainkey.example.org") else b""), about)
    covered = re.search(r"\bh=([^;]*)", signature)
    covered = {name.strip().lower() for name in covered.group(1).split(":")} if covered else set()
    wanted = {"from", "to", "subject", "date", "message-id", "mime-version", "content-type", "list-id", "auto-submitted"}
    wanted |= {name for name in ("list-unsubscribe", "list-unsubscribe-post", "in-reply-to", "references") if message[name]}
    check("DKIM covers every header that counts", wanted <= covered, f"{about}: {wanted - covered}")

    text, html = (message.get_body((kind,)) for kind in ("plain", "html"))
    check("there is text and HTML", text is not None and html is not None, about)
    text, page = text.get_content(), html.get_content()
    long = [line for line in text.splitlines() if len(line) > 72 and " " in line.strip()]
    check("text keeps to 72 columns", not long, f"{about}: {long[:1]}")
    check("HTML is under 100 KB and the letter under 200 KB", len(page.encode()) < 100_000 and len(raw) < 200_000, f"{about}: {len(page.encode())}, {len(raw)}")
    pictures = {part["Content-ID"].strip("<>"): part for part in message.walk() if part["Content-ID"]}
    used = set(re.findall(r'"cid:([^"]+)"', page))
    check("every picture is used and every cid is there", used == set(pictures), f"{about}: {used ^ set(pictures)}")
    check("pictures are PNG", all(part.get_content()[:8] == b"\x89PNG\r\n\x1a\n" for part in pictures.values()), about)
    check("nothing is fetched from outside", not re.search(r'<(?:img|link|script|iframe)[^>]*(?:src|href)="https?:|url\(', page), about)
    for cid, part in pictures.items():
        page = page.replace(f"cid:{cid}", "data:image/png;base64," + base64.b64encode(part.get_content()).decode())
    (pages / f"{len(list(pages.iterdir())):03}.html").write_text(page)

    inside = [part for part in message.walk() if part.get_content_type() == "text/calendar"]
    files = [part for part in message.walk() if part.get_content_type() == "application/ics"]
    check("a calendar part has its file and one at most is inside", len(inside) == min(1, len(files)), about)
    # Quoted-printable line ends are the mailbox's own here, base64 keeps them.
    if inside: check("the entry inside and its file are one", inside[0].get_payload(decode=True).split() == files[0].get_payload(decode=True).split(), about)
    for part in files:
        bytes_ = part.get_payload(decode=True)
        check("calendar lines end in CRLF and have at most 75 octets", bytes_.count(b"\n") == bytes_.count(b"\r\n") and all(len(line) <= 75 for line in bytes_.split(b"\r\n")), about)
        calendar = icalendar.Calendar.from_ical(bytes_)
        events = list(calendar.walk("VEVENT"))
        check("icalendar reads one event without errors", len(events) == 1 and not events[0].errors and not calendar.errors, about)
        event, method = events[0], str(calendar["METHOD"])
        check("the event has what RFC 5545 and 5546 ask for", all(name in event for name in ("UID", "DTSTAMP", "DTSTART", "DTEND", "SEQUENCE", "ORGANIZER", "ATTENDEE", "SUMMARY"))
              and str(calendar["VERSION"]) == "2.0" and "PRODID" in calendar, about)
        zones = list(calendar.walk("VTIMEZONE"))
        check("one VTIMEZONE, named by start and end", len(zones) == 1 and {event[name].params["TZID"] for name in ("DTSTART", "DTEND")} == {str(zones[0]["TZID"])}, about)
        rules, names = zones[0].to_tz(), zoneinfo.ZoneInfo(str(zones[0]["TZID"]))
        walls = [event[name].dt.replace(tzinfo=None) for name in ("DTSTART", "DTEND")]
        check("the VTIMEZONE's rules agree with the system's zone data", all(rules.localize(wall).utcoffset() == wall.replace(tzinfo=names).utcoffset() for wall in walls), about)
        check("times are in order", walls[0] < walls[1], about)
        check("every alarm has trigger and description", all("TRIGGER" in alarm and "DESCRIPTION" in alarm for alarm in event.walk("VALARM")), about)
        check("organizer is the sender, attendee the recipient", str(event["ORGANIZER"]).lower() == "mailto:nightwatch@example.org"
              and str(event["ATTENDEE"]).lower() == "mailto:" + email.utils.parseaddr(str(message["To"]))[1].lower(), about)
        check("a cancelled event says so", (method == "CANCEL") == (str(event.get("STATUS")) == "CANCELLED") and method in ("REQUEST", "CANCEL"), about)
        if inside and part is files[0]:
            check("the MIME part repeats the method", inside[0].get_param("method") == method, about)
        entries.append((str(event["UID"]), int(event["SEQUENCE"]), event["DTSTAMP"].dt, method, about))

# A calendar that obeys RFC 5546 2.1.4: of each UID the sequence only rises, and a cancellation takes out what is there.
there = {}
for uid, sequence, stamp, method, about in sorted(entries, key=lambda entry: entry[2]):
    last, is_there = there.get(uid, (-1, False))
    check("SEQUENCE rises by one with each revision", sequence == last + 1, f"{about}: {sequence} after {last}")
    check("only what is there is cancelled", method == "REQUEST" or is_there, about)
    there[uid] = (sequence, method == "REQUEST")
check("there are cancellations and updates to judge by", any(e[3] == "CANCEL" for e in entries) and any(e[1] > 0 and e[3] == "REQUEST" for e in entries))
test = [message for _, message in letters if message["Message-ID"] not in originals]
check("the test letter offers one-click unsubscribing", len(test) == 1 and test[0]["List-Unsubscribe-Post"] == "List-Unsubscribe=One-Click"
      and test[0]["List-Unsubscribe"] == "<https://night.example.org/stop/k7xw2q>")

for name, count in seen.items():
    print(f"{'FAIL' if name in faults else 'PASS'} {name} ({count})")
    for about in faults.get(name, [])[:3]: print("  ", about)
print(f"{len(letters)} letters, {len(entries)} calendar entries of {len(there)} nights")
sys.exit(1 if faults else 0)
