/** What the pages with a script add to the stylesheet of all pages: buttons, fields, lists of files. */

const screen = `
[hidden]{display:none!important}
h2[tabindex]:focus{outline:0}
button,input,select,textarea{font:inherit;color:var(--ink);background:var(--paper);border:1px solid var(--quiet);border-radius:.3rem;padding:.4rem .6rem;max-width:100%}
button{cursor:pointer;min-height:2.75rem;padding:.4rem 1rem;margin:.2rem .3rem .2rem 0}
button.main{background:var(--accent);border-color:var(--accent);color:var(--paper);font-weight:600}
input[type=radio]{width:1.15rem;height:1.15rem;margin:0 .5rem 0 0;flex:none;accent-color:var(--accent)}
input[type=file]{width:100%}
::file-selector-button{font:inherit;color:var(--ink);background:var(--paper);border:1px solid var(--quiet);border-radius:.3rem;padding:.3rem .6rem;margin-right:.6rem;cursor:pointer}
header+main>section:first-child>h2,noscript+main>section:first-child>h2{border-top:0;padding-top:0}
button:focus-visible,input:focus-visible,select:focus-visible,textarea:focus-visible{outline:3px solid var(--accent);outline-offset:2px}
textarea{width:100%;font-family:ui-monospace,"Cascadia Mono","Liberation Mono",Menlo,monospace;font-size:.85rem}
select{display:block;width:100%;margin-top:.25rem}
.field{display:block;margin:.9rem 0 .25rem;font-weight:600}
fieldset{border:1px solid var(--rule);border-radius:.3rem;margin:.9rem 0;padding:.5rem .9rem;min-width:0}
legend{font-weight:600;padding:0 .3rem;overflow-wrap:anywhere}
.choice{display:flex;align-items:center;padding:.4rem 0;overflow-wrap:anywhere}
.choice span,.name{min-width:0;overflow-wrap:anywhere}
caption,.key,summary{overflow-wrap:anywhere}
.files{list-style:none;padding:0}
.files li{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:center;border-bottom:1px solid var(--rule)}
.files .name{flex:1}
.files p{flex-basis:100%}
.plant{display:flex;justify-content:space-between;align-items:center;gap:1rem;padding:.2rem 0}
.error{border-left:4px solid var(--warn);padding-left:.9rem}
li.error{padding-left:.4rem}
progress{width:100%;height:1rem;accent-color:var(--accent)}
.dropping{outline:4px dashed var(--accent);outline-offset:-8px}
@media (forced-colors:active){button.main{background:ButtonFace;color:ButtonText;border:3px solid ButtonText}}
#own-status:empty{display:none}
#own-status{font-weight:600}
#own-report>section{content-visibility:auto;contain-intrinsic-size:auto 50rem}
@media print{#own-report>section{content-visibility:visible}#main>section[aria-labelledby^=own],#own-status,body>header{display:none}}
`;

/** To stand behind the stylesheet of all pages. */
export const scriptedStyle = screen.replaceAll(/\n+/g, '\n').trim();
