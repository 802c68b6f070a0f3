/** What is wrong in a notebook, and where: `reports/season-review.md:25:83: what is wrong`. */

/** A place in a notebook and what is wrong there. `line` and `column` count from 1. */
export interface Fault {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

/** The one line that names a fault, in the form editors and terminals make a link of. */
export function faultLine(fault: Fault): string {
  return `${fault.file}:${fault.line}:${fault.column}: ${fault.message}`;
}

/** Thrown when a notebook cannot be built or run; the message has one line a fault. */
export class NotebookError extends Error {
  readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[], options?: ErrorOptions) {
    super(faults.map(faultLine).join('\n'), options);
    this.name = 'NotebookError';
    this.faults = faults;
  }
}
