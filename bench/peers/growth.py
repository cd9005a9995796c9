"""How cost grows with the notebook: 30, 300 and 3,000 runs x 3 readings (1, 10 and 100 evenings), a process each.

usage: growth.py FOLDER [--whole]
Sampling stops after 90 s unless --whole is given; the whole time is then what was done, scaled up, and says so.
"""

import math
import sys
from pathlib import Path

from steps import bench, busy, verdict

EVENINGS, LIMIT_S, BAR = (1, 10, 100), 90, 1.25
LINEAR = 1.1  # what counts as linear for gradient time and memory


def exponent(a, b, of):
    return math.log(b[of] / a[of]) / math.log(b["readings"] / a["readings"])


def main(folder, limit):
    print(f"growth, 6 options, 30 runs x 3 readings an evening{busy()}")
    print(f"  {'runs':>6s}{'readings':>10s}{'parameters':>12s}{'globals':>9s}{'gradient, us':>14s}{'whitened, us':>14s}{'density, kB':>13s}{'peak, MB':>10s}"
          f"{'preparation, s':>16s}{'whole, s':>10s}")
    rows = []
    for evenings in EVENINGS:
        table = folder / f"growth-{evenings}.csv"
        bench("table", table, evenings)
        names = ["runs", "readings", "parameters", "globals", "gradient", "bytes", "preparation", "whole", "done", "whitened", "peak"]
        row = dict(zip(names, map(float, bench("growth", table, limit)[0])))
        rows.append(row)
        part = "" if row["done"] == 1 else f"  scaled up from the {100 * row['done']:.0f} % done in {limit:.0f} s"
        print(f"  {row['runs']:6.0f}{row['readings']:10.0f}{row['parameters']:12.0f}{row['globals']:9.0f}{1e6 * row['gradient']:14.1f}{1e6 * row['whitened']:14.1f}"
              f"{row['bytes'] / 1e3:13.0f}{row['peak'] / 1e6:10.0f}{row['preparation']:16.2f}{row['whole']:10.1f}{part}")
    first, last = rows[0], rows[-1]
    for of, name, bar in (("gradient", "gradient time", LINEAR), ("bytes", "memory of a density", LINEAR), ("whitened", "whitened gradient", None),
                          ("peak", "peak memory", None), ("preparation", "preparation", None), ("whole", "whole time", BAR)):
        steps = ", ".join(f"{exponent(a, b, of):.2f}" for a, b in zip(rows, rows[1:]))
        whole = exponent(first, last, of)
        print(f"  {name}: readings^{whole:.2f} ({steps})" + (f"; bar {'linear' if bar == LINEAR else f'{bar:.2f}'}: {verdict(whole <= bar)}" if bar else ""))


if __name__ == "__main__":
    sys.stdout.reconfigure(line_buffering=True)
    main(Path(sys.argv[1]), 1e6 if "--whole" in sys.argv else LIMIT_S)
