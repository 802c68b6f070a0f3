/** Which pages a site has in each of its languages, and where they stand. */

import type { Language } from '../words/language.ts';
import type { PageWords } from './page.ts';
import type { CompiledNotebook } from './run.ts';
import type { SiteEntry, SitePlace } from './site-contents.ts';

/** What a page is made from in one language: a notebook, or anything else of that name. */
export type PageVersion = Pick<CompiledNotebook, 'name' | 'language' | 'title' | 'description'>;

/** A page to be made: one version of it under its address, with the words of its frame. */
export interface PlannedPage<Version extends PageVersion = PageVersion> {
  readonly version: Version;
  readonly address: string;
  readonly words: PageWords;
}

/** The pages of one language of a site, in their order. */
export interface LanguagePages<Version extends PageVersion = PageVersion> {
  readonly language: Language;
  /** What stands between a file's name and its ending: nothing in the site's first language, `.de` in a second. */
  readonly suffix: string;
  readonly pages: readonly PlannedPage<Version>[];
}

const codeOf = ({ languageWords }: PageWords): Language => languageWords.code;
const languageOf = ({ language = 'en' }: PageVersion): Language => language;

/**
 * The pages of a site in each of its languages. The first language has every page, in English where there is no
 * translation; the others have the pages that there are.
 *
 * @param versions of all pages in their order, translations among them
 * @param words of each language, that of the site first
 * @param english the frame of pages that are in English
 */
export function pagesByLanguage<Version extends PageVersion>(
  versions: readonly Version[],
  words: readonly PageWords[],
  english: PageWords,
): LanguagePages<Version>[] {
  const names = [...new Set(versions.map(({ name }) => name))];
  return words.map((own, at) => {
    const language = codeOf(own);
    const suffix = at === 0 ? '' : `.${language}`;
    const pages = names.flatMap((name): PlannedPage<Version>[] => {
      const those = versions.filter((version) => version.name === name);
      const translated = those.find((version) => languageOf(version) === language);
      const version = translated ?? (at === 0 ? those.find((one) => languageOf(one) === 'en') : undefined);
      if (version === undefined) return [];
      return [{ version, address: `${name}${suffix}.html`, words: translated ? own : english }];
    });
    return { language, suffix, pages };
  });
}

/** A page as others list it; its language where it is not theirs. */
export function entryOf({ version, address }: PlannedPage, reading: Language): SiteEntry {
  const { title, description } = version;
  const language = languageOf(version);
  return { name: address, title, description, bytes: 0, ...(language === reading ? {} : { language }) };
}

/**
 * The pages that readers of a language are shown: theirs, and those that the site has in its first language only.
 *
 * @param all as `pagesByLanguage` gives them
 */
export function listedIn({ pages, language }: LanguagePages, all: readonly LanguagePages[]): SiteEntry[] {
  return all[0]!.pages.map((first) => {
    const own = pages.find(({ version }) => version.name === first.version.name);
    return entryOf(own ?? first, language);
  });
}

/** The same page in the site's other languages. */
export function twinsOf(page: PlannedPage, all: readonly LanguagePages[]): SitePlace['twins'] {
  const same = all.flatMap(({ pages }) => pages.filter(({ version }) => version.name === page.version.name));
  return same
    .filter(({ address }) => address !== page.address)
    .map(({ address, words: { languageWords } }) => ({
      ...{ address, language: languageWords.code, name: languageWords.name },
    }));
}
