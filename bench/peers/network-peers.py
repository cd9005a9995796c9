"""Times the four-node ladder (900 s, output every 10 ms) in scipy and ngspice, and compares with Coolproof's own lines.

usage: network-peers.py rc-ladder-4.csv OWN.tsv
OWN.tsv: name, fastest and median milliseconds, largest error in kelvin, tab-separated, from Coolproof.Bench.Network in the same run.
"""

import csv
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.signal import lsim

CAPACITIES = np.array([8.0, 40.0, 60.0, 25.0])
LINKS = [(0, 1, 1 / 0.8), (1, 2, 1 / 1.2), (2, 3, 1 / 0.5)]
TO_AIR = np.array([0.0, 0.0, 1 / 6.0, 1 / 4.0])
AIR, WATTS, RTOL, EVERY = 25.0, 25.0, 1e-8, 0.01
METHODS = ["RK45", "DOP853", "Radau", "BDF", "LSODA"]


def ladder():
    k = np.diag(TO_AIR)
    for a, b, g in LINKS:
        k[a, a] += g
        k[b, b] += g
        k[a, b] -= g
        k[b, a] -= g
    return -k / CAPACITIES[:, None]


A = ladder()


def forcing(watts):
    return (TO_AIR * AIR + np.array([watts, 0, 0, 0])) / CAPACITIES


def by_solve_ivp(method):
    state, parts = np.full(4, AIR), []
    grid = np.arange(1, 30_001) * EVERY
    options = {"jac": A} if method in ("Radau", "BDF") else {"jac": lambda t, y: A} if method == "LSODA" else {}
    for watts in (WATTS, 0.0, WATTS):
        b = forcing(watts)
        result = solve_ivp(lambda t, y: A @ y + b, (0, 300), state, method=method, t_eval=grid, rtol=RTOL, atol=RTOL, **options)
        if not result.success:
            raise RuntimeError(result.message)
        parts.append(result.y)
        state = result.y[:, -1]
    return np.concatenate(parts, axis=1).T


def by_lsim():
    state, parts = np.full(4, AIR), []
    grid = np.arange(0, 30_001) * EVERY
    for watts in (WATTS, 0.0, WATTS):
        system = (A, forcing(watts)[:, None], np.eye(4), np.zeros((4, 1)))
        _, _, x = lsim(system, np.ones(30_001), grid, X0=state, interp=False)
        parts.append(x[1:])
        state = x[-1]
    return np.concatenate(parts)


def by_ngspice(folder, output):
    lines = ["ladder", ".options reltol=1e-8 abstol=1e-12 vntol=1e-10"]
    lines += [f"C{i + 1} n{i + 1} 0 {c} IC={AIR}" for i, c in enumerate(CAPACITIES)]
    lines += [f"RL{i} n{a + 1} n{b + 1} {1 / g:.17g}" for i, (a, b, g) in enumerate(LINKS)]
    lines += [f"RA{i + 1} n{i + 1} air {1 / g:.17g}" for i, g in enumerate(TO_AIR) if g]
    lines += [f"VAIR air 0 {AIR}", f"IP 0 n1 PWL(0 {WATTS} 300 {WATTS} 300.000001 0 600 0 600.000001 {WATTS} 1000 {WATTS})"]
    save = ["linearize v(n1) v(n2) v(n3) v(n4)", f"wrdata {output} v(n1) v(n2) v(n3) v(n4)"] if output else []
    lines += [".control", "set numdgt=15", "tran 10m 900 0 10m uic", *save, "quit", ".endc", ".end"]
    deck = Path(folder) / "ladder.cir"
    deck.write_text("\n".join(lines) + "\n")
    subprocess.run(["ngspice", "-b", str(deck)], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def times_ms(work, repeats):
    """Fastest and median of some runs after a first one. Ratios use the fastest: on a busy machine it is the least disturbed."""
    work()
    times = []
    for _ in range(repeats):
        begin = time.perf_counter()
        work()
        times.append(1e3 * (time.perf_counter() - begin))
    return min(times), statistics.median(times)


def main(reference, own_file):
    exact = np.array([[float(cell) for cell in row] for row in list(csv.reader(open(reference)))[1:]])[1:, 1:]
    rows = []
    for line in open(own_file):
        name, *numbers = line.rstrip("\n").split("\t")
        rows.append((name, *map(float, numbers)))
    peers = []
    for method in METHODS:
        error = np.abs(by_solve_ivp(method)[99::100] - exact).max()
        peers.append((f"scipy solve_ivp {method}", *times_ms(lambda: by_solve_ivp(method), 15), error))
    rows += peers
    rows.append(("scipy.signal.lsim (exact stepping)", *times_ms(by_lsim, 3), np.abs(by_lsim()[99::100] - exact).max()))
    with tempfile.TemporaryDirectory() as folder:
        output = Path(folder) / "out.txt"
        by_ngspice(folder, output)
        table = np.loadtxt(output)
        values = np.array([np.interp(np.arange(1, 901), table[:, 2 * i], table[:, 2 * i + 1]) for i in range(4)]).T
        rows.append(("ngspice (whole process, no output)", *times_ms(lambda: by_ngspice(folder, None), 5), np.abs(values - exact).max()))

    print(f"4-node network, 900 s, output every 10 ms; scipy {scipy.__version__}, rtol {RTOL:g}; one run on this machine")
    print(f"{'':40s}{'fastest, ms':>13s}{'median, ms':>12s}{'max error, K':>15s}{'x coolproof':>13s}")
    base = rows[1][1]
    for name, fastest, median, error in rows:
        print(f"{name:40s}{fastest:13.3f}{median:12.3f}{error:15.1e}{fastest / base:13.1f}")
    best = min(peers, key=lambda peer: peer[1])
    ratio, kept = best[1] / base, best[1] / rows[0][1]
    error = max(rows[0][3], rows[1][3])
    met = ratio >= 30 and error <= 1e-9
    print(f"ratio to scipy's best method ({best[0].split()[-1]}): {ratio:.1f} x with a new array, {kept:.1f} x with a kept buffer; "
          f"bar 30 x at 1e-9 K: {'met' if met else 'MISSED'}")
    return 0 if met else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2]))
