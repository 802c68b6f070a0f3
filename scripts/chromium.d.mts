export function findChromium(): string | null;
export const howToGetChromium: string;
