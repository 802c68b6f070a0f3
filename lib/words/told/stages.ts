/** What the page for one's own season is busy with, in order. */

export const STAGES = ['reading', 'counting', 'model', 'vials', 'like-for-like', 'rest', 'drawing'] as const;

export type Stage = (typeof STAGES)[number];
