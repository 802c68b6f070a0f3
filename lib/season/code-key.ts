/** The key of coded copies: which code stands for which name, and by how many days dates are moved. */

import { KEY_WORDS } from './own-files.ts';
import { sha256 } from './sha256.ts';

/** What gets codes, with the beginning of each code. */
export const CODED_KINDS = {
  plants: 'P',
  vials: 'V',
  tags: 'T',
  growers: 'G',
  seasons: 'season ',
  waves: 'wave ',
  methods: 'method ',
} as const;

export type CodedKind = keyof typeof CODED_KINDS;

/** A key: whoever has it can turn codes into names. The same key gives the same names the same codes. */
export interface CodeKey {
  /** Drawn once, from a source that nobody can guess: 64 hexadecimal digits. */
  readonly secret: string;
  /** Whole days by which every date is moved; null until there is a date. */
  readonly shiftDays: number | null;
  readonly codes: Readonly<Record<CodedKind, ReadonlyMap<string, string>>>;
}

const KINDS = Object.keys(CODED_KINDS) as readonly CodedKind[];
const SECRET = /^[0-9a-f]{64}$/;

function record<T>(entryOf: (kind: CodedKind) => T): Readonly<Record<CodedKind, T>> {
  return Object.fromEntries(KINDS.map((kind) => [kind, entryOf(kind)])) as Record<CodedKind, T>;
}

/**
 * A key without any code.
 *
 * @param secret 64 hexadecimal digits from a source of randomness fit for secrets
 * @throws RangeError where it is anything else
 */
export function newCodeKey(secret: string): CodeKey {
  if (!SECRET.test(secret)) throw new RangeError('newCodeKey: secret must be 64 hexadecimal digits');
  return { secret, shiftDays: null, codes: record(() => new Map()) };
}

/** A number that only the secret tells, for words of any length: SHA-256 over the secret, the purpose and the word. */
export function keyedDigest({ secret }: Pick<CodeKey, 'secret'>, purpose: string, word: string): string {
  return sha256(new TextEncoder().encode(JSON.stringify([secret, purpose, word])));
}

/**
 * The key with codes for names that have none yet, numbered on in an order that only the secret tells.
 *
 * @param names of one kind, any number of times each
 * @param avoid texts, in lower case, that no code may equal: a plant may be called P01
 * @param inOrder keeps the order of `names`, for what its dates order anyway
 */
export function withCodes(
  key: CodeKey,
  kind: CodedKind,
  names: Iterable<string>,
  { avoid, inOrder = false }: { readonly avoid: ReadonlySet<string>; readonly inOrder?: boolean },
): CodeKey {
  const codes = new Map(key.codes[kind]);
  const fresh = [...new Set(names)].filter((name) => !codes.has(name));
  const digests = new Map(inOrder ? [] : fresh.map((name) => [name, keyedDigest(key, kind, name)]));
  const ordered = inOrder ? fresh : fresh.sort((a, b) => (digests.get(a)! < digests.get(b)! ? -1 : 1));
  const prefix = CODED_KINDS[kind];
  const width = prefix.endsWith(' ') ? 1 : Math.max(2, String(fresh.length).length);
  let number = Math.max(0, ...[...codes.values()].map((code) => Number(code.slice(prefix.length))));
  for (const name of ordered) {
    let code: string;
    do {
      number += 1;
      code = prefix + String(number).padStart(width, '0');
    } while (avoid.has(code.toLowerCase()));
    codes.set(name, code);
  }
  return { ...key, codes: { ...key.codes, [kind]: codes } };
}

/** A key as its file holds it. */
export function codeKeyText({ secret, shiftDays, codes }: CodeKey): string {
  const lists = record((kind) => [...codes[kind]].map(([name, code]) => ({ code, name })));
  return `${JSON.stringify({ key: KEY_WORDS, secret, shiftDays, ...lists }, null, 2)}\n`;
}

/** The pairs of one kind, or null where they are not the pairs of a key: a code of another kind, or one given twice. */
function codesFrom(kind: CodedKind, list: unknown): Map<string, string> | null {
  if (!Array.isArray(list)) return null;
  const codes = new Map<string, string>();
  for (const entry of list as readonly unknown[]) {
    const { code, name } = Object(entry) as { code?: unknown; name?: unknown };
    if (typeof code !== 'string' || typeof name !== 'string' || codes.has(name)) return null;
    if (!code.startsWith(CODED_KINDS[kind]) || !/^\d+$/.test(code.slice(CODED_KINDS[kind].length)))
      return null;
    codes.set(name, code);
  }
  return new Set(codes.values()).size === codes.size ? codes : null;
}

/**
 * The key that a file holds, or null where it holds none, whole.
 *
 * @param text of the file, as `codeKeyText` wrote it
 */
export function readCodeKey(text: string): CodeKey | null {
  let parsed: Readonly<Record<string, unknown>>;
  try {
    parsed = Object(JSON.parse(text));
  } catch {
    return null;
  }
  const { secret, shiftDays } = parsed;
  if (typeof secret !== 'string' || !SECRET.test(secret)) return null;
  if (shiftDays !== null && !Number.isInteger(shiftDays)) return null;
  const lists = record((kind) => codesFrom(kind, parsed[kind]));
  if (KINDS.some((kind) => lists[kind] === null)) return null;
  return { secret, shiftDays: shiftDays as number | null, codes: lists as CodeKey['codes'] };
}
