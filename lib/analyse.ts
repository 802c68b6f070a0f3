import type { AgePoint, HalfAge } from './analysis/age-curve.ts';
import type { FreshVersusStored } from './analysis/fresh-versus-stored.ts';
import type { GrowerModelRecord } from './analysis/grower-model.ts';
import type { AgeScale, FixedModel, ParentsModel } from './analysis/models.ts';
import type { PooledPair } from './analysis/pairs.ts';
import type { RawRates } from './analysis/raw.ts';
import type { RowCounts } from './analysis/rows.ts';
import type { VialAdvice } from './decisions/vials.ts';
import type { Endpoint, FileKind } from './season/season.ts';

/** Options of `analyse`; everything left out gets the default named here. */
export interface AnalyseOptions {
  /** Level of every range, 0.95 by default. */
  readonly level?: number;
  /** ISO date on which stored pollen is to be used; one year after the last pollination by default. */
  readonly useOn?: string;
  /** Age scale of every age model; by default decisions average both and textbook fits use log1p-days. */
  readonly ageScale?: AgeScale;
  /** The lowest fruit set that is worth a flower, a proportion; by default half that of fresh pollen. */
  readonly worth?: number;
}

/** The options as used, the season's own among them; null where a default could not be worked out. */
export interface OptionsUsed {
  readonly level: number;
  readonly endpoint: Endpoint;
  readonly asOf: string | null;
  readonly useOn: string | null;
  readonly ageScale: AgeScale | null;
  readonly worth: number | null;
}

/** Where the result came from. */
export interface Provenance {
  readonly version: string;
  readonly options: OptionsUsed;
  readonly files: readonly {
    readonly file: string;
    readonly kind: FileKind;
    readonly sha256: string;
    readonly rows: number;
  }[];
}

/** The threshold that verdicts use. */
export interface Worth {
  readonly value: number | null;
  readonly source: 'option' | 'half-of-fresh' | null;
  /** Posterior mean fruit set of fresh pollen, where the threshold is half of it. */
  readonly freshRate: number | null;
  readonly because?: string;
}

/** Everything a season tells: the contract's `analyse --json`, with codes where that has sentences. */
export interface Analysis {
  readonly provenance: Provenance;
  readonly rows: RowCounts;
  readonly raw: RawRates;
  readonly freshVersusStored: readonly FreshVersusStored[];
  readonly models: {
    readonly fixed: FixedModel;
    readonly parents: ParentsModel;
    readonly grower: GrowerModelRecord;
  };
  readonly ageCurve: readonly AgePoint[];
  readonly halfAge: readonly HalfAge[];
  readonly pairs: readonly PooledPair[];
  readonly worth: Worth;
  readonly vials: readonly VialAdvice[];
}
