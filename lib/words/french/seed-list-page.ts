/** What the page of the seed list says beside its sentences. */

export const seedListPage = { caption: 'Fruits mûrs, graines et germination, par croisement et par saison' };
