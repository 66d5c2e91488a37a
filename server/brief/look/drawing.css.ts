/** Drawings of the term: neutral, told apart by shape and pattern, never smaller than drawn so that their words can be read. */
export const drawingStyles = `
.brief .drawing { display: block; overflow: visible; font-size: 11px; }
.brief .drawing text { fill: var(--ink); unicode-bidi: isolate; }
.brief .drawing .lesser { fill: var(--quiet); }
.brief .drawing .strong { font-weight: 600; }
.brief .drawing .stroke { fill: none; stroke: var(--ink); stroke-width: 1.25; }
.brief .drawing .solid { fill: var(--ink); stroke: var(--ink); stroke-width: .5; }
.brief .drawing .outline { fill: var(--paper); stroke: var(--ink); stroke-width: 1.25; }
.brief .drawing .hairline { fill: none; stroke: var(--hair); stroke-width: 1; }
.brief .drawing .dashes { fill: none; stroke: var(--ink); stroke-width: 1.25; stroke-dasharray: 5 3; }
.brief .drawing .dashes.fine { stroke-width: 1; stroke-dasharray: 1.5 2.5; }
.brief .drawing .level { fill: none; stroke: var(--ink); stroke-width: 2; stroke-linejoin: round; }
.brief .drawing .cell { stroke: var(--rule); stroke-width: 1; }
.brief .drawing .cell:not([fill]) { fill: var(--paper); }
.brief .drawing .cell.now { stroke: var(--ink); stroke-width: 3; }
.brief .drawing .backing { fill: var(--paper); }
.brief .drawing .frame { fill: none; stroke: var(--rule); stroke-width: 1.25; }
.brief .drawing .touch { fill: transparent; }
.brief .drawing .ground { fill: var(--ground); }

.brief .key-list { display: flex; flex-wrap: wrap; gap: .2rem 1.25rem; list-style: none; margin-block: .5rem .75rem; }
.brief .key-list li { display: flex; gap: .4rem; align-items: flex-start; }
.brief .month { width: 100%; }
.brief .month.wide { font-size: 11.5px; }
.brief .month.narrow { font-size: 10.5px; max-width: 27rem; }
.brief .drawing.narrow { display: none; }
.brief .drawing .small { font-size: 10.5px; }
.brief .multiples { list-style: none; display: grid; grid-template-columns: repeat(auto-fill, minmax(min(18rem, 100%), 1fr)); gap: 1.5rem 1.5rem; margin-block-start: .75rem; }
.brief .multiple h4 { margin: 0; font-size: 1rem; font-weight: 600; }
.brief .stock { width: 100%; max-width: 24rem; margin-block: .35rem; }
.brief .grid { margin-block: .5rem .75rem; max-width: 100%; height: auto; }
.brief .share { max-width: 20rem; margin-block: .2rem; }
.brief .branches { list-style: none; }
.brief .branches .branches { padding-inline-start: 1.2rem; }
.brief .branches li { padding-block: .25rem; }
.brief .late { font-weight: 600; }
.brief .findings { margin-block-start: .75rem; }

.brief table { border-collapse: collapse; font-size: .95rem; }
.brief caption { text-align: start; color: var(--quiet); padding-block-end: .25rem; }
.brief th, .brief td { text-align: start; vertical-align: top; padding-block: .2rem; padding-inline: 0 .9rem; border-block-end: 1px solid var(--hair); }
.brief th { font-weight: 600; }
.brief thead th { overflow-wrap: normal; }
.brief .multiple table { font-size: .85rem; }
.brief .multiple td { min-width: 3.6rem; }
.brief tfoot tr:first-child > * { border-block-start: 2px solid var(--rule); }
.brief .number-cell { text-align: end; font-variant-numeric: tabular-nums; min-width: 5rem; }
.brief .in-words > table { margin-block: .35rem .75rem; }

@media (max-width: 34rem) {
  .brief table { font-size: .85rem; }
  .brief th, .brief td { padding-inline-end: .4rem; min-width: 3.4rem; }
}
@media (max-width: 43rem) {
  .brief .drawing.wide { display: none; }
  .brief .drawing.narrow { display: block; }
}
@media (forced-colors: active) {
  .brief .drawing, .brief .drawing * { forced-color-adjust: none; }
}
@media print {
  .brief .drawing.wide { display: block; }
  .brief .drawing.narrow { display: none; }
  .brief .block, .brief .multiple, .brief .drawing, .brief .branches li { break-inside: avoid; }
  .brief .in-words { display: none; }
  .brief .key-list, .brief p:has(+ .key-list) { break-after: avoid; }
  .brief .multiples { grid-template-columns: 1fr 1fr; }
}
`;
