/** Compiled files of the library become one classic script for a browser. */

import { gzipSync } from 'node:zlib';
import { buildSync } from 'esbuild';

/** A bundle, and how many bytes of it come from each folder or package. */
export interface Bundle {
  readonly code: string;
  readonly bytesFrom: (part: string) => number;
}

/**
 * Bundles a program for a browser.
 *
 * @param program the text of the entry, whose imports are looked up from `folder`
 * @param folder absolute path of dist/
 * @throws Error by esbuild where something only Node has can be reached
 */
export function bundle(program: string, folder: string): Bundle {
  const { outputFiles, metafile } = buildSync({
    stdin: { contents: program, resolveDir: folder },
    absWorkingDir: folder,
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
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
  return gzipSync(text, { level: 9 }).toString('base64');
}
