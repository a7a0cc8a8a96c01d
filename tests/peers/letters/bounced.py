"""The letter that came back: forge MAILDIR (waits for the report and lays forged ones beside it), wait DATABASE (until the service has read it),
list (reads "suppression list --json"). RFC 3464 reports; the forged ones name letters that never went to the address they accuse."""
import email, json, pathlib, sqlite3, sys, time

mode = sys.argv[1]


def say(name, good, about=""):
    print(f"{'PASS' if good else 'FAIL'} {name}{'' if good else ' ' + str(about)}")
    return good


if mode == "forge":
    box = pathlib.Path(sys.argv[2]) / "new"
    for _ in range(60):
        reports = [path.read_bytes() for path in box.glob("*")] if box.exists() else []
        if reports: break
        time.sleep(0.5)
    kinds = [email.message_from_bytes(report).get_content_type() for report in reports]
    good = say("the mail server sends one report back", kinds == ["multipart/report"], kinds)
    if good:
        # A stranger who knows the shape of a report, but no letter that went to the victim.
        (box / "forged.1").write_bytes(reports[0].replace(b"gone.quist@example.net", b"marlo.quist@example.org"))
        (box / "forged.2").write_bytes(reports[0].replace(b"Message-ID: <", b"Message-ID: <x").replace(b"Message-Id: <", b"Message-Id: <x").replace(b"gone.quist@example.net", b"ada@example.org"))
        (box / "a-person.1").write_bytes(b"From: ada@example.org\nTo: nightwatch@example.org\nSubject: thank you\n\nIt was clear.\n")
    sys.exit(0 if good else 1)
if mode == "wait":
    with sqlite3.connect(sys.argv[2], timeout=20) as db:
        for _ in range(80):
            found = list(db.execute("SELECT address, code FROM suppression"))
            if found: break
            time.sleep(0.5)
    time.sleep(1)
    sys.exit(0 if say("the service reads the report over IMAP", found == [("gone.quist@example.net", "5.1.1")], found) else 1)
listed = json.load(sys.stdin)
sys.exit(0 if say("only the address that is none is given up, forged reports are ignored", [one["address"] for one in listed] == ["gone.quist@example.net"], listed) else 1)
