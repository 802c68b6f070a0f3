/** How long names fit into a drawing: measured, shortened in the drawing only; the table has them in full. */

/**
 * Widths in em of a wide sans-serif face (DejaVu Sans, measured), each class rounded up: what fits in it fits in any
 * system's face. Whatever is in no class is as wide as most small letters; East Asian characters fill their square.
 */
const CLASSES: readonly (readonly [RegExp, number])[] = [
  [/[ IJijl.,:;'’\\|¦·/fÌ-Ïì-ï]/u, 0.35],
  [/[!()[\]t\-r]/u, 0.42],
  [/[FLPkvxycsz?"*_“”–]/u, 0.6],
  [/[ABCEKRSTVXYZÀ-ÅÇ]/u, 0.7],
  [/[DGHNOQU&ÐÑÒ-ÖØÙ-Ü]/u, 0.8],
  [/[Mw#+<=>^~¬±×÷−←→]/u, 0.9],
  [/[mW%@…—½ÆæŒœ]/u, 1],
  [/[\u1100-\u11ff\u2e80-\ud7ff\uf900-\ufaff\uff00-\uff60\u{1f000}-\u{3ffff}]/u, 1.1],
];
const OTHERWISE = 0.65;

function characterWidth(character: string): number {
  return CLASSES.find(([members]) => members.test(character))?.[1] ?? OTHERWISE;
}

/** Width of a line of text in the units of its size; an upper estimate. */
export function textWidth(text: string, size: number): number {
  return Array.from(text).reduce((sum, character) => sum + characterWidth(character), 0) * size;
}

/**
 * The text, or as much of it as fits with an ellipsis. What is left out is near the end but not the end itself: names
 * of a collection often differ in their last word or number.
 */
export function fitted(text: string, room: number, size: number): string {
  if (textWidth(text, size) <= room) return text;
  const characters = Array.from(text);
  for (let kept = characters.length - 1; kept > 0; kept--) {
    const tail = Math.floor(kept * TAIL);
    const short = `${characters
      .slice(0, kept - tail)
      .join('')
      .trimEnd()}…${characters
      .slice(characters.length - tail)
      .join('')
      .trimStart()}`;
    if (textWidth(short, size) <= room) return short;
  }
  return '…';
}

/** Share of a shortened name that is kept of its end. */
const TAIL = 1 / 3;

/** Seed parent × pollen parent within a width: the shorter name is kept whole where that is possible. */
export function fittedPair(seedParent: string, pollenParent: string, room: number, size: number): string {
  const names = room - textWidth(' × ', size);
  const [first, second] = [textWidth(seedParent, size), textWidth(pollenParent, size)];
  const half = names / 2;
  const forFirst = Math.max(half, names - second);
  const forSecond = Math.max(half, names - first);
  return `${fitted(seedParent, forFirst, size)} × ${fitted(pollenParent, forSecond, size)}`;
}
