/** The part of linkedom that charts use, in a file of its own so that it can be bundled like `plot.ts`. */
export { parseHTML } from 'linkedom';
