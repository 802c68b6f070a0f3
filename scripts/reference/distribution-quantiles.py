"""Writes test/reference/distribution_quantiles.json: quantiles of tails from 1e-300 to 0.999, and far normal tails.

Run from the project's folder: python3 scripts/reference/distribution-quantiles.py (needs mpmath; takes a few minutes).
A quantile is the root of log tail = log p, in 40 digits, of the tail summed from its own end: power series and
continued fractions, plain sums of the ratios of neighbouring probabilities for counts. Arguments are doubles
taken exactly; results are printed with 17 digits, so they round-trip.
"""

import json
import statistics
import sys
from itertools import product

import mpmath as mp

mp.mp.dps = 40
M = mp.mpf
ENOUGH = M(10) ** -38
TAILS = (True, False)
PS = [1e-300, 1e-80, 1e-10, 1e-3, 0.02, 0.3, 0.8, 0.999]


class TooSlow(Exception):
    """The point is left out."""


def series(ratio, most=30_000):
    term, total, n = M(1), M(1), 0
    while term > ENOUGH * total:
        term *= ratio(n)
        total += term
        n += 1
        if n > most:
            raise TooSlow
    return total


def gamma_upper(x, a):
    """Abramowitz & Stegun (1964), 6.5.31, by Lentz's method; far above the mean."""
    b = x + 1 - a
    c, d = M(10) ** 60, 1 / b
    h = d
    for i in range(1, 200_000):
        b += 2
        d = 1 / (i * (a - i) * d + b)
        c = b + i * (a - i) / c
        h *= d * c
        if abs(d * c - 1) < ENOUGH:
            return h * mp.exp(a * mp.log(x) - x - mp.loggamma(a))
    raise TooSlow


def gamma_tail(x, a, lower):
    if not lower and x > a + 1 + 8 * mp.sqrt(a):
        return gamma_upper(x, a)
    if lower and x > a + 1 + 8 * mp.sqrt(a):
        return 1 - gamma_upper(x, a)
    p = mp.exp(a * mp.log(x) - x - mp.loggamma(a + 1)) * series(lambda n: x / (a + 1 + n))
    return p if lower else 1 - p


def beta_lower(x, y, a, b):
    """Abramowitz & Stegun (1964), 26.5.4 summed."""
    front = mp.exp(a * mp.log(x) + b * mp.log(y) + mp.loggamma(a + b) - mp.loggamma(a + 1) - mp.loggamma(b))
    return front * series(lambda n: x * (a + b + n) / (a + 1 + n))


def beta_tail(logit, a, b, lower):
    """At the x whose logit is given."""
    x, y = 1 / (1 + mp.exp(-logit)), 1 / (1 + mp.exp(logit))
    direct = x < a / (a + b)
    p = beta_lower(x, y, a, b) if direct else beta_lower(y, x, b, a)
    return p if direct == lower else 1 - p


def root(tail, slope, p, lower, start):
    """u at which log tail(u) = log p, by Newton's method: the logarithm of either tail is concave in u."""
    goal, sign, u, reach = mp.log(M(p)), 1 if lower else -1, M(start), M(4)
    for _ in range(100):
        t = tail(u)
        step = (goal - mp.log(t)) * t / slope(u) * sign
        if abs(step) > reach:
            step = reach if step > 0 else -reach
            reach *= 2
        u += step
        if abs(step) < M(10) ** -28 * (1 + abs(u)):
            return u
    raise TooSlow


def gamma_quantile(p, shape, lower):
    a = M(shape)
    slope = lambda v: mp.exp(a * v - mp.exp(v) - mp.loggamma(a))
    far = mp.log(a + 40 * mp.sqrt(a) + 800)
    start = min(mp.digamma(a) + normal_start(p, lower) * mp.sqrt(mp.psi(1, a)), far)
    return mp.exp(root(lambda v: gamma_tail(mp.exp(v), a, lower), slope, p, lower, start))


def normal_start(p, lower):
    z = M(statistics.NormalDist().inv_cdf(p))
    return z if lower else -z


def beta_quantile(p, a, b, lower):
    a, b = M(a), M(b)
    log_beta = mp.loggamma(a) + mp.loggamma(b) - mp.loggamma(a + b)
    slope = lambda v: mp.exp(-a * mp.log1p(mp.exp(-v)) - b * mp.log1p(mp.exp(v)) - log_beta)
    spread = mp.sqrt(mp.psi(1, a) + mp.psi(1, b))
    start = mp.digamma(a) - mp.digamma(b) + normal_start(p, lower) * spread
    return 1 / (1 + mp.exp(-root(lambda v: beta_tail(v, a, b, lower), slope, p, lower, start)))


def log_choose(n, k):
    return mp.loggamma(M(n) + 1) - mp.loggamma(M(k) + 1) - mp.loggamma(M(n - k) + 1)


def binom_tail(x, n, p, lower):
    """P(X <= x), or P(X > x)."""
    at = x if x < n * p else x + 1
    front = mp.exp(log_choose(n, at) + at * mp.log(p) + (n - at) * mp.log(1 - p))
    if x < n * p:
        total = front * series(lambda j: M(at - j) * (1 - p) / ((n - at + 1 + j) * p))
    else:
        total = front * series(lambda j: M(n - at - j) * p / ((at + 1 + j) * (1 - p)))
    return total if (x < n * p) == lower else 1 - total


def hyper_tail(x, m, n, k, lower):
    below = x < M(k) * m / (m + n)
    at = x if below else x + 1
    front = mp.exp(log_choose(m, at) + log_choose(n, k - at) - log_choose(m + n, k))
    if below:
        total = front * series(lambda j: M(at - j) * (n - k + at - j) / (M(m - at + 1 + j) * (k - at + 1 + j)))
    else:
        total = front * series(lambda j: M(m - at - j) * (k - at - j) / (M(at + 1 + j) * (n - k + at + 1 + j)))
    return total if below == lower else 1 - total


def whole_quantile(tail, q, low, high, lower):
    """The least x with P(X <= x) >= q, or P(X > x) <= q."""
    q = M(q)

    def enough(x):
        found = (M(1) if lower else M(0)) if x >= high else tail(x)
        if abs(found - q) < M(10) ** -12 * q:
            raise TooSlow  # the next double could decide otherwise
        return found >= q if lower else found <= q

    below, at = low - 1, high
    while at - below > 1:
        middle = (below + at) // 2
        if enough(middle):
            at = middle
        else:
            below = middle
    return at


def binom_quantile(q, n, p, lower):
    return whole_quantile(lambda x: binom_tail(x, n, M(p), lower), q, 0, n, lower)


def hyper_quantile(q, m, n, k, lower):
    return whole_quantile(lambda x: hyper_tail(x, m, n, k, lower), q, max(0, k - n), min(m, k), lower)


def normal_quantile(p, lower):
    tail = lambda v: mp.ncdf(v if lower else -v)
    return root(tail, mp.npdf, p, lower, normal_start(p, lower))


CASES = []


def add(name, columns, grid, value, rel="1e-12", absolute=0):
    kept = {column: [] for column in columns}
    expected = []
    for point in grid:
        try:
            found = value(*point)
        except (TooSlow, ValueError, ZeroDivisionError):
            continue
        # Below 1e-300 doubles begin to lose digits.
        if found != 0 and not M("1e-300") < abs(found) < M("1e300"):
            continue
        for column, cell in zip(columns, point):
            kept[column].append(cell)
        expected.append(float(found))
    CASES.append({
        "id": name,
        "source": f"root and sums in {mp.mp.dps} digits, mpmath {mp.__version__}",
        "input": {"arguments": kept},
        "expected": {"value": expected},
        "tolerance": {"rel": float(rel), "abs": absolute},
    })
    print(name, len(expected), "of", len(list(grid)), file=sys.stderr, flush=True)


SHAPES = [0.01, 0.1, 0.5, 1, 3, 30, 1000, 1e6]
add("qnorm", ["p", "lower"], [*product(PS, TAILS)], normal_quantile)
add("pnorm", ["x", "lower"], [(x, l) for x in (-37, -12.5, -5.66, -0.675, -1e-9, 0.3, 2) for l in TAILS],
    lambda x, l: mp.ncdf(x if l else -x))
add("plognorm", ["x", "lower"], [(x, True) for x in (-1e8, -1e4, -100, -38.5, -6, -0.6, 0.7, 5, 12)],
    lambda x, l: mp.log1p(-mp.ncdf(-M(x))) if x > 0 else -M(x) ** 2 / 2 + mp.log(mp.erfc(-x / mp.sqrt(2)) * mp.exp(M(x) ** 2 / 2) / 2)
    if x > -1000 else -M(x) ** 2 / 2 - mp.log(-x * mp.sqrt(2 * mp.pi)) + mp.log(1 - 1 / M(x) ** 2 + 3 / M(x) ** 4 - 15 / M(x) ** 6 + 105 / M(x) ** 8))
add("qgamma", ["p", "shape", "lower"], [*product(PS, SHAPES, TAILS)], gamma_quantile)
add("qchisq", ["p", "df", "lower"], [*product(PS, (0.1, 1, 2, 7, 5000), TAILS)], lambda p, df, l: 2 * gamma_quantile(p, M(df) / 2, l))
BETAS = (0.01, 0.5, 3, 200, 1e5)
add("qbeta", ["p", "a", "b", "lower"], [*product((1e-300, 1e-80, 1e-10, 0.02, 0.3, 0.8), BETAS, BETAS, TAILS)], beta_quantile)
add("qbinom", ["q", "n", "p", "lower"], [*product(PS, (1, 3, 40, 5000, 1_000_000), (1e-9, 0.01, 0.3, 0.5, 0.98), TAILS)], binom_quantile)
ENDS = [(n - d, n, p) for n in (2, 40, 1_000_000) for d in (1, 2) for p in (1e-9, 0.3, 0.98)]
log_dbinom = lambda x, n, p: log_choose(n, x) + x * mp.log(M(p)) + (n - x) * mp.log(1 - M(p))
add("dbinom_log", ["x", "n", "p"], ENDS, log_dbinom, absolute=2e-13)
URNS = [(1, 1, 1), (5, 1_000_000, 1000), (300, 700, 500), (50_000, 50_000, 50_000), (1_000_000, 2_000_000, 3000), (20, 100_000, 60_000)]
add("qhyper", ["q", "m", "n", "k", "lower"], [(q, *urn, l) for q in PS for urn in URNS for l in TAILS], hyper_quantile)
LOPSIDED = [(1_000_000, 1, 1_000_000), (1, 1_000_000, 1_000_000), (1_000_000, 1_000_000, 1_999_999), (3, 1_000_000, 999_998)]
add("phyper", ["x", "m", "n", "k", "lower"], [(max(0, k - n), m, n, k, l) for (m, n, k) in LOPSIDED for l in TAILS], hyper_tail)

with open("test/reference/distribution_quantiles.json", "w", encoding="utf8") as out:
    heads = {
        "group": "distribution_quantiles",
        "title": "Quantiles of tails from 1e-300 to 0.999 and far normal tails, in 40 digits",
        "generator": f"scripts/reference/distribution-quantiles.py, mpmath {mp.__version__}",
        "conventions": "A check passes when |actual-expected| <= abs + rel*|expected|.",
    }
    out.write(json.dumps(heads)[:-1] + ',\n"cases":[\n' + ",\n".join(json.dumps(each) for each in CASES) + "]}\n")
