import { expect, test } from 'vitest';
import { skipLesson, writeForClass } from '../../server/plan-checks/change-lines.js';
import { base, edited, read } from '../planning/edition-texts.js';

const written = (course: string, adaptation: string): readonly string[] => {
    const programme = read(`${edited(base, ['"Measure and Make" edition 1', `"Measure and Make"${course}`])}\nadaptation shorter of measure${adaptation} for harbour\n  skip lesson weigh-4\n`);
    const edit = writeForClass([skipLesson('weigh-1')], programme.classes.get('harbour')!, programme.courses.get('measure')!, programme);
    return 'lines' in edit ? edit.lines : [];
};

// Or the line would at once be held against what the new edition did to the lesson.
test('a line that is written into an adaptation of an earlier edition says for which edition it is', () => {
    expect(written(' edition 2', ' edition 1')).toEqual(['skip lesson weigh-1 as of edition 2']);
});

test.each([[' edition 2', ' edition 2'], [' edition 2', ''], ['', ' edition 1']])('nothing of it where the course says%s and the adaptation%s', (course, adaptation) => {
    expect(written(course, adaptation)).toEqual(['skip lesson weigh-1']);
});
