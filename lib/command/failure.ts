import type { FailureCode, FailureDetails } from '../words/english-failures.ts';
import type { FileJson } from './json.ts';

/** Thrown where the command can do nothing (exit status 2): a code and what fills its sentence. */
export class Failure extends Error {
  readonly code: FailureCode;
  readonly details: FailureDetails;
  /** What was found in the files, where they could be read that far. */
  readonly files: readonly FileJson[] | null;

  constructor(code: FailureCode, details: FailureDetails = {}, files: readonly FileJson[] | null = null) {
    super(code);
    this.name = 'Failure';
    this.code = code;
    this.details = details;
    this.files = files;
  }
}
