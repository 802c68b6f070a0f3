import type { RenderedSite, World } from '../../lib/command/world.ts';
import { type ExitStatus, runFruitodds } from '../../lib/command.ts';
import { ownText } from '../../lib/notebook/own-text.ts';
import { sha256 } from '../../lib/season/sha256.ts';

/** A refusal as the system gives it: an error with a code. */
export function refusal(code: string): Error {
  return Object.assign(new Error(`${code}: refused`), { code });
}

export interface Run {
  readonly status: ExitStatus;
  readonly out: string;
  readonly err: string;
  /** What was written, by path. */
  readonly written: ReadonlyMap<string, string>;
  /** What a person at the terminal was told meanwhile. */
  readonly noted: readonly string[];
}

export interface MemoryFiles {
  /** Texts or bytes by path. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly input?: string;
  /** The system's code with which every write is refused. */
  readonly refuses?: string;
  readonly render?: World['render'];
  readonly renderSheet?: World['renderSheet'];
  readonly renderSite?: World['renderSite'];
  readonly siteObstacle?: World['siteObstacle'];
}

const START_ONLY: RenderedSite = {
  files: [{ name: 'index.html', text: '<!doctype html>' }],
  constant: [],
  leftOut: [],
};

/** Runs the command in a world that is only memory. */
export async function run(
  argv: readonly string[],
  {
    files = {},
    input = '',
    refuses,
    render = async () => '<!doctype html>',
    renderSheet = async () => '<!doctype html>',
    renderSite = async () => START_ONLY,
    siteObstacle = () => null,
  }: MemoryFiles = {},
): Promise<Run> {
  const written = new Map<string, string>();
  const noted: string[] = [];
  let out = '';
  let err = '';
  const bytes = (text: string | Uint8Array) =>
    typeof text === 'string' ? new TextEncoder().encode(text) : text;
  const world: World = {
    read: (path) => {
      const text = Object.hasOwn(files, path) ? files[path] : undefined;
      if (text === undefined) throw refusal('ENOENT');
      return bytes(text);
    },
    readInput: () => bytes(input),
    sha256,
    write: (path, text) => {
      if (refuses !== undefined) throw refusal(refuses);
      written.set(path, text);
    },
    refuseUnwritable: () => {
      if (refuses !== undefined) throw refusal(refuses);
    },
    writeNewFolder: (folder, texts) => {
      if (refuses !== undefined) throw refusal(refuses);
      for (const { name, text } of texts) written.set(`${folder}/${name}`, text);
    },
    same: (path, other) => path === other,
    print: (text) => {
      out += text;
    },
    warn: (text) => {
      err += text;
    },
    note: (text) => {
      noted.push(text);
    },
    render,
    renderSheet,
    renderSite,
    siteObstacle,
    writeSite: (folder, pages) => {
      if (refuses !== undefined) throw refusal(refuses);
      for (const { name, text } of pages) written.set(`${folder}/${name}`, text);
    },
    secret: () => 'ab'.repeat(32),
    ownText,
    within: (path, folder) => path.startsWith(`${folder}/`),
  };
  const status = await runFruitodds(argv, world);
  return { status, out, err, written, noted };
}

const HEADER = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';

/** A crosses file of a few rows, each given as the cells after the tag. */
export function crossesCsv(rows: readonly string[], header = HEADER): string {
  return `${[header, ...rows.map((row, i) => `${i + 1},${row}`)].join('\n')}\n`;
}

/** Two flowers that took and one that did not, nothing to mend. */
export const CLEAN = crossesCsv([
  '2025-06-20,Lantern Creek,Salt Moon,fresh,fruit',
  '2025-06-20,Salt Moon,Lantern Creek,fresh,none',
  '2025-06-21,Lantern Creek,Salt Moon,fresh,fruit',
]);
