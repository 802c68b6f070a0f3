/** The page to explore as it opens: its choices and charts' places, and its flowers as data. */

import { AGE_BANDS } from '../analysis/raw.ts';
import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { unreadMarkup } from '../notebook/page.ts';
import type { Words } from '../words/languages.ts';
import { unpackFlowers } from './explored-flowers.ts';
import { DIMENSIONS, type Dimension, keysOf } from './selection.ts';

/** A value of a dimension as the page shows it. */
export function shownKey(
  { choiceLabel }: Pick<Words, 'choiceLabel'>,
  dimension: Dimension,
  key: string,
): string {
  const band = dimension === 'age' ? AGE_BANDS.find(([from]) => String(from) === key) : undefined;
  return choiceLabel(dimension, key, band === undefined ? null : { from: band[0], to: band[1] });
}

function boxes(dimension: Dimension, keys: readonly string[], words: Words): Html {
  const choices = keys.map(
    (key) =>
      html`<label class="choice"><input type="checkbox" name="${dimension}" value="${key}" checked> <span>${shownKey(words, dimension, key)}</span></label>
`,
  );
  return html`<fieldset><legend>${words.EXPLORE.dimension(dimension)}</legend>
${choices}</fieldset>
`;
}

/** One plant or all of them. The first entry has no name, which no plant has either. */
function list(dimension: Dimension, keys: readonly string[], { EXPLORE: said }: Words): Html {
  return html`<div><label class="field" for="explore-${dimension}">${said.dimension(dimension)}</label>
<select id="explore-${dimension}" name="${dimension}"><option value="" selected>${said.anyParent}</option>
${keys.map(
  (key) => html`<option value="${key}">${key}</option>
`,
)}</select></div>
`;
}

function chart(dimension: Dimension, { EXPLORE: said }: Words): Html {
  const label = said.chartLabel(dimension);
  return html`<figure><figcaption>${label}</figcaption>
<div id="explore-chart-${dimension}" class="explored" role="img" aria-label="${label}"></div></figure>
`;
}

/** All that stands in the page's body, script apart; `packed` as `packFlowers` gives it, `links` to the site's other pages. */
export function exploreSkeleton(packed: string, words: Words, links: Html): Html {
  const said = words.EXPLORE;
  const flowers = unpackFlowers(packed);
  const control = (dimension: Dimension) =>
    (dimension.endsWith('Parent') ? list : boxes)(dimension, keysOf(flowers, dimension), words);
  return html`<a class="skip" href="#main">${said.chooseHeading}</a>
<header>
<h1>${said.title}</h1>
<p>${said.description}</p>
${unreadMarkup(words)}</header>
${links}<noscript><p class="error">${said.needsScript}</p></noscript>
<main id="main">
<section aria-labelledby="explore-choose">
<h2 id="explore-choose">${said.chooseHeading}</h2>
<p>${said.choose}</p>
<form id="explore-choices" autocomplete="off"><div class="choices">
${DIMENSIONS.map(control)}</div>
<p><button type="reset">${said.reset}</button></p></form>
<div role="status"><p id="explore-sentence"></p>
<p id="explore-chosen"></p></div>
</section>
<section aria-labelledby="explore-charts">
<h2 id="explore-charts">${said.chartsHeading}</h2>
<p>${said.charts}</p>
${DIMENSIONS.map((dimension) => chart(dimension, words))}</section>
<section aria-labelledby="explore-numbers">
<h2 id="explore-numbers">${said.tablesHeading}</h2>
<p>${said.caution}</p>
<div id="explore-tables"></div>
</section>
</main>
<p id="explore-flowers" hidden>${packed}</p>
`;
}

/** To stand behind the stylesheet of the pages with a script. */
export const exploreStyle = `
.choices{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,15rem),1fr));gap:0 1rem;align-items:start}
input[type=checkbox]{width:1.15rem;height:1.15rem;margin:0 .5rem 0 0;flex:none;accent-color:var(--accent)}
.explored{overflow:hidden}
.explored svg{display:block}
#explore-sentence{font-weight:600;font-size:1.1875rem}
@media print{#explore-choices,section[aria-labelledby=explore-choose]>p{display:none}
body>header{display:block}}`.trim();
