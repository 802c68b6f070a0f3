/** What a template says besides its headers, in French. */

export const templateWords = {
  needed: { yes: 'oui', no: 'non' },
  notes: { late: 'ouverte tard', lost: 'étiquette perdue', silica: 'sur gel de silice' },
};
