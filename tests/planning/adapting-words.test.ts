/** Words that an addition teaches. */
import { expect, test } from 'vitest';
import { adapted, lessonOf, saysOf } from './adapting-fixture.js';

test('an addition of a word alone is one', async () => {
    const one = await adapted('  add to weigh-3\n    words lighter\n');
    expect(saysOf(one)).toEqual(['To “Market sums” is added: the word “lighter”']);
    expect(lessonOf(one, 'weigh-3').words.map(({ name }) => name)).toEqual(['lighter']);
});

test('of a lesson in pieces the first teaches it', async () => {
    const one = await adapted('  split weigh-1 after two-bags\n  add to weigh-1\n    words lighter\n    objectives\n      checks compare-mass\n');
    expect(lessonOf(one, 'weigh-1').words.map(({ name }) => name)).toEqual(['heavier', 'lighter']);
    expect(lessonOf(one, 'weigh-1-part-2').words).toEqual([]);
});
