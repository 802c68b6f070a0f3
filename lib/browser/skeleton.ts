/** The page as it opens: every place that the script fills, with its words. Made once, when the page is built. */

import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { unreadMarkup } from '../notebook/page.ts';
import type { Words } from '../words/languages.ts';
import { MOST_BYTES } from './chosen-files.ts';

const choosing = ({ OWN_SEASON: words }: Words): Html => html`<section aria-labelledby="own-choose">
<h2 id="own-choose" tabindex="-1">${words.chooseHeading}</h2>
<p>${words.choose}</p>
<label class="field" for="own-files">${words.filesLabel(MOST_BYTES)}</label>
<input id="own-files" type="file" multiple accept=".csv,.tsv,.txt,.xlsx,.json,text/csv,text/plain">
<p>${words.drop}</p>
<details><summary>${words.pasteSummary}</summary>
<label class="field" for="own-pasted">${words.pasteLabel}</label>
<textarea id="own-pasted" rows="6" autocomplete="off" spellcheck="false"></textarea>
<p><button type="button" id="own-paste">${words.pasteButton}</button></p></details>
<div id="own-chosen"></div>
</section>
`;

function choices(
  name: string,
  legend: string,
  options: readonly (readonly [value: string, label: string])[],
): Html {
  return html`<fieldset><legend>${legend}</legend>${options.map(
    ([value, label]) =>
      html`<label class="choice"><input type="radio" name="${name}" value="${value}"${
        value === '' ? html` checked` : ''
      }> <span>${label}</span></label>`,
  )}</fieldset>`;
}

const more = ({
  OWN_SETTINGS: setting,
}: Words): Html => html`<details id="own-more"><summary>${setting.more}</summary>
<p>${setting.moreHint}</p>
<label class="field" for="own-level">${setting.levelLabel}</label>
<input id="own-level" inputmode="decimal" size="6" aria-describedby="own-level-hint"> <span id="own-level-hint">${setting.levelHint}</span>
<label class="field" for="own-as-of">${setting.asOfLabel}</label>
<input id="own-as-of" type="date" aria-describedby="own-as-of-hint"> <span id="own-as-of-hint">${setting.asOfHint}</span>
${choices('own-age-scale', setting.ageLegend, [
  ['', setting.ageBoth],
  ['log1p-days', setting.ageLog],
  ['days', setting.ageDays],
])}
${choices('own-date-system', setting.dateLegend, [
  ['', setting.dateUnsaid],
  ['1900', setting.date1900],
  ['1904', setting.date1904],
])}
<div id="own-lists"></div>
</details>
`;

const settings = (all: Words): Html => {
  const words = all.OWN_SEASON;
  return html`<details id="own-change"><summary>${words.settingsSummary}</summary>
<form id="own-settings" autocomplete="off" novalidate>
<label class="field" for="own-worth">${words.worthLabel}</label>
<input id="own-worth" inputmode="decimal" size="6" aria-describedby="own-worth-hint"> <span id="own-worth-hint">${words.worthHint}</span>
<label class="field" for="own-use-on">${words.useOnLabel}</label>
<input id="own-use-on" type="date" aria-describedby="own-use-on-hint"> <span id="own-use-on-hint">${words.useOnHint}</span>
<fieldset><legend>${words.endpointLegend}</legend>
<label class="choice"><input type="radio" name="own-endpoint" value="initial" checked> <span>${words.endpointInitial}</span></label>
<label class="choice"><input type="radio" name="own-endpoint" value="final"> <span>${words.endpointFinal}</span></label></fieldset>
<fieldset><legend>${words.flowersLegend}</legend><p>${words.flowersHint}</p><div id="own-flowers"></div></fieldset>
${more(all)}<div id="own-faults"></div>
<p><button type="submit" class="main">${words.againButton}</button></p>
</form></details>
`;
};

const reading = (all: Words): Html => {
  const words = all.OWN_SEASON;
  return html`<section id="own-reading" aria-labelledby="own-read" hidden>
<h2 id="own-read" tabindex="-1">${words.readHeading}</h2>
<details id="own-read-fold" open><summary>${words.readSummary}</summary>
<div id="own-read-files"></div>
<form id="own-questions" autocomplete="off"><div id="own-asked"></div>
<p><button type="submit">${words.answerButton}</button></p></form>
<div id="own-confirm"><p>${words.readRight}</p>
<p><button type="button" id="own-work" class="main">${words.workButton}</button></p></div>
</details>
${settings(all)}</section>
`;
};

const working = ({
  OWN_SEASON: words,
}: Words): Html => html`<section id="own-working" aria-labelledby="own-work-heading" hidden>
<h2 id="own-work-heading" tabindex="-1">${words.workHeading}</h2>
<p><progress id="own-progress" aria-label="${words.progressLabel}" max="7" value="0"></progress></p>
<p id="own-stage"></p>
<p><button type="button" id="own-cancel">${words.cancelButton}</button></p>
</section>
<section id="own-counts" aria-labelledby="own-counts-heading" hidden>
<h2 id="own-counts-heading" tabindex="-1">${words.countsHeading}</h2>
<p>${words.countsMore}</p>
<div id="own-counts-said"></div>
</section>
`;

const share = ({
  OWN_SHARING: sharing,
}: Words): Html => html`<details id="own-share"><summary>${sharing.summary}</summary>
<form id="own-share-form" autocomplete="off"><p>${sharing.what}</p>
<fieldset><legend>${sharing.legend}</legend>
<label class="choice"><input type="radio" name="own-share-level" value="codes" checked> <span>${sharing.codes}</span></label>
<label class="choice"><input type="radio" name="own-share-level" value="summary"> <span>${sharing.summaryOnly}</span></label></fieldset>
<label class="field" for="own-key">${sharing.keyLabel}</label>
<input id="own-key" type="file" accept=".json" aria-describedby="own-key-hint"> <span id="own-key-hint">${sharing.keyHint}</span>
<p><button type="submit">${sharing.button}</button> <button type="button" id="own-share-stop" hidden>${sharing.stop}</button></p></form>
<p id="own-share-status" role="status"></p>
<div id="own-shared"></div>
</details>
`;

const answer = (all: Words): Html => {
  const words = all.OWN_SEASON;
  return html`<section id="own-answer" aria-labelledby="own-answer-heading" hidden>
<h2 id="own-answer-heading" tabindex="-1">${words.answerHeading}</h2>
<p id="own-sentence"></p>
<p id="own-changed" hidden>${words.changed}</p>
<h3>${words.saveHeading}</h3>
<p><button type="button" id="own-save-report" class="main">${words.saveReport}</button>
<button type="button" id="own-save-settings">${words.saveSettings}</button>
<button type="button" id="own-save-crosses">${words.saveCrosses}</button>
<button type="button" id="own-save-vials" hidden>${words.saveVials}</button>
<button type="button" id="own-save-flowers" hidden>${words.saveFlowers}</button></p>
${share(all)}</section>
<div id="own-report"></div>
`;
};

/**
 * All that stands in the page's body, script apart.
 *
 * @param all words of the page's language
 * @param links to other pages of a site
 */
export function skeleton(all: Words, links: Html): Html {
  const words = all.OWN_SEASON;
  return html`<a class="skip" href="#own-choose">${words.chooseHeading}</a>
<header>
<h1>${words.title}</h1>
<p>${words.description}</p>
${unreadMarkup(all)}</header>
${links}<noscript><p class="error">${words.needsScript}</p></noscript>
<main id="main">
${choosing(all)}<p id="own-status" role="status"></p>
<p id="own-unread" hidden><button type="button" id="own-read-again">${words.readAgainButton}</button></p>
${reading(all)}${working(all)}${answer(all)}<section aria-labelledby="own-promise">
<h2 id="own-promise">${words.promiseHeading}</h2>
${words.promise.map(
  (sentence) => html`<p>${sentence}</p>
`,
)}</section>
</main>
`;
}
