/** The description of a season's files as a Tabular Data Package (Frictionless Data, version 1). */

import { type CellKind, COLUMNS, type Column, type KnownKind } from './columns.ts';
import { DESCRIPTION_NAME } from './own-files.ts';
import { sha256 } from './sha256.ts';
import { OUTCOMES } from './values.ts';

/** What the description says in words; a text left out is not said. */
export interface DataPackageWords {
  readonly description?: string;
  /** What a column means. */
  readonly column?: (name: string, kind: KnownKind) => string;
}

/** A file of the package. */
export interface PackagedFile {
  readonly kind: KnownKind;
  readonly name: string;
  readonly text: string;
}

type Json = string | number | boolean | readonly Json[] | { readonly [key: string]: Json };

const TYPES: Readonly<Record<CellKind, string>> = {
  name: 'string',
  text: 'string',
  word: 'string',
  date: 'date',
  count: 'integer',
  decimal: 'number',
  'yes-no': 'boolean',
};

/** What an unpollinated control leaves blank, though every cross has it. */
const BLANK_IN_CONTROLS: ReadonlySet<string> = new Set(['pollen_parent', 'storage']);

function constraintsOf({ name, required, cell }: Column, kind: KnownKind): { readonly [key: string]: Json } {
  const always = required && !(kind === 'crosses' && BLANK_IN_CONTROLS.has(name));
  return {
    ...(always ? { required: true } : {}),
    ...(name === 'outcome' ? { enum: [...new Set(OUTCOMES.values())] } : {}),
    ...(name === 'control' ? { enum: ['unpollinated', 'selfed'] } : {}),
    ...(cell === 'count' || cell === 'decimal' ? { minimum: 0 } : {}),
  };
}

function fieldOf(column: Column, kind: KnownKind, words: DataPackageWords): Json {
  const constraints = constraintsOf(column, kind);
  const description = words.column?.(column.name, kind) ?? '';
  return {
    name: column.name,
    type: TYPES[column.cell],
    ...(column.cell === 'yes-no' ? { trueValues: ['yes'], falseValues: ['no'] } : {}),
    ...(description === '' ? {} : { description }),
    ...(Object.keys(constraints).length === 0 ? {} : { constraints }),
  };
}

function resourceOf({ kind, name, text }: PackagedFile, words: DataPackageWords): Json {
  const bytes = new TextEncoder().encode(text);
  return {
    name: kind,
    path: name,
    profile: 'tabular-data-resource',
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    bytes: bytes.length,
    hash: `sha256:${sha256(bytes)}`,
    dialect: { delimiter: ',', lineTerminator: '\r\n', quoteChar: '"', doubleQuote: true, header: true },
    schema: {
      fields: COLUMNS[kind].map((column) => fieldOf(column, kind, words)),
      missingValues: [''],
      ...(kind === 'vials' ? { primaryKey: 'vial' } : {}),
    },
  };
}

/**
 * The descriptor of some of a season's files: Data Package v1 with the profile `tabular-data-package`, each file with
 * its bytes, SHA-256 and Table Schema.
 */
export function dataPackage(files: readonly PackagedFile[], words: DataPackageWords): Json {
  return {
    profile: 'tabular-data-package',
    name: DESCRIPTION_NAME,
    ...(words.description === undefined ? {} : { description: words.description }),
    resources: files.map((file) => resourceOf(file, words)),
  };
}
