/** What the page to explore says of a choice and its counts: which of its phrases, with which numbers. */

import type { Proportion } from '../../proportions/interval.ts';

/** What flowers can be chosen by. */
export type ExploredBy = 'storage' | 'age' | 'season' | 'seedParent' | 'pollenParent';

/** The phrases of a language. */
export interface ChoicePhrases {
  readonly names: Readonly<Record<ExploredBy, string>>;
  readonly ageUnknown: string;
  readonly noFlowers: string;
  readonly noneFits: string;
  readonly everyFlower: string;
  /** Where no value of a dimension is chosen. */
  readonly none: string;
  /** Between a dimension's name and its values. */
  readonly colon: string;
  readonly asHighAs: (limit: string) => string;
  readonly asLowAs: (limit: string) => string;
  readonly took: (fruits: number, flowers: number, range: string) => string;
  readonly storageLabel: (storage: string) => string;
  readonly ageBandLabel: (band: { readonly from: number; readonly to: number | null }) => string;
  readonly joined: (parts: readonly string[]) => string;
  readonly counts: (fruits: number, flowers: number) => string;
  readonly wholeNumber: (count: number) => string;
  readonly limit: (end: number) => string;
  readonly rate: (proportion: Proportion) => string;
}

/** What a language says of choices and counts. */
export interface ChoiceWords {
  /** A value of a dimension as it is shown; an age is the first day of its band and the band's last, null for an open one. */
  readonly choiceLabel: (
    dimension: ExploredBy,
    key: string,
    band?: { readonly from: number; readonly to: number | null } | null,
  ) => string;
  /** The counts of a row in a chart: "41 of 120". */
  readonly rowCounts: (proportion: Proportion) => string;
  /** Rate and range beside a row's counts; of none and of all only how far it could still be. */
  readonly rateCell: (proportion: Proportion) => string;
  /** The sentence that follows the choice: "41 of 120 flowers took (about 3 in 10; could be 3 to 4 in 10)." */
  readonly chosenSaid: (proportion: Proportion) => string;
  /** What was chosen: "Storage: frozen. Season: 2023 and 2024."; every flower where nothing was left out. */
  readonly choiceSaid: (
    choices: readonly { readonly dimension: ExploredBy; readonly labels: readonly string[] }[],
  ) => string;
  /** The cells of a row of counts. */
  readonly countCells: (name: string, proportion: Proportion) => readonly string[];
}

/** What is said of choices and counts, from a language's phrases. */
export function choicesIn(phrases: ChoicePhrases): ChoiceWords {
  const { names, noFlowers, counts, wholeNumber, limit } = phrases;
  const rateCell = (proportion: Proportion): string => {
    const { fruits, flowers, lower, upper } = proportion;
    if (flowers === 0) return noFlowers;
    if (fruits === 0) return phrases.asHighAs(limit(upper ?? 1));
    if (fruits === flowers) return phrases.asLowAs(limit(lower ?? 0));
    return phrases.rate(proportion);
  };
  return {
    rateCell,
    choiceLabel: (dimension, key, band = null) => {
      if (dimension === 'storage') return phrases.storageLabel(key);
      if (dimension !== 'age') return key;
      return band === null ? phrases.ageUnknown : phrases.ageBandLabel(band);
    },
    rowCounts: ({ fruits, flowers }) => (flowers === 0 ? noFlowers : counts(fruits, flowers)),
    chosenSaid: (proportion) =>
      proportion.flowers === 0
        ? phrases.noneFits
        : phrases.took(proportion.fruits, proportion.flowers, rateCell(proportion)),
    choiceSaid: (choices) => {
      if (choices.length === 0) return phrases.everyFlower;
      const said = choices.map(({ dimension, labels }) => {
        const values = labels.length === 0 ? phrases.none : phrases.joined(labels);
        return `${names[dimension]}${phrases.colon}${values}.`;
      });
      return said.join(' ');
    },
    countCells: (name, proportion) => [
      name,
      wholeNumber(proportion.fruits),
      wholeNumber(proportion.flowers),
      rateCell(proportion),
    ],
  };
}
