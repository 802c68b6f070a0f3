/** What a template says besides its headers, in Spanish. */

export const templateWords = {
  needed: { yes: 'sí', no: 'no' },
  notes: { late: 'se abrió tarde', lost: 'etiqueta perdida', silica: 'sobre gel de sílice' },
};
