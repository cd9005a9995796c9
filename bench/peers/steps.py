"""Runs the steps of the benchmarks and reads their tab-separated lines."""

import os
import signal
import subprocess
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
BENCH = ROOT / "bench/Coolproof.Bench.Day/bin/Release/net10.0/Coolproof.Bench.Day.dll"


def lines(output, first=None):
    rows = [line.split("\t") for line in output.splitlines() if "\t" in line]
    return rows if first is None else [row[1:] for row in rows if row[0] == first]


def bench(*arguments, first=None, may_fail=False, limit_s=None):
    """One step of Coolproof.Bench.Day; its lines, those so far when it isn't done in time. A step that compares exits with 1 when its bar is missed."""
    try:
        done = subprocess.run(["dotnet", BENCH, *map(str, arguments)], text=True, capture_output=True, timeout=limit_s)
    except subprocess.TimeoutExpired as late:
        output = late.stdout or ""
        return lines(output.decode() if isinstance(output, bytes) else output, first)
    if done.returncode != 0 and not (may_fail and done.returncode == 1):
        raise RuntimeError(f"Coolproof.Bench.Day {' '.join(map(str, arguments))}: {done.stderr or done.stdout}")
    return lines(done.stdout, first)


def stan(*arguments, first=None, limit_s=None):
    """One step of day.R; its lines; None when it isn't done in time."""
    command = ["Rscript", ROOT / "bench/peers/day.R", *map(str, arguments)]
    process = subprocess.Popen(command, text=True, stdout=subprocess.PIPE, stderr=subprocess.PIPE, start_new_session=True)
    try:
        output, errors = process.communicate(timeout=limit_s)
    except subprocess.TimeoutExpired:
        os.killpg(process.pid, signal.SIGTERM)  # its chains too: they are in its own session
        process.communicate()
        return None
    if process.returncode != 0:
        raise RuntimeError(f"day.R {' '.join(map(str, arguments))}: {errors or output}")
    return lines(output, first)


def measured(command):
    """Exit code, wall seconds, core seconds and peak memory in bytes of a process, from the kernel's own accounts of it."""
    begin = time.perf_counter()
    with open(os.devnull, "w") as nothing:
        process = subprocess.Popen(command, stdout=nothing, stderr=nothing)
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return process.returncode, time.perf_counter() - begin, usage.ru_utime + usage.ru_stime, usage.ru_maxrss * 1024


def measured_with_output(command):
    """As measured, with what it printed."""
    begin = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
    output = process.stdout.read()
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return process.returncode, output, time.perf_counter() - begin, usage.ru_utime + usage.ru_stime, usage.ru_maxrss * 1024


def load():
    """The load average of the last minute; a warning where other work is running: wall times are then of little worth."""
    average = os.getloadavg()[0]
    return f"  (load average {average:.1f}" + (": other work was running, wall times are too long)" if average > 0.7 else ")")


def verdict(met):
    return "met" if met else "MISSED"
