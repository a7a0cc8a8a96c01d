"""Time from start to ready, and memory at idle, of published programs, side by side.

python3 measure.py RUNS NAME=PROGRAM [NAME=PROGRAM ...]

Ready is the answer 200 of /health/ready: database open and migrated, pages up, the first tick at its end. Each run has a database that is there
already, as after a restart. Cold: the program's own files are dropped from the page cache before (the shared .NET runtime's, where a program
needs it, too). Runs of the programs alternate, so that what else the machine does falls on all of them. Memory is taken 20 s after ready, with
ticks every second, in two ways: the resident set (VmRSS), and each page counted once (Pss). .NET maps every assembly twice, to read it and to run
it, and its code heap twice, to write it and to run it; the resident set counts those pages twice.

Fails when the first program named takes more than a second to get ready, cold, or 120 MiB at idle.
"""
import glob, http.client, os, shutil, socket, statistics, subprocess, sys, tempfile, time

IDLE_SECONDS = 20
MOST_COLD_SECONDS = 1.0
MOST_RESIDENT_MIB = 120


def drop_from_cache(folder):
    for root, _, files in os.walk(folder):
        for name in files:
            descriptor = os.open(os.path.join(root, name), os.O_RDONLY)
            os.fsync(descriptor)
            os.posix_fadvise(descriptor, 0, 0, os.POSIX_FADV_DONTNEED)
            os.close(descriptor)


def free_port():
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        return found.getsockname()[1]


def is_ready(port):
    try:
        asked = http.client.HTTPConnection("127.0.0.1", port, timeout=1)
        asked.request("GET", "/health/ready")
        return asked.getresponse().status == 200
    except OSError:
        return False


def start(program, folder, port):
    settings = {"FEEDS__ORDER": "fake", "FEEDS__USAGE": "private", "SERVICE__PORT": str(port), "SERVICE__TICKSECONDS": "1"}
    command = ["dotnet", program, "run"] if program.endswith(".dll") else [program, "run"]
    environment = os.environ | {"NIGHTWATCH__" + key: value for key, value in settings.items()}
    begun = time.perf_counter()
    process = subprocess.Popen(command, cwd=folder, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    while not is_ready(port):
        if process.poll() is not None: sys.exit(f"{program} ended with {process.returncode}")
        if time.perf_counter() - begun > 60: sys.exit(f"{program} did not get ready")
        time.sleep(0.005)
    return process, time.perf_counter() - begun


def stop(process):
    process.terminate()
    process.wait(30)


def memory_mib(process, file, name):
    with open(f"/proc/{process.pid}/{file}") as lines:
        return next(int(line.split()[1]) for line in lines if line.startswith(name)) / 1024


def processor_seconds(process):
    with open(f"/proc/{process.pid}/stat") as stat:
        fields = stat.read().rsplit(") ", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def main():
    runs, programs = int(sys.argv[1]), dict(argument.split("=", 1) for argument in sys.argv[2:])
    folders = {name: tempfile.mkdtemp() for name in programs}
    shared = [path for path in glob.glob("/usr/share/dotnet/shared/*/10.*") + glob.glob("/usr/lib/dotnet/shared/*/10.*")]
    try:
        for name, program in programs.items(): stop(start(program, folders[name], free_port())[0])  # makes the database
        cold, warm, processor = ({name: [] for name in programs} for _ in range(3))
        for _ in range(runs):
            for name, program in programs.items():
                for path in [os.path.dirname(os.path.realpath(program)), *shared]: drop_from_cache(path)
                process, seconds = start(program, folders[name], free_port())
                cold[name].append(seconds)
                stop(process)
                process, seconds = start(program, folders[name], free_port())
                warm[name].append(seconds)
                processor[name].append(processor_seconds(process))
                stop(process)
        print(f"median of {runs} runs           cold start s   warm start s   processor s   resident MiB   each page once MiB   files MiB")
        missed = []
        for name, program in programs.items():
            process, _ = start(program, folders[name], free_port())
            time.sleep(IDLE_SECONDS)
            resident, once = memory_mib(process, "status", "VmRSS:"), memory_mib(process, "smaps_rollup", "Pss:")
            stop(process)
            size = sum(os.path.getsize(os.path.join(root, file)) for root, _, files in os.walk(os.path.dirname(os.path.realpath(program))) for file in files)
            median = statistics.median
            print(f"{name:28} {median(cold[name]):11.2f} {median(warm[name]):14.2f} {median(processor[name]):13.2f} {resident:14.0f} {once:20.0f} {size / 2**20:11.0f}")
            if name == next(iter(programs)) and (median(cold[name]) > MOST_COLD_SECONDS or resident > MOST_RESIDENT_MIB): missed.append(name)
        if missed: sys.exit(f"{missed[0]}: more than {MOST_COLD_SECONDS:.0f} s or {MOST_RESIDENT_MIB} MiB")
    finally:
        for folder in folders.values(): shutil.rmtree(folder)


main()
