"""Writes test/reference/distribution_tails.json: shapes from 0.01 to a million, tails down to 1e-300.

Run from the project's folder: python3 scripts/reference/distribution-tails.py (needs mpmath; takes a few minutes).
Every value comes from a power series or a plain sum in 340 digits, far more than either tail needs, so that the other
tail may be one minus it. Arguments are doubles taken exactly; results are printed with 17 digits, so they round-trip.
"""

import json
import sys
from itertools import product

import mpmath as mp

mp.mp.dps = 340
M = mp.mpf
ENOUGH = M(10) ** -325
MOST_TERMS = 120_000
TAILS = (True, False)


class TooSlow(Exception):
    """The series would take too long here: the point is left out."""


def series(ratio):
    term, total, n = M(1), M(1), 0
    while term > ENOUGH * total:
        term *= ratio(n)
        total += term
        n += 1
        if n > MOST_TERMS:
            raise TooSlow
    return total


def gamma_tail(x, a, lower):
    """Abramowitz & Stegun (1964), 6.5.29."""
    x, a = M(x), M(a)
    p = mp.exp(a * mp.log(x) - x - mp.loggamma(a + 1)) * series(lambda n: x / (a + 1 + n))
    return p if lower else 1 - p


def beta_lower(x, y, a, b):
    """Abramowitz & Stegun (1964), 26.5.4 summed, y = 1 - x."""
    front = mp.exp(a * mp.log(x) + b * mp.log(y) + mp.loggamma(a + b) - mp.loggamma(a + 1) - mp.loggamma(b))
    return front * series(lambda n: x * (a + b + n) / (a + 1 + n))


def terms_wanted(x, y, a, b):
    return max(0, (x * (a + b) - a) / y) + 1000 / y


def beta_tail_of(x, y, a, b, lower):
    first = terms_wanted(x, y, a, b) < terms_wanted(y, x, b, a)
    for direct in (first, not first):
        try:
            p = beta_lower(x, y, a, b) if direct else beta_lower(y, x, b, a)
            return p if direct == lower else 1 - p
        except TooSlow:
            continue
    raise TooSlow


def beta_tail(x, a, b, lower):
    return beta_tail_of(M(x), 1 - M(x), M(a), M(b), lower)


def student_tail(t, df, lower):
    t, df = M(t), M(df)
    x = df / (df + t * t)
    half = beta_tail_of(x, 1 - x, df / 2, M(1) / 2, True) / 2
    return half if (t < 0) == lower else 1 - half


def log_dgamma(x, a, rate=1):
    x, a, rate = M(x), M(a), M(rate)
    return a * mp.log(rate) + (a - 1) * mp.log(x) - rate * x - mp.loggamma(a)


def log_dbeta(x, a, b):
    x, a, b = M(x), M(a), M(b)
    return (a - 1) * mp.log(x) + (b - 1) * mp.log(1 - x) + mp.loggamma(a + b) - mp.loggamma(a) - mp.loggamma(b)


def log_dt(t, df):
    t, df = M(t), M(df)
    at0 = mp.loggamma((df + 1) / 2) - mp.loggamma(df / 2) - mp.log(df * mp.pi) / 2
    return at0 - (df + 1) / 2 * mp.log(1 + t * t / df)


def log_choose(n, k):
    return mp.loggamma(M(n) + 1) - mp.loggamma(M(k) + 1) - mp.loggamma(M(n - k) + 1)


def log_dbinom(x, n, p):
    return log_choose(n, x) + x * mp.log(M(p)) + (n - x) * mp.log(1 - M(p))


def log_dhyper(x, m, n, k):
    return log_choose(m, x) + log_choose(n, k - x) - log_choose(m + n, k)


def lower_sum(density, down):
    """Sum of the probabilities at and below a point; down(j) is the ratio to the one below."""
    return density * series(down)


def binom_tail(x, n, p, lower):
    p = M(p)
    if x < n * p:
        below = lower_sum(mp.exp(log_dbinom(x, n, p)), lambda j: M(x - j) * (1 - p) / ((n - x + 1 + j) * p))
        return below if lower else 1 - below
    above = lower_sum(mp.exp(log_dbinom(x + 1, n, p)), lambda j: M(n - x - 1 - j) * p / ((x + 2 + j) * (1 - p)))
    return 1 - above if lower else above


def hyper_tail(x, m, n, k, lower):
    if x < M(k) * m / (m + n):
        down = lambda j: M(x - j) * (n - k + x - j) / ((m - x + 1 + j) * M(k - x + 1 + j))
        below = lower_sum(mp.exp(log_dhyper(x, m, n, k)), down)
        return below if lower else 1 - below
    up = lambda j: M(m - x - 1 - j) * (k - x - 1 - j) / (M(x + 2 + j) * (n - k + x + 2 + j))
    above = lower_sum(mp.exp(log_dhyper(x + 1, m, n, k)), up)
    return 1 - above if lower else above


def solve(tail, low, high, p):
    """Where log tail is log p between low and high: bisection, then the secant rule, to 25 digits."""
    goal = mp.log(M(p))
    f = lambda u: mp.log(tail(u)) - goal
    low, high = M(low), M(high)
    flow, fhigh = f(low), f(high)
    if flow * fhigh > 0:
        raise TooSlow
    for _ in range(200):
        middle = low - flow * (high - low) / (fhigh - flow)
        fm = f(middle)
        if fm == 0 or abs(fm) < M(10) ** -30:
            return middle
        if fm * fhigh < 0:
            low, flow = high, fhigh
        else:
            flow = flow * fhigh / (fhigh + fm)  # Pegasus rule
        high, fhigh = middle, fm
    raise TooSlow


def student_quantile(p, df, lower):
    u = solve(lambda v: student_tail(-mp.exp(v), df, True), -8, min(M(700), 730 / M(df) + 8), p)
    return -mp.exp(u) if lower else mp.exp(u)


CASES = []


def add(name, columns, grid, value, tail=False, tolerance="1e-12"):
    kept = {column: [] for column in (*columns, *(["lower"] if tail else []))}
    expected = []
    for point in grid:
        try:
            found = value(*point)
        except (TooSlow, ValueError, ZeroDivisionError):
            continue
        logarithm = name.endswith("_log")
        # A tail above 1 - 1e-9 holds no digits of its own; below 1e-300 doubles begin to lose theirs.
        if not logarithm and not M("1e-300") < abs(found) < M("1e300"):
            continue
        if name.startswith("p") and found > 1 - M("1e-9"):
            continue
        for column, cell in zip(kept, point):
            kept[column].append(cell)
        expected.append(float(found))
    CASES.append({
        "id": name,
        "source": f"power series and sums in {mp.mp.dps} digits, mpmath {mp.__version__}",
        "input": {"arguments": kept},
        "expected": {"value": expected},
        "tolerance": {"rel": float(tolerance), "abs": 2e-13 if name.endswith("_log") else 0},
    })
    print(name, len(expected), file=sys.stderr, flush=True)


exp = mp.exp
XS = [0, 1e-300, 1e-8, -0.3, 1, -2.5, 6, 15, -30, 37]
add("dnorm", ["x"], product(XS), lambda x: exp(-M(x) ** 2 / 2) / mp.sqrt(2 * mp.pi))
add("dnorm_log", ["x"], product([*XS, 1e4, -1e8]), lambda x: -M(x) ** 2 / 2 - mp.log(2 * mp.pi) / 2)

SHAPES = [0.01, 0.1, 0.5, 1, 3, 30, 1000, 1e5, 1e6]


def around(a):
    """Points from far below to far above the mean of a gamma distribution, as doubles."""
    s = a**0.5
    return [x for x in (a * 1e-40, a * 1e-6, a * 0.1, a - 30 * s, a - 5 * s, a - s, a, a + s, a + 5 * s, a + 30 * s + 500) if x > 0]


GAMMA = [(x, a) for a in SHAPES for x in around(a)]
add("pgamma", ["x", "shape"], [(x, a, l) for (x, a) in GAMMA for l in TAILS], gamma_tail, tail=True)
add("dgamma", ["x", "shape", "rate"], [(x, a, r) for (x, a) in GAMMA for r in (1, 1e-5, 400)], lambda x, a, r: exp(log_dgamma(x, a, r)))
add("dgamma_log", ["x", "shape", "rate"], [(x, a, r) for (x, a) in GAMMA for r in (1, 1e-5, 400)], log_dgamma)
DFS = [0.1, 0.5, 1, 2, 7, 100, 5000, 1e6]
CHI = [(2 * x, df) for df in DFS for x in around(df / 2)]
add("pchisq", ["x", "df"], [(x, df, l) for (x, df) in CHI for l in TAILS], lambda x, df, l: gamma_tail(M(x) / 2, M(df) / 2, l), tail=True)
add("dchisq", ["x", "df"], CHI, lambda x, df: exp(log_dgamma(x, M(df) / 2, 0.5)))

BETAS = [(a, b) for a in (0.01, 0.1, 0.5, 1, 20, 3000, 1e6) for b in (0.01, 0.1, 1, 7, 500, 1e6)]


def beta_points(a, b):
    m, s = a / (a + b), (a * b / (a + b + 1)) ** 0.5 / (a + b)
    wanted = [1e-300, 1e-20, 1e-3, 0.1, 0.5, 0.9, 1 - 2**-30, m - 30 * s, m - 5 * s, m - s, m, m + s, m + 6 * s, m + 30 * s]
    return [x for x in wanted if 0 < x < 1]


BETA = [(x, a, b) for (a, b) in BETAS for x in beta_points(a, b)]
add("dbeta", ["x", "a", "b"], BETA, lambda x, a, b: exp(log_dbeta(x, a, b)))
add("dbeta_log", ["x", "a", "b"], BETA, log_dbeta)
TS = [-1e30, -1e8, -1000, -38, -20, -7, -3, -1, -1e-4, -1e-150, 0.2, 2, 9]
T = [(t, df) for df in (*DFS, 30, 1e4) for t in TS]
add("dt", ["t", "df"], T, lambda t, df: exp(log_dt(t, df)))
add("dt_log", ["t", "df"], T, log_dt)

NS = [(n, p) for n in (1, 3, 40, 5000, 1_000_000) for p in (1e-300, 1e-9, 0.01, 0.3, 0.5, 0.98)]


def binom_points(n, p):
    m, s = n * p, (n * p * (1 - p)) ** 0.5
    return sorted({min(n, max(0, round(m + z * s))) for z in (-30, -6, -1, 0, 1, 6, 30)} | {0, min(n, 3), n})


BINOM = [(x, n, p) for (n, p) in NS for x in binom_points(n, p)]
add("dbinom", ["x", "n", "p"], BINOM, lambda *at: exp(log_dbinom(*at)))
add("dbinom_log", ["x", "n", "p"], BINOM, log_dbinom)
add("pbinom", ["x", "n", "p"], [(*at, l) for at in BINOM if at[0] < at[1] for l in TAILS], binom_tail, tail=True)

URNS = [(1, 1, 1), (5, 1_000_000, 1000), (300, 700, 500), (50_000, 50_000, 50_000), (1_000_000, 2_000_000, 3000), (20, 100_000, 60_000)]


def hyper_points(m, n, k):
    mean, s = k * m / (m + n), (k * m * n * (m + n - k) / ((m + n) ** 2 * (m + n - 1))) ** 0.5
    low, high = max(0, k - n), min(m, k)
    return sorted({min(high, max(low, round(mean + z * s))) for z in (-30, -6, -1, 0, 1, 6, 30)} | {low, high})


HYPER = [(x, *urn) for urn in URNS for x in hyper_points(*urn)]
add("dhyper", ["x", "m", "n", "k"], HYPER, lambda *at: exp(log_dhyper(*at)))
add("dhyper_log", ["x", "m", "n", "k"], HYPER, log_dhyper)
add("phyper", ["x", "m", "n", "k"], [(*at, l) for at in HYPER if at[0] < min(at[1], at[3]) for l in TAILS], hyper_tail, tail=True)

add("pt", ["t", "df"], [(*at, l) for at in T for l in TAILS], student_tail, tail=True)
add("pbeta", ["x", "a", "b"], [(*at, l) for at in BETA for l in TAILS], beta_tail, tail=True)

PS = [1e-300, 1e-80, 1e-10, 0.02, 0.3, 0.8]
add("qt", ["p", "df"], [(p, df, l) for df in (0.1, 0.5, 1, 2, 7, 100, 1e4, 1e6) for p in PS[:5] for l in TAILS], student_quantile, tail=True)

with open("test/reference/distribution_tails.json", "w", encoding="utf8") as out:
    heads = {
        "group": "distribution_tails",
        "title": "Shapes from 0.01 to a million, tails down to 1e-300, by power series and sums in many digits",
        "generator": f"scripts/reference/distribution-tails.py, mpmath {mp.__version__}",
        "conventions": "A check passes when |actual-expected| <= abs + rel*|expected|.",
    }
    out.write(json.dumps(heads)[:-1] + ',\n"cases":[\n' + ",\n".join(json.dumps(each) for each in CASES) + "]}\n")
