"""Watches and letters a minute at 1, 2 and 3 processes on one PostgreSQL.

python3 measure.py BENCH DATABASE SMTP-PORT

BENCH is the release build's NightWatch.Bench.dll, DATABASE a PostgreSQL connection filled by "load make". Every process is held to one processor,
the first to the first, the second to the second and so on round: on two processors a second process can double the rate, a third only share.
The processor time a watch shows what sharing costs. The database server has no processor of its own.
"""
import os, re, subprocess, sys, time


def run(bench, count, *arguments):
    """Starts the processes together; returns the seconds until the last is done, and what each printed."""
    processors = sorted(os.sched_getaffinity(0))
    begun = time.perf_counter()
    processes = [
        subprocess.Popen(["taskset", "-c", str(processors[number % len(processors)]), "dotnet", bench, "load", *arguments], stdout=subprocess.PIPE, text=True)
        for number in range(count)
    ]
    printed = [process.communicate()[0] for process in processes]
    return time.perf_counter() - begun, printed


def numbers(printed, pattern):
    return [float(re.search(pattern, text).group(1).replace(",", "")) for text in printed]


def main():
    bench, database, port = sys.argv[1:]
    print("processes   watches a minute   processor ms a watch   shares             letters a minute   shares")
    for count in (1, 2, 3):
        run(bench, 1, "plan", database)
        _, passes = run(bench, count, "share", database)
        watches, seconds = numbers(passes, r"failed +([0-9,]+)"), max(numbers(passes, r"evening pass +([0-9.]+)"))
        processor = sum(numbers(passes, r"s, ([0-9.]+) s of"))
        _, rounds = run(bench, count, "letters", database, port)
        letters, sending = numbers(rounds, r"([0-9,]+) letters sent"), max(numbers(rounds, r"in ([0-9.]+) s"))
        shares = lambda each: " ".join(f"{one:.0f}" for one in each)
        print(f"{count:9} {sum(watches) / seconds * 60:18.0f} {processor / sum(watches) * 1000:22.1f}   {shares(watches):18} {sum(letters) / sending * 60:16.0f}   {shares(letters)}", flush=True)


main()
