"""Writes test/reference/two_proportions_corners.json: two proportions where formulas break, in 50-digit arithmetic.

Run from the project's folder: python3 scripts/reference/two-proportions-corners.py (needs mpmath; takes a minute or two).
No success, no failure, one trial, a million trials and lopsided sizes. Score intervals by nested bisection of their
definition, exact tests by summing every table of the margins.
"""

import json
import sys

import mpmath as mp

mp.mp.dps = 50
M = mp.mpf


def z_of(level):
    return mp.sqrt(2) * mp.erfinv(M(level))


def bisect(f, low, high):
    """Where an increasing condition begins to hold."""
    low, high = M(low), M(high)
    for _ in range(140):
        middle = (low + high) / 2
        if f(middle):
            high = middle
        else:
            low = middle
    return (low + high) / 2


def wilson(x, n, z, correct):
    """Newcombe (1998a), methods 3 and 4: roots of |x - n p| - correction = z sqrt(n p (1 - p))."""
    c = M("0.5") if correct else M(0)

    def root(shifted):
        a, b = n + z * z, 2 * shifted + z * z
        spread = z * mp.sqrt(z * z + 4 * shifted * (n - shifted) / M(n))
        return (b - spread) / (2 * a), (b + spread) / (2 * a)

    lower = M(0) if x == 0 else root(x - c)[0]
    upper = M(1) if x == n else root(x + c)[1]
    return lower, upper


def newcombe(x1, n1, x2, n2, z, correct=False):
    """Newcombe (1998b), methods 10 and 11."""
    p1, p2 = M(x1) / n1, M(x2) / n2
    (l1, u1), (l2, u2) = wilson(x1, n1, z, correct), wilson(x2, n2, z, correct)
    d = p1 - p2
    return [d - mp.sqrt((p1 - l1) ** 2 + (u2 - p2) ** 2), d + mp.sqrt((u1 - p1) ** 2 + (p2 - l2) ** 2)]


def restricted(x1, n1, x2, n2, d):
    """p2 that makes the counts likeliest where p1 = p2 + d, by bisection of the falling slope of the log likelihood."""
    low, high = max(M(0), -d), min(M(1), 1 - d)

    def falls(p2):
        p1 = p2 + d
        slope = M(0)
        for x, n, p in ((x1, n1, p1), (x2, n2, p2)):
            if x > 0:
                slope += x / p if p > 0 else mp.inf
            if x < n:
                slope -= (n - x) / (1 - p) if p < 1 else mp.inf
        return slope < 0

    return bisect(falls, low, high)


def score_z(x1, n1, x2, n2, d, factor):
    p2 = restricted(x1, n1, x2, n2, d)
    p1 = p2 + d
    variance = factor * (p1 * (1 - p1) / n1 + p2 * (1 - p2) / n2)
    return (M(x1) / n1 - M(x2) / n2 - d) / mp.sqrt(variance)


def score_interval(x1, n1, x2, n2, z, factor):
    """Miettinen & Nurminen (1985) with N / (N - 1), Mee (1984) without."""
    d = M(x1) / n1 - M(x2) / n2
    f = lambda at: score_z(x1, n1, x2, n2, at, factor)
    lower = M(-1) if d == -1 else bisect(lambda at: f(at) < z, -1, d)
    upper = M(1) if d == 1 else bisect(lambda at: f(at) < -z, d, 1)
    return [lower, upper]


class Tables:
    """Every table with the margins; x1 from least to most."""

    def __init__(self, x1, n1, x2, n2):
        self.x1, self.n1, self.n2, self.m = x1, n1, n2, x1 + x2
        self.least, self.most = max(0, self.m - n2), min(n1, self.m)

    def up(self, x):
        return M(self.n1 - x) * (self.m - x) / (M(x + 1) * (self.n2 - self.m + x + 1))

    def terms(self, psi=M(1)):
        """Pairs of x and its probability over that of x1, from x1 out to where nothing is left."""
        yield self.x1, M(1)
        for step in (1, -1):
            x, term, largest = self.x1, M(1), M(1)
            while self.least <= x + step <= self.most and term > largest * M(10) ** -48:
                term = term * self.up(x) * psi if step == 1 else term / (self.up(x - 1) * psi)
                x += step
                largest = max(largest, term)
                yield x, term

    def p_values(self):
        total = less = greater = rarer = equal = M(0)
        for x, term in self.terms():
            total += term
            less += term if x <= self.x1 else 0
            greater += term if x >= self.x1 else 0
            if abs(term - 1) < M(10) ** -30:
                equal += term
            elif term < 1:
                rarer += term
        own = 1 / total
        less, greater, rarer, equal = less * own, greater * own, rarer * own, equal * own
        both = rarer + equal
        fisher = {
            "p_two_sided": both, "p_less": less, "p_greater": greater,
            "p_twice_min_one_sided": min(M(1), 2 * min(less, greater)),
        }
        midp = {
            "less": less - own / 2, "greater": greater - own / 2,
            "two_sided_twice_min": min(M(1), 2 * min(less - own / 2, greater - own / 2)),
            "two_sided_minlike_minus_half_observed": both - own / 2,
            "two_sided_minlike_minus_half_ties": both - equal / 2,
        }
        return fisher, midp

    def tail(self, eta, above, share):
        total = part = M(0)
        for x, term in self.terms(mp.exp(eta)):
            total += term
            beyond = x > self.x1 if above else x < self.x1
            part += term if beyond else share * term if x == self.x1 else 0
        return part / total

    def mean(self, eta):
        total = sum_x = M(0)
        for x, term in self.terms(mp.exp(eta)):
            total += term
            sum_x += term * (x - self.x1)
        return sum_x / total

    def root(self, f):
        """Of an increasing function of the log odds ratio."""
        a, b = self.x1 + M("0.5"), self.n1 - self.x1 + M("0.5")
        c, d = self.m - self.x1 + M("0.5"), self.n2 - self.m + self.x1 + M("0.5")
        centre, reach = mp.log(a * d / (b * c)), M("0.01")
        low = high = centre
        while (flow := f(low)) > 0:
            low, reach = low - reach, 2 * reach
        reach = M("0.01")
        while (fhigh := f(high)) < 0:
            high, reach = high + reach, 2 * reach
        side = 0
        for _ in range(300):
            middle = (low + high) / 2 if _ < 3 else (low * fhigh - high * flow) / (fhigh - flow)
            fm = f(middle)
            if fm == 0 or high - low < M(10) ** -25:
                return mp.exp(middle)
            if fm > 0:
                high, fhigh = middle, fm
                flow = flow / 2 if side == 1 else flow
                side = 1
            else:
                low, flow = middle, fm
                fhigh = fhigh / 2 if side == -1 else fhigh
                side = -1
            if abs(fm) < M(10) ** -25:
                return mp.exp(middle)
        raise RuntimeError("no root")

    def odds_ratio(self, alpha):
        if self.least == self.most:
            return {"mle": "NaN", "exact_ci": [0, "Infinity"], "midp_ci": [0, "Infinity"]}
        found = {}
        for name, share in (("exact_ci", M(1)), ("midp_ci", M("0.5"))):
            lower = M(0) if self.x1 == self.least else self.root(lambda e: self.tail(e, True, share) - alpha / 2)
            upper = "Infinity" if self.x1 == self.most else self.root(lambda e: alpha / 2 - self.tail(e, False, share))
            found[name] = [lower, upper]
        if self.x1 == self.most:
            found["mle"] = "Infinity"
        else:
            found["mle"] = M(0) if self.x1 == self.least else self.root(self.mean)
        return found


def ratio(top, bottom, se, z, name):
    return {name: top / bottom, "se_log": se, "ci": [top / bottom * mp.exp(-z * se), top / bottom * mp.exp(z * se)]}


def chi_square(x1, n1, x2, n2, correct):
    m, n = x1 + x2, n1 + n2
    if m in (0, n):
        return {"statistic": "NaN", "p": "NaN"}
    cross = max(M(0), abs(M(x1) * n2 - M(x2) * n1) - (M(n) / 2 if correct else 0))
    statistic = cross**2 * n / (M(n1) * n2 * m * (n - m))
    return {"statistic": statistic, "p": mp.erfc(mp.sqrt(statistic / 2))}


def case(x1, n1, x2, n2, level):
    z, n = z_of(level), n1 + n2
    a, b, c, d = (M(v) + M("0.5") for v in (x1, n1 - x1, x2, n2 - x2))
    tables = Tables(x1, n1, x2, n2)
    fisher, midp = tables.p_values()
    expected = {
        "difference": M(x1) / n1 - M(x2) / n2,
        "newcombe_method10": newcombe(x1, n1, x2, n2, z),
        "newcombe_method11_cc": newcombe(x1, n1, x2, n2, z, True),
        "miettinen_nurminen": score_interval(x1, n1, x2, n2, z, M(n) / (n - 1)),
        "mee_score_no_N_factor": score_interval(x1, n1, x2, n2, z, M(1)),
        "fisher": fisher,
        "midp": midp,
        "conditional_or": tables.odds_ratio(1 - M(level)),
        "or_haldane_plus_half": ratio(a * d, b * c, mp.sqrt(1 / a + 1 / b + 1 / c + 1 / d), z, "or"),
        "chisq_pearson": chi_square(x1, n1, x2, n2, False),
        "chisq_yates": chi_square(x1, n1, x2, n2, True),
    }
    if 0 < x1 < n1 and 0 < x2 < n2:
        a, b, c, d = (M(v) for v in (x1, n1 - x1, x2, n2 - x2))
        expected["or_sample_woolf"] = ratio(a * d, b * c, mp.sqrt(1 / a + 1 / b + 1 / c + 1 / d), z, "or")
    if x1 > 0 and x2 > 0 and (x1 < n1 or x2 < n2):
        se = mp.sqrt(M(1) / x1 - M(1) / n1 + M(1) / x2 - M(1) / n2)
        expected["relative_risk_katz"] = ratio(M(x1) / n1, M(x2) / n2, se, z, "rr")
    return expected


def plain(value):
    if isinstance(value, dict):
        return {name: plain(part) for name, part in value.items()}
    if isinstance(value, list):
        return [plain(part) for part in value]
    return value if isinstance(value, str) else float(value)


BIG = 1_000_000
PAIRS = [
    (1, 1, 1, 1), (0, 1, 1, 1), (0, 1, 3, 7), (1, 1, 0, 40), (5, 5, 1, 1), (40, 40, 39, 40), (0, 500, 2, 500),
    (0, 1, BIG, BIG), (BIG, BIG, 0, 1), (0, BIG, 0, BIG), (0, BIG, 3, BIG), (BIG, BIG, BIG - 1, BIG),
    (BIG, BIG, BIG, BIG), (1, BIG, 1, BIG), (1, BIG, 0, 20), (7, 20, 250_000, BIG), (20, 20, 999_000, BIG),
    (500_000, BIG, 499_000, BIG), (120, BIG, 200, BIG), (2, 3, 600_000, BIG),
]
CASES = []
for x1, n1, x2, n2 in PAIRS:
    for level in (0.95,) if n1 + n2 > 1000 else (0.5, 0.95, 0.999):
        CASES.append({
            "id": f"corner-{x1}-{n1}-{x2}-{n2}-{level}",
            "source": f"definitions in 50-digit arithmetic, mpmath {mp.__version__}, scripts/reference/two-proportions-corners.py",
            "input": {"x1": x1, "n1": n1, "x2": x2, "n2": n2, "level": level},
            "expected": plain(case(x1, n1, x2, n2, level)),
            # A difference of two proportions near 1, or of an end from the estimate, leaves an absolute error only.
            "tolerance": {"rel": 1e-10, "abs": 1e-14, "byKey": {"conditional_or": {"rel": 1e-10, "abs": 0}}},
        })
        print(CASES[-1]["id"], file=sys.stderr, flush=True)

with open("test/reference/two_proportions_corners.json", "w", encoding="utf8") as out:
    heads = {
        "group": "two_proportions_corners",
        "title": "Two proportions where formulas break: no success, no failure, one trial, a million, lopsided sizes",
        "generator": f"scripts/reference/two-proportions-corners.py, mpmath {mp.__version__}",
        "conventions": "A check passes when |actual-expected| <= abs + rel*|expected|.",
    }
    out.write(json.dumps(heads)[:-1] + ',\n"cases":[\n' + ",\n".join(json.dumps(each) for each in CASES) + "]}\n")
