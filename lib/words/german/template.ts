/** Was eine Vorlage außer ihren Spaltenköpfen sagt. */

export const templateWords = {
  needed: { yes: 'ja', no: 'nein' },
  notes: { late: 'spät aufgegangen', lost: 'Etikett verloren', silica: 'über Kieselgel' },
};
