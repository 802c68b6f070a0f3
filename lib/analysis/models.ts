export type AgeScale = 'days' | 'log1p-days';

/** One coefficient on the logit scale, with its range and p-value. An end without a bound is null. */
export interface ModelTerm {
  readonly term: string;
  readonly estimate: number;
  readonly se: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly p: number | null;
}

/** Key `models.fixed`: textbook logistic regression of fruit set on storage and pollen age within storage. */
export interface FixedModel {
  readonly method: 'maximum-likelihood' | 'firth' | null;
  readonly ageScale: AgeScale;
  readonly separated: boolean;
  readonly separatedBy: readonly string[];
  /** Storage methods whose age term was left out since they were tried at one age only. */
  readonly withoutAgeTerm: readonly string[];
  readonly flowers: number;
  readonly terms: readonly ModelTerm[];
  readonly logLik: number | null;
  /** Checks of fit, null where the model could not be fitted. */
  readonly auc: number | null;
  readonly brier: number | null;
  /** Why there is no fit; left out where there is one. */
  readonly because?: string;
}

/** One conditional mode of a random effect with its standard error, on the logit scale. */
export interface ParentEffect {
  readonly effect: string;
  readonly level: string;
  readonly seedParent?: string;
  readonly pollenParent?: string;
  readonly estimate: number;
  readonly se: number;
}

/** Key `models.parents`: crossed random effects by Laplace's approximation, textbook, no prior. */
export interface ParentsModel {
  readonly ageScale: AgeScale;
  readonly flowers: number;
  readonly terms: readonly ModelTerm[];
  /** Fixed terms left out since they are constant or follow from terms before them. */
  readonly withoutTerms: readonly string[];
  /** Variances by effect: `seedParent`, `pollenParent`, `pair`, and `vial`, `morning` where there are several. */
  readonly variances: Readonly<Record<string, number>>;
  /** Effects whose variance came out as 0. */
  readonly singular: readonly string[];
  /** Effects left out since the flowers cannot tell them: one level, one flower a level, or levels as of an effect before. */
  readonly withoutEffects: readonly string[];
  readonly effects: readonly ParentEffect[];
  readonly logLik: number | null;
  readonly because?: string;
}
