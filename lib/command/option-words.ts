/** The words of a command line → values by option. Node's own reader is kept apart from what any engine can run. */

import { parseArgs } from 'node:util';
import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';
import type { OptionRule } from './option-rules.ts';
import type { Values } from './option-values.ts';

const SHORT: Readonly<Record<string, string>> = { output: 'o', help: 'h' };

/** Reads the words after `fruitodds` into values by option, refusing what no rule knows. */
export function valuesOf(
  argv: readonly string[],
  rules: readonly OptionRule[],
): { values: Values; words: string[] } {
  const { tokens } = parseArgs({
    args: [...argv],
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      rules.map(({ name, value }) => [
        name,
        {
          type: value ? ('string' as const) : ('boolean' as const),
          ...(SHORT[name] && { short: SHORT[name] }),
        },
      ]),
    ),
  });
  const values = new Map<string, string[]>();
  const words: string[] = [];
  const taken = new Set<number>();
  for (const [at, token] of tokens.entries()) {
    if (token.kind === 'positional' && !taken.has(at)) words.push(token.value);
    if (token.kind !== 'option') continue;
    const rule = ruleFor(token.name, token.rawName, rules);
    const next = tokens[at + 1];
    const follows =
      next?.kind === 'positional' && rule.choices?.includes(next.value) ? next.value : undefined;
    if (follows !== undefined) taken.add(at + 1);
    keep(values, rule, token.rawName, token.value ?? follows);
  }
  return { values, words };
}

function ruleFor(name: string, rawName: string, rules: readonly OptionRule[]): OptionRule {
  const rule = rules.find((known) => known.name === name);
  if (rule === undefined) {
    const known = rules.map((option) => `--${option.name}`);
    throw new Failure('option-unknown', { option: rawName, nearest: nearest(rawName, known) });
  }
  if (rule.later) throw new Failure('option-not-available', { option: rawName });
  return rule;
}

export function keep(
  values: Map<string, string[]>,
  rule: OptionRule,
  option: string,
  value: string | undefined,
): void {
  const missing = value === undefined || value === '' || /^-[-a-z]/i.test(value);
  if (rule.value && missing) throw new Failure('option-needs-value', { option, placeholder: rule.value });
  if (!rule.value && !rule.choices && value !== undefined)
    throw new Failure('option-takes-no-value', { option, value });
  const earlier = values.get(rule.name);
  if (earlier && rule.value && !rule.repeatable) throw new Failure('option-twice', { option });
  values.set(rule.name, [...(earlier ?? []), value ?? '']);
}
