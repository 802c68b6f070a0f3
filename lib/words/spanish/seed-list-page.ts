/** What the seed list says over its table. */

export const seedListPage = { caption: 'Frutos maduros, semillas y germinación, por cruce y temporada' };
