import { type Estimate, type Interval, type Proportion, unknown } from '../proportions/interval.ts';
import { moverRatio } from '../proportions/mover.ts';
import { wilson } from '../proportions/one-sample.ts';
import type { Control } from '../season/season.ts';
import { proportion } from './proportion.ts';
import type { RawRates } from './raw.ts';

/** A rate of crosses with the background of a control taken out. */
export interface CorrectedRate {
  readonly control: Control;
  readonly storage: string;
  /** As counted. */
  readonly raw: Proportion;
  /** (raw − background) ÷ (1 − background); below 0 where the control took more often than the crosses. */
  readonly corrected: Estimate;
}

/** Key `controls` of the analysis: what sets fruit without a cross, and what that does to the rates. */
export interface Controls {
  /** Flowers that got no pollen: none at all is null because `no-flowers`. */
  readonly unpollinated: Proportion;
  /** Flowers that got their own plant's pollen, as a control. */
  readonly selfed: Proportion;
  /** One entry for each control that has flowers and each storage method. */
  readonly corrected: readonly CorrectedRate[];
}

/** Share of flowers that failed. */
function failures({ fruits, flowers }: Proportion, level: number): Interval {
  return wilson(flowers - fruits, flowers, { level });
}

/**
 * Abbott's formula: of the flowers that would have failed by themselves, the share that pollination made take. It is
 * one minus a ratio of two failure rates, so its range is that of the ratio, turned round.
 */
function corrected(raw: Proportion, background: Proportion, level: number): Estimate {
  const ratio = moverRatio(failures(raw, level), failures(background, level));
  if (ratio.estimate === null) return unknown('background-always-took');
  const turned = (end: number | null) => (end === null ? null : 1 - end);
  return { ...ratio, estimate: 1 - ratio.estimate, lower: turned(ratio.upper), upper: turned(ratio.lower) };
}

/**
 * Controls: how often flowers set fruit unpollinated or with their own pollen, and what the other rates would be
 * without that.
 *
 * Answers: is some of my fruit set not my work? A background of 0 of 5 may still be as high as 4 in 10, and the
 * corrected ranges carry that. Not where controls stood on other plants than the crosses: the background is theirs.
 *
 * @param raw key `raw` of the analysis
 * @param options `level` of the ranges, a proportion in (0, 1), 0.95 by default
 * @see Abbott (1925) Journal of Economic Entomology 18:265; Donner & Zou (2012) Stat Methods Med Res 21:347
 * @example
 * controlEffects(rawRates(season)).unpollinated.fruits; // fruits of flowers that got no pollen
 */
export function controlEffects(raw: RawRates, { level = 0.95 }: { readonly level?: number } = {}): Controls {
  const rateOf = (wanted: Control): Proportion => {
    const found = raw.controls.find(({ control }) => control === wanted);
    return proportion(found?.fruits ?? 0, found?.flowers ?? 0, level);
  };
  const rates = { unpollinated: rateOf('unpollinated'), selfed: rateOf('selfed') };
  return {
    ...rates,
    corrected: (['unpollinated', 'selfed'] as const)
      .filter((control) => rates[control].flowers > 0)
      .flatMap((control) =>
        raw.byStorage.map(({ storage, ...rate }) => ({
          control,
          storage,
          raw: rate,
          corrected: corrected(rate, rates[control], level),
        })),
      ),
  };
}
