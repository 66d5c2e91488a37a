import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FileChangeType, type WorkspaceEdit } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

let client: Client;

const calendar = (day: string): string => [
    'BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Test//EN', 'BEGIN:VEVENT', 'UID:one', 'DTSTAMP:20260101T000000Z', `DTSTART;VALUE=DATE:${day}`, 'SUMMARY:Town day', 'END:VEVENT', 'END:VCALENDAR', ''
].join('\r\n');
const lesson = 'lesson pour-1 "Pouring"\n  materials\n    cup 1 per pair\n  activity pour-it "Pour" 20 min\n    do: Pour into the {cup}.\n';
const programme: Record<string, string> = {
    'inventory.kit': 'material cup "Cup"\n  reusable\n',
    'lessons/pour.lesson': lesson,
    'kitchen.course': [
        'course kitchen', '  unit water', '    pour-1', '', 'class oaks', '  teaches kitchen', '  learners 6', '  adults 1', '  groups of 2', '  off from "calendars/town.ics"', '  starts 2026-09-07',
        '  ends 2026-12-18', '  meets mon', '  session 50 min', ''
    ].join('\n'),
    'calendars/town.ics': calendar('20260907')
};

/** Moves a file or folder as an editor does: asks first, makes the edit, moves, tells. */
async function move(from: string, to: string, { tellsOnly = false } = {}): Promise<WorkspaceEdit | null> {
    const files = [{ oldUri: client.uri(from), newUri: client.uri(to) }];
    const edit = tellsOnly ? null : await client.connection.sendRequest<WorkspaceEdit | null>('workspace/willRenameFiles', { files });
    if (edit) await client.apply(edit);
    mkdirSync(dirname(join(client.folder, to)), { recursive: true });
    renameSync(join(client.folder, from), join(client.folder, to));
    await client.connection.sendNotification('workspace/didRenameFiles', { files });
    await client.settled();
    return edit;
}

const errors = (): string[] => [...client.allProblems()].flatMap(([uri, problems]) => problems.filter(({ severity }) => severity === 1).map(({ code }) => `${uri.slice(uri.lastIndexOf('/') + 1)} ${code}`));
const firstDay = async (): Promise<string | undefined> => /2026-09-\d\d|\d+ September|September \d+|Sep(?:t)? \d+|\d+ Sep/.exec((await client.brief({ week: 1, format: 'md' })).text!)?.[0];

beforeEach(async () => { client = await Client.start({ programme }); });
afterEach(() => client.stop());

describe('what the server says it takes', () => {
    test('our files, calendars, frameworks and folders, before and after', () => {
        const { fileOperations } = client.initialized.capabilities.workspace!;
        expect(Object.keys(fileOperations!).sort()).toEqual(['didCreate', 'didDelete', 'didRename', 'willRename']);
        const patterns = fileOperations!.willRename!.filters.map(({ pattern }) => `${pattern.matches} ${pattern.glob}`);
        expect(patterns).toEqual(['file **/*.{lesson,kit,course}', 'file **/*.{ics,ical,icalendar,json}', 'folder **']);
    });
});

describe('files that are moved in the editor', () => {
    test('a calendar: the path to it is mended, and its days are still off', async () => {
        expect(errors()).toEqual([]);
        const before = await firstDay();
        // The first Monday is the town's day off.
        expect(before).toMatch(/\b14\b/);
        await move('calendars/town.ics', 'days off/Gemeinde Süd.ics');
        expect(client.text('kitchen.course')).toContain('off from "days off/Gemeinde Süd.ics"');
        expect(errors()).toEqual([]);
        expect(await firstDay()).toBe(before);
    });

    test('a folder of calendars', async () => {
        await move('calendars', 'plans/2026');
        expect(client.text('kitchen.course')).toContain('off from "plans/2026/town.ics"');
        expect(errors()).toEqual([]);
    });

    test('the file that names the calendar, open with text that is not saved', async () => {
        await client.open('kitchen.course');
        await client.edit('kitchen.course', 'learners 6', 'learners 14');
        const files = [{ oldUri: client.uri('kitchen.course'), newUri: client.uri('classes/kitchen.course') }];
        const edit = await client.connection.sendRequest<WorkspaceEdit>('workspace/willRenameFiles', { files });
        await client.apply(edit);
        const text = client.text('kitchen.course');
        expect(text).toContain('off from "../calendars/town.ics"');
        mkdirSync(join(client.folder, 'classes'));
        renameSync(join(client.folder, 'kitchen.course'), join(client.folder, 'classes/kitchen.course'));
        // The editor closes the file under its old name and opens it under its new one, with the text that it has.
        await client.close('kitchen.course');
        await client.open('classes/kitchen.course', text);
        await client.connection.sendNotification('workspace/didRenameFiles', { files });
        await client.settled();
        expect(errors()).toEqual([]);
        // 14 learners in pairs: 7 cups.
        expect((await client.brief({ week: 1, format: 'md' })).text).toMatch(/\b7\b.*[Cc]up|[Cc]up.*\b7\b/);
        await client.close('classes/kitchen.course');
        await client.settled();
        expect((await client.brief({ week: 1, format: 'md' })).text).toMatch(/\b3\b.*[Cc]up|[Cc]up.*\b3\b/);
    });

    test('the same when the editor tells of the move before it opens the file anew', async () => {
        await client.open('inventory.kit');
        await client.edit('inventory.kit', 'material cup', 'material ladle\n  reusable\n\nmaterial cup');
        const text = client.text('inventory.kit');
        await move('inventory.kit', 'things/store.kit');
        await client.close('inventory.kit');
        await client.open('things/store.kit', text);
        await client.settled();
        await client.writeOutside('stir.lesson', 'lesson stir\n  materials\n    ladle 1 per pair\n');
        await client.settled();
        expect(errors()).toEqual([]);
    });

    test('a lesson and the inventory are named by name: nothing is written anew, and nothing is lost', async () => {
        expect(await move('lessons/pour.lesson', 'units/water/pouring.lesson')).toBeNull();
        expect(await move('inventory.kit', 'things/inventory.kit')).toBeNull();
        expect(errors()).toEqual([]);
        expect(client.problems('lessons/pour.lesson')).toEqual([]);
        const found = await client.ask<{ uri: string }[]>('textDocument/definition', 'kitchen.course', 'po|ur-1');
        expect(JSON.stringify(found)).toContain('/units/water/pouring.lesson');
        const folder = await move('units', 'parts of the course');
        expect(folder).toBeNull();
        expect(errors()).toEqual([]);
    });

    test('a calendar that leaves the programme is not followed, and is told to be missing', async () => {
        const outside = `${client.folder}-elsewhere`;
        const files = [{ oldUri: client.uri('calendars/town.ics'), newUri: new URL(`file://${outside}/town.ics`).toString() }];
        expect(await client.connection.sendRequest('workspace/willRenameFiles', { files })).toBeNull();
        mkdirSync(outside);
        renameSync(join(client.folder, 'calendars/town.ics'), join(outside, 'town.ics'));
        await client.connection.sendNotification('workspace/didRenameFiles', { files });
        await client.until('the calendar to be missed', () => client.problems('kitchen.course').some(({ message }) => JSON.stringify(message).includes('no such file')));
        rmSync(outside, { recursive: true });
    });

    test('two lessons that change places, and a file that becomes one of ours', async () => {
        await client.writeOutside('lessons/stir.lesson', lesson.replace('pour-1', 'stir-1'));
        await client.settled();
        const [pour, stir, between] = ['lessons/pour.lesson', 'lessons/stir.lesson', 'lessons/between'].map(name => join(client.folder, name)) as [string, string, string];
        renameSync(pour, between);
        renameSync(stir, pour);
        renameSync(between, stir);
        const files = [['pour', 'stir'], ['stir', 'pour']].map(([a, b]) => ({ oldUri: client.uri(`lessons/${a}.lesson`), newUri: client.uri(`lessons/${b}.lesson`) }));
        await client.connection.sendNotification('workspace/didRenameFiles', { files });
        await client.settled();
        expect(errors()).toEqual([]);
        const found = await client.ask<{ uri: string }[]>('textDocument/definition', 'kitchen.course', 'po|ur-1');
        expect(JSON.stringify(found)).toContain('/lessons/stir.lesson');
        await move('inventory.kit', 'inventory.txt', { tellsOnly: true });
        expect(errors()).toContain('stir.lesson unknown-name');
        await move('inventory.txt', 'inventory.kit', { tellsOnly: true });
        expect(errors()).toEqual([]);
    });
});

describe('files that are made and deleted in the editor', () => {
    test('a folder with a lesson in it goes, and comes back', async () => {
        const text = client.text('lessons/pour.lesson');
        rmSync(join(client.folder, 'lessons'), { recursive: true });
        await client.connection.sendNotification('workspace/didDeleteFiles', { files: [{ uri: client.uri('lessons') }] });
        await client.settled();
        expect(errors()).toEqual(['kitchen.course unknown-name']);
        await client.writeOutside('lessons/pour.lesson', text);
        await client.connection.sendNotification('workspace/didCreateFiles', { files: [{ uri: client.uri('lessons') }] });
        await client.settled();
        expect(errors()).toEqual([]);
    });

    test('a calendar goes and comes back', async () => {
        rmSync(join(client.folder, 'calendars'), { recursive: true });
        await client.connection.sendNotification('workspace/didDeleteFiles', { files: [{ uri: client.uri('calendars') }] });
        await client.until('the calendar to be missed', () => client.problems('kitchen.course').some(({ message }) => JSON.stringify(message).includes('no such file')));
        await client.writeOutside('calendars/town.ics', calendar('20260907'));
        await client.tellOutside({ calendars: FileChangeType.Created });
        await client.until('the calendar to be found', () => !client.problems('kitchen.course').some(({ message }) => JSON.stringify(message).includes('no such file')));
    });
});
