/** Pictures of quantities: neutral, told apart by filling and outline, so that they can be read in black and white. */
export const pictureInk = `
.picture text { fill: var(--ink); }
.picture .bold { font-weight: 700; }
.picture .drawn { fill: none; stroke: var(--ink); stroke-width: 1.5; stroke-linecap: round; }
.picture .slight { stroke-width: .9; }
.picture .broad { stroke-width: 3; }
.picture .mark-stroke { stroke-width: 2.5; }
.picture .edge { fill: var(--paper); stroke: var(--ink); stroke-width: 1.25; }
.picture .outline { fill: none; stroke: var(--ink); stroke-width: 1.5; stroke-linejoin: round; }
.picture .cell { fill: var(--paper); stroke: var(--rule); stroke-width: 1; }
.picture .first { fill: var(--thread); stroke: var(--ink); stroke-width: 1.25; }
.picture .second { fill: var(--paper); stroke: var(--ink); stroke-width: 1.75; }
.picture .pip { fill: var(--ink); }
.picture .left-over { fill: var(--paper); stroke: var(--rule); stroke-width: 1; }
.picture .nothing { fill: none; stroke: var(--rule); stroke-width: 1.25; stroke-dasharray: 4 3; }
.picture .hand { stroke: var(--ink); stroke-linecap: round; }
.picture .part { fill: var(--paper); }
.picture .hatch { fill: none; stroke: var(--thread); stroke-width: 1.5; }
.picture .plate { fill: var(--thread); stroke: var(--ink); stroke-width: 1.25; stroke-linejoin: round; }
.picture .face { fill: var(--paper); }
.picture .first-block .face, .picture .thousand > .face { fill: var(--thread); }
.picture .between-ones { fill: none; stroke: var(--ink); stroke-width: .35; }
.picture .between-tens { fill: none; stroke: var(--ink); stroke-width: .9; }
.picture .first-block .between-ones { stroke: var(--paper); }
.picture .first-block .between-tens { stroke: var(--paper); stroke-width: .9; }
.picture .block .outline { stroke-width: 1; }
.picture .thousand .slight { stroke: var(--paper); }
`;

export const pictureStyles = `${pictureInk}
.brief .picture { display: block; max-width: 100%; height: auto; overflow: visible; }
.brief .shown { margin: .25rem 0 .5rem; }
.brief .shown figcaption { margin-block-start: .35rem; }
.brief .shown figcaption > b { display: block; font-weight: 600; }
@media (forced-colors: active) { .brief .picture, .brief .picture * { forced-color-adjust: none; } }
@media print { .brief .shown, .brief .picture { break-inside: avoid; } }
`;
