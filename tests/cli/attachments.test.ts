import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folder, haversack } from './run.js';

const course = (path: string): string => `course weighing "Weighing"\n  unit one "One"\n    weigh-1\n\nclass harbour "Harbour"\n  teaches weighing\n  learners 4\n  starts 2026-09-07\n  meets mon, tue\n  off from "${path}"\n`;
const lesson = 'lesson weigh-1 "Two bags"\n  activity two-bags 15 min\n    do: Lift both bags.\n';
const town = 'BEGIN:VCALENDAR\nBEGIN:VEVENT\nUID:x\nSUMMARY:Harvest day\nDTSTART;VALUE=DATE:20260907\nEND:VEVENT\nEND:VCALENDAR\n';

test('the command line reads the calendars that a class names', async () => {
    const path = folder({ 'a.course': course('calendars/town.ics'), 'a.lesson': lesson });
    const without = await haversack(['check', path]);
    expect(without).toMatchObject({ code: 1 });
    expect(without.out).toContain('file-not-usable');
    expect(without.out).toContain('There is no such file');
    mkdirSync(join(path, 'calendars'));
    writeFileSync(join(path, 'calendars/town.ics'), town);
    expect(await haversack(['check', path])).toMatchObject({ code: 0, err: '' });
    expect((await haversack(['brief', path, '--week', '1', '--format', 'json'])).out).toContain('"from": "2026-09-08"');
});

test('and nothing outside the folder', async () => {
    const outside = folder({ 'town.ics': town });
    const path = folder({ 'a.course': course('linked.ics'), 'b.course': course('../town.ics').replace('course weighing', 'course lifting').replace('class harbour', 'class hill').replace('teaches weighing', 'teaches lifting'), 'a.lesson': lesson });
    symlinkSync(join(outside, 'town.ics'), join(path, 'linked.ics'));
    const { code, out } = await haversack(['check', path]);
    expect(code).toBe(1);
    expect(out).toContain('link that leads out of the programme\'s folder');
    expect(out).toContain('leads out of the programme\'s folder. Copy the file into the programme');
});
