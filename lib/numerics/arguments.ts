/** The checks of arguments that every public function shares; each names the function, the argument and the rule. */

function shown(value: unknown): string {
  return typeof value === 'string' ? JSON.stringify(value) : String(value);
}

function fail(caller: string, name: string, rule: string, value: unknown): never {
  const message = `${caller}: ${name} must be ${rule}, got ${shown(value)}`;
  throw typeof value === 'number' ? new RangeError(message) : new TypeError(message);
}

/** Throws unless `value` is a number other than NaN; infinities pass, since a tail may start there. */
export function checkNumber(caller: string, name: string, value: number): void {
  if (typeof value !== 'number' || Number.isNaN(value)) fail(caller, name, 'a number', value);
}

/** Throws unless `value` is a finite number. */
export function checkFinite(caller: string, name: string, value: number): void {
  if (!Number.isFinite(value)) fail(caller, name, 'a finite number', value);
}

/** Throws unless `value` is a finite number above 0. */
export function checkPositive(caller: string, name: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0) fail(caller, name, 'a finite number above 0', value);
}

/** Throws unless `value` is a number from 0 to 1. */
export function checkProbability(caller: string, name: string, value: number): void {
  if (typeof value !== 'number' || !(value >= 0 && value <= 1)) {
    fail(caller, name, 'a number from 0 to 1', value);
  }
}

/** Throws unless `value` is a number strictly between 0 and 1. */
export function checkInside(caller: string, name: string, value: number): void {
  if (typeof value !== 'number' || !(value > 0 && value < 1)) {
    fail(caller, name, 'a number between 0 and 1', value);
  }
}

/** Throws unless `value` is a whole number of at least `least`. */
export function checkWhole(caller: string, name: string, value: number, least = 0): void {
  if (!Number.isSafeInteger(value) || value < least) {
    fail(caller, name, `a whole number of at least ${least}`, value);
  }
}

/** Throws unless `trials` is a whole number of at least 1 and `successes` one from 0 to `trials`; `suffix` is 1 or 2. */
export function checkCounts(caller: string, successes: number, trials: number, suffix = ''): void {
  checkWhole(caller, `trials${suffix}`, trials, 1);
  if (!Number.isSafeInteger(successes) || successes < 0 || successes > trials) {
    fail(caller, `successes${suffix}`, `a whole number from 0 to trials${suffix} (${trials})`, successes);
  }
}

/** Throws unless `value` is one of `choices`. */
export function checkChoice(caller: string, name: string, value: string, choices: readonly string[]): void {
  if (!choices.includes(value)) {
    throw new RangeError(`${caller}: ${name} must be one of ${choices.join(', ')}, got ${shown(value)}`);
  }
}
