import { describe, expect, test } from 'vitest';
import { EmptyFileSystem, URI } from 'langium';
import fc from 'fast-check';
import { resolvePath } from '@haversack/language/attachments/attachment-path';
import { AttachmentStore } from '@haversack/language/attachments/attachment-store';
import { memoryReader } from '@haversack/language/attachments/memory-reader';
import { createHaversackServices } from '@haversack/language/module';
import { attachmentKey } from '@haversack/language/sheets/programme';

const root = 'file:///home/programme';
const course = `${root}/classes/town.course`;

describe('where a path leads', () => {
    test.each([
        ['town.ics', `${root}/classes/town.ics`], ['./a//b/town.ics', `${root}/classes/a/b/town.ics`], ['../town.ics', `${root}/town.ics`], ['../classes/../town.ics', `${root}/town.ics`],
        ['Höhe & Tiefe #1?.ics', `${root}/classes/${encodeURIComponent('Höhe & Tiefe #1?.ics')}`], ['100%.ics', `${root}/classes/100%25.ics`], ['...ics', `${root}/classes/...ics`], ['~/town.ics', `${root}/classes/~/town.ics`]
    ])('%s stays in the folder', (path, uri) => {
        const place = resolvePath(course, path, [root]);
        expect('uri' in place && URI.parse(place.uri).fsPath).toBe(URI.parse(uri).fsPath);
        expect(place).toMatchObject({ within: root });
    });

    test.each([
        ['../../town.ics', 'leads out'], ['a/../../../home/programme/town.ics', 'leads out'], ['../../programme-2/town.ics', 'leads out'], ['..', ''], ['../..', 'leads out'],
        ['/etc/hosts', 'top of the disk'], ['\\etc\\hosts', 'top of the disk'], ['C:\\town.ics', 'top of the disk'], ['c:/town.ics', 'top of the disk'], ['c:', 'top of the disk'], ['c:town.ics', 'address'],
        ['\\\\server\\share\\town.ics', 'another computer'], ['//server/share/town.ics', 'another computer'], ['\\\\?\\C:\\town.ics', 'another computer'],
        ['file:///etc/hosts', 'address'], ['FILE:town.ics', 'address'], ['http://example.org/town.ics', 'address'], ['webcal://example.org/town.ics', 'address'], ['data:,x', 'address'], ['javascript:x', 'address'], ['vscode-vfs://x/y', 'address'],
        ['..\\town.ics', 'divided by /'], ['a\\..\\..\\..\\town.ics', 'divided by /'], ['%2e%2e/%2E%2E/town.ics', 'as in an address'], ['a%00.ics', 'as in an address'], ['..%2f..%2ftown.ics', 'as in an address'],
        ['town\u0000.ics', 'in no file\'s name'], ['town\n.ics', 'in no file\'s name'], ['', 'no path'], ['   ', 'no path']
    ])('%j', (path, says) => {
        const place = resolvePath(course, path, [root]);
        if (says === '') expect(place).toEqual({ uri: root, within: root });
        else expect('wrong' in place ? place.wrong : JSON.stringify(place)).toContain(says);
    });

    test('whatever is written, what it leads to lies in the folder', () => {
        const piece = fc.constantFrom('..', '.', '', 'a', '/', '\\', '%2e', ':', 'c', '//', '\u0000', ' ', '?', '#', '~', 'town.ics', '..\u002f', '\u2025', '\uFF0E\uFF0E');
        fc.assert(fc.property(fc.oneof(fc.string(), fc.array(piece, { maxLength: 12 }).map(list => list.join('')), fc.array(piece, { maxLength: 8 }).map(list => list.join('/'))), path => {
            const place = resolvePath(course, path, [root]);
            if ('wrong' in place) return;
            const { pathname, protocol, host } = new URL(place.uri);
            expect([protocol, host]).toEqual(['file:', '']);
            expect(pathname === '/home/programme' || pathname.startsWith('/home/programme/')).toBe(true);
        }), { numRuns: 3000 });
    });

    test('the widest open folder counts; another open folder is not this one; a file of its own has its folder', () => {
        expect(resolvePath(course, '../town.ics', ['file:///home/other', root, `${root}/classes`])).toMatchObject({ within: root });
        expect(resolvePath(course, '../../other/town.ics', [root, 'file:///home/other'])).toHaveProperty('wrong');
        expect(resolvePath(course, 'town.ics', [])).toMatchObject({ within: `${root}/classes` });
        expect(resolvePath(course, '../town.ics', [])).toHaveProperty('wrong');
        expect(resolvePath('untitled:Untitled-1', 'town.ics', [root])).toHaveProperty('wrong');
    });
});

describe('what is kept of the files that a programme names', () => {
    const group = (path: string): string => `course measuring\nclass harbour\n  teaches measuring\n  learners 2\n  starts 2026-09-07\n  meets mon\n  off from "${path}"\n`;
    const town = (date: string): string => `BEGIN:VCALENDAR\nBEGIN:VEVENT\nUID:x\nDTSTART;VALUE=DATE:${date}\nEND:VEVENT\nEND:VCALENDAR\n`;
    const uri = `${root}/a.course`;
    const ics = `${root}/town.ics`;

    async function opened(files: Map<string, string>, text = group('town.ics')) {
        let reads = 0;
        const memory = memoryReader(files);
        const { shared, haversack } = createHaversackServices(EmptyFileSystem, new AttachmentStore({ ...memory, read: (...asked) => { reads++; return memory.read(...asked); } }, () => [root]));
        const document = shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(uri));
        shared.workspace.LangiumDocuments.addDocument(document);
        await shared.workspace.DocumentBuilder.build([document]);
        // What the server does when a file that is named has changed.
        const update = (changed: string[]): Promise<void> => shared.workspace.DocumentBuilder.update(haversack.attachments.refresh(changed).map(one => URI.parse(one)), []);
        return { haversack, shared, update, reads: () => reads, days: () => haversack.sheets.viewOf(uri).programme.attachments.get(attachmentKey(uri, 'town.ics')) };
    }

    test('a file is read once; the programme is the same object until the file says something else', async () => {
        const files = new Map([[ics, town('20261005')]]);
        const { haversack, update, reads, days } = await opened(files);
        const view = haversack.sheets.viewOf(uri);
        expect(days()).toMatchObject({ state: 'calendar', calendar: { events: [{ days: { from: '2026-10-05', to: '2026-10-05' } }] } });
        expect(reads()).toBe(1);
        await update([ics]);
        expect(reads()).toBe(2);
        expect(haversack.sheets.viewOf(uri)).toBe(view);
        files.set(ics, town('20261006'));
        expect(haversack.attachments.refresh([`${root}/other.ics`])).toEqual([]);
        expect(haversack.sheets.viewOf(uri)).toBe(view);
        expect(reads()).toBe(2);
    });

    test('a change, an end and a new beginning of the file give a new programme each', async () => {
        const files = new Map([[ics, town('20261005')]]);
        const { shared, haversack, days } = await opened(files);
        const change = async (text: string | undefined): Promise<boolean> => {
            const before = haversack.sheets.viewOf(uri);
            if (text === undefined) files.delete(ics);
            else files.set(ics, text);
            const affected = haversack.attachments.refresh([ics]);
            expect(affected).toEqual([uri]);
            await shared.workspace.DocumentBuilder.update([], []);
            return haversack.sheets.viewOf(uri) !== before;
        };
        expect(days()).toMatchObject({ state: 'calendar' });
        expect(await change(town('20261006'))).toBe(true);
        expect(days()).toMatchObject({ calendar: { events: [{ days: { from: '2026-10-06' } }] } });
        expect(await change(undefined)).toBe(true);
        expect(days()).toMatchObject({ state: 'wrong', message: expect.stringContaining('no such file') as string });
        expect(haversack.attachments.refresh([ics])).toEqual([]);
        expect(await change(town('20261007'))).toBe(true);
        expect(days()).toMatchObject({ calendar: { events: [{ days: { from: '2026-10-07' } }] } });
    });

    test('a folder that comes or goes changes what lies in it', async () => {
        const files = new Map<string, string>();
        const { haversack } = await opened(files, group('calendars/town.ics'));
        expect([...haversack.sheets.viewOf(uri).programme.attachments.values()]).toMatchObject([{ state: 'wrong' }]);
        files.set(`${root}/calendars/town.ics`, town('20261005'));
        expect(haversack.attachments.refresh([`${root}/calendar`])).toEqual([]);
        expect(haversack.attachments.refresh([`${root}/calendars`])).toEqual([uri]);
    });

    test('a missing file tells which others there are, on the way to it', async () => {
        const files = new Map([[`${root}/calendars/town.ics`, town('20261005')], [`${root}/notes.json`, '{}'], [`${root}/.hidden/secret.ics`, town('20261005')]]);
        const { days } = await opened(files);
        expect(days()).toMatchObject({ state: 'wrong', near: [`${root}/calendars/town.ics`] });
    });

    test('a calendar is no framework and a framework no calendar', async () => {
        const files = new Map([[`${root}/town.ics`, '{"CFDocument":{}}'], [`${root}/state.json`, town('20261005')]]);
        const { haversack } = await opened(files, `${group('town.ics')}framework state from "state.json"\nframework other from "town.ics"\n`);
        expect([...haversack.sheets.viewOf(uri).programme.attachments.values()].map(({ state }) => state)).toEqual(['wrong', 'wrong']);
    });

    test('without anything that reads, it is told that nothing can be read', async () => {
        const { shared, haversack } = createHaversackServices(EmptyFileSystem);
        const document = shared.workspace.LangiumDocumentFactory.fromString(group('town.ics'), URI.parse(uri));
        shared.workspace.LangiumDocuments.addDocument(document);
        await shared.workspace.DocumentBuilder.build([document], { validation: true });
        expect(haversack.validation.DocumentValidator.lastProblems(document).map(({ code, message }) => `${code}: ${message}`))
            .toEqual(['file-not-usable: The calendar \'town.ics\' cannot be used. Files beside the programme\'s own cannot be read here. Open the programme from a folder on this computer.']);
    });
});
