/** The one stylesheet of every page: constant, so that the page's policy can name its digest. */

import { paletteCss } from '../charts/palette.ts';
import { chartCss } from '../charts/sheet.ts';

const screen = `
*{box-sizing:border-box}
html{font-size:100%;-webkit-text-size-adjust:100%;text-size-adjust:100%;background:var(--paper);color:var(--ink)}
body{margin:0 auto;padding:1.25rem 1rem 4rem;max-width:44rem;
font:1.0625rem/1.55 "Iowan Old Style","Palatino Linotype",Palatino,"Book Antiqua",Georgia,serif;overflow-wrap:break-word}
h1,h2,h3{line-height:1.2;font-weight:600;text-wrap:balance;margin:0}
h1{font-size:clamp(1.75rem,7vw,2.5rem);letter-spacing:-.01em}
h2{font-size:1.5rem;padding-top:.75rem;border-top:1px solid var(--rule);scroll-margin-top:1rem}
h3{font-size:1.125rem;margin-top:1.5rem}
p,ul,ol,dl,blockquote,pre,figure,details,table{margin:.75rem 0}
a{color:var(--accent);text-underline-offset:.15em}
a:focus-visible,summary:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
header{border-bottom:4px double var(--rule);padding-bottom:1rem;margin-bottom:1rem}
header p{color:var(--quiet);font-style:italic;margin-bottom:0}
nav ol{columns:2 15rem;column-gap:2rem;padding-left:1.75rem;margin:.5rem 0 0}
nav li{break-inside:avoid;padding:.2rem 0}
nav a{display:inline-block;padding:.3rem 0;vertical-align:top}
@supports (baseline-source:first){nav a{vertical-align:baseline;baseline-source:first}}
nav h2{font-size:1rem;border:0;padding:0}
.languages ul{display:flex;flex-wrap:wrap;gap:0 1.25rem;list-style:none;margin:0;padding:0}
.pages details{margin:0 0 .75rem}
.pages ul{list-style:none;padding:0 0 .5rem;margin:0;columns:2 14rem}
.pages [aria-current]{color:inherit;font-weight:600;text-decoration:none}
main :is(ul,ol){padding-left:1.4rem}
main li{margin:.3rem 0}
section{margin-top:2.25rem}
section>h2+p{font-size:1.1875rem;line-height:1.45}
blockquote{padding:.1rem 0 .1rem .9rem;border-left:4px solid var(--warn)}
blockquote>*{margin:.4rem 0}
code{font-family:ui-monospace,"Cascadia Mono","Liberation Mono",Menlo,monospace;font-size:.85em;overflow-wrap:anywhere}
pre{white-space:pre-wrap;line-height:1.45}
figure{padding:0}
figcaption{font-weight:600;line-height:1.4;margin-bottom:.5rem}
summary{cursor:pointer;color:var(--quiet);padding:.3rem 0 .3rem 1.1rem;text-indent:-1.1rem}
table{border-collapse:collapse;width:100%;font-size:.9375rem;line-height:1.4;font-variant-numeric:tabular-nums lining-nums}
caption{text-align:left;color:var(--quiet);padding-bottom:.4rem}
th,td{padding:.35rem .75rem .35rem 0;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule)}
th{font-weight:600}
tbody th{font-weight:inherit}
.number,.code{white-space:nowrap}
caption,.long,.sheet .word{overflow-wrap:anywhere}
.long{white-space:normal}
th:last-child,td:last-child{padding-right:0}
thead th{vertical-align:bottom;border-bottom-color:var(--ink)}
.number{text-align:right}
.key{font-family:ui-monospace,"Liberation Mono",Menlo,monospace;font-size:.8em}
math{font-family:math,"Cambria Math","STIX Two Math","Latin Modern Math","Libertinus Math",serif}
math[display=block]{margin:.75rem 0;font-size:1.0625rem}
mfrac>*{padding:.1em .2em}
.tags{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(12rem,1fr));gap:.4rem}
.tags li{border:1px dashed var(--quiet);padding:.3rem .5rem}
.skip{position:absolute;left:-100vw;background:var(--paper);padding:.5rem}
.skip:focus{left:1rem;top:.5rem}
`;

const narrow = `
@media screen and (max-width:40rem){
math[display=block]{font-size:1rem}
.plain .word{overflow-wrap:anywhere}
table:not([class]){font-size:.8rem}
table:not([class]) :is(th,td){padding-right:.35rem;hyphens:auto}
.cards,.cards tbody,.cards tr,.cards th,.cards td{display:block}
.cards caption{display:block}
.cards thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.cards tr{border-bottom:1px solid var(--rule);padding:.6rem 0}
.cards th,.cards td{border:0;padding:.1rem 0;text-align:left;white-space:normal}
.cards tbody th{font-weight:600}
.cards td{display:grid;grid-template-columns:minmax(6rem,2fr) minmax(0,3fr);gap:.75rem;overflow-wrap:anywhere}
.cards td::before{content:attr(data-title) / "";color:var(--quiet)}
.cards.told td{display:block}
.cards.told td::before{display:block}
caption .key{display:none}
}
`;

/**
 * On paper: folded tables stand open, folded code is left out, nothing is cut, the paper is white. A chart stands beside
 * its table, 59 mm wide or more: its text then has 7 points.
 */
const print = `
@page{margin:10mm 13mm}
@media print{
html,body{background:#fff}
body{max-width:none;padding:0;font-size:9.25pt;line-height:1.28}
h1{font-size:20pt}
h2{font-size:13pt;padding-top:4pt;break-after:avoid}
h3{font-size:10.5pt;margin-top:8pt;break-after:avoid}
p,ul,ol,dl,blockquote{margin:4pt 0}
figure,details,table{margin:3pt 0}
header{padding-bottom:4pt;margin-bottom:4pt}
section{margin-top:5pt}
section>h2+p{font-size:10.5pt;break-inside:avoid;break-after:avoid}
nav,.skip,.working,summary{display:none}
main li{margin:0}
math[display=block]{font-size:inherit;margin:3pt 0}
details::details-content{content-visibility:visible;block-size:auto}
a{color:inherit}
table{line-height:1.15}
th,td{padding-top:.7pt;padding-bottom:.7pt}
thead{display:table-header-group}
tr,li,blockquote,svg{break-inside:avoid}
figcaption{break-inside:avoid;break-after:avoid;grid-column:1/3}
figure:has(table){display:grid;grid-template-columns:59mm 1fr;column-gap:4mm;align-items:start;break-inside:avoid}
figure:has(.plain){grid-template-columns:72mm 1fr;column-gap:6mm}
figure:has(table) figcaption{margin-bottom:2pt}
figure details,figure table{margin-top:0}
table{font-size:7.5pt}
.key{font-size:7pt}
th,td{padding-right:.5rem}
figure .cards{line-height:1.12}
figure .cards :is(th,td){padding:.35pt .3rem .35pt 0}
figure .chart{width:auto;max-width:100%;max-height:215mm}
caption{break-after:avoid;padding-bottom:2pt}
table.sheet{font-size:10pt}
.sheet th,.sheet td{padding-top:2.5pt;padding-bottom:2.5pt}
.sheet tbody{break-inside:avoid}
p{orphans:3;widows:3}
}
`;

const preferences = `
@media (forced-colors:active){:root{--ink:CanvasText;--paper:Canvas;--quiet:CanvasText;--rule:GrayText;
--fresh:CanvasText;--stored:CanvasText;--accent:LinkText;--good:CanvasText;--warn:CanvasText}
svg{forced-color-adjust:none}}
@media (prefers-reduced-motion:reduce){*{animation:none!important;transition:none!important;scroll-behavior:auto!important}}
`;

/** The stylesheet of a page. */
export const pageStyle = `${paletteCss}${screen}${chartCss}${narrow}${print}${preferences}`
  .replaceAll(/\n+/g, '\n')
  .trim();
