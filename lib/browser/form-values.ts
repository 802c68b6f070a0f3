/** What stands in the page's two forms, as answers and settings. */

import type { AgeScale } from '../analysis/models.ts';
import type { DateOrder, Endpoint, FileKind } from '../season/season.ts';
import type { ListName } from '../words/own-settings.ts';
import type { Answers, Settings } from './settings.ts';
import type { Chosen } from './shown-settings.ts';

function checkedValue(place: ParentNode): string | null {
  return place.querySelector<HTMLInputElement>('input[type=radio]:checked')?.value ?? null;
}

function namedValue(form: HTMLElement, name: string): string | null {
  return form.querySelector<HTMLInputElement>(`input[name="${name}"]:checked`)?.value ?? null;
}

/** The answers with those that the form gives now; what it does not ask keeps its earlier answer. */
export function answersIn(form: HTMLElement, before: Answers): Answers {
  const kinds = new Map(before.kinds);
  for (const place of form.querySelectorAll<HTMLElement>('[data-file]')) {
    const kind = checkedValue(place);
    if (kind !== null) kinds.set(place.dataset.file!, kind as FileKind);
  }
  const map = new Map(before.map);
  for (const place of form.querySelectorAll<HTMLElement>('[data-column]')) {
    const header = place instanceof HTMLSelectElement ? place.value : checkedValue(place);
    if (header !== null && header !== '') map.set(header, place.dataset.column!);
  }
  const same = namedValue(form, 'same-plants');
  return {
    ...before,
    kinds,
    map,
    dateOrder: (namedValue(form, 'date-order') as DateOrder | null) ?? before.dateOrder,
    samePlants: same === null ? before.samePlants : same === 'yes',
  };
}

/** Whether two names that look alike were said to be one plant or two; those that were not answered are left out. */
export function alikeIn(
  form: HTMLElement,
): { readonly kept: string; readonly other: string; readonly one: boolean }[] {
  return [...form.querySelectorAll<HTMLElement>('[data-kept]')].flatMap((place) => {
    const said = checkedValue(place);
    const { kept = '', other = '' } = place.dataset;
    return said === null ? [] : [{ kept, other, one: said === 'yes' }];
  });
}

/** What stands in the fields of one of the lists. */
export function chosenIn(form: HTMLElement, list: ListName): Chosen {
  const value = (part: string) =>
    form.querySelector<HTMLInputElement | HTMLSelectElement>(`#own-${list}-${part}`)?.value ?? '';
  return { first: value('first'), second: value('second'), number: value('number') };
}

/** The settings that the form gives; the lists stand in no field and are as before. */
export function settingsIn(form: HTMLElement, before: Settings): Settings {
  const text = (id: string) => form.querySelector<HTMLInputElement>(`#${id}`)?.value ?? '';
  const plants = [...form.querySelectorAll<HTMLInputElement>('[data-plant]')];
  const system = namedValue(form, 'own-date-system') || null;
  return {
    ...before,
    level: text('own-level'),
    asOf: text('own-as-of'),
    ageScale: (namedValue(form, 'own-age-scale') || null) as AgeScale | null,
    dateSystem: system === null ? null : system === '1904' ? 1904 : 1900,
    worth: text('own-worth'),
    useOn: text('own-use-on'),
    endpoint: (namedValue(form, 'own-endpoint') as Endpoint | null) ?? 'initial',
    expected: new Map(
      plants.filter(({ value }) => value.trim() !== '').map(({ dataset, value }) => [dataset.plant!, value]),
    ),
  };
}

/** Puts settings into the form, as where they come from a file. */
export function fillSettings(form: HTMLElement, settings: Settings): void {
  const put = (id: string, value: string) => {
    const field = form.querySelector<HTMLInputElement>(`#${id}`);
    if (field !== null) field.value = value;
  };
  put('own-worth', settings.worth);
  put('own-use-on', settings.useOn);
  put('own-level', settings.level);
  put('own-as-of', settings.asOf);
  const chosen = new Map([
    ['own-endpoint', settings.endpoint],
    ['own-age-scale', settings.ageScale ?? ''],
    ['own-date-system', String(settings.dateSystem ?? '')],
  ]);
  for (const [name, value] of chosen) {
    for (const radio of form.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`))
      radio.checked = radio.value === value;
  }
}
