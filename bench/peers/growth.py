"""How cost grows with the notebook: 30, 300 and 3,000 runs x 3 readings (1, 10 and 100 evenings), a process each.

usage: growth.py FOLDER [--whole]
Unless --whole is given sampling stops after 90 s, and the whole time is then what was done, scaled up; a size that isn't prepared after 5 minutes is given up. Both are said.
"""

import math
import sys
from pathlib import Path

from steps import bench, load, verdict

EVENINGS, SAMPLING_S, SIZE_S, BAR = (1, 10, 100), 90, 5 * 60, 1.25
LINEAR = 1.1  # what counts as linear for gradient time and memory


def exponent(a, b, of):
    return math.log(b[of] / a[of]) / math.log(b["readings"] / a["readings"])


def measured(table, whole):
    """What one size costs; without the part of sampling when that was given up."""
    limit = 1e6 if whole else SAMPLING_S
    parts = {name: list(map(float, numbers)) for name, *numbers in bench("growth", table, limit, limit_s=None if whole else SIZE_S + SAMPLING_S)}
    row = dict(zip(["runs", "readings", "parameters", "globals", "gradient", "bytes"], parts["density"]))
    return row | dict(zip(["preparation", "whole", "done", "whitened", "peak", "cores", "prepared"], parts.get("sampling", [])))


def show(row):
    start = f"  {row['runs']:6.0f}{row['readings']:10.0f}{row['parameters']:12.0f}{row['globals']:9.0f}{1e6 * row['gradient']:14.1f}{row['bytes'] / 1e3:13.0f}"
    if "whole" not in row:
        print(f"{start}  given up: not prepared and sampled for {SAMPLING_S} s within {(SIZE_S + SAMPLING_S) / 60:.1f} minutes")
        return
    part = "" if row["done"] == 1 else f"  sampling scaled up from the {100 * row['done']:.0f} % done in {SAMPLING_S} s"
    print(f"{start}{1e6 * row['whitened']:14.1f}{row['peak'] / 1e6:10.0f}{row['prepared']:14.0f}{row['preparation']:16.2f}{row['whole']:10.1f}{row['cores']:10.1f}{part}")


def exponents(rows):
    for of, name, bar in (("gradient", "gradient time", LINEAR), ("bytes", "memory of a density", LINEAR), ("whitened", "whitened gradient", None),
                          ("peak", "peak memory", None), ("preparation", "preparation", None), ("whole", "whole time", BAR), ("cores", "core seconds", None)):
        known = [row for row in rows if of in row]
        if len(known) < 2:
            print(f"  {name}: can't be told")
            continue
        steps = ", ".join(f"{exponent(a, b, of):.2f}" for a, b in zip(known, known[1:]))
        whole = exponent(known[0], known[-1], of)
        all_sizes = len(known) == len(rows)
        print(f"  {name}: readings^{whole:.2f} ({steps})" + ("" if all_sizes else f", up to {known[-1]['runs']:.0f} runs")
              + (f"; bar {'linear' if bar == LINEAR else f'{bar:.2f}'}: {verdict(whole <= bar and all_sizes)}" if bar else ""))


def main(folder, whole):
    print(f"growth, 6 options, 30 runs x 3 readings an evening{load()}")
    print(f"  {'':6s}{'':10s}{'':12s}{'':9s}{'gradient':>14s}{'density':>13s}{'whitened':>14s}{'peak':>10s}{'gradients of':>14s}{'preparation':>16s}{'whole':>10s}{'cores':>10s}")
    print(f"  {'runs':>6s}{'readings':>10s}{'parameters':>12s}{'globals':>9s}{'us':>14s}{'kB':>13s}{'us':>14s}{'MB':>10s}{'preparation':>14s}{'s':>16s}{'s':>10s}{'s':>10s}")
    rows = []
    for evenings in EVENINGS:
        table = folder / f"growth-{evenings}.csv"
        bench("table", table, evenings)
        rows.append(measured(table, whole))
        show(rows[-1])
    exponents(rows)


if __name__ == "__main__":
    sys.stdout.reconfigure(line_buffering=True)
    main(Path(sys.argv[1]), "--whole" in sys.argv)
