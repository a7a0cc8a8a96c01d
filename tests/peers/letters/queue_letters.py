"""Puts .eml files into the outbox of a service (put DATABASE FOLDER) and waits until all of it is sent (wait DATABASE)."""
import email, gzip, pathlib, sqlite3, sys, time

mode, database = sys.argv[1:3]
with sqlite3.connect(database, timeout=20) as db:
    if mode == "put":
        now = int(time.time() * 1000)
        letters = [(path.name, path.read_bytes()) for path in sorted(pathlib.Path(sys.argv[3]).glob("*.eml"))]
        # A copy of the first goes to a mailbox that the mail server finds out later not to exist.
        letters.append(("gone", letters[0][1].replace(b"marlo.quist@example.org", b"gone.quist@example.net").replace(b"\nMessage-Id: <", b"\nMessage-Id: <gone.", 1)))
        for n, (name, mime) in enumerate(letters):
            letter = email.message_from_bytes(mime)
            db.execute(
                "INSERT INTO outbox (dedupe_key, message_id, kind, recipient, mime, created_at, not_before, not_after, state)"
                " VALUES (?, ?, 'Rehearsal', ?, ?, ?, ?, ?, 'Pending')",
                (name, letter["Message-ID"].strip("<> "), email.utils.parseaddr(letter["To"])[1], gzip.compress(mime), now + n, now, now + 3_600_000))
    else:
        for _ in range(120):
            states = dict(db.execute("SELECT state, count(*) FROM outbox GROUP BY state"))
            if set(states) <= {"Sent"}: break
            time.sleep(0.5)
        good = set(states) == {"Sent"}
        print(f"{'PASS' if good else 'FAIL'} outbox: {', '.join(f'{count} {state}' for state, count in states.items()) or 'empty'}")
        for text in db.execute("SELECT DISTINCT last_text FROM outbox WHERE state <> 'Sent'"): print("  ", *text)
        sys.exit(0 if good else 1)
