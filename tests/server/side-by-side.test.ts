import { DocumentState, URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { createServerServices } from '../../server/workspace/services.js';
import { FedFiles } from '../../server/workspace/fed-files.js';

const kit = 'material cup\n  reusable\n\nmaterial lid\n  reusable\n';
const lesson = (thing: string): string => `lesson pour\n  materials\n    ${thing} 1 per pair\n  activity one 20 min\n    do: Pour.\n`;
const course = 'course kitchen\n  unit water\n    pour\n\nclass oaks\n  teaches kitchen\n  learners 6\n  adults 1\n  groups of 2\n  starts 2026-09-07\n  ends 2026-12-18\n  meets mon\n  session 50 min\n';

async function started() {
    const fed = new FedFiles();
    const write = (uri: string, text: string): void => { fed.take({ uri, bytes: Buffer.from(text).toString('base64') }); };
    for (const folder of ['a', 'b']) {
        write(`file:///${folder}/x.kit`, kit);
        write(`file:///${folder}/y.lesson`, lesson('cup'));
        write(`file:///${folder}/z.course`, course);
    }
    // A name that the other programme will have.
    write('file:///b/w.lesson', 'lesson stir\n  materials\n    ladle 1 per pair\n');
    const { shared, haversack } = createServerServices({ fileSystemProvider: () => fed }, fed);
    const { WorkspaceManager, DocumentBuilder } = shared.workspace;
    haversack.today.be('2026-09-01');
    WorkspaceManager.initialBuildOptions = { validation: true };
    WorkspaceManager.initialize({ processId: null, rootUri: null, capabilities: {}, workspaceFolders: [{ name: 'a', uri: 'file:///a' }, { name: 'b', uri: 'file:///b' }] });
    await WorkspaceManager.initialized({});
    const change = async (uri: string, text: string): Promise<string[]> => {
        write(uri, text);
        const linked: string[] = [];
        const phase = DocumentBuilder.onDocumentPhase(DocumentState.Linked, document => { linked.push(document.uri.toString()); });
        await DocumentBuilder.update([URI.parse(uri)], []);
        phase.dispose();
        return linked.sort();
    };
    return { haversack, change };
}

describe('a keystroke in one programme', () => {
    test('plans nothing anew in the other', async () => {
        const { haversack: { plans, terms, validation: { DocumentValidator } }, change } = await started();
        const look = (programme: string) => {
            const term = terms.at(programme).all();
            if (DocumentValidator.isBehind(programme)) DocumentValidator.lookAtPlan(programme, term);
            return { brief: plans.at(programme).brief(1, 'oaks'), term: term.classes[0], schedule: plans.at(programme).schedule('oaks') };
        };
        const before = { a: look('file:///a'), b: look('file:///b') };
        expect(before.a.term).toBeDefined();
        await change('file:///a/y.lesson', lesson('lid'));
        expect(DocumentValidator.isBehind('file:///a')).toBe(true);
        expect(DocumentValidator.isBehind('file:///b')).toBe(false);
        const after = { a: look('file:///a'), b: look('file:///b') };
        expect(after.a.brief).not.toBe(before.a.brief);
        expect(after.a.brief.fetch.flatMap(({ things }) => things.map(({ name }) => name))).toEqual(['lid']);
        for (const what of ['brief', 'term', 'schedule'] as const) expect(after.b[what], what).toBe(before.b[what]);
    });

    test('links nothing anew in the other, not even a name that it has not found', async () => {
        const { change } = await started();
        expect(await change('file:///a/x.kit', `${kit}\nmaterial ladle\n  reusable\n`)).toEqual(['file:///a/x.kit', 'file:///a/y.lesson']);
        expect(await change('file:///b/x.kit', `${kit}\nmaterial ladle\n  reusable\n`)).toEqual(['file:///b/w.lesson', 'file:///b/x.kit', 'file:///b/y.lesson']);
    });
});
