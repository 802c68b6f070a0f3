import { problemAt } from '../season/problems.ts';
import { problemWords } from '../words/english-problems.ts';
import { OWN_SEASON } from '../words/own-season.ts';

/** A larger file is not read in a page, in bytes: its rows would fill a telephone's memory. The command reads more. */
export const MOST_BYTES = 20_000_000;

/** A file that the grower chose, dropped or pasted. */
export interface ChosenFile {
  readonly name: string;
  /** Null where it was refused. */
  readonly bytes: Uint8Array | null;
  /** Why it was not read, in a sentence; null where it was. */
  readonly refused: string | null;
}

/** The part of a browser's `File` that is used here. */
export interface FileLike {
  readonly name: string;
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

/** Reads a file, unless it is too large to begin with. A file that cannot be read says so and throws nothing. */
export async function openFile(file: FileLike): Promise<ChosenFile> {
  const { name, size } = file;
  if (size > MOST_BYTES) {
    const place = { file: name, line: 1, row: 1 };
    const details = { bytes: size, most: MOST_BYTES };
    const { message, fix } = problemWords(problemAt(place, 'error', 'file-too-large', { details }));
    return { name, bytes: null, refused: `${message} ${fix}` };
  }
  try {
    return { name, bytes: new Uint8Array(await file.arrayBuffer()), refused: null };
  } catch {
    return { name, bytes: null, refused: OWN_SEASON.unreadable(name) };
  }
}

function sameBytes(a: Uint8Array | null, b: Uint8Array | null): boolean {
  return a !== null && b !== null && a.length === b.length && a.every((byte, i) => byte === b[i]);
}

/**
 * The files with one more: the same file twice is read once, and a file of a name that was there takes its place, as
 * after mending it. Each is said in `note`.
 */
export function withFile(
  files: readonly ChosenFile[],
  file: ChosenFile,
): { readonly files: readonly ChosenFile[]; readonly note: string | null } {
  const earlier = files.find(({ name }) => name === file.name);
  if (earlier === undefined) return { files: [...files, file], note: null };
  if (sameBytes(earlier.bytes, file.bytes)) return { files, note: OWN_SEASON.sameFile(file.name) };
  const note = earlier.bytes !== null && file.bytes !== null ? OWN_SEASON.replaced(file.name) : null;
  return { files: files.map((each) => (each === earlier ? file : each)), note };
}
