/** One column, in reading order; every length follows the reader's text size. */
export const screenStyles = `
.brief, .brief * { box-sizing: border-box; }
.brief {
  max-width: 44rem; margin: 0 auto; padding: 1.5rem 1rem 4rem;
  background: var(--paper); color: var(--ink);
  line-height: 1.5; overflow-wrap: anywhere;
}
.brief p, .brief ul, .brief ol { margin: 0; padding: 0; }
.brief p { text-wrap: pretty; }
.brief h1, .brief h2, .brief h3 { margin: 0; line-height: 1.25; font-weight: 600; text-wrap: balance; }
.brief h1 { font-size: 2rem; }
.brief h2 { font-size: 1.45rem; margin-block: 3rem .5rem; padding-block-start: .75rem; border-block-start: 1px solid var(--rule); }
.brief h3 { font-size: 1.1rem; margin-block: 1.5rem .25rem; }
.brief .quiet, .brief .label, .brief .course, .brief .assumed, .brief .address { color: var(--quiet); }
.brief .facts { margin-block-end: .5rem; }
.brief .places { font-size: .85rem; }
.brief .assumed { margin-block-start: .75rem; font-size: .9rem; }
.brief .unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }

.brief a { color: var(--link); text-decoration: underline; text-underline-offset: .15em; }
.brief a.name { color: inherit; text-decoration: underline dotted; }
.brief button.lead {
  font: inherit; color: inherit; text-align: inherit; letter-spacing: inherit; overflow-wrap: inherit;
  display: inline; margin: 0; padding: 0; border: 0; background: none; cursor: pointer; user-select: text;
}
.brief button.lead:hover { text-decoration: underline; text-underline-offset: .15em; }
.brief button.name { text-decoration: underline dotted; text-underline-offset: .15em; }
.brief :focus-visible { outline: 2px solid var(--focus); outline-offset: 2px; border-radius: 2px; }

.brief .meetings, .brief .pieces { list-style: none; }
.brief .meetings { margin-block-start: .75rem; }
.brief .meetings li { display: grid; grid-template-columns: 7.75rem minmax(0, 1fr); column-gap: .75rem; padding-block: .15rem; }
.brief .remarks, .brief .plain { padding-inline-start: 1.2rem; }
.brief .remarks { margin-block-start: .75rem; }
.brief .plain li { padding-block: .2rem; }

.brief .things { list-style: none; }
.brief .thing { position: relative; padding-block: .55rem; padding-inline-start: 8.5rem; min-height: 2.6rem; border-block-start: 1px solid var(--hair); }
.brief .thing:first-child { border-block-start: 0; }
.brief .tick { position: absolute; inset-inline-start: 0; inset-block-start: .85rem; width: .95rem; height: .95rem; border: 1.5px solid var(--rule); border-radius: 2px; }
.brief .figure > .amount, .brief .figure summary { position: absolute; inset-inline-start: 0; inset-block-start: .55rem; max-width: 8rem; }
.brief .ticked .figure > .amount, .brief .ticked .figure summary { inset-inline-start: 1.6rem; max-width: 6.6rem; }
.brief .long { min-height: 4.2rem; }
.brief .wordy { min-height: 2.6rem; }
.brief .wordy .figure > .amount, .brief .wordy .figure summary { position: static; max-width: none; }
.brief .amount { font-variant-numeric: tabular-nums; }
.brief .short { margin-block-start: .15rem; }

.brief summary { cursor: pointer; min-height: 1.5rem; width: fit-content; }
.brief summary::marker { color: var(--quiet); font-size: .75em; }
.brief .trail > ol, .brief .key > ol { margin-block: .25rem .5rem; margin-inline-start: .4rem; padding-inline-start: 2.75rem; border-inline-start: 1px solid var(--rule); font-size: .95rem; }
.brief .trail li, .brief .items li { padding-block: .15rem; }
.brief .items { padding-inline-start: 1.8rem; }
.brief .items .picture { display: block; margin-block: .2rem .4rem; max-width: 100%; height: auto; }
.brief .items.pictured { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(13rem, 100%), 1fr)); column-gap: 2.2rem; }
.brief .unbroken { white-space: nowrap; }

.brief .steps { list-style: none; }
.brief .steps > li, .brief .steps > .line { display: grid; grid-template-columns: 7.75rem minmax(0, 1fr); column-gap: .75rem; padding-block: .3rem; }
.brief .steps > .aside { margin-inline-start: 8.5rem; }
.brief .steps > .aside, .brief .steps .steps > li { grid-template-columns: max-content minmax(0, 1fr); }
.brief .steps .steps { margin-block-start: .2rem; }
.brief .run + .steps { margin-block-start: 1rem; }
.brief .steps > .caution { margin-block: .4rem; padding-block: .1rem; padding-inline-start: .75rem; border-inline-start: .4rem double var(--rule); grid-template-columns: max-content minmax(0, 1fr); }
.brief .caution .label { color: var(--ink); font-weight: 600; }
.brief .prose > * + * { margin-block-start: .4rem; }
.brief .prose ul, .brief .prose ol { padding-inline-start: 1.4rem; }
.brief .added { display: flex; flex-wrap: wrap; column-gap: .35rem; }
.brief code { font-family: ui-monospace, monospace; font-size: .95em; }

.brief .bar { display: block; inline-size: calc(100% - 2px); margin: .5rem 1px; overflow: visible; }
.brief .piece { stroke: var(--rule); stroke-width: 1.25; }
.brief .ground { fill: var(--ground); }
.brief .grain { fill: var(--thread); }
.brief .thread { fill: none; stroke: var(--thread); stroke-width: 1; }
.brief .disc { fill: var(--paper); }
.brief .number { fill: var(--ink); font-size: 13px; }
.brief .pieces { display: flex; flex-wrap: wrap; gap: .2rem 1.25rem; }
.brief .pieces li { display: flex; gap: .4rem; align-items: flex-start; }
.brief .swatch { flex: none; margin-block-start: .25rem; }
.brief .part > h3 { margin-block-start: 2rem; }
.brief .count { color: var(--quiet); font-variant-numeric: tabular-nums; }

@media (max-width: 34rem) {
  .brief .thing { padding-inline-start: 0; }
  .brief .long { min-height: 0; }
  .brief .thing .head { padding-inline-end: 6.5rem; }
  .brief .ticked { padding-inline-start: 1.6rem; }
  .brief .figure > .amount, .brief .figure summary,
  .brief .ticked .figure > .amount, .brief .ticked .figure summary { inset-inline: auto 0; max-width: 6.5rem; }
  .brief .long .figure > .amount, .brief .long .figure summary { position: static; max-width: none; }
  .brief .long .head { padding-inline-end: 0; }
  .brief .meetings li, .brief .steps > li, .brief .steps > .line, .brief .steps > .aside { grid-template-columns: minmax(0, 1fr); row-gap: 0; }
  .brief .steps > .aside, .brief .steps .steps { margin-inline-start: 1rem; }
  .brief .steps .steps > li, .brief .steps > .caution { grid-template-columns: minmax(0, 1fr); }
  .brief .fine { display: none; }
}
@media (forced-colors: active) {
  .brief .number, .brief .piece, .brief .thread, .brief .grain, .brief .disc, .brief .ground { forced-color-adjust: none; }
}
`;

export const pageFrame = `
body { margin: 0; font-family: system-ui, "Segoe UI", Roboto, "Helvetica Neue", "Liberation Sans", Arial, sans-serif; }
.brief h1, .brief h2, .brief h3 { font-family: Georgia, "Liberation Serif", "Times New Roman", serif; }
`;
