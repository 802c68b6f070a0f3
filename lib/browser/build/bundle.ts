/** Compiled files of the library become one classic script for a browser. */

import { gzipSync } from 'node:zlib';
import { build, type Plugin } from 'esbuild';
import type { Language } from '../../words/language.ts';
import { WORDS_FOLDERS } from '../../words/languages.ts';
import { DIGITS } from '../unpacked.ts';

/** A bundle, and how many bytes of it come from each folder or package. */
export interface Bundle {
  readonly code: string;
  readonly bytesFrom: (part: string) => number;
}

/** How a program is bundled. */
export interface BundleOptions {
  /** Of all words in it; English where left out. */
  readonly language?: Language;
  /** What the page calls the things that the program exports. */
  readonly name?: string;
}

/** The words of a language, as a program to bundle imports them. */
export function wordsOf(language: Language): string {
  return language === 'en' ? './lib/words/index.js' : `./lib/words/${WORDS_FOLDERS[language]}/index.js`;
}

/** Whoever asks for English words from outside their floor is given those of a language, so that a page holds no others. */
function wordsIn(language: Language, folder: string): Plugin {
  const path = `${folder.replace(/[\\/]$/, '')}/${wordsOf(language).slice(2)}`;
  return {
    name: 'words',
    setup: ({ onResolve }) => {
      onResolve({ filter: /\/words\/[a-z-]+\.js$/ }, ({ path: asked }) =>
        // What loads words by their language is none itself.
        asked.endsWith('/languages.js') ? null : { path, sideEffects: false },
      );
    },
  };
}

/**
 * Bundles a program for a browser.
 *
 * @param program the text of the entry, whose imports are looked up from `folder`
 * @param folder absolute path of dist/
 * @throws Error by esbuild where something only Node has can be reached, or a language lacks words that are asked for
 */
export async function bundle(
  program: string,
  folder: string,
  { language = 'en', name }: BundleOptions = {},
): Promise<Bundle> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: program, resolveDir: folder },
    absWorkingDir: folder,
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    ...(name === undefined ? {} : { globalName: name }),
    platform: 'browser',
    // Short names follow the order of paths, which must be the same wherever packages are linked from.
    preserveSymlinks: true,
    tsconfigRaw: '{}',
    target: 'es2022',
    charset: 'utf8',
    legalComments: 'none',
    logLevel: 'error',
    metafile: true,
    alias: { 'csv-parse/sync': 'csv-parse/browser/esm/sync', fruitodds: './lib/index.js' },
    plugins: language === 'en' ? [] : [wordsIn(language, folder)],
    // A compiled notebook names its own address, which a classic script has none of.
    define: {
      'import.meta.url': '"fruitodds:notebook"',
      // Plot shifts lines by half a pixel on coarse screens; a drawing must not depend on the screen it is made at.
      'window.devicePixelRatio': '2',
    },
  });
  const [output] = Object.values(metafile.outputs);
  const inputs = Object.entries(output?.inputs ?? {});
  return {
    code: outputFiles[0]!.text,
    bytesFrom: (part) =>
      inputs.reduce((sum, [path, { bytesInOutput }]) => sum + (path.includes(part) ? bytesInOutput : 0), 0),
  };
}

/** Text as `unpacked` takes it. */
export function packed(text: string): string {
  const bytes = gzipSync(text, { level: 9 });
  let signs = '';
  for (let i = 0; i < bytes.length; i += 4) {
    const four = bytes.subarray(i, i + 4);
    let number = [0, 1, 2, 3].reduce((sum, k) => 256 * sum + (four[k] ?? 0), 0);
    let five = '';
    for (let k = 0; k < 5; k += 1) {
      five = DIGITS[number % 85]! + five;
      number = Math.floor(number / 85);
    }
    signs += five.slice(0, four.length + 1);
  }
  return signs;
}
