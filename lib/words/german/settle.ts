/** Wie viele Blüten es noch klären würden. */

import type { PairSettling, Settle, StorageSettling } from '../../analysis/settle.ts';
import { MOST_ROWS, methodsByReach, nearest, type Reach, within } from '../told/settling.ts';
import { pairName } from './choice-figures.ts';
import { flowersIn, vialsIn } from './nouns.ts';
import { CANNOT_TELL, counted, inTen, joined, wholeNumber } from './numbers.ts';
import { pollenOf } from './storage.ts';

export function settleAnswer(settle: Settle): string {
  return [storagesSaid(settle), vialsSaid(settle), pairsSaid(settle)].filter((said) => said !== '').join(' ');
}

function storagesSaid(settle: Settle): string {
  if (settle.freshVersusStored.length === 0)
    return 'Es wurde kein gelagerter Pollen verwendet; dazu ist nichts zu klären.';
  const { reachable, beyond, settled } = methodsByReach(settle);
  return [reachableSaid(reachable), beyondSaid(beyond), settledSaid(settled)]
    .filter((said) => said !== '')
    .join(' ');
}

const moreFlowers = (more: number | null): string => counted(more ?? 0, 'weitere Blüte', 'weitere Blüten');

function reachableSaid(settlings: readonly StorageSettling[]): string {
  const [first, ...others] = settlings;
  if (first === undefined) return '';
  const rest = others.map(
    ({ storage, more }) => `; für ${pollenOf(storage, 'accusative')} ${wholeNumber(more ?? 0)}`,
  );
  return (
    `Etwa ${moreFlowers(first.more)} würden frisch gegen ${pollenOf(first.storage, 'accusative')} klären, die Hälfte mit jeder Art auf ` +
    `denselben Paaren${rest.join('')}.`
  );
}

function beyondSaid(settlings: readonly StorageSettling[]): string {
  const [first] = settlings;
  if (first === undefined) return '';
  const each = settlings.map(
    ({ storage, more }) => `${pollenOf(storage, 'accusative')} (${moreFlowers(more)})`,
  );
  return `Frisch gegen ${joined(each)} ist außer Reichweite: zwei Saisons bieten ${flowersIn(first.reach)}.`;
}

function settledSaid(settlings: readonly StorageSettling[]): string {
  if (settlings.length === 0) return '';
  const each = settlings.map(({ storage }) => pollenOf(storage, 'accusative'));
  return `Für frisch gegen ${joined(each)} sind schon Blüten genug da.`;
}

function vialsSaid({ vials }: Settle): string {
  const [first] = vials;
  if (first === undefined) return '';
  if (first.needed === null)
    return 'Für ein Röhrchen lässt es sich erst sagen, wenn bekannt ist, welcher Fruchtansatz eine Blüte wert ist.';
  const reachable = vials.filter(within).length;
  const start = `Um allein aus den eigenen Blüten zu wissen, ob es sich lohnt, ein Röhrchen zu behalten, braucht es ${wholeNumber(first.needed)} davon`;
  return reachable === 0
    ? `${start}: außer Reichweite für jedes Röhrchen, nach seinen Dosen oder den Blüten zweier Saisons.`
    : `${start}: in Reichweite für ${wholeNumber(reachable)} von ${vialsIn(vials.length)}.`;
}

function pairsSaid({ pairs }: Settle): string {
  const known = pairs.find(({ needed }) => needed !== null);
  if (known === undefined) return '';
  const reachable = pairs.filter(within);
  const start = `Um zu wissen, ob ein Paar besser oder schlechter ist als das durchschnittliche, braucht es ${flowersIn(known.needed!)} darauf`;
  if (reachable.length === 0) return `${start}: mehr, als zwei Saisons auf irgendeiner Mutterpflanze bieten.`;
  const named = nearest(reachable).map(pairName);
  const names = reachable.length > MOST_ROWS ? `, am nächsten ${joined(named)}` : `: ${joined(named)}`;
  return `${start}, in Reichweite für ${wholeNumber(reachable.length)} von ${counted(pairs.length, 'Paar', 'Paaren')}${names}.`;
}

export function settledMeans({ power, trueDifference, seasonFlowers }: Settle): string {
  return (
    `„Geklärt“ heißt: ist der wahre Unterschied ${wholeNumber(trueDifference * 10)} von je 10 Blüten, so zeigen so viele Blüten mit einer ` +
    `Chance von ${inTen(power)}, dass es einen gibt. Die Zahl hängt nicht daran, was diese Saison zufällig zeigte. „Außer ` +
    `Reichweite“ heißt: mehr als die Blüten zweier Saisons (eine Saison bietet ${wholeNumber(seasonFlowers)}).`
  );
}

export const SETTLE_COLUMNS = ['Frage', 'Blüten bisher', 'nötig', 'weitere', 'in Reichweite'] as const;

function cells(question: string, settling: Reach): readonly string[] {
  const { have, needed, more } = settling;
  const number = (value: number | null) => (value === null ? CANNOT_TELL : wholeNumber(value));
  const reach =
    settling.tooFewDoses === true ? 'nein: zu wenige Dosen' : within(settling) ? 'ja' : 'außer Reichweite';
  return [question, wholeNumber(have), number(needed), number(more), more === null ? CANNOT_TELL : reach];
}

export function settleRows({ freshVersusStored, vials, pairs }: Settle): readonly (readonly string[])[] {
  return [
    ...freshVersusStored.map((each) =>
      cells(`frisch gegen ${pollenOf(each.storage, 'accusative')}, gleiche Paare`, each),
    ),
    ...nearest(vials).map((each) => cells(`Röhrchen ${each.vial} gegen das, was eine Blüte wert ist`, each)),
    ...nearest<PairSettling>(pairs).map((each) =>
      cells(`${pairName(each)} gegen das durchschnittliche Paar`, each),
    ),
  ];
}
