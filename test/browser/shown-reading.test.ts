import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { readingOf } from '../../lib/browser/reading.ts';
import { NO_ANSWERS } from '../../lib/browser/settings.ts';
import { chosenList, questionsAsked, readFiles, refusalSaid } from '../../lib/browser/shown-reading.ts';
import { html, markupOf } from '../../lib/notebook/html.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const HOSTILE = '</script>"><img src=x onerror=alert(1)>';

function reading(text: string, name = 'a.csv') {
  return readingOf(readSeason([{ name, bytes: new TextEncoder().encode(text) }]), new Map());
}

function asked(text: string): Document {
  const questions = questionsAsked(reading(text), NO_ANSWERS);
  return parseHTML(`<body>${markupOf(html`${questions}`)}</body>`).document;
}

const radios = (page: Document) =>
  [...page.querySelectorAll('input')].map((input) => input.getAttribute('value'));

describe('questionsAsked', () => {
  it('asks nothing where all is clear', () => {
    expect(asked(`${HEAD}\nT1,2025-06-01,A,B,fresh,fruit`).querySelectorAll('input, select')).toHaveLength(0);
  });

  it('asks for the order of dates with each reading of one of them', () => {
    const page = asked(`${HEAD}\nT1,03/04/2025,A,B,fresh,fruit`);
    expect(radios(page)).toEqual(['dmy', 'mdy']);
    expect(page.documentElement.outerHTML).toContain('day-month-year: 2025-04-03');
  });

  it('asks what a file is whose columns are none of ours', () => {
    expect(radios(asked('x,y\n1,2'))).toEqual(['crosses', 'vials', 'flowers']);
  });

  it('asks which header stands for a column that is missing', () => {
    const page = asked(`${HEAD.replace('outcome', 'Zorn')}\nT1,2025-06-01,A,B,fresh,fruit`);
    expect(page.querySelector('select')?.getAttribute('data-column')).toBe('outcome');
    expect(page.querySelector('select')?.textContent).toContain('Zorn');
  });

  it('asks whether plants of several growers are the same, with an answer that holds until another is given', () => {
    const rows = ['T1,2025-06-01,A,B,fresh,fruit,Ina', 'T2,2025-06-01,A,C,fresh,fruit,Ole'];
    const page = asked([`${HEAD},grower`, ...rows].join('\n'));
    expect(page.querySelector('input[checked]')?.getAttribute('value')).toBe('no');
  });
});

describe('what is shown', () => {
  it('escapes names of files, headers and cells', () => {
    const text = `${HEAD},"${HOSTILE.replaceAll('"', '""')}"\n${HOSTILE.replaceAll(/[",]/g, '')},,A,B,fresh,fruit,1`;
    const markup = markupOf(
      html`${readFiles(reading(text, HOSTILE))}${chosenList([
        { name: HOSTILE, bytes: null, refused: HOSTILE },
      ])}`,
    );
    expect(markup).not.toMatch(/<img|<\/script/);
  });

  it('says why nothing can be counted in the words of the command', () => {
    expect(markupOf(refusalSaid(reading('')))).toContain('No row of a.csv can be used. The file is empty.');
    expect(refusalSaid(reading(`${HEAD}\nT1,2025-06-01,A,B,fresh,fruit`))).toBe('');
  });
});
