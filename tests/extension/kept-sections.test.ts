import { expect, it } from 'vitest';
import { KeptSections } from '../../extension/preview/kept-sections.js';

const week = { id: 'week', hash: 'w1', html: '<header id="week">1</header>' };
const fetchList = { id: 'fetch', hash: 'f1', html: '<section id="fetch">a</section>' };

it('sends the page what it has not, once', () => {
    const kept = new KeptSections();
    expect(kept.take([week, fetchList])).toBe(true);
    expect(kept.known()).toEqual({ week: 'w1', fetch: 'f1' });
    expect(kept.forPage()).toEqual([week, fetchList]);
    expect(kept.take([{ id: 'week', hash: 'w1' }, { ...fetchList, hash: 'f2' }])).toBe(true);
    expect(kept.forPage()).toEqual([{ id: 'week', hash: 'w1' }, { ...fetchList, hash: 'f2' }]);
});

it('sends a page that was loaded anew everything', () => {
    const kept = new KeptSections();
    kept.take([week]);
    kept.forPage();
    kept.pageIsEmpty();
    expect(kept.forPage()).toEqual([week]);
});

it('refuses an answer that leaves out what is not known, and keeps the last good one', () => {
    const kept = new KeptSections();
    kept.take([week]);
    expect(kept.take([{ id: 'week', hash: 'w2' }])).toBe(false);
    expect(kept.forPage()).toEqual([week]);
});

it('sends a section again that was away in between', () => {
    const kept = new KeptSections();
    kept.take([week, fetchList]);
    kept.forPage();
    kept.take([{ id: 'week', hash: 'w1' }]);
    kept.forPage();
    expect(kept.take([{ id: 'week', hash: 'w1' }, fetchList])).toBe(true);
    expect(kept.forPage()).toEqual([{ id: 'week', hash: 'w1' }, fetchList]);
});
