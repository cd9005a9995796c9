"""The whole program on 30 runs x 3 readings: `coolproof compare TABLE`, wall time and peak memory.

usage: process.py FOLDER
"""

import subprocess
import sys
from pathlib import Path
from statistics import median

from steps import ROOT, bench, load, measured, verdict

REPEATS, BAR_S, BAR_BYTES = 5, 1.0, 250e6


def main(folder):
    table, program = folder / "process-30.csv", ROOT / "coolproof"
    bench("table", table, 1)
    subprocess.run([program, "--version"], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    runs = [measured([program, "compare", table]) for _ in range(REPEATS + 1)][1:]
    codes = {code for code, *_ in runs}
    seconds, cores, memory = (median(run[i] for run in runs) for i in (1, 2, 3))
    print(f"whole process, ./coolproof compare, published build, 30 runs x 3 readings, 2 cores; median of {REPEATS}{load()}")
    print(f"  {seconds:.2f} s wall, {cores:.2f} s of all cores (bar {BAR_S:.0f} s wall): {verdict(seconds < BAR_S)}")
    print(f"  {memory / 1e6:.0f} MB at its peak (bar {BAR_BYTES / 1e6:.0f} MB): {verdict(memory < BAR_BYTES)}")
    if codes != {0}:
        answer = subprocess.run([program, "compare", table], text=True, capture_output=True).stderr.strip().splitlines()
        print(f"  exit codes {sorted(codes)}: no verdict was given, so the bar is MISSED whatever the time says. It said: {' '.join(answer)}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
