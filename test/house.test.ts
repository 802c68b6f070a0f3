/** The house checks itself: order of the floors, packages, sizes, mirrored tests, documented doors. */

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/** What a floor may import from: floors below it, and packages. A file of `lib/` itself is a floor of its own. */
interface Floor {
  readonly below: readonly string[];
  /** Floors whose types alone may be imported. */
  readonly typesOf?: readonly string[];
  readonly packages?: readonly string[];
}

const statistics = ['numerics', 'proportions', 'regression'];
const results = [...statistics, 'season', 'analysis', 'decisions', 'analyse', 'version'];
/** The folders of languages besides English. */
const languages = ['words/german', 'words/spanish', 'words/french'];
const wordings = ['words', 'words/told', ...languages];
const texts = [...results, ...wordings, 'charts', 'notebook'];

const floors: ReadonlyMap<string, Floor> = new Map(
  Object.entries({
    numerics: { below: [] },
    proportions: { below: ['numerics'] },
    regression: { below: ['numerics', 'proportions'] },
    season: { below: [], packages: ['csv-parse/sync', 'fflate', 'saxen'] },
    version: { below: [] },
    analysis: { below: [...statistics, 'season'], packages: ['simple-statistics'] },
    decisions: { below: [...statistics, 'season', 'analysis'], packages: ['simple-statistics'] },
    analyse: { below: [...statistics, 'season', 'analysis', 'decisions', 'version'] },
    'words/told': { below: [], typesOf: results },
    ...Object.fromEntries(
      languages.map((language) => [language, { below: ['words/told'], typesOf: [...results, 'words'] }]),
    ),
    words: { below: ['words/told', ...languages], typesOf: results },
    charts: { below: [...results, ...wordings], packages: ['@observablehq/plot', 'linkedom'] },
    notebook: { below: [...results, ...wordings, 'charts'] },
    'notebook/build': {
      below: texts,
      packages: ['esbuild', 'markdown-it', 'typescript', 'node:path'],
    },
    browser: { below: [...texts, 'command'] },
    'browser/build': { below: [...texts, 'command', 'browser'], packages: ['esbuild', 'node:zlib'] },
    command: { below: texts, packages: ['node:util'] },
    index: { below: texts },
    'in-language': { below: [...texts, 'index'] },
    bin: { below: [...texts, 'browser', 'command', 'index'] },
  }),
);

/** The only files that touch what lies outside of the program, and by which of Node's own modules. */
const effects: ReadonlyMap<string, readonly string[]> = new Map([
  ['notebook/output.ts', ['node:fs', 'node:path']],
  ['bin.ts', ['node:crypto', 'node:fs', 'node:path', 'node:process', 'node:url']],
]);

/** Files without a test of their own name, and the test that reaches all of what they do. Types alone need none. */
const testedBy: ReadonlyMap<string, string> = new Map([
  ['browser/build/own-season-page.ts', 'browser/own-season.test.ts'],
  ['browser/build/explore-script.ts', 'browser/explore.test.ts'],
  ['browser/explore-page.ts', 'browser/explore.test.ts'],
  ['browser/explore-skeleton.ts', 'browser/explore.test.ts'],
  ['browser/explore-spec.ts', 'browser/explore.test.ts'],
  ['browser/flow.ts', 'browser/own-season.test.ts'],
  ['browser/form-values.ts', 'browser/own-season.test.ts'],
  ['browser/page.ts', 'browser/own-season.test.ts'],
  ['browser/places.ts', 'browser/own-season.test.ts'],
  ['browser/saving.ts', 'browser/own-season.test.ts'],
  ['browser/settings-file.ts', 'browser/own-season-options.test.ts'],
  ['browser/sharing.ts', 'browser/own-season-options.test.ts'],
  ['browser/showing.ts', 'browser/own-season.test.ts'],
  ['browser/skeleton.ts', 'browser/own-season.test.ts'],
  ['browser/starter.ts', 'browser/own-season.test.ts'],
  ['browser/style.ts', 'browser/own-season.test.ts'],
  ['browser/worker.ts', 'browser/own-season.test.ts'],
  ['charts/parse-html.ts', 'charts/paper.test.ts'],
  ['charts/plot.ts', 'charts/sheet.test.ts'],
  ['index.ts', 'house.test.ts'],
  ['words/command.ts', 'command/check-text.test.ts'],
  ['words/index.ts', 'words/languages.test.ts'],
  ['words/language.ts', 'words/languages.test.ts'],
  ['words/page.ts', 'notebook/page.test.ts'],
  ['words/crossing-sheet-page.ts', 'words/languages.test.ts'],
  ['words/fresh-against-frozen-page.ts', 'words/languages.test.ts'],
  ['words/next-season-page.ts', 'words/languages.test.ts'],
  ['words/old-vials-page.ts', 'words/languages.test.ts'],
  ['words/problems-page.ts', 'words/languages.test.ts'],
  ['words/review-page.ts', 'words/languages.test.ts'],
  ['words/seed-list-page.ts', 'words/languages.test.ts'],
  ['words/start-page.ts', 'words/languages.test.ts'],
  ['in-language.ts', 'words/languages.test.ts'],
  ['words/told/number-grammar.ts', 'words/numbers.test.ts'],
  ['words/told/alike-problems.ts', 'words/file-findings.test.ts'],
  ['words/told/findings.ts', 'words/findings.test.ts'],
  ['words/told/refusals.ts', 'words/refusals.test.ts'],
  ['words/told/estimates.ts', 'words/season-facts.test.ts'],
  ['words/told/lengths.ts', 'words/durations.test.ts'],
  ['words/told/mixes.ts', 'words/plan.test.ts'],
  ['words/told/places.ts', 'words/problem-place.test.ts'],
  ['words/told/review.ts', 'words/review.test.ts'],
  ['words/told/seeds.ts', 'words/seeds.test.ts'],
  ['words/told/sheet.ts', 'words/sheet.test.ts'],
  ['words/told/settling.ts', 'words/settle.test.ts'],
  ['words/told/vials.ts', 'words/old-vials.test.ts'],
  ['words/told/choices.ts', 'words/explore.test.ts'],
  ['words/told/page-fixes.ts', 'words/own-season.test.ts'],
  ['words/told/stages.ts', 'words/own-season.test.ts'],
  ['words/told/file-names.ts', 'browser/own-season.test.ts'],
  ['words/catalogue-cells.ts', 'words/problem-catalogue.test.ts'],
  ['words/catalogue-entry.ts', 'words/problem-catalogue.test.ts'],
  ['words/catalogue-files.ts', 'words/problem-catalogue.test.ts'],
  ['words/catalogue-rows.ts', 'words/problem-catalogue.test.ts'],
  ['notebook/build/flat.ts', 'notebook/check.test.ts'],
]);

interface Import {
  readonly address: string;
  readonly typeOnly: boolean;
}

interface SourceFile {
  /** Path under lib/, with forward slashes. */
  readonly path: string;
  readonly source: ts.SourceFile;
  readonly imports: readonly Import[];
}

function readSource(path: string): SourceFile {
  const text = readFileSync(join(root, 'lib', path), 'utf8');
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
  const imports: Import[] = [];
  const visit = (node: ts.Node): void => {
    const found = importOf(node);
    if (found !== null) imports.push(found);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { path, source, imports };
}

function importOf(node: ts.Node): Import | null {
  if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
    const typeOnly = node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
    return { address: node.moduleSpecifier.text, typeOnly };
  }
  if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
    return { address: node.moduleSpecifier.text, typeOnly: node.isTypeOnly };
  }
  if (
    ts.isImportTypeNode(node) &&
    ts.isLiteralTypeNode(node.argument) &&
    ts.isStringLiteral(node.argument.literal)
  ) {
    return { address: node.argument.literal.text, typeOnly: true };
  }
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
    const [address] = node.arguments;
    return address && ts.isStringLiteral(address) ? { address: address.text, typeOnly: false } : null;
  }
  return null;
}

const files = readdirSync(join(root, 'lib'), { recursive: true, encoding: 'utf8' })
  .map((path) => path.split(sep).join('/'))
  // Types of a package that has none of its own are no part of the house.
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
  .sort()
  .map(readSource);

/** `notebook/build`, `season`, or the name of a file that lies in `lib/` itself. `command.ts` belongs to `command/`. */
function floorOf(path: string): string {
  return path.includes('/') ? posix.dirname(path) : path.replace(/\.ts$/, '');
}

function targetOf(file: SourceFile, address: string): string {
  return posix.normalize(posix.join(posix.dirname(file.path), address));
}

function placeOf({ path, source }: SourceFile, node: ts.Node): string {
  return `lib/${path}:${source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1}`;
}

/** Every node of lib/ for which a rule has something to say. */
function violations(rule: (node: ts.Node, file: SourceFile) => string | null): string[] {
  return files.flatMap((file) => {
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      const what = rule(node, file);
      if (what !== null) found.push(`${placeOf(file, node)} ${what}`);
      ts.forEachChild(node, visit);
    };
    visit(file.source);
    return found;
  });
}

describe('floors', () => {
  it('has a place in the order for every folder', () => {
    expect(files.length).toBeGreaterThan(30);
    expect(files.map(({ path }) => floorOf(path)).filter((floor) => !floors.has(floor))).toEqual([]);
  });

  it('imports downwards only, and from words upwards no value from below it', () => {
    const wrong = files.flatMap((file) => {
      const own = floorOf(file.path);
      const { below, typesOf = [] } = floors.get(own) ?? { below: [] };
      return file.imports
        .filter(({ address }) => address.startsWith('.'))
        .filter(({ address, typeOnly }) => {
          const floor = floorOf(targetOf(file, address));
          return floor !== own && !below.includes(floor) && !(typeOnly && typesOf.includes(floor));
        })
        .map(({ address }) => `lib/${file.path} imports ${address}`);
    });
    expect(wrong).toEqual([]);
  });

  it('imports packages only on the floors that may, and Node itself only where effects are', () => {
    const wrong = files.flatMap((file) => {
      const allowed = [
        ...(floors.get(floorOf(file.path))?.packages ?? []),
        ...(effects.get(file.path) ?? []),
      ];
      return file.imports
        .filter(({ address }) => !address.startsWith('.') && !allowed.includes(address))
        .map(({ address }) => `lib/${file.path} imports ${address}`);
    });
    expect(wrong).toEqual([]);
  });

  it('has no cycle of imports', () => {
    const targets = new Map(
      files.map((file) => [
        file.path,
        file.imports
          .filter(({ address }) => address.startsWith('.'))
          .map(({ address }) => targetOf(file, address)),
      ]),
    );
    const done = new Set<string>();
    const cycles: string[] = [];
    const walk = (path: string, above: readonly string[]): void => {
      if (above.includes(path)) cycles.push([...above.slice(above.indexOf(path)), path].join(' → '));
      if (done.has(path) || above.includes(path)) return;
      for (const target of targets.get(path) ?? []) walk(target, [...above, path]);
      done.add(path);
    };
    for (const { path } of files) walk(path, []);
    expect(cycles).toEqual([]);
  });

  it('imports files that exist, with their ending', () => {
    const wrong = files.flatMap((file) =>
      file.imports
        .filter(
          ({ address }) => address.startsWith('.') && !existsSync(join(root, 'lib', targetOf(file, address))),
        )
        .map(({ address }) => `lib/${file.path} imports ${address}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('rooms', () => {
  it('has none that could hold anything', () => {
    const rooms = new Set(files.flatMap(({ path }) => path.replace(/\.ts$/, '').split('/')));
    const vague = ['utils', 'util', 'helpers', 'common', 'core', 'misc', 'internal', 'types'];
    expect(vague.filter((name) => rooms.has(name))).toEqual([]);
  });

  it('has files of at most 300 lines, named in kebab case', () => {
    const long = files.filter(({ source }) => source.getLineStarts().length > 301).map(({ path }) => path);
    expect(long).toEqual([]);
    expect(files.map(({ path }) => path).filter((path) => !/^[a-z0-9/-]+\.ts$/.test(path))).toEqual([]);
  });

  it('has functions of at most 60 lines, half of them of at most 15', () => {
    const lengths: number[] = [];
    const long = violations((node, { source }) => {
      if (!ts.isFunctionLike(node) || !('body' in node) || node.body === undefined) return null;
      const line = (position: number): number => source.getLineAndCharacterOfPosition(position).line;
      const length = line(node.end) - line(node.getStart(source)) + 1;
      lengths.push(length);
      return length > 60 ? `has ${length} lines` : null;
    });
    expect(long).toEqual([]);
    expect(lengths.sort((a, b) => a - b)[Math.floor(lengths.length / 2)]).toBeLessThanOrEqual(15);
  });
});

describe('habits', () => {
  it('has no any, no enum, no namespace', () => {
    const found = violations((node) => {
      if (node.kind === ts.SyntaxKind.AnyKeyword) return 'says any';
      return ts.isEnumDeclaration(node) || ts.isModuleDeclaration(node) ? 'is an enum or a namespace' : null;
    });
    expect(found).toEqual([]);
  });

  it('never reads the clock nor draws unasked', () => {
    const found = violations((node, { path, source }) => {
      const text = ts.isPropertyAccessExpression(node) ? node.getText(source) : '';
      // The one place that knows the browser's window draws the secret of a coded copy there, as bin.ts does in Node.
      if (path === 'browser/page.ts' && text === 'crypto.getRandomValues') return null;
      if (/^(Math\.random|Date\.now|performance\.now|crypto\.\w+)$/.test(text)) return `calls ${text}`;
      const clock = ts.isNewExpression(node) && node.expression.getText(source) === 'Date';
      return clock && (node.arguments?.length ?? 0) === 0 ? 'asks for the time' : null;
    });
    expect(found).toEqual([]);
  });

  it('has nothing left to do later', () => {
    const found = files.filter(({ source }) =>
      /\b(TODO|FIXME|XXX|@ts-ignore|@ts-nocheck)\b/.test(source.text),
    );
    expect(found.map(({ path }) => path)).toEqual([]);
  });
});

describe('tests', () => {
  const testPath = (path: string): string => path.replace('/build/', '/').replace(/\.ts$/, '.test.ts');
  const holdsOnlyTypes = ({ source }: SourceFile): boolean =>
    source.statements.every(
      (statement) =>
        ts.isInterfaceDeclaration(statement) ||
        ts.isTypeAliasDeclaration(statement) ||
        ts.isImportDeclaration(statement) ||
        (ts.isExportDeclaration(statement) && statement.isTypeOnly),
    );

  it('mirror every file that does something', () => {
    const missing = files
      // Every file of a language is run by one test for all languages.
      .filter(({ path }) => !languages.includes(posix.dirname(path)))
      .filter((file) => !holdsOnlyTypes(file) && !testedBy.has(file.path))
      .map(({ path }) => testPath(path))
      .filter((path) => !existsSync(join(root, 'test', path)));
    expect(missing).toEqual([]);
  });

  it('stand elsewhere only for files that exist and have none of their own', () => {
    const known = new Set(files.map(({ path }) => path));
    expect([...testedBy.keys(), ...effects.keys()].filter((path) => !known.has(path))).toEqual([]);
    expect([...testedBy.values()].filter((test) => !existsSync(join(root, 'test', test)))).toEqual([]);
    expect([...testedBy.keys()].filter((path) => existsSync(join(root, 'test', testPath(path))))).toEqual([]);
  });

  it('are all run: none skipped, none alone', () => {
    const tests = readdirSync(join(root, 'test'), { recursive: true, encoding: 'utf8' }).filter((path) =>
      path.endsWith('.test.ts'),
    );
    const calls = /\b(?:it|test|describe)\.(?:only|skip|todo|fails)\(/;
    const found = tests.filter((path) => calls.test(readFileSync(join(root, 'test', path), 'utf8')));
    expect(found).toEqual([]);
  });
});

describe('the door', () => {
  interface Door {
    readonly name: string;
    readonly file: string;
  }

  const door = files.find(({ path }) => path === 'index.ts')!;
  const names: readonly Door[] = door.source.statements
    .filter(ts.isExportDeclaration)
    .flatMap((statement) => {
      const file = targetOf(door, (statement.moduleSpecifier as ts.StringLiteral).text);
      const { exportClause } = statement;
      if (exportClause === undefined) return exportedNames(file).map((name) => ({ name, file }));
      const elements = ts.isNamedExports(exportClause) ? exportClause.elements : [];
      return elements.map(({ propertyName, name }) => ({ name: (propertyName ?? name).text, file }));
    });

  /** What `export *` passes on. */
  function exportedNames(file: string): string[] {
    const { source } = readSource(file);
    return source.statements.flatMap((statement) => {
      const { modifiers } = statement as { readonly modifiers?: ts.NodeArray<ts.ModifierLike> };
      if (!modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return [];
      if (!ts.isVariableStatement(statement)) return [(statement as ts.FunctionDeclaration).name!.text];
      return statement.declarationList.declarations.map(({ name }) => name.getText(source));
    });
  }

  /** The statement that declares an exported name, followed through files that only pass it on. */
  function declarationOf({ name, file }: Door): { statement: ts.Statement; source: ts.SourceFile } | null {
    const { source } = readSource(file);
    for (const statement of source.statements) {
      if (ts.isVariableStatement(statement)) {
        const { declarations } = statement.declarationList;
        if (declarations.some((declaration) => declaration.name.getText(source) === name))
          return { statement, source };
      } else if ('name' in statement && (statement.name as ts.Identifier | undefined)?.text === name) {
        return { statement, source };
      }
    }
    return null;
  }

  function docOf(entry: Door): string {
    const found = declarationOf(entry);
    if (found === null) return '';
    const { statement, source } = found;
    return (
      source.text
        .slice(statement.getFullStart(), statement.getStart(source))
        .match(/\/\*\*.*?\*\//gs)
        ?.at(-1) ?? ''
    );
  }

  it('names each thing once, from the file that makes it', () => {
    expect(names.length).toBeGreaterThan(5);
    expect(new Set(names.map(({ name }) => name)).size).toBe(names.length);
    expect(names.filter((entry) => declarationOf(entry) === null)).toEqual([]);
  });

  it('has a doc comment for each', () => {
    expect(names.filter((entry) => docOf(entry) === '').map(({ name }) => name)).toEqual([]);
  });

  it('says of each function of numbers what it takes, returns and refuses, and its source', () => {
    const silent = names.flatMap((entry) => {
      const statement = declarationOf(entry)?.statement;
      if (!/^(?:numerics|proportions|regression)\//.test(entry.file) || !statement) return [];
      if (!ts.isFunctionDeclaration(statement)) return [];
      const doc = docOf(entry);
      const wanted = ['@returns', '@throws', '@source'].filter((tag) => !doc.includes(tag));
      const params = doc.match(/@param/g)?.length ?? 0;
      if (params < statement.parameters.length) wanted.push('@param');
      return wanted.map((tag) => `${entry.name} ${tag}`);
    });
    expect(silent).toEqual([]);
  });

  it('has an example for each function, which examples.test.ts runs', () => {
    const functions = names.filter((entry) => {
      const found = declarationOf(entry);
      return found !== null && ts.isFunctionDeclaration(found.statement);
    });
    expect(functions.length).toBeGreaterThan(150);
    expect(functions.filter((entry) => !docOf(entry).includes('@example')).map(({ name }) => name)).toEqual(
      [],
    );
  });
});
