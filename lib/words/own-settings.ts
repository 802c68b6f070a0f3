/** The words of the page for one's own file that are about its settings and about a copy to share. */

import { type FailureCode, type FailureDetails, failureWords } from './english-failures.ts';
import { cited } from './problem-sentence.ts';
import { type PageRefusals, pageRefusal } from './told/page-fixes.ts';

/** The lists that a grower may fill in the settings. */
export type ListName = 'map' | 'same' | 'must' | 'atMost';

/** What the page says at its settings; markup stands with the page. */
export const OWN_SETTINGS = {
  more: 'More settings',
  moreHint: 'Most seasons need none of these. They count when it is worked out.',
  levelLabel: 'Of 100 ranges, how many should hold the truth?',
  levelHint: 'Left blank: 95.',
  asOfLabel: 'Day up to which things have happened',
  asOfHint:
    'Left blank: the latest day in your files. It belongs to this season, so it is not saved with the settings.',
  ageLegend: 'How the age of pollen counts',
  ageBoth: 'Both ways, weighed by your own flowers',
  ageDays: 'Every day alike',
  ageLog: 'The first days most',
  dateLegend: 'Days that a spreadsheet wrote as numbers, such as 45809',
  dateUnsaid: 'Counted as the file says, else from 1900',
  date1900: 'Counted from 1900',
  date1904: 'Counted from 1904, as older sheets made on a Mac do',
  map: {
    legend: 'A column of yours that was not understood',
    first: 'Your column',
    second: 'What it holds',
    flowers: null,
    add: 'Read it so',
    said: (header: string, column: string): string => `${cited(header)} is ${column}`,
  },
  same: {
    legend: 'Two names of one plant',
    first: 'Name to keep',
    second: 'Other name',
    flowers: null,
    add: 'Add these names',
    said: (first: string, second: string): string => `${second} is ${first}`,
  },
  must: {
    legend: 'Crosses that next season must try',
    first: 'Seed parent',
    second: 'Pollen parent',
    flowers: 'Fewest flowers',
    add: 'Add this cross',
    said: (names: string, flowers: number): string => `${names}: at least ${flowers}`,
  },
  atMost: {
    legend: 'Most flowers for one pollen parent',
    first: 'Pollen parent',
    second: 'On which seed parent',
    flowers: 'Most flowers',
    add: 'Add this limit',
    said: (names: string, flowers: number): string => `${names}: at most ${flowers}`,
  },
  wishHint: 'It holds for the plan, which needs the flowers you expect next season.',
  anySeedParent: 'all together',
  choosePlant: 'choose',
  takeOut: (what: string): string => `Take out: ${what}`,
  incomplete: {
    map: 'Choose your column and what it holds first.',
    same: 'Choose two different names first.',
    must: 'Choose both parents and a whole number of flowers from 1 up.',
    atMost: 'Choose the pollen parent and a whole number of flowers.',
  },
  alike: (kept: string, other: string): string => `Are ${cited(kept)} and ${cited(other)} the same plant?`,
  alikeYes: (kept: string): string => `Yes: one plant, ${cited(kept)}`,
  alikeNo: 'No: two plants',
  wrongLevel: 'How many ranges hold the truth needs a number above 0 and below 100.',
  wrongAsOf: 'The day up to which things have happened needs a day that exists, as YYYY-MM-DD.',
  fileRead: (name: string): string => `The settings of ${name} are used.`,
} as const;

/** What the page says where a copy to share is made. */
export const OWN_SHARING = {
  summary: 'Make a copy to share',
  what: 'In a coded copy plants, vials, tags and growers stand under codes, every date is moved by the same number of days, and notes are left out. Ages, mornings and counts stay true.',
  legend: 'What may be shown',
  codes: 'Every cross, under codes; others can read and analyse it again',
  summaryOnly: 'The summary only: nothing about single plants, pairs and vials',
  keyLabel: 'The key file of an earlier copy, so that the same plants keep their codes',
  keyHint: 'Left empty: a new key is made.',
  button: 'Make the copy',
  making: 'The copy is being worked out from its own files; that takes about as long as the report.',
  stop: 'Stop making it',
  stopped: 'Stopped. No copy was made.',
  ready:
    'The copy was searched for your names, dates and notes: none is in it. Save its files, and the key apart from them.',
  save: (name: string): string => `Save ${name}`,
  saveKey: 'Save the key, for yourself alone',
  keyRead: (name: string): string => `${name} is the key of coded copies: the next copy uses it.`,
} as const;

const REFUSALS: PageRefusals<FailureCode, FailureDetails> = {
  failureWords,
  options: {
    '--must': `“${OWN_SETTINGS.must.legend}”`,
    '--at-most': `“${OWN_SETTINGS.atMost.legend}”`,
    '--worth': 'What is worth a flower',
    '--level': 'The level of the ranges',
  },
  fixes: {
    'wish-without-flowers':
      'Say what each plant will offer under “Flowers you expect next season”, or take the wish out.',
    'wish-unclear': 'Give one of the plants another name in the sheet.',
    'plant-unknown': 'Take the wish out, and choose the plant from the list.',
    'option-value': 'Correct it in the file of settings, and choose that file again.',
    'settings-not-json': 'Choose a file of settings that this page or the command saved.',
    'settings-version': 'Choose a file of settings that this page or the command saved.',
    'key-not-ours': 'Choose the key that was saved with an earlier copy, or none.',
    'dates-too-far': 'Correct the dates, or make the copy with a new key.',
  },
};

/** Why nothing was done, in the command's words, and what can be done about it here. */
export function refusedOnPage(code: FailureCode, details: FailureDetails): string {
  return pageRefusal(code, details, REFUSALS);
}
