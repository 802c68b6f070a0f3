/** How many more flowers would settle a question. */
import type { PairSettling, Settle, StorageSettling } from '../../analysis/settle.ts';
import { MOST_ROWS, methodsByReach, nearest, type Reach, within } from '../told/settling.ts';
import { pairName } from './choice-figures.ts';
import { CANNOT_TELL, chanceOf, counted, countedOf, joined, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

/** For pollen, vials and pairs, in this order. */
export function settleAnswer(settle: Settle): string {
  return [storagesSaid(settle), vialsSaid(settle), pairsSaid(settle)].filter((said) => said !== '').join(' ');
}

function storagesSaid({ freshVersusStored }: Settle): string {
  if (freshVersusStored.length === 0)
    return 'Aucun pollen stocké n’a été utilisé : il n’y a rien à trancher là-dessus.';
  const { reachable, beyond, settled } = methodsByReach({ freshVersusStored });
  return [reachableSaid(reachable), beyondSaid(beyond), settledSaid(settled)]
    .filter((said) => said !== '')
    .join(' ');
}

function reachableSaid(settlings: readonly StorageSettling[]): string {
  const [first, ...others] = settlings;
  if (first === undefined) return '';
  const rest = others.map(({ storage, more }) => ` ; pour le ${pollenOf(storage)} ${wholeNumber(more ?? 0)}`);
  return (
    `Environ ${counted(first.more ?? 0, 'fleur')} de plus trancheraient entre pollen frais et ${pollenOf(first.storage)}, moitié avec ` +
    `chaque sorte sur les mêmes couples${rest.join('')}.`
  );
}

function beyondSaid(settlings: readonly StorageSettling[]): string {
  const [first] = settlings;
  if (first === undefined) return '';
  const each = settlings.map(
    ({ storage, more }) => `${pollenOf(storage)} (${wholeNumber(more ?? 0)} fleurs de plus)`,
  );
  return `Pollen frais contre ${joined(each)}, c’est hors de portée : deux saisons offrent ${counted(first.reach, 'fleur')}.`;
}

function settledSaid(settlings: readonly StorageSettling[]): string {
  if (settlings.length === 0) return '';
  const each = settlings.map(({ storage }) => pollenOf(storage));
  return `Pour pollen frais contre ${joined(each)} il y a déjà assez de fleurs.`;
}

function vialsSaid({ vials }: Settle): string {
  const [first] = vials;
  if (first === undefined) return '';
  if (first.needed === null)
    return 'Pour un tube on ne peut pas le dire avant de savoir quelle nouaison vaut une fleur.';
  const reachable = vials.filter(within).length;
  const start = `Pour savoir par ses seules fleurs si un tube mérite d’être gardé, il en faut ${wholeNumber(first.needed)}`;
  return reachable === 0
    ? `${start} : hors de portée pour chaque tube, par ses doses ou par les fleurs de deux saisons.`
    : `${start} : à portée pour ${countedOf(reachable, vials.length, 'tube')}.`;
}

function pairsSaid({ pairs }: Settle): string {
  const known = pairs.find(({ needed }) => needed !== null);
  if (known === undefined) return '';
  const reachable = pairs.filter(within);
  const start = `Pour savoir si un couple est meilleur ou pire que le couple moyen, il lui faut ${counted(known.needed!, 'fleur')}`;
  if (reachable.length === 0) return `${start} : plus que deux saisons n’en offrent sur aucune plante mère.`;
  const named = nearest(reachable).map(pairName);
  const names = reachable.length > MOST_ROWS ? `, au plus près ${joined(named)}` : ` : ${joined(named)}`;
  return `${start}, à portée pour ${countedOf(reachable.length, pairs.length, 'couple')}${names}.`;
}

/** What "settled" and "out of reach" mean. */
export function settledMeans({ power, trueDifference, seasonFlowers }: Settle): string {
  return (
    `« Trancher » veut dire : si la vraie différence est de ${wholeNumber(trueDifference * 10)} pour 10 fleurs, autant de fleurs ` +
    `montrent qu’il y en a une avec ${chanceOf(power)}. Ce nombre ne dépend pas de ce que cette saison a montré par hasard. ` +
    `« Hors de portée » veut dire plus que les fleurs de deux saisons (une saison en offre ${wholeNumber(seasonFlowers)}).`
  );
}

export const SETTLE_COLUMNS = ['question', 'fleurs jusqu’ici', 'il en faut', 'de plus', 'à portée'] as const;

function cells(question: string, settling: Reach): readonly string[] {
  const { have, needed, more } = settling;
  const number = (value: number | null) => (value === null ? CANNOT_TELL : wholeNumber(value));
  const reach =
    settling.tooFewDoses === true ? 'non : trop peu de doses' : within(settling) ? 'oui' : 'hors de portée';
  return [question, wholeNumber(have), number(needed), number(more), more === null ? CANNOT_TELL : reach];
}

/** Rows of the table: pollen, vials, pairs. */
export function settleRows({ freshVersusStored, vials, pairs }: Settle): readonly (readonly string[])[] {
  return [
    ...freshVersusStored.map((each) => cells(`frais contre ${pollenOf(each.storage)}, mêmes couples`, each)),
    ...nearest(vials).map((each) => cells(`tube ${each.vial} face à ce qui vaut une fleur`, each)),
    ...nearest<PairSettling>(pairs).map((each) => cells(`${pairName(each)} face au couple moyen`, each)),
  ];
}
