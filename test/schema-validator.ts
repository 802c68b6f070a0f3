import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';

/** What a schema of the package finds wrong with some JSON: one line each, none where it is right. */
export function schemaFaults(
  name: 'check' | 'analyse' | 'report' | 'settings' | 'site' | 'error',
  json: unknown,
): string[] {
  const text = readFileSync(new URL(`../lib/schema/${name}.json`, import.meta.url), 'utf8');
  const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(
    JSON.parse(text) as object,
  );
  validate(json);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}
