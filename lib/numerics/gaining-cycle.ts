/** Cycles of a graph whose gains add up to more than nothing, and the best ways from a node where there are none. */

/**
 * A cycle of positive gain in a dense directed graph, by the algorithm of Bellman (1958) and Ford (1956) with a look
 * for cycles among the predecessors after each pass (Cherkassky & Goldberg 1999, Mathematical Programming 85:277–311).
 *
 * @param gains n × n by rows: what the edge from row to column gains; −Infinity where there is no edge
 * @param n number of nodes
 * @param least a cycle counts only where each of its edges gains this much on average
 * @returns the nodes in order, each once; null where no cycle gains
 * @example
 * gainingCycle(Float64Array.of(-Infinity, 2, -1, -Infinity), 2, 1e-12); // [1, 0]
 */
export function gainingCycle(gains: Float64Array, n: number, least: number): number[] | null {
  const best = new Float64Array(n);
  const before = new Int32Array(n).fill(-1);
  for (let pass = 0; pass <= n; pass += 1) {
    if (!improved(gains, n, least, best, before)) return null;
    const cycle = cycleOf(before);
    if (cycle !== null) return cycle;
  }
  return null;
}

/**
 * The most that a way from one node to each other gains, in a graph without gaining cycles; −Infinity where there is
 * no way.
 *
 * @param gains as for `gainingCycle`
 */
export function bestGains(gains: Float64Array, n: number, from: number, least: number): Float64Array {
  const best = new Float64Array(n).fill(Number.NEGATIVE_INFINITY);
  best[from] = 0;
  const before = new Int32Array(n).fill(-1);
  for (let pass = 0; pass < n; pass += 1) if (!improved(gains, n, least, best, before)) break;
  return best;
}

/** One pass over all edges; whether any node is reached better than before. */
function improved(
  gains: Float64Array,
  n: number,
  least: number,
  best: Float64Array,
  before: Int32Array,
): boolean {
  let any = false;
  for (let i = 0; i < n; i += 1) {
    const here = best[i]!;
    if (here === Number.NEGATIVE_INFINITY) continue;
    for (let j = 0, at = i * n; j < n; j += 1, at += 1) {
      if (here + gains[at]! > best[j]! + least) {
        best[j] = here + gains[at]!;
        before[j] = i;
        any = true;
      }
    }
  }
  return any;
}

function cycleOf(before: Int32Array): number[] | null {
  const seenFrom = new Int32Array(before.length).fill(-1);
  for (let start = 0; start < before.length; start += 1) {
    let node = start;
    while (node >= 0 && seenFrom[node] === -1) {
      seenFrom[node] = start;
      node = before[node]!;
    }
    if (node >= 0 && seenFrom[node] === start) return around(before, node);
  }
  return null;
}

/** The cycle through a node, in the direction of its edges. */
function around(before: Int32Array, node: number): number[] {
  const cycle = [node];
  for (let next = before[node]!; next !== node; next = before[next]!) cycle.push(next);
  return cycle.reverse();
}
