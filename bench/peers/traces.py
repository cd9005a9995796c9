"""A logger's file of 20 million rows in: time and three channels, every cell parsed; Coolproof beside DuckDB in the same kind of process, in turns.

usage: traces.py FOLDER [--whole]
"""

import subprocess
import sys
from pathlib import Path
from statistics import median

from steps import ROOT, lines, load, measured_with_output, verdict

DLL = ROOT / "bench/Coolproof.Bench.Traces/bin/Release/net10.0/Coolproof.Bench.Traces.dll"
ROWS, REPEATS, BAR = 20_000_000, 3, 1.5
WAYS = {
    "own": "Coolproof, every cell parsed, columns added up",
    "sums": "DuckDB, every cell parsed, columns added up",
    "kept": "Coolproof, kept whole in its file, synced to disk",
    "table": "DuckDB, into a table in its file",
}


def make(file, rows):
    subprocess.run(["dotnet", DLL, "make", file, str(rows)], check=True)
    return file


def once(way, file):
    """Seconds, peak bytes, row count and sums of one process."""
    code, output, _, _, memory = measured_with_output(["dotnet", DLL, way, file])
    if code != 0:
        raise RuntimeError(f"{way} {file}: exit code {code}")
    (seconds, *sums), = lines(output, way)
    return float(seconds), memory, [float(one) for one in sums]


def main(folder):
    subprocess.run(["dotnet", "build", ROOT / "bench/Coolproof.Bench.Traces", "-c", "Release", "-v", "quiet", "--nologo"], check=True, stdout=subprocess.DEVNULL)
    file, tenth = make(folder / "log.csv", ROWS), make(folder / "log-tenth.csv", ROWS // 10)
    size = file.stat().st_size
    print(f"traces, a logger's file of {ROWS / 1e6:.0f} million rows, time and 3 channels, {size / 1e6:.0f} MB, in the page cache; median of {REPEATS}, in turns{load()}")
    for way in WAYS:
        once(way, tenth)
    runs = {way: [] for way in WAYS}
    for _ in range(REPEATS):
        for way in WAYS:
            runs[way].append(once(way, file))
    seconds = {way: median(run[0] for run in runs[way]) for way in WAYS}
    peak = {way: median(run[1] for run in runs[way]) for way in WAYS}
    for way, name in WAYS.items():
        spread = f"{min(run[0] for run in runs[way]):.2f} to {max(run[0] for run in runs[way]):.2f}"
        print(f"  {name}: {seconds[way]:.2f} s ({spread}), {ROWS / seconds[way] / 1e6:.1f} million rows a second, {size / seconds[way] / 1e6:.0f} MB/s, {peak[way] / 1e6:.0f} MB at its peak")
    first = runs["own"][0][2]
    same = all(abs(a - b) <= 1e-9 * max(1, abs(a)) for way in WAYS for run in runs[way] for a, b in zip(first, run[2]))
    print(f"  rows and sums of all columns: {'the same' if same else 'DIFFERENT: the bar is missed whatever the time says'}")
    for own, peer in (("own", "sums"), ("kept", "table")):
        ratio = seconds[own] / seconds[peer]
        print(f"  {WAYS[own]}: {ratio:.2f} x the time of {WAYS[peer]} (bar {BAR} x): {verdict(same and ratio <= BAR)}")
    small = {way: once(way, tenth)[1] for way in ("own", "kept")}
    for way in small:
        print(f"  peak of {WAYS[way]}: {small[way] / 1e6:.0f} MB at a tenth of the rows, {peak[way] / 1e6:.0f} MB at all (bar: at most 1.5 x): {verdict(peak[way] <= 1.5 * small[way])}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
