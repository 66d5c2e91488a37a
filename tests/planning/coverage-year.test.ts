/** The year example against a count made from its texts with nothing of ours. */
import { readFileSync } from 'node:fs';
import { EmptyFileSystem, URI } from 'langium';
import { expect, test } from 'vitest';
import { readFramework } from '@haversack/language/attachments/framework-file';
import { loose } from '@haversack/language/linking/programmes';
import { createHaversackServices } from '@haversack/language/module';
import { attachmentKey, gatherProgramme } from '@haversack/language/sheets/programme';
import { planCoverage } from '../../server/planning/coverage.js';
import { exampleFiles } from '../language/examples.js';

test('which objectives are worked on, how often, and how much of the framework is met', async () => {
    const files = Object.fromEntries(Object.entries(exampleFiles('year')).filter(([name]) => /\.(lesson|kit|course)$/.test(name)));
    const json = readFileSync(new URL('../../examples/year/frameworks/valley-outcomes.json', import.meta.url), 'utf8');
    const { shared, haversack } = createHaversackServices(EmptyFileSystem);
    const documents = Object.entries(files).map(([name, text]) => shared.workspace.LangiumDocumentFactory.fromString(text, URI.parse(`file:///programme/${name}`)));
    for (const document of documents) shared.workspace.LangiumDocuments.addDocument(document);
    await shared.workspace.DocumentBuilder.build(documents, { validation: false });
    const { programme } = haversack.sheets.viewAt(loose);
    const [framework] = programme.frameworks.values();
    const read = gatherProgramme(programme.files.values(), new Map([[attachmentKey(framework!.uri, framework!.from!.path), readFramework(json)]]));

    const [, year = ''] = /^course orchard-year .*\n((?:\s*\n| .*\n?)*)/m.exec(files['programme.course']!) ?? [];
    const taught = new Set([...year.matchAll(/^ {4}([a-z]+-\d+)$/gm)].map(([, name]) => `${name}.lesson`));
    const lines = Object.entries(files).filter(([name]) => taught.has(name.split('/').pop()!)).flatMap(([, text]) => [...text.matchAll(/^ +(introduces|practices|practises|checks) ([a-z0-9-]+(?:, [a-z0-9-]+)*)$/gm)])
        .flatMap(([, does = '', names = '']) => names.split(',').map(name => `${does.replace('practices', 'practises')} ${name.trim()}`));
    const worked = new Set(lines.map(line => line.split(' ')[1]));
    const aligned = [...Object.values(files).join('\n').matchAll(/^objective (\S+).*\n(?: .*\n)*/gm)].filter(([, name]) => worked.has(name!))
        .flatMap(([text]) => [...text.matchAll(/aligns to valley-outcomes (\S+)/g)].map(([, code]) => code));
    const leaves = (JSON.parse(json) as { CFItems: { CFItemType: string; humanCodingScheme: string }[] }).CFItems.filter(i => i.CFItemType === 'Outcome').map(i => i.humanCodingScheme);
    const met = leaves.filter(code => aligned.includes(code)).length;
    expect(lines.length).toBeGreaterThan(200);

    for (const name of ['millpond', 'rook-lane']) {
        const figures = planCoverage(read, { class: name });
        const unplaced = figures.assumptions.filter(a => a.includes('no room in the term'));
        expect(unplaced).toEqual([]);
        expect(figures.objectives.flatMap(o => o.cells.flatMap(c => c.does.map(does => `${does} ${o.name}`))).sort()).toEqual([...lines].sort());
        expect(figures.frameworks.map(f => [f.items, f.met, f.metAbove, f.unknownCodes])).toEqual([[leaves.length, met, 0, []]]);
    }
});
