/** What stands in the page's two forms, as answers and settings. */

import type { DateOrder, Endpoint, FileKind } from '../season/season.ts';
import type { Answers, Settings } from './settings.ts';

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
    kinds,
    map,
    dateOrder: (namedValue(form, 'date-order') as DateOrder | null) ?? before.dateOrder,
    samePlants: same === null ? before.samePlants : same === 'yes',
  };
}

/** The settings that the form gives. */
export function settingsIn(form: HTMLElement): Settings {
  const text = (id: string) => form.querySelector<HTMLInputElement>(`#${id}`)?.value ?? '';
  const plants = [...form.querySelectorAll<HTMLInputElement>('[data-plant]')];
  return {
    worth: text('own-worth'),
    useOn: text('own-use-on'),
    endpoint: (namedValue(form, 'own-endpoint') as Endpoint | null) ?? 'initial',
    expected: new Map(
      plants.filter(({ value }) => value.trim() !== '').map(({ dataset, value }) => [dataset.plant!, value]),
    ),
  };
}
