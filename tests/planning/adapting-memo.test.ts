/** What is kept of adapted sheets from one version of a programme to the next says nothing old. */
import { expect, test } from 'vitest';
import { AdaptingMemo } from '@haversack/language/adapting/memo';
import { adaptedFor } from '@haversack/language/adapting/adapt-course';
import { gatherProgramme, type Programme } from '@haversack/language/sheets/programme';
import { course, elsewhere, inventory, lessonOf, lessons, marksOf, partOf, programmeOf } from './adapting-fixture.js';

/** The programme with some files read anew, all others the very same sheets. */
async function withFiles(before: Programme, texts: Record<string, string>, same: readonly string[] = []): Promise<Programme> {
    const now = await programmeOf({ ...files, ...texts });
    const sheetOf = (programme: Programme, name: string) => [...programme.files.values()].find(({ uri }) => uri.endsWith(name))!;
    return gatherProgramme([...before.files.values()].map(sheet => {
        const name = Object.keys(texts).find(one => sheet.uri.endsWith(one) && !same.includes(one));
        return name === undefined ? sheet : { ...sheetOf(now, name), uri: sheet.uri };
    }));
}

const files = {
    'things.kit': inventory, 'weighing.lesson': lessons, 'elsewhere.lesson': elsewhere, 'year.course': course,
    'z.course': 'adaptation harbours of measuring for harbour\n  add to weigh-3\n    objectives\n      introduces compare-mass\n  skip activity weigh-1.grocer\n'
};

test('the title of an objective that is added', async () => {
    const memo = new AdaptingMemo();
    const before = await programmeOf(files);
    expect(marksOf(lessonOf(adaptedFor(before, { class: 'harbour' }, memo)!, 'weigh-3'))).toEqual(['also introduces “Compare mass”']);
    const after = await withFiles(before, { 'year.course': course.replace('objective compare-mass', 'objective compare-mass "Compare two masses"') });
    expect(after.lessons.get('weigh-3')).toBe(before.lessons.get('weigh-3'));
    expect(marksOf(lessonOf(adaptedFor(after, { class: 'harbour' }, memo)!, 'weigh-3'))).toEqual(['also introduces “Compare two masses”']);
});

test('the title of a game that a closing question asked for again', async () => {
    const memo = new AdaptingMemo();
    const own = { ...files, 'weighing.lesson': lessons.replace('repeat two-bags tomorrow', 'repeat grocer tomorrow') };
    const marks = (programme: Programme): string[] => marksOf(partOf(adaptedFor(programme, { class: 'harbour' }, memo)!, 'weigh-1', 'wrap-up'));
    const before = await programmeOf(own);
    expect(marks(before)).toEqual(['if unsure, the lesson again instead of “The careful grocer”']);
    const after = await withFiles(before, { 'weighing.lesson': own['weighing.lesson'], 'things.kit': inventory.replace('The careful grocer', 'At the grocer’s') }, ['weighing.lesson']);
    expect(after.lessons.get('weigh-1')).toBe(before.lessons.get('weigh-1'));
    expect(marks(after)).toEqual(['if unsure, the lesson again instead of “At the grocer’s”']);
});
