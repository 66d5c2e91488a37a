import { URI, type LangiumDocument } from 'langium';
import { expect, test } from 'vitest';
import { createServerServices } from '../../server/workspace/services.js';
import { FedFiles } from '../../server/workspace/fed-files.js';

const folder = 'file:///a';
const lessonUri = `${folder}/count-2.lesson`;
const others: Record<string, string> = {
    'inventory.kit': 'material cube "Cube"\n  reusable\n\nmaterial scarf "Scarf"\n  reusable\n\nmaterial tray "Tray"\n  reusable\n',
    'year.course': 'objective add "Add"\n\nobjective take "Take away"\n\ncourse long "Long"\n  unit all "All"\n    count-1\n    count-2\n',
    'count-1.lesson': 'lesson count-1 "One"\n  about: Children count.\n  objectives\n    introduces add\n  materials\n    cube 2 per pair\n  activity lay "Lay" 10 min\n    say: This is a whole.\n'
};
const lesson = 'lesson count-2 "Two"\n  about: Children count on.\n  follows count-1\n  objectives\n    practices add\n    introduces take\n  materials\n    scarf 1 per pair\n'
    + '  activity fold "Fold" 10 min\n    do: Fold the {scarf}.\n    say: Look at it first.\n';

function services(lessonText: string): { change: (text: string) => Promise<void>; start: () => Promise<void>; problems: () => Record<string, string[]> } {
    const fed = new FedFiles();
    const put = (uri: string, text: string): void => { fed.take({ uri, bytes: Buffer.from(text).toString('base64') }); };
    for (const [name, text] of Object.entries(others)) put(`${folder}/${name}`, text);
    put(lessonUri, lessonText);
    const { shared, haversack } = createServerServices({ fileSystemProvider: () => fed }, fed);
    const { WorkspaceManager, DocumentBuilder, LangiumDocuments } = shared.workspace;
    WorkspaceManager.initialBuildOptions = { validation: true };
    WorkspaceManager.initialize({ processId: null, rootUri: null, capabilities: {}, workspaceFolders: [{ name: 'a', uri: folder }] });
    const told = (document: LangiumDocument): string[] => haversack.validation.DocumentValidator.lookAgain(document).problems.map(({ code, message, at }) => `${at.start.line} ${code}: ${message}`);
    return {
        start: () => WorkspaceManager.initialized({}),
        change: async text => {
            put(lessonUri, text);
            await DocumentBuilder.update([URI.parse(lessonUri)], []);
        },
        problems: () => Object.fromEntries(LangiumDocuments.all.toArray().map(document => [document.uri.path, told(document)] as const).sort(([a], [b]) => (a < b ? -1 : 1)))
    };
}

// Facts of the whole programme are kept while a lesson's text changes and not its names: each of these changes must tell what reading everything anew tells.
test('after each change of a lesson every file is told of as if all had been read anew', async () => {
    const changed = services(lesson);
    await changed.start();
    changed.problems();
    const edits: [string, string][] = [
        ['count on', 'go on counting'], ['{scarf}', 'scarf'], ['    scarf 1 per pair', '    tray 1 per pair'], ['the scarf', 'the {tray}'], ['the {tray}', 'the {trai}'], ['the {trai}', 'the {tray} and {cube}'],
        ['practices add', 'practices take'], ['introduces take', 'introduces ad'], ['follows count-1', 'follows count-2'], ['follows count-2', 'follows count-1'],
        ['  materials', '  words whole\n  materials'], ['  words whole\n', ''], ['tray 1 per pair', 'tray 1 per pear of scarf'], ['tray 1 per pear of scarf', 'scarf 1 per pair\n  not needed cube'],
        ['lesson count-2', 'lesson count-3'], ['Fold', 'Unfold']
    ];
    let text = lesson;
    const seen = new Set<string>();
    for (const [from, to] of edits) {
        expect(text).toContain(from);
        text = text.replace(from, to);
        await changed.change(text);
        const anew = services(text);
        await anew.start();
        const problems = changed.problems();
        expect(problems, `${from} to ${to}`).toEqual(anew.problems());
        seen.add(JSON.stringify(problems));
    }
    expect(seen.size).toBeGreaterThan(edits.length / 2);
});
