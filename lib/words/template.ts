/** What a template says besides its headers. */

/** Whether a column is needed, and the notes of the example. */
export const templateWords = {
  needed: { yes: 'yes', no: 'no' },
  notes: { late: 'opened late', lost: 'tag lost', silica: 'over silica gel' },
};
