/** The parts of the drawing library that charts use: one list, so that a bundle for browsers holds no more. */
export { areaY, dot, line, plot, ruleX, ruleY, text } from '@observablehq/plot';
