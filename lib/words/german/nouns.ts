/** Anzahlen mit den Hauptwörtern, die überall gebraucht werden. */

import { counted } from './numbers.ts';

export const flowersIn = (count: number): string => counted(count, 'Blüte', 'Blüten');
export const fruitsIn = (count: number): string => counted(count, 'Frucht', 'Früchte');
export const seedsIn = (count: number): string => counted(count, 'Same', 'Samen');
export const pairsIn = (count: number): string => counted(count, 'Paar', 'Paare');
export const vialsIn = (count: number): string => counted(count, 'Röhrchen', 'Röhrchen');
export const crossesIn = (count: number): string => counted(count, 'Kreuzung', 'Kreuzungen');
export const rowsIn = (count: number): string => counted(count, 'Zeile', 'Zeilen');
export const filesIn = (count: number): string => counted(count, 'Datei', 'Dateien');
export const daysIn = (count: number): string => counted(count, 'Tag', 'Tage');
/** Im Dativ: „nach 5 Tagen“. */
export const afterDays = (count: number): string => counted(count, 'Tag', 'Tagen');
export const tagsIn = (count: number): string => counted(count, 'Etikett', 'Etiketten');
