import { expect, test } from 'vitest';
import type { LessonSheet } from '@haversack/language/sheets/sheet';
import { nameFigures, namesInProse } from '../../server/planning/names.js';
import { activity, lesson, mention, programme, prose, reusable, step } from './sheets.js';

const teaching = (name: string, words: string[], says = ''): LessonSheet => lesson(name, [], [activity('talk', [], { steps: [step('do', says)] })], { words: words.map(mention) });

test('a word leads to the lesson that teaches it: one of this week before another, else wherever it is', () => {
    const first = teaching('weigh-1', ['heavier', 'pan-balance']);
    const second = teaching('weigh-2', ['lighter', 'heavier'], 'Which is {heavier}? On the {pan-balance}, or {unheard-of}.');
    const sheets = programme(reusable('scale'), first, second);
    const found = nameFigures(sheets, [second], [], []);
    expect(found).toEqual({
        heavier: { title: 'heavier', kind: 'word', place: { uri: second.uri, range: second.words[1]!.at } },
        'pan-balance': { title: 'pan balance', kind: 'word', place: { uri: first.uri, range: first.words[1]!.at } }
    });
    expect(namesInProse(sheets, [prose('Is it {heavier}, or {lighter}? Take the {scale}.'), undefined])).toMatchObject({
        heavier: { place: { range: first.words[0]!.at } }, lighter: { place: { range: second.words[0]!.at } }, scale: { kind: 'material', title: 'Scale' }
    });
});
