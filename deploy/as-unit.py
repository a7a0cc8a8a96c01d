#!/usr/bin/python3
"""Runs a command under the system calls that a unit allows: as-unit.py UNIT COMMAND...

The filter is read from the unit's own SystemCallFilter lines, its sets expanded by systemd-analyze. A call that the unit refuses kills the
command (SIGSYS), also where the unit would only let the call fail: what the unit refuses shall be nothing that the program needs.
Needs Debian's python3-seccomp and systemd.
"""
import os
import subprocess
import sys

import seccomp


def calls_of(name):
    """The calls of a set such as @resources, or the one call that the name is."""
    if not name.startswith("@"):
        return {name}
    shown = subprocess.run(["systemd-analyze", "syscall-filter", name], check=True, capture_output=True, text=True).stdout
    members = [line.strip() for line in shown.splitlines()[1:]]
    return set().union(*(calls_of(member) for member in members if member and not member.startswith("#")))


def allowed(unit):
    """As systemd.exec(5) has it: the first line makes the list one of calls allowed, a later ~ takes from it, others add to it."""
    calls = None
    with open(unit, encoding="utf-8") as lines:
        for line in lines:
            key, _, value = line.strip().partition("=")
            if key != "SystemCallFilter":
                continue
            names = set().union(*(calls_of(name) for name in value.removeprefix("~").split()))
            if calls is None and value.startswith("~"):
                sys.exit(f"{unit}: the first SystemCallFilter must say what is allowed")
            calls = (calls or calls_of("@default")) - names if value.startswith("~") else (calls or calls_of("@default")) | names
    return calls or sys.exit(f"{unit}: no SystemCallFilter")


unit, command = sys.argv[1], sys.argv[2:]
calls = allowed(unit)
# SQLite gives new files to the owner of the database when it runs as root, as it may here and never does under the unit.
if os.geteuid() == 0:
    calls.add("fchown")
only = seccomp.SyscallFilter(defaction=seccomp.KILL_PROCESS)
for call in sorted(calls):
    try:
        only.add_rule(seccomp.ALLOW, call)
    except RuntimeError:
        pass  # a call of another architecture, or newer than libseccomp
only.load()
os.execvp(command[0], command)
