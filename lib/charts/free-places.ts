/** Where labels go that must not cover each other: the first free place of each, or none. */

/** A rectangle on the sheet, in its units. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Something to be placed, with its possible places, best first. */
export interface Wish<T> {
  readonly places: readonly { readonly box: Box; readonly label: T }[];
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function within(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  );
}

/**
 * Places labels one after the other, first come first served; a wish whose places are all taken is left out.
 *
 * @param wishes in order of importance
 * @param obstacles what no label may cover
 * @param sheet what no label may leave
 */
export function freePlaces<T>(wishes: readonly Wish<T>[], obstacles: readonly Box[], sheet: Box): T[] {
  const taken = [...obstacles];
  const kept: T[] = [];
  for (const { places } of wishes) {
    const free = places.find(({ box }) => within(box, sheet) && !taken.some((other) => overlap(box, other)));
    if (free === undefined) continue;
    taken.push(free.box);
    kept.push(free.label);
  }
  return kept;
}
