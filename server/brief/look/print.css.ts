/** A4 and Letter alike (no size is set, so the printer's paper counts); black on white; what is folded stays folded. */
export const printStyles = `
@page { margin: 16mm 15mm; }
@media print {
  :root { font-size: 10.5pt; }
  .brief { max-width: none; margin: 0; padding: 0; font-size: 1rem; line-height: 1.4; print-color-adjust: exact; }
  .brief h1 { font-size: 20pt; }
  .brief h2 { font-size: 15pt; margin-block-start: 9mm; }
  .brief h3 { font-size: 11.5pt; margin-block-start: 5mm; }
  .brief h1, .brief h2, .brief h3, .brief h2 + .facts, .brief h3 + .quiet { break-after: avoid; }
  .brief li, .brief .run, .brief p, .brief .meetings { break-inside: avoid; }
  .brief .line { break-inside: avoid; }
  .brief .plain > li:last-child { break-before: avoid; }
  .brief .step:has(> .told > .steps > :nth-child(3)) { break-inside: auto; }
  .brief .step:has(.steps) > .told > .prose { break-after: avoid; }
  .brief p { orphans: 3; widows: 3; }
  .brief .trail > :not(summary), .brief .key { display: none; }
  .brief .trail::details-content { display: none; }
  .brief summary { list-style: none; min-height: 0; }
  .brief summary::-webkit-details-marker { display: none; }
  .brief a { color: inherit; text-decoration: none; }
  .brief a.name, .brief button.name { text-decoration: none; }
  .brief .prose a[href^="http"]::after, .brief .prose a[href^="mailto"]::after { content: " (" attr(href) ")"; }
}
`;
