import { EmptyFileSystem, URI, type WorkspaceFolder } from 'langium';
import { describe, expect, test } from 'vitest';
import { createHaversackServices, type HaversackServices } from '@haversack/language/module';

type Shared = ReturnType<typeof createHaversackServices>['shared'];

async function opened(folders: readonly string[] | undefined, files: Record<string, string> = {}): Promise<{ shared: Shared; haversack: HaversackServices }> {
    const { shared, haversack } = createHaversackServices(EmptyFileSystem);
    openFolders(shared, folders);
    const documents = Object.entries(files).map(([uri, text]) => shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(uri)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: true });
    return { shared, haversack };
}

function openFolders(shared: Shared, folders: readonly string[] | undefined): void {
    const workspaceFolders = folders?.map((uri): WorkspaceFolder => ({ uri, name: uri })) ?? null;
    shared.workspace.WorkspaceManager.initialize({ processId: null, rootUri: null, capabilities: {}, workspaceFolders });
}

describe('which file belongs to which programme', () => {
    const cases: [string, string[] | undefined, Record<string, string>][] = [
        ['no folder', undefined, { 'file:///a/x.kit': '', 'untitled:Untitled-1': '' }],
        ['no folder, in a list', [], { 'file:///a/x.kit': '' }],
        ['one folder takes in what lies outside', ['file:///a'], { 'file:///a/x.kit': 'file:///a', 'file:///b/x.kit': 'file:///a', 'untitled:Untitled-1': 'file:///a' }],
        ['two folders', ['file:///a', 'file:///b'], { 'file:///a/x.kit': 'file:///a', 'file:///b/c/x.kit': 'file:///b', 'file:///c/x.kit': '', 'untitled:Untitled-1': '' }],
        ['a folder whose name begins like another', ['file:///a', 'file:///ab'], { 'file:///ab/x.kit': 'file:///ab', 'file:///a/b/x.kit': 'file:///a', 'file:///abc/x.kit': '' }],
        ['a folder within another', ['file:///a/b', 'file:///a', 'file:///c'], { 'file:///a/b/x.kit': 'file:///a', 'file:///a/x.kit': 'file:///a', 'file:///c/x.kit': 'file:///c' }],
        ['the same folder twice, with a slash and without', ['file:///a/', 'file:///a'], { 'file:///b/x.kit': 'file:///a' }],
        ['letters and blanks, written either way', ['file:///Sch%C3%BCler%20alt', 'file:///Schüler neu'], { 'file:///Schüler alt/x.kit': 'file:///Sch%C3%BCler%20alt', 'file:///Sch%C3%BCler%20neu/x.kit': 'file:///Sch%C3%BCler%20neu' }],
        ['the same path elsewhere', ['file:///a', 'vscode-vfs://host/a'], { 'vscode-vfs://host/a/x.kit': 'vscode-vfs://host/a', 'file:///a/x.kit': 'file:///a', 'vscode-vfs://other/a/x.kit': '' }],
        ['the whole disk', ['file:///', 'file:///a'], { 'file:///a/x.kit': 'file://', 'file:///x.kit': 'file://' }]
    ];

    test.each(cases)('%s', async (_, folders, expected) => {
        const { haversack } = await opened(folders);
        expect(Object.fromEntries(Object.keys(expected).map(uri => [uri, haversack.programmes.of(uri)]))).toEqual(expected);
    });

    test('there is always a programme, and one of loose files only where there are any', async () => {
        expect((await opened(undefined)).haversack.programmes.all).toEqual(['']);
        expect((await opened(['file:///a'], { 'file:///b/x.kit': '' })).haversack.programmes.all).toEqual(['file:///a']);
        expect((await opened(['file:///b', 'file:///a'], { 'file:///a/x.kit': '' })).haversack.programmes.all).toEqual(['file:///b', 'file:///a']);
        expect((await opened(['file:///b', 'file:///a'], { 'file:///c/x.kit': '' })).haversack.programmes.all).toEqual(['file:///b', 'file:///a', '']);
    });
});

describe('programmes side by side', () => {
    const kit = 'material cup "Cup"\n  reusable\n';
    const lesson = 'lesson pour "Pour"\n  materials\n    cup 1 per pair\n';
    const files = { 'file:///a/x.kit': kit, 'file:///a/y.lesson': lesson, 'file:///b/x.kit': kit, 'file:///b/y.lesson': lesson };
    const codes = ({ shared, haversack }: { shared: Shared; haversack: HaversackServices }, uri: string): string[] =>
        haversack.validation.DocumentValidator.problemsIn(shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))!).map(({ code }) => code);

    test('the same names in two folders are no repetition; with one folder around both they are', async () => {
        const apart = await opened(['file:///a', 'file:///b'], files);
        expect(codes(apart, 'file:///b/x.kit')).not.toContain('declared-twice');
        const together = await opened(['file:///'], files);
        expect(codes(together, 'file:///b/x.kit')).toContain('declared-twice');
    });

    test('a reference leads into its own programme, whichever address comes first', async () => {
        const { shared } = await opened(['file:///a', 'file:///b'], files);
        for (const folder of ['a', 'b']) {
            const document = shared.workspace.LangiumDocuments.getDocument(URI.parse(`file:///${folder}/y.lesson`))!;
            const targets = document.references.map(reference => ('ref' in reference ? reference.$nodeDescription?.documentUri.toString() : undefined));
            expect(targets).toEqual([`file:///${folder}/x.kit`]);
        }
    });

    test('a change in one programme leaves the other the same object', async () => {
        const { shared, haversack: { sheets } } = await opened(['file:///a', 'file:///b'], files);
        const before = { a: sheets.viewOf('file:///a/x.kit'), b: sheets.viewOf('file:///b/x.kit') };
        const { uri } = shared.workspace.LangiumDocuments.getDocument(URI.parse('file:///a/x.kit'))!;
        shared.workspace.LangiumDocuments.deleteDocument(uri);
        const changed = shared.workspace.LangiumDocumentFactory.fromString(`${kit}\nmaterial ladle\n  reusable\n`, uri);
        shared.workspace.LangiumDocuments.addDocument(changed);
        await shared.workspace.DocumentBuilder.build([changed], { validation: true });
        expect(sheets.viewOf('file:///a/x.kit')).not.toBe(before.a);
        expect(sheets.viewOf('file:///a/x.kit').programme.materials.has('ladle')).toBe(true);
        expect(sheets.viewOf('file:///b/x.kit')).toBe(before.b);
    });

    test('when a folder is closed, its files are one programme with the other loose ones, and come back when it is opened', async () => {
        const { shared, haversack } = await opened(['file:///a', 'file:///b', 'file:///c'], files);
        const own = haversack.sheets.viewOf('file:///a/x.kit');
        openFolders(shared, ['file:///b', 'file:///c']);
        await shared.workspace.DocumentBuilder.update([], []);
        expect(haversack.programmes.of('file:///a/x.kit')).toBe('');
        expect([...haversack.sheets.viewOf('file:///a/x.kit').programme.files.keys()]).toEqual(['file:///a/x.kit', 'file:///a/y.lesson']);
        openFolders(shared, ['file:///a', 'file:///b']);
        await shared.workspace.DocumentBuilder.update([], []);
        expect([...haversack.sheets.viewOf('file:///a/x.kit').programme.files]).toEqual([...own.programme.files]);
    });
});
