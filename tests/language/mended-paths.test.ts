import { EmptyFileSystem, URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '@haversack/language/checks/apply-edits';
import { AttachmentStore } from '@haversack/language/attachments/attachment-store';
import { memoryReader } from '@haversack/language/attachments/memory-reader';
import { mendedPaths, type Move } from '@haversack/language/attachments/mended-paths';
import { createHaversackServices } from '@haversack/language/module';

const root = 'file:///home/programme';
const calendar = 'BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:test\nEND:VCALENDAR\n';
const naming = (path: string): string => `class oaks\n  learners 6\n  off from "${path}"\n`;

/** A path in a file of the programme, as it is written after the moves; undefined where nothing is written anew. */
async function after(file: string, path: string, moves: [string, string][], there: string[] = []): Promise<string | undefined> {
    const address = (name: string): string => URI.parse(`${root}/`).with({ path: `/home/programme/${name}` }).toString();
    const uri = address(file);
    const reader = memoryReader(new Map(there.map(name => [address(name), calendar])));
    const { shared, haversack } = createHaversackServices(EmptyFileSystem, new AttachmentStore(reader, () => [root]));
    const text = naming(path);
    const document = shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(uri));
    shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build([document]);
    const mended = mendedPaths(haversack.sheets.viewOf(uri).programme, moves.map(([from, to]): Move => ({ from: address(from), to: to.includes('://') ? to : address(to) })), [root]);
    expect(mended.length).toBeLessThan(2);
    const [edit] = mended;
    if (!edit) return undefined;
    const written = applyEdits(text, [{ uri, replace: edit.at, text: edit.text }]);
    const now = /off from "(.*)"/.exec(written)![1]!;
    expect(written).toBe(naming(now));
    return now;
}

describe('paths when files are moved', () => {
    const town = ['calendars/town.ics'];
    const cases: [what: string, file: string, path: string, moves: [string, string][], there: string[], expected: string | undefined][] = [
        ['the calendar gets another name', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'calendars/village.ics']], town, 'calendars/village.ics'],
        ['the calendar goes to another folder', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'town.ics']], town, 'town.ics'],
        ['its folder gets another name', 'a.course', 'calendars/town.ics', [['calendars', 'days off']], town, 'days off/town.ics'],
        ['the naming file goes into a folder', 'a.course', 'calendars/town.ics', [['a.course', 'classes/oaks/a.course']], town, '../../calendars/town.ics'],
        ['the naming file comes out of a folder', 'classes/a.course', '../calendars/town.ics', [['classes/a.course', 'a.course']], town, 'calendars/town.ics'],
        ['both move together', 'old/a.course', 'calendars/town.ics', [['old', 'new']], ['old/calendars/town.ics'], undefined],
        ['both move apart', 'a.course', 'calendars/town.ics', [['a.course', 'x/a.course'], ['calendars', 'y']], town, '../y/town.ics'],
        ['the naming file only gets another name', 'a.course', 'calendars/town.ics', [['a.course', 'b.course']], town, undefined],
        ['something else moves', 'a.course', 'calendars/town.ics', [['inventory.kit', 'things/inventory.kit'], ['calendar', 'x']], town, undefined],
        ['a file in a folder that moves as well, elsewhere', 'a.course', 'calendars/town.ics', [['calendars', 'y'], ['calendars/town.ics', 'z/town.ics']], town, 'z/town.ics'],
        ['letters beyond the alphabet, blanks and signs', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'Ferien & Fêtes/Schüler 日程 #1?.ics']], town, 'Ferien & Fêtes/Schüler 日程 #1?.ics'],
        ['from a name with blanks', 'a.course', 'days off/my town.ics', [['a.course', 'x y/a.course']], ['days off/my town.ics'], '../days off/my town.ics'],
        ['to a name that no path can say: a quotation mark', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'calendars/"town".ics']], town, undefined],
        ['to a name that no path can say: a backslash', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'calendars/my\\town.ics']], town, undefined],
        ['to a name that no path can say: per cent', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'calendars/100%25.ics']], town, undefined],
        ['out of the programme', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'file:///home/elsewhere/town.ics']], town, undefined],
        ['the naming file out of the programme', 'a.course', 'calendars/town.ics', [['a.course', 'file:///home/elsewhere/a.course']], town, undefined],
        ['to another place altogether', 'a.course', 'calendars/town.ics', [['calendars/town.ics', 'vscode-vfs://host/home/programme/town.ics']], town, undefined],
        ['a path that leads to nothing, when its own file moves', 'a.course', 'calendars/town.ics', [['a.course', 'x/a.course']], [], undefined],
        ['a path that leads to nothing yet, when that is moved', 'a.course', 'calendars/town.ics', [['calendars', 'x']], [], 'x/town.ics'],
        ['a path that is refused', 'a.course', '../town.ics', [['a.course', 'x/a.course']], town, undefined],
        ['an address', 'a.course', 'https://example.org/town.ics', [['a.course', 'x/a.course']], town, undefined],
        ['a roundabout path that still leads there', 'x/a.course', '../calendars/town.ics', [['x/a.course', 'y/a.course']], town, undefined]
    ];

    test.each(cases)('%s', async (_, file, path, moves, there, expected) => {
        expect(await after(file, path, moves, there)).toBe(expected);
    });

    test('a framework too', async () => {
        const uri = `${root}/a.course`;
        const { shared, haversack } = createHaversackServices(EmptyFileSystem, new AttachmentStore(memoryReader(new Map([[`${root}/state.json`, '{}']])), () => [root]));
        const document = shared.workspace.LangiumDocumentFactory.fromString('framework state "State" from "state.json"\n', URI.parse(uri));
        shared.workspace.LangiumDocuments.addDocument(document);
        await shared.workspace.DocumentBuilder.build([document]);
        expect(mendedPaths(haversack.sheets.viewOf(uri).programme, [{ from: `${root}/state.json`, to: `${root}/frameworks/state.json` }], [root]))
            .toEqual([{ uri, at: { start: { line: 0, character: 29 }, end: { line: 0, character: 41 } }, text: '"frameworks/state.json"' }]);
    });
});
