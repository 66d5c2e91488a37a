import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver-protocol';
import { Client } from './client.js';

const lesson = 'lesson weigh-1 "Two bags"\n  activity two-bags 15 min\n    do: Lift both bags.\n';
const course = (path: string): string => `course weighing "Weighing"
  unit one "One"
    weigh-1

class harbour "Harbour"
  teaches weighing
  learners 4
  starts 2026-09-07
  meets mon, tue
  off from "${path}"
`;
const town = (date: string): string => `BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:x\r\nSUMMARY:Harvest day\r\nDTSTART;VALUE=DATE:${date}\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n`;

let client: Client;
const file = 'weighing.course';
const outside = mkdtempSync(join(tmpdir(), 'haversack-outside-'));
beforeAll(async () => {
    client = await Client.start({ programme: { 'weigh.lesson': lesson, [file]: course('calendars/town.ics') } });
    mkdirSync(join(client.folder, 'calendars'));
    writeFileSync(join(outside, 'town.ics'), town('20260907'));
});
afterAll(async () => {
    rmSync(outside, { recursive: true });
    expect(await client.stop()).toEqual({ code: 0, errors: '' });
});

const usable = (): boolean => !client.codes(file).includes('file-not-usable');
const mends = async (problem: Diagnostic): Promise<string[]> => {
    const actions = await client.connection.sendRequest<{ title: string }[]>('textDocument/codeAction', { textDocument: { uri: client.uri(file) }, range: problem.range, context: { diagnostics: [problem] } });
    return actions.map(({ title }) => title);
};
const message = (): string => String(client.problems(file).find(({ code }) => code === 'file-not-usable')?.message);
/** The day on which the only lesson is taught. */
const taughtOn = async (): Promise<string> => (JSON.parse((await client.brief({ class: 'harbour', week: 1, format: 'json' })).text!) as { brief: { from: string } }).brief.from;

describe('a calendar that a class names', () => {
    test('is missed while it is missing, counts when it appears, and is missed again when it goes', async () => {
        expect(message()).toContain('There is no such file');
        expect(await taughtOn()).toBe('2026-09-07');
        await client.writeOutside('calendars/town.ics', town('20260907'));
        await client.until('the calendar to be found', usable);
        expect(await taughtOn()).toBe('2026-09-08');
        await client.writeOutside('calendars/town.ics', town('20260908'));
        await client.settled();
        expect(await taughtOn()).toBe('2026-09-07');
        await client.writeOutside('calendars/town.ics', 'Closed on Tuesday.');
        await client.until('the calendar to be none any more', () => !usable());
        expect(message()).toContain('This is not a calendar');
        await client.deleteOutside('calendars/town.ics');
        await client.until('the calendar to be missed', () => message().includes('no such file'));
    });

    test('its change tells the preview; one of another file, or one that changes nothing, tells nobody', async () => {
        await client.writeOutside('calendars/town.ics', town('20260907'));
        await client.until('the calendar to be found', usable);
        await client.settled();
        const heard = client.heard.length;
        await client.writeOutside('calendars/other.ics', town('20260908'));
        await client.writeOutside('package.json', '{}');
        await client.writeOutside('calendars/town.ics', town('20260907'));
        await client.settled();
        expect(client.heard.length).toBe(heard);
        await client.writeOutside('calendars/town.ics', town('20260908'));
        await client.settled();
        await client.until('the preview to be told', () => client.heard.length > heard);
    });

    test('problems follow also while the file that names it is open, with text that is not saved', async () => {
        await client.open(file);
        await client.edit(file, 'calendars/town.ics', 'calendars/spring.ics');
        await client.settled();
        expect(message()).toContain('no such file');
        await client.writeOutside('calendars/spring.ics', town('20260907'));
        await client.until('the calendar to be found', usable);
        await client.close(file);
        await client.settled();
    });
});

describe('a path', () => {
    afterEach(() => client.close(file));

    const said = async (path: string): Promise<string> => {
        await client.open(file, course(path));
        await client.settled();
        return message();
    };

    test.each(['../town.ics', '../../town.ics', 'calendars/../../town.ics'])('that leaves the workspace is refused: %s', async path => {
        expect(await said(path)).toContain('leads out of the programme\'s folder');
    });

    test('that leads to a link out of the workspace is refused, for a file and for a folder', async () => {
        symlinkSync(join(outside, 'town.ics'), join(client.folder, 'calendars/linked.ics'));
        symlinkSync(outside, join(client.folder, 'linked'));
        expect(await said('calendars/linked.ics')).toContain('link that leads out');
        await client.close(file);
        expect(await said('linked/town.ics')).toContain('link that leads out');
    });

    test('that leads to a link within the workspace is followed, and so is what happens to the file behind it', async () => {
        symlinkSync(join(client.folder, 'calendars/real.ics'), join(client.folder, 'calendars/alias.ics'));
        await client.writeOutside('calendars/real.ics', town('20260907'));
        expect(await said('calendars/alias.ics')).toBe('undefined');
        await client.writeOutside('calendars/real.ics', 'nothing');
        await client.until('the calendar to be none any more', () => message().includes('not a calendar'));
    });

    test.each([
        ['a folder', 'folder.ics', 'This is a folder', (path: string) => mkdirSync(path)],
        ['a pipe that nobody writes to', 'pipe.ics', 'no ordinary file', (path: string) => { execFileSync('mkfifo', [path]); }],
        ['a link in a circle', 'circle.ics', 'leads in a circle', (path: string) => symlinkSync(path, path)],
        ['more than 8 MB', 'large.ics', 'larger than 8 MB', (path: string) => { writeFileSync(path, ''); truncateSync(path, 100 * 1024 * 1024); }],
        ['no text', 'packed.ics', 'no text', (path: string) => writeFileSync(path, Uint8Array.of(0x50, 0x4B, 3, 4, 0, 0, 0))],
        ['UTF-16', 'wide.ics', 'UTF-16', (path: string) => writeFileSync(path, `\uFEFF${town('20260907')}`, 'utf16le')],
        ['other letters than UTF-8', 'latin.ics', 'not written in UTF-8', (path: string) => writeFileSync(path, town('20260907').replace('Harvest', 'H\u00E4rvest'), 'latin1')],
        ['nothing', 'empty.ics', 'The file is empty', (path: string) => writeFileSync(path, '')]
    ])('that leads to %s is told', async (_, name, says, make) => {
        make(join(client.folder, name));
        expect(await said(name)).toContain(says);
    });

    test('that leads to letters of several bytes with a fold inside is read', async () => {
        const bytes = Buffer.from(town('20260907').replace('Harvest', 'H\u00E4rvest'), 'utf8');
        const inside = bytes.indexOf(0xC3) + 1;
        writeFileSync(join(client.folder, 'folded.ics'), Buffer.concat([bytes.subarray(0, inside), Buffer.from('\r\n '), bytes.subarray(inside)]));
        expect(await said('folded.ics')).toBe('undefined');
    });

    test('to a file beside a missing one is offered', async () => {
        await client.writeOutside('calendars/summer.ics', town('20260907'));
        await client.open(file, course('calendars/sumer.ics'));
        await client.settled();
        const problem = client.problems(file).find(({ code }) => code === 'file-not-usable')!;
        expect(client.inRange(file, problem.range)).toBe('"calendars/sumer.ics"');
        expect(await mends(problem)).toContain('Change to \'"calendars/summer.ics"\'');
        // What lies in a folder that a link leads to is nobody's to list.
        await client.close(file);
        symlinkSync(outside, join(client.folder, 'away'));
        await client.open(file, course('away/twon.ics'));
        await client.settled();
        expect(await mends(client.problems(file).find(({ code }) => code === 'file-not-usable')!)).not.toContain('Change to \'"away/town.ics"\'');
    });
});

test('a file of its own, without a folder that is open, names calendars beside it', async () => {
    const alone = await Client.start({ programme: null });
    writeFileSync(join(alone.folder, 'town.ics'), town('20260907'));
    writeFileSync(join(alone.folder, file), course('town.ics'));
    await alone.open(file);
    await alone.settled();
    expect(alone.codes(file)).not.toContain('file-not-usable');
    await alone.edit(file, '"town.ics"', '"../town.ics"');
    await alone.settled();
    expect(alone.codes(file)).toContain('file-not-usable');
    await alone.stop();
});
