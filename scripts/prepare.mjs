// Compiles the library and the notebooks into dist/. `npm ci` runs it; so do the other scripts, which need dist/ fresh.

import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const dist = (...names) => join(root, 'dist', ...names);
const require = createRequire(import.meta.url);

/** Whether TypeScript is installed; `npm ci --omit=dev` leaves it out. */
function hasCompiler() {
  try {
    require.resolve('typescript/bin/tsc');
    return true;
  } catch {
    return false;
  }
}

/** Compiles lib/ to dist/lib; false, with the compiler's own messages printed, where a type is wrong. */
export function compileLibrary() {
  const compiler = require.resolve('typescript/bin/tsc');
  const { status } = spawnSync(process.execPath, [compiler, '-p', join(root, 'tsconfig.build.json')], {
    cwd: root,
    stdio: 'inherit',
  });
  copySchemas();
  bundleDrawing();
  if (existsSync(dist('lib', 'bin.js'))) chmodSync(dist('lib', 'bin.js'), 0o755);
  return status === 0;
}

/** The two drawing libraries are some 300 files: as one file each, a report starts a quarter of a second sooner. */
function bundleDrawing() {
  const entryPoints = ['plot.js', 'parse-html.js']
    .map((name) => dist('lib', 'charts', name))
    .filter(existsSync);
  require('esbuild').buildSync({
    entryPoints,
    outdir: dist('lib', 'charts'),
    allowOverwrite: true,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
}

/** JSON Schemas are no TypeScript: they go along as they are. */
function copySchemas() {
  const from = join(root, 'lib', 'schema');
  if (!existsSync(from)) return;
  mkdirSync(dist('lib', 'schema'), { recursive: true });
  for (const name of readdirSync(from).filter((file) => file.endsWith('.json'))) {
    writeFileSync(dist('lib', 'schema', name), readFileSync(join(from, name)));
  }
}

/** Whether a package is installed; those that some notebooks draw with are optional. */
function isInstalled(packageName) {
  try {
    import.meta.resolve(packageName);
    return true;
  } catch {
    return false;
  }
}

/** Folders of words in another language than English. */
const LANGUAGE_FOLDERS = { de: 'words/german/', es: 'words/spanish/', fr: 'words/french/' };

/**
 * What pages and results say whatever the season: a name that is such a word is no proof of a leak. Each language
 * besides English stands apart, since its words are in its own pages only.
 */
function ownTextModule(wordsIn, notebooks, translations) {
  const ownText = [wordsIn('en'), ...notebooks.flatMap(({ lines }) => lines)].join('\n');
  const ownTextIn = Object.keys(LANGUAGE_FOLDERS).map((language) => {
    const own = translations.filter((translation) => translation.language === language);
    return [language, [wordsIn(language), ...own.flatMap(({ own: { lines } }) => lines)].join('\n')];
  });
  return `export const ownText = ${JSON.stringify(ownText)};
export const ownTextIn = ${JSON.stringify(Object.fromEntries(ownTextIn))};
`;
}

/** The words of the library's sources in each language. */
function wordsOfLibrary(textOfSources) {
  const files = readdirSync(join(root, 'lib'), { recursive: true })
    .filter((name) => /\.(ts|json)$/.test(name))
    .sort()
    .map((name) => ({
      name: name.replaceAll('\\', '/'),
      text: readFileSync(join(root, 'lib', name), 'utf8'),
    }));
  const folders = Object.entries(LANGUAGE_FOLDERS);
  const english = files.filter(({ name }) => !folders.some(([, folder]) => name.startsWith(folder)));
  return new Map([
    ['en', textOfSources(english)],
    ...folders.map(([language, folder]) => [
      language,
      textOfSources(files.filter(({ name }) => name.startsWith(folder))),
    ]),
  ]);
}

/** What an answer was to the same words before; `answer` is asked only where they are new. */
function remembered(answer) {
  const known = new Map();
  return (key, words, ...given) => {
    const before = known.get(key);
    if (before?.words === words) return before.value;
    const value = answer(...given);
    known.set(key, { words, value });
    return value;
  };
}

/** The compiled parts of the library that compile notebooks. */
async function notebookBuilders() {
  const build = (name) => import(pathToFileURL(dist('lib', 'notebook', 'build', name)).href);
  const names = ['cells', 'check', 'compile', 'translation', 'text-of-sources'];
  const modules = await Promise.all([
    ...names.map((name) => build(`${name}.js`)),
    import(pathToFileURL(dist('lib', 'notebook', 'fault.js')).href),
  ]);
  return Object.assign({}, ...modules);
}

/**
 * What checks and compiles reports/*.md to dist/reports, and lists them. It may be asked again and again while the library
 * stays as it is: only what was changed is checked and compiled anew. It throws with one line a fault.
 */
export async function notebookCompiler() {
  const build = await notebookBuilders();
  const check = build.notebookChecker(root);
  const readOne = remembered(build.readNotebook);
  const compileOne = remembered(build.compileNotebook);
  const words = wordsOfLibrary(build.textOfSources);
  const written = new Map();
  const read = (name) => {
    const text = readFileSync(join(root, 'reports', name), 'utf8');
    return readOne(name, text, `reports/${name}`, text);
  };
  return () => {
    const files = readdirSync(join(root, 'reports')).filter((name) => name.endsWith('.md'));
    const paired = build.pairedNotebooks(files.sort().map(read));
    const notebooks = paired.originals.filter(({ packages }) => packages.every(isInstalled));
    const translations = paired.translations.filter(({ original }) => notebooks.includes(original));
    const faults = check(notebooks);
    if (faults.length > 0) throw new build.NotebookError(faults);
    const compiled = (own, ...parts) =>
      compileOne(own.name, parts.map(({ lines }) => lines.join('\n')).join('\0'), ...parts);
    const modules = new Map([
      ...notebooks.map((notebook) => [`${notebook.name}.js`, compiled(notebook, notebook)]),
      ...translations.map(({ original, own }) => [`${own.name}.js`, compiled(own, original, own)]),
      ...translations
        .filter(({ original }) => original.name === OWN_PAGE)
        .map(({ original, own }) => [`_${own.name}.js`, build.compileNotebook(original, own, 'bundled')]),
    ]);
    const names = [...notebooks, ...translations.map(({ own }) => own)].map(({ name }) => name);
    modules.set(
      '_own-text.js',
      ownTextModule((language) => words.get(language), notebooks, translations),
    );
    modules.set('_list.js', `export const names = ${JSON.stringify(names)};\n`);
    writeModules(modules, written);
  };
}

/** Writes compiled modules that are not as they were written last, and removes those that are no more. */
function writeModules(modules, written) {
  mkdirSync(dist('reports'), { recursive: true });
  for (const name of readdirSync(dist('reports'))) {
    if (!modules.has(name) && !isPart(name)) rmSync(dist('reports', name));
  }
  for (const [name, code] of modules) {
    if (written.get(name) !== code) writeFileSync(dist('reports', name), code);
    written.set(name, code);
  }
}

/** Checks and compiles reports/*.md to dist/reports once. */
export async function compileNotebooks() {
  (await notebookCompiler())();
}

/** The notebook that the page for one's own season runs. */
const OWN_PAGE = 'season-review';

const EXPLORE = '_explore.js';
const ownSeasonPart = (language) => `_own-season.${language}.js`;
const isPart = (name) => name === EXPLORE || /^_own-season\.[a-z]+\.js$/.test(name);

/** The script of the page to explore, null where the packages of its charts are not installed, and what it says. */
async function exploreParts({ exploreScript, exploreWords }, languages) {
  if (!['vega', 'vega-lite', 'vega-interpreter'].every(isInstalled)) return { script: null, said: {} };
  const { compile } = await import('vega-lite');
  const [script, ...said] = await Promise.all([
    exploreScript(dist()),
    ...languages.map(async (words) => [
      words.languageWords.code,
      await exploreWords(dist(), words, (specification) => compile(specification).spec),
    ]),
  ]);
  return { script, said: Object.fromEntries(said) };
}

/** Writes values as a module of that name beside the compiled notebooks. */
function writePart(name, values) {
  const lines = Object.entries(values).map(
    ([key, value]) => `export const ${key} = ${JSON.stringify(value)};\n`,
  );
  writeFileSync(dist('reports', name), lines.join(''));
}

/** A module of the compiled library that builds a page with a script. */
const pageBuilder = (name) => import(pathToFileURL(dist('lib', 'browser', 'build', name)).href);

/** The words of some languages, by their codes; of all, where none are named. */
async function wordsOfLanguages(codes) {
  const { LANGUAGES, wordsIn } = await import(pathToFileURL(dist('lib', 'words', 'languages.js')).href);
  return Promise.all((codes ?? LANGUAGES).map(wordsIn));
}

/** Builds the page for one's own season in some languages. */
export async function compileOwnSeason(codes) {
  const [{ ownSeasonPage }, { ownText }, languages] = await Promise.all([
    pageBuilder('own-season-page.js'),
    import(pathToFileURL(dist('lib', 'notebook', 'own-text.js')).href),
    wordsOfLanguages(codes),
  ]);
  const build = async (words) => {
    const { code } = words.languageWords;
    const parts = await ownSeasonPage(dist(), words, await ownText(code));
    writePart(ownSeasonPart(code), { parts });
  };
  await Promise.all(languages.map(build));
}

async function compileExplore() {
  const [builder, languages] = await Promise.all([pageBuilder('explore-script.js'), wordsOfLanguages()]);
  writePart(EXPLORE, await exploreParts(builder, languages));
}

/** Builds what the pages with a script are made of, whatever the season, in every language. */
async function compilePages() {
  await Promise.all([compileOwnSeason(), compileExplore()]);
}

/** Compiles everything that dist/ holds; the exit status. */
export async function compileAll() {
  if (!compileLibrary()) return 1;
  try {
    await compileNotebooks();
    await compilePages();
    return 0;
  } catch (error) {
    console.error(error instanceof Error && error.name === 'NotebookError' ? error.message : error);
    return 1;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (hasCompiler()) process.exitCode = await compileAll();
  else
    console.log('fruitodds: TypeScript is not installed, so nothing is compiled and dist/ stays as it is.');
}
