/** A sheet to write on: large and airy for a child's hand, on either paper; the key closer, for an adult's eye. */
export const sheetStyles = `
.brief .practice-sheet + .practice-sheet { margin-block-start: 4rem; }
.brief .name-line { display: flex; gap: 1.5rem; margin-block: 1.5rem 1.75rem; }
.brief .fill { flex: 3; display: flex; gap: .5rem; align-items: end; }
.brief .fill.day { flex: 1.4; }
.brief .fill::after { content: ""; flex: 1; border-block-end: 1px solid var(--rule); }
.brief .pictures-shown { display: flex; flex-wrap: wrap; gap: 1rem 2rem; margin-block-end: 1.5rem; }
.brief .pictures-shown figure { margin: 0; max-width: 100%; }
.brief .pictures-shown figcaption { color: var(--quiet); font-size: .9rem; }
.brief .asked { display: grid; gap: 1.5rem 3.2rem; padding-inline-start: 2.4rem; font-size: 1.2rem; font-variant-numeric: tabular-nums; }
.brief .asked.short { grid-template-columns: repeat(auto-fill, minmax(min(17rem, 100%), 1fr)); }
.brief .asked li { padding-inline-start: .3rem; }
.brief .asked li::marker { color: var(--quiet); font-size: 1rem; }
.brief .asked svg { display: block; margin-block-start: .6rem; max-width: 100%; height: auto; }
.brief .asked .sum { white-space: nowrap; }
.brief .gap { display: inline-block; min-width: 3.4rem; height: 1.6em; border-block-end: 1px solid var(--rule); vertical-align: -.3em; position: relative; }
.brief .rule-to-write { display: block; height: 2.2rem; border-block-end: 1px solid var(--rule); }
.brief .asked.answers { gap: .35rem 3.2rem; font-size: 1rem; margin-block-start: 1.25rem; }
.brief .answers .behind { display: block; }
@media print {
  .brief .practice-sheet + .practice-sheet { break-before: page; margin-block-start: 0; }
  .brief .asked { font-size: 14pt; gap: 8mm 13mm; }
  .brief .asked.short { grid-template-columns: 1fr 1fr; }
  .brief .asked.answers { font-size: 11pt; gap: 2mm 13mm; }
  .brief .rule-to-write { height: 9mm; }
  .brief .gap { min-width: 20mm; height: 9mm; }
  .brief .asked li, .brief .pictures-shown figure { break-inside: avoid; }
}
`;
