/** What the seed list says over its table. */

/** Its caption. */
export const seedListPage = { caption: 'Ripe fruits, seeds and germination, by cross and season' };
