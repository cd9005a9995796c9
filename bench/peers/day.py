"""Effective draws per second on the day model, 30 runs x 3 readings: Coolproof against Stan on the same posterior in the same coordinates.

usage: day.py FOLDER [--whole]
FOLDER: scratch. Stan's seeds stop at 5 or, unless --whole is given, after about 7 minutes, with one seed of the dense metric for 3 minutes at most; how many
the medians are of is printed.
"""

import sys
import time
from pathlib import Path
from statistics import median

from steps import bench, load, stan, verdict

SEEDS, BUDGET_S, DENSE_S = 5, 7 * 60, 3 * 60
BAR, AIM = 10, 20


def densities(folder, table):
    """Whether log densities and gradients are the same in both coordinates."""
    met = True
    for coordinates in ("plain", "levelled"):
        data, places, own, peer = (folder / f"{coordinates}.{end}" for end in ("json", "points", "own", "peer"))
        bench("data", table, coordinates, data)
        bench("points", table, coordinates, places, own)
        stan("points", data, places, peer, folder)
        points, parameters, density, gradient, _, said = bench("same", own, peer, may_fail=True)[0]
        print(f"  {points} points, {parameters} parameters, {'every deviation non-centred' if coordinates == 'plain' else 'coordinates as sampled'}: log densities "
              f"within {float(density):.0e}, gradients within {float(gradient):.0e} (bar 1e-8): {said}")
        met &= said == "met"
    return met


def sizes(folder, name, seeds):
    """Least bulk and least tail effective sample size, and largest R-hat, for each seed."""
    return [[float(x) for x in row[1:]] for row in bench("sizes", *[folder / f"{name}-{seed}.bin" for seed in seeds])]


def own_rows(folder, table):
    rows = bench("sample", table, SEEDS, folder)
    settings = next(row[1:] for row in rows if row[0] == "settings")
    gradient = float(next(row[1] for row in rows if row[0] == "gradient"))
    seeds = [[float(x) for x in row[1:]] for row in rows if row[0] == "seed"]
    first, warm = seeds[0], seeds[1:]
    worth = sizes(folder, "own", range(1, SEEDS + 1))
    result = [dict(s=s[1], cores=s[5], gradients=s[3], prepared=s[6], diverged=s[4], bulk=w[0], tail=w[1], rhat=w[2]) for s, w in zip(warm, worth)]
    return settings, gradient, first, result


def stan_rows(folder, metric, settings, seeds, budget_s, limit_s=None):
    """One row a seed, as many as fit; none when not even one is done within limit_s."""
    _, warmup, draws, delta, _ = settings
    result, begin, longest = [], time.monotonic(), 0
    for seed in range(1, seeds + 1):
        begun = time.monotonic()
        if result and begun - begin + longest > budget_s:
            break
        rows = stan("sample", folder / "levelled.json", metric, seed, warmup, draws, delta, folder, first="seed", limit_s=limit_s)
        if rows is None:
            break
        longest = max(longest, time.monotonic() - begun)
        row = [float(x) for x in rows[0]]
        bulk, tail, rhat = sizes(folder, f"stan-{metric}", [seed])[0]
        result.append(dict(s=row[1], cores=row[6], gradients=row[3], diverged=row[4], bulk=bulk, tail=tail, rhat=rhat))
    return result


def per(rows, what, by):
    return median(row[what] / row[by] for row in rows)


def show(name, rows):
    if not rows:
        print(f"  {name:34s}     0  not one seed done in {DENSE_S // 60} minutes of wall time: how it compares isn't told")
        return
    print(f"  {name:34s}{len(rows):6d}{median(r['bulk'] for r in rows):11.0f}{median(r['tail'] for r in rows):11.0f}{median(r['s'] for r in rows):10.2f}"
          f"{per(rows, 'bulk', 's'):12.3g}{per(rows, 'tail', 's'):12.3g}{per(rows, 'gradients', 'cores'):13.0f}{1e3 * per(rows, 'bulk', 'gradients'):12.3g}"
          f"{median(r['diverged'] for r in rows):10.0f}{max(r['rhat'] for r in rows):8.3f}")


def ratios(own, peer, metric):
    bulk, tail = per(own, "bulk", "s") / per(peer, "bulk", "s"), per(own, "tail", "s") / per(peer, "tail", "s")
    print(f"  against {metric}: effective draws/s {bulk:.1f} x (bulk), {tail:.1f} x (tail); bulk for each core second "
          f"{per(own, 'bulk', 'cores') / per(peer, 'bulk', 'cores'):.1f} x; gradients for each core second "
          f"{per(own, 'gradients', 'cores') / per(peer, 'gradients', 'cores'):.1f} x; effective draws/gradient "
          f"{per(own, 'bulk', 'gradients') / per(peer, 'bulk', 'gradients'):.1f} x")
    return bulk


def main(folder, whole):
    table = folder / "day-30.csv"
    bench("table", table, 1)
    print(f"day model, 6 options x 5 runs x 3 readings, delays and clock times noted{load()}")
    print(f"  Stan compiled with -O3 in {float(stan('compile', folder, first='compiled')[0][0]):.0f} s, which don't count")
    same = densities(folder, table)
    settings, gradient, first, own = own_rows(folder, table)
    diagonal = stan_rows(folder, "diag_e", settings, SEEDS, float("inf") if whole else BUDGET_S)
    dense = stan_rows(folder, "dense_e", settings, SEEDS, float("inf")) if whole else stan_rows(folder, "dense_e", settings, 1, DENSE_S, DENSE_S)
    print(f"  {settings[0]} chains x ({settings[1]} warm-up + {settings[2]} draws), target acceptance {settings[3]}, 2 cores; medians over seeds; least over all "
          f"{settings[4]} parameters; largest R-hat of any seed")
    print(f"  {'':34s}{'seeds':>6s}{'least bulk':>11s}{'least tail':>11s}{'seconds':>10s}{'bulk/s':>12s}{'tail/s':>12s}{'gradients/s':>13s}{'bulk/1000':>12s}"
          f"{'diverged':>10s}{'R-hat':>8s}")
    print(f"  {'':34s}{'':6s}{'':11s}{'':11s}{'':10s}{'':12s}{'':12s}{'for a core':>13s}{'gradients':>12s}")
    show("Coolproof", own)
    show("Stan, diag_e (its default)", diagonal)
    show("Stan, dense_e", dense)
    print(f"  Coolproof's first sampling in a process took {first[1]:.2f} s, {first[2]:.2f} s of it preparation and pilot; of its gradients {100 * per(own, 'prepared', 'gradients'):.0f} % "
          f"are preparation and pilot; one gradient alone {1e6 * gradient:.1f} us")
    print("  Seconds: ours wall time on two cores, Stan's core time of its chains put on two cores, so that other work lengthens ours alone. Core seconds: both core time.")
    _, largest, beyond = bench("agree", folder / "own-1.bin", folder / "stan-diag_e-1.bin", may_fail=True)[0]
    print(f"  means of the draws of seed 1 differ by at most {float(largest):.1f} Monte Carlo standard errors of all parameters; beyond 4: {beyond}")
    best = min(ratios(own, rows, metric) for rows, metric in ((diagonal, "diag_e"), (dense, "dense_e")) if rows)
    short = [f"{len(rows)} of {SEEDS} seeds with {metric}" for rows, metric in ((diagonal, "diag_e"), (dense, "dense_e")) if len(rows) < SEEDS]
    print(f"  bar {BAR} x Stan's better metric at equal densities, aim {AIM} x: {verdict(best >= BAR and same)}, {best:.1f} x"
          + (f"; by {' and '.join(short)}, the rest cut off" if short else ""))


if __name__ == "__main__":
    sys.stdout.reconfigure(line_buffering=True)
    main(Path(sys.argv[1]), "--whole" in sys.argv)
