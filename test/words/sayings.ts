/** How each language tells counts, rates and likelihoods, and what it leaves to the methods. Phrases by this project. */

import type { Language } from '../../lib/words/language.ts';

export interface Sayings {
  /** Counts that stand beside a rate. */
  readonly counts: RegExp;
  /** A rate with its range. */
  readonly rate: RegExp;
  /** Words of likelihood. */
  readonly likely: RegExp;
  /** What must follow such a word. */
  readonly numbered: RegExp;
  /** Words of tests. */
  readonly banned: RegExp;
}

export const SAYINGS: Readonly<Record<Language, Sayings>> = {
  en: {
    counts:
      /\d+ of (?:its |the |their |them )?\d+|\d+ of them with both outcomes|\bno flowers?\b|\bone flower (?:took|did not take)\b/i,
    rate: /\b(?:about|over|under) \d+ in 100?\b[^)]*could be|could be \d+ (?:in 100? )?to \d+ in 100?/,
    // Curves that are "as likely" are compared, no chance is told.
    likely: /\b(?:very likely|(?<!\bas )likely|very unlikely|unlikely|as likely as not|almost certainly)\b/gi,
    numbered: /^[^.;|(]{0,40}\((?:about |over |under )?\d+ in 100?\)/,
    banned: /\bp[- ]values?\b|\b(?:in)?significan\w*|\bprove[sdn]?\b|\bno effect\b/i,
  },
  de: {
    counts: /\d von (?!je )(?:\p{L}+ )?\d|keine Blüten|keine eigene Blüte|Die eine eigene Blüte/u,
    rate: /möglich: [^)]*von je 100?/,
    likely: /\b(?:sehr )?(?:un)?wahrscheinlich\b/giu,
    numbered: /^[^.;|(]{0,40}\((?:etwa |unter |über )?\d+ von je 100?\)/,
    banned: /signifikan|bewiesen|beweis(?:t|en)\b|p-Wert|keine? (?:Effekt|Wirkung)/i,
  },
  es: {
    counts: /\d de (?!cada )(?:\p{L}+ )?\d|ninguna flor|sin flores propias|Su única flor/u,
    rate: /quizá [^)]*de cada 100?/,
    likely: /\b(?:muy )?(?:im)?probable\b|\bincierto\b/giu,
    numbered: /^[^.;|(]{0,40}\([^)]*\d+ de cada 100?\)/,
    banned: /significativ|demostrad|demuestra|valor(?:es)? p\b|ningún efecto/i,
  },
  fr: {
    counts: /\d (?:\p{L}+ )?(?:sur|de ses) \d|aucune fleur|Sa seule fleur/u,
    rate: /peut-être [^)]*pour 100?\b/,
    likely: /(?<!\p{L})(?:très )?(?:peu )?probable(?!\p{L})/giu,
    numbered: /^[^.;|(]{0,40}\([^)]*\d+ pour 100?\)/,
    banned: /significati[fv]|prouv(?:e|é|er|ent)\b|démontr|valeurs? p\b|aucun effet/i,
  },
};
