/** The settings that depend on the files, as markup: flowers of next season, names of one plant, wishes for the plan. */

import type { Wish } from '../command/wishes.ts';
import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { OWN_SEASON } from '../words/own-season.ts';
import { type ListName, OWN_SETTINGS as words } from '../words/own-settings.ts';
import type { Reading } from './reading.ts';
import type { Settings } from './settings.ts';

/** One field a seed parent for the flowers that it is expected to open. */
export function flowerFields(plants: readonly string[], { expected }: Settings): Html {
  return html`${plants.map(
    (plant, i) => html`<label class="plant" for="own-flowers-${i}"><span class="name">${plant}</span>
<input id="own-flowers-${i}" data-plant="${plant}" inputmode="numeric" size="4" value="${expected.get(plant) ?? ''}"></label>`,
  )}`;
}

/** What stands in place of the fields where a file says it. */
export const flowersFromFile: Html = html`<p>${OWN_SEASON.flowersFromFile}</p>`;

function select(id: string, label: string, blank: string, options: readonly string[]): Html {
  return html`<label class="field" for="${id}">${label}</label>
<select id="${id}"><option value="">${blank}</option>${options.map(
    (option) => html`<option value="${option}">${option}</option>`,
  )}</select>`;
}

/** What was said so far, each with a button to take it out. */
function saidItems(list: ListName, said: readonly string[]): Html | string {
  if (said.length === 0) return '';
  return html`<ul class="files">${said.map(
    (what, i) => html`<li><span class="name">${what}</span>
<button type="button" data-drop="${list}" data-at="${i}" aria-label="${words.takeOut(what)}">×</button></li>`,
  )}</ul>`;
}

function listFields(
  list: ListName,
  said: readonly string[],
  names: { readonly first: readonly string[]; readonly second: readonly string[] },
): Html {
  const { legend, first, second, flowers, add } = words[list];
  const blank = list === 'atMost' ? words.anySeedParent : words.choosePlant;
  const number = html`<label class="field" for="own-${list}-number">${flowers ?? ''}</label>
<input id="own-${list}-number" inputmode="numeric" size="4">`;
  return html`<fieldset><legend>${legend}</legend>${flowers === null ? '' : html`<p>${words.wishHint}</p>`}${saidItems(list, said)}
${select(`own-${list}-first`, first, words.choosePlant, names.first)}
${select(`own-${list}-second`, second, blank, names.second)}
${flowers === null ? '' : number}
<p><button type="button" data-add="${list}">${add}</button></p></fieldset>`;
}

const wishSaid = (list: 'must' | 'atMost', wishes: readonly Wish[]): string[] =>
  wishes.map(({ names, flowers }) => words[list].said(names, flowers));

/** The lists that a grower may fill, one after another; that of columns only where one was not understood. */
export function listsMarkup(
  { names, plants, unused, columns }: Pick<Reading, 'names' | 'plants' | 'unused' | 'columns'>,
  { same, map, must, atMost }: Settings,
  samePlants: boolean,
): Html[] {
  const told = samePlants ? names : plants;
  const both = { first: told, second: told };
  const pairs = same.flatMap(([kept = '', ...others]) => [words.same.said(kept, others.join(', '))]);
  const read = map.map(([header, column]) => words.map.said(header, column));
  return [
    ...(unused.length + read.length === 0
      ? []
      : [listFields('map', read, { first: unused, second: columns })]),
    listFields('same', pairs, { first: names, second: names }),
    listFields('must', wishSaid('must', must), both),
    listFields('atMost', wishSaid('atMost', atMost), both),
  ];
}

/** The settings with what was chosen put on one of the lists; null where the choice is not complete. */
export function withListed(settings: Settings, list: ListName, chosen: Chosen): Settings | null {
  const { first, second } = chosen;
  if (list === 'map') {
    if (first === '' || second === '') return null;
    return { ...settings, map: [...settings.map, [first, second]] };
  }
  if (list === 'same') {
    if (first === '' || second === '' || first === second) return null;
    return { ...settings, same: [...settings.same, [first, second]] };
  }
  const flowers = /^\d{1,6}$/.test(chosen.number.trim()) ? Number(chosen.number) : null;
  if (flowers === null || first === '') return null;
  if (list === 'must') {
    if (second === '' || flowers === 0) return null;
    return { ...settings, must: [...settings.must, { names: `${first} × ${second}`, flowers }] };
  }
  const names = second === '' ? first : `${second} × ${first}`;
  return { ...settings, atMost: [...settings.atMost, { names, flowers }] };
}

/** What stands in the fields of a list. */
export interface Chosen {
  readonly first: string;
  readonly second: string;
  readonly number: string;
}

/** The settings without one entry of a list. */
export function withoutListed(settings: Settings, list: ListName, at: number): Settings {
  return { ...settings, [list]: (settings[list] as readonly unknown[]).filter((_, i) => i !== at) };
}
