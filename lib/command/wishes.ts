/** What the grower asks of every mix of the plan, as typed: `--must "A x B=2"`, `--at-most "A=5"`. */

import type { AnalyseOptions } from '../analyse.ts';
import { plantsApart } from '../analysis/plants-apart.ts';
import { plantsOf } from '../decisions/next-season.ts';
import type { Season } from '../season/season.ts';
import { Failure } from './failure.ts';
import { nearest } from './nearest.ts';

/** A wish as typed: a plant or a cross, and a number of flowers. */
export interface Wish {
  readonly names: string;
  readonly flowers: number;
}

/** The wishes of a command line. */
export interface Wishes {
  readonly must?: readonly Wish[];
  readonly atMost?: readonly Wish[];
  readonly samePlants?: true;
}

type WishOption = '--must' | '--at-most';

/**
 * A wish read from what was typed. Without a number a cross must be tried on one flower; a ceiling needs one.
 *
 * @throws Failure where there is no name, or no whole number after the last =
 */
export function wishOf(option: WishOption, text: string): Wish {
  const [, names = '', number] = /^\s*(.*?)\s*(?:=\s*(\d{1,6})\s*)?$/s.exec(text) ?? [];
  const flowers = number === undefined && option === '--must' ? 1 : Number(number ?? Number.NaN);
  if (names === '' || names.endsWith('=') || Number.isNaN(flowers)) {
    throw new Failure('option-value', { option, value: text, rule: option.slice(2), allowed: null });
  }
  return { names, flowers };
}

/**
 * The wishes as the analysis takes them: names of plants of the files.
 *
 * @throws Failure where there is no flowers file, a plant is in none of the files, or a wish can be read in two ways
 */
export function limitsOf(wishes: Wishes, read: Season): Pick<AnalyseOptions, 'must' | 'atMost'> {
  const { must = [], atMost = [], samePlants = false } = wishes;
  if (must.length + atMost.length === 0) return {};
  if (read.flowers.length === 0) {
    throw new Failure('wish-without-flowers', { option: must.length > 0 ? '--must' : '--at-most' });
  }
  const plants = plantsOf(plantsApart(read, { samePlants }).season);
  return {
    must: must.map(({ names, flowers }) => ({ ...crossOf('--must', names, plants), flowers })),
    atMost: atMost.map(({ names, flowers }) =>
      plants.has(names) || splits(names).length === 0
        ? { pollenParent: known('--at-most', names, plants), flowers }
        : { ...crossOf('--at-most', names, plants), flowers },
    ),
  };
}

interface CrossNames {
  readonly seedParent: string;
  readonly pollenParent: string;
}

/** Every way to read a text as a cross: a plant's name may hold an x itself. */
function splits(names: string): CrossNames[] {
  return [...names.matchAll(/\s+[xX]\s+|\s*×\s*/g)]
    .map(({ 0: sign, index }) => ({
      seedParent: names.slice(0, index).trim(),
      pollenParent: names.slice(index + sign.length).trim(),
    }))
    .filter(({ seedParent, pollenParent }) => seedParent !== '' && pollenParent !== '');
}

function crossOf(option: WishOption, names: string, plants: ReadonlySet<string>): CrossNames {
  const all = splits(names);
  const meant = all.filter(
    ({ seedParent, pollenParent }) => plants.has(seedParent) && plants.has(pollenParent),
  );
  if (meant.length > 1) throw new Failure('wish-unclear', { option, value: names });
  const [cross = all[0]] = meant;
  if (cross === undefined) {
    throw new Failure('option-value', { option, value: names, rule: option.slice(2), allowed: null });
  }
  return {
    seedParent: known(option, cross.seedParent, plants),
    pollenParent: known(option, cross.pollenParent, plants),
  };
}

function known(option: WishOption, plant: string, plants: ReadonlySet<string>): string {
  if (plants.has(plant)) return plant;
  throw new Failure('plant-unknown', { option, plant, nearest: nearestPlant(plant, [...plants]) });
}

/** Large and small letters do not count for nearness. */
function nearestPlant(plant: string, plants: readonly string[]): string | null {
  const small = plants.map((name) => name.toLowerCase());
  const found = nearest(plant.toLowerCase(), small);
  return found === null ? null : plants[small.indexOf(found)]!;
}
