/** The page to explore as it opens: its choices and charts' places, and its flowers as data. */

import { AGE_BANDS } from '../analysis/raw.ts';
import type { Html } from '../notebook/html.ts';
import { html } from '../notebook/html.ts';
import { choiceLabel, EXPLORE as words } from '../words/explore.ts';
import { unpackFlowers } from './explored-flowers.ts';
import { DIMENSIONS, type Dimension, keysOf } from './selection.ts';

/** A value of a dimension as the page shows it. */
export function shownKey(dimension: Dimension, key: string): string {
  const band = dimension === 'age' ? AGE_BANDS.find(([from]) => String(from) === key) : undefined;
  return choiceLabel(dimension, key, band === undefined ? null : { from: band[0], to: band[1] });
}

function boxes(dimension: Dimension, keys: readonly string[]): Html {
  const choices = keys.map(
    (key) =>
      html`<label class="choice"><input type="checkbox" name="${dimension}" value="${key}" checked> <span>${shownKey(dimension, key)}</span></label>
`,
  );
  return html`<fieldset><legend>${words.dimension(dimension)}</legend>
${choices}</fieldset>
`;
}

/** One plant or all of them. The first entry has no name, which no plant has either. */
function list(dimension: Dimension, keys: readonly string[]): Html {
  return html`<div><label class="field" for="explore-${dimension}">${words.dimension(dimension)}</label>
<select id="explore-${dimension}" name="${dimension}"><option value="" selected>${words.anyParent}</option>
${keys.map(
  (key) => html`<option value="${key}">${key}</option>
`,
)}</select></div>
`;
}

function chart(dimension: Dimension): Html {
  const label = words.chartLabel(dimension);
  return html`<figure><figcaption>${label}</figcaption>
<div id="explore-chart-${dimension}" class="explored" role="img" aria-label="${label}"></div></figure>
`;
}

/** All that stands in the page's body, script apart; `packed` as `packFlowers` gives it, `pages` the list of the site's pages. */
export function exploreSkeleton(packed: string, pages: Html): Html {
  const flowers = unpackFlowers(packed);
  const control = (dimension: Dimension) =>
    (dimension.endsWith('Parent') ? list : boxes)(dimension, keysOf(flowers, dimension));
  return html`<a class="skip" href="#main">${words.chooseHeading}</a>
<header>
<h1>${words.title}</h1>
<p>${words.description}</p>
</header>
${pages}<noscript><p class="error">${words.needsScript}</p></noscript>
<main id="main">
<section aria-labelledby="explore-choose">
<h2 id="explore-choose">${words.chooseHeading}</h2>
<p>${words.choose}</p>
<form id="explore-choices" autocomplete="off"><div class="choices">
${DIMENSIONS.map(control)}</div>
<p><button type="reset">${words.reset}</button></p></form>
<div role="status"><p id="explore-sentence"></p>
<p id="explore-chosen"></p></div>
</section>
<section aria-labelledby="explore-charts">
<h2 id="explore-charts">${words.chartsHeading}</h2>
<p>${words.charts}</p>
${DIMENSIONS.map(chart)}</section>
<section aria-labelledby="explore-numbers">
<h2 id="explore-numbers">${words.tablesHeading}</h2>
<p>${words.caution}</p>
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
