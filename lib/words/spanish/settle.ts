/** How many more flowers would settle it: a number, or out of reach. */

import type { PairSettling, Settle, StorageSettling } from '../../analysis/settle.ts';
import { MOST_ROWS, methodsByReach, nearest, type Reach, within } from '../told/settling.ts';
import { pairName } from './choice-figures.ts';
import { flowersIn, vialsIn } from './nouns.ts';
import { about, CANNOT_TELL, inTen, joined, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

export function settleAnswer(settle: Settle): string {
  return [storagesSaid(settle), vialsSaid(settle), pairsSaid(settle)].filter((said) => said !== '').join(' ');
}

function storagesSaid({ freshVersusStored }: Settle): string {
  if (freshVersusStored.length === 0)
    return 'No se usó polen guardado, así que no hay nada que aclarar sobre él.';
  const { reachable, beyond, settled } = methodsByReach({ freshVersusStored });
  return [reachableSaid(reachable), beyondSaid(beyond), settledSaid(settled)]
    .filter((said) => said !== '')
    .join(' ');
}

function reachableSaid(settlings: readonly StorageSettling[]): string {
  const [first, ...others] = settlings;
  if (first === undefined) return '';
  const rest = others.map(({ storage, more }) => `; con ${pollenOf(storage)}, ${wholeNumber(more ?? 0)}`);
  return (
    `Con ${about('unas', first.more ?? 0, 'flor', 'flores')} más se aclararía la comparación de polen fresco con ` +
    `${pollenOf(first.storage)}, la mitad de cada tipo y en las mismas parejas${rest.join('')}.`
  );
}

function beyondSaid(settlings: readonly StorageSettling[]): string {
  const [first] = settlings;
  if (first === undefined) return '';
  const each = settlings.map(
    ({ storage, more }) => `${pollenOf(storage)} (${wholeNumber(more ?? 0)} flores más)`,
  );
  return `Comparar polen fresco con ${joined(each)} queda fuera de alcance: dos temporadas dan ${flowersIn(first.reach)}.`;
}

function settledSaid(settlings: readonly StorageSettling[]): string {
  if (settlings.length === 0) return '';
  const each = settlings.map(({ storage }) => pollenOf(storage));
  return `Para comparar polen fresco con ${joined(each)} ya hay flores suficientes.`;
}

function vialsSaid({ vials }: Settle): string {
  const [first] = vials;
  if (first === undefined) return '';
  if (first.needed === null)
    return 'De un vial no se puede decir mientras no se sepa qué cuajado merece una flor.';
  const reachable = vials.filter(within).length;
  const start = `Para saber solo por sus propias flores si un vial merece conservarse hacen falta ${wholeNumber(first.needed)}`;
  return reachable === 0
    ? `${start}: fuera de alcance para todos los viales, por sus dosis o por las flores de dos temporadas.`
    : `${start}: al alcance de ${wholeNumber(reachable)} de ${vialsIn(vials.length)}.`;
}

function pairsSaid({ pairs }: Settle): string {
  const known = pairs.find(({ needed }) => needed !== null);
  if (known === undefined) return '';
  const reachable = pairs.filter(within);
  const start = `Para saber si una pareja es mejor o peor que la pareja media hacen falta ${flowersIn(known.needed!)} en ella`;
  if (reachable.length === 0) return `${start}: más de las que dan dos temporadas en cualquier planta madre.`;
  const named = nearest(reachable).map(pairName);
  const names = reachable.length > MOST_ROWS ? `, las más cercanas ${joined(named)}` : `: ${joined(named)}`;
  return `${start}, al alcance de ${wholeNumber(reachable.length)} de ${pairs.length} parejas${names}.`;
}

export function settledMeans({ power, trueDifference, seasonFlowers }: Settle): string {
  return (
    `«Aclararlo»: si la diferencia verdadera es de ${wholeNumber(trueDifference * 10)} de cada 10 flores, con esas flores se ve ` +
    `que la hay ${inTen(power)} veces. El número no depende de lo que mostró por azar esta temporada. «Fuera de alcance»: ` +
    `más que las flores de dos temporadas (una da ${wholeNumber(seasonFlowers)}).`
  );
}

export const SETTLE_COLUMNS = ['pregunta', 'flores hasta ahora', 'hacen falta', 'más', 'al alcance'] as const;

function cells(question: string, settling: Reach): readonly string[] {
  const { have, needed, more } = settling;
  const number = (value: number | null) => (value === null ? CANNOT_TELL : wholeNumber(value));
  const reach =
    settling.tooFewDoses === true ? 'no: muy pocas dosis' : within(settling) ? 'sí' : 'fuera de alcance';
  return [question, wholeNumber(have), number(needed), number(more), more === null ? CANNOT_TELL : reach];
}

export function settleRows({ freshVersusStored, vials, pairs }: Settle): readonly (readonly string[])[] {
  return [
    ...freshVersusStored.map((each) =>
      cells(`polen fresco frente a ${pollenOf(each.storage)}, mismas parejas`, each),
    ),
    ...nearest(vials).map((each) => cells(`vial ${each.vial} frente a lo que merece una flor`, each)),
    ...nearest<PairSettling>(pairs).map((each) => cells(`${pairName(each)} frente a la pareja media`, each)),
  ];
}
