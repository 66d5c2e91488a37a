/** What an adaptation changed: a line with a sign beside what it concerns, and the page that tells all of it. */
export const changesStyles = `
.brief .change { display: flex; gap: .45rem; align-items: flex-start; padding-block: .15rem; }
.brief .change > div { min-width: 0; }
.brief .change span.prose { display: inline; }
.brief > .left-out { margin-block: 2rem -1.5rem; color: var(--quiet); }
.brief > .left-out + .left-out { margin-block-start: 1.75rem; }

.brief .made { padding-inline-start: 1.8rem; }
.brief .made > li { padding-block: .4rem; }
.brief .made > li > p button.lead { vertical-align: top; }
.brief .made > li::marker { color: var(--quiet); font-variant-numeric: tabular-nums; }
.brief .label.weighty { color: var(--ink); font-weight: 600; }
.brief .before-after { width: 100%; }
.brief .before-after tbody th { font-weight: 400; width: 34%; }
.brief .before-after .change { padding-block: 0; }
.brief .before-after .swatch { margin-block-start: .2rem; }
.brief .to-write code { background: none; padding: 0; }
.brief .how { margin-block-start: .75rem; }
.brief .to-write { margin-block: .5rem; padding-inline-start: .75rem; border-inline-start: 1px solid var(--rule); white-space: pre-wrap; }

@media (min-width: 34rem) {
  .brief .before-after .minutes { white-space: nowrap; }
}
@media (max-width: 34rem) {
  .brief .before-after .change { display: block; }
  .brief .before-after .change > div { display: inline; }
  .brief .before-after .change p:first-child { display: inline; }
  .brief .before-after .swatch { display: inline-block; vertical-align: -.15rem; margin: 0 .2rem 0 0; }
}
@media print {
  .brief .change, .brief .before-after tr { break-inside: avoid; }
  .brief .left-out { break-after: avoid; }
  .brief .run-of-lessons > :not(summary) { display: none; }
  .brief .run-of-lessons::details-content { display: none; }
}
`;
