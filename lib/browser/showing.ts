/** What the page shows in each state of its flow. */

import { html } from '../notebook/html.ts';
import { OWN_SEASON, stageSaid } from '../words/own-season.ts';
import { STAGES, type Stage } from '../words/told/stages.ts';
import type { ChosenFile } from './chosen-files.ts';
import { type Places, placeParts } from './places.ts';
import type { Reading } from './reading.ts';
import type { Answers, Settings } from './settings.ts';
import { chosenList, questionsAsked, readFiles, refusalSaid } from './shown-reading.ts';
import { flowerFields, flowersFromFile, listsMarkup } from './shown-settings.ts';

/** The list of files, and nothing of what an earlier reading showed. */
export function showFiles(places: Places, files: readonly ChosenFile[]): void {
  places.fill('own-chosen', chosenList(files));
  for (const id of ['own-unread', 'own-reading', 'own-working', 'own-counts', 'own-answer'])
    places.show(id, false);
  places.at('own-report').replaceChildren();
}

/**
 * What was read, with its questions, and the settings that depend on it. The lists come one after another: a thousand
 * names to choose from would keep a telephone busy.
 */
export async function fillReading(
  places: Places,
  reading: Reading,
  { answers, settings }: { readonly answers: Answers; readonly settings: Settings },
  pause: () => Promise<void>,
  wanted: () => boolean,
): Promise<void> {
  const questions = questionsAsked(reading, answers);
  places.fill('own-read-files', html`${refusalSaid(reading)}${readFiles(reading)}`);
  places.fill('own-asked', html`${questions}`);
  places.show('own-questions', questions.length > 0);
  // One field a plant; a file of expected flowers stands in place of them.
  const typed = settings.expected.size > 0;
  const fields =
    reading.flowersGiven && !typed ? flowersFromFile : flowerFields(reading.seedParents, settings);
  places.fill('own-flowers', fields);
  const lists = listsMarkup(reading, settings, answers.samePlants).map(({ markup }) => markup);
  await placeParts(places.at('own-lists'), lists, pause, wanted);
}

/** The lists of the settings: names of one plant, wishes for the plan. */
export function showLists(
  places: Places,
  reading: Reading,
  { answers, settings }: { readonly answers: Answers; readonly settings: Settings },
): void {
  places.fill('own-lists', html`${listsMarkup(reading, settings, answers.samePlants)}`);
}

/** What was read; the button to go on only where something can be counted. */
export function showReading(places: Places, reading: Reading): void {
  places.show('own-confirm', reading.refusal === null);
  places.show('own-working', false);
  places.show('own-reading', true);
  places.at<HTMLDetailsElement>('own-read-fold').open = true;
}

/** That work is being done, and what. */
export function showStage(places: Places, stage: Stage): void {
  places.say('own-stage', stageSaid(stage));
  places.at<HTMLProgressElement>('own-progress').value = STAGES.indexOf(stage);
  places.show('own-working', true);
  places.show('own-confirm', false);
}

/** The finished answer: its sentence, and the buttons that save it. */
export function showDone(
  places: Places,
  sentence: string,
  has: { readonly flowers: boolean; readonly vials: boolean },
): void {
  places.say('own-sentence', sentence);
  places.fill('own-faults', '');
  places.show('own-working', false);
  places.show('own-counts', false);
  places.show('own-changed', false);
  places.show('own-save-flowers', has.flowers);
  places.show('own-save-vials', has.vials);
  places.show('own-answer', true);
  places.at<HTMLDetailsElement>('own-read-fold').open = false;
  places.say('own-status', OWN_SEASON.done);
}

/** That nothing is being done: what was being shown of it goes. */
export function showIdle(places: Places, canWork: boolean): void {
  places.show('own-working', false);
  places.show('own-counts', false);
  places.show('own-confirm', canWork);
}
