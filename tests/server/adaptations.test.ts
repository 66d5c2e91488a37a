import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { CodeAction, CodeLens, CompletionItem, Hover } from 'vscode-languageserver-protocol/node';
import { Client } from './client.js';

const programme = {
    'things.kit': `material bean "Dried beans"
  consumable
  measured in g
  pack of 500 g costs 2.00 EUR
  stand-in lentil 2 for 1

material lentil "Lentils"
  consumable
  measured in g

material aniseed "Aniseed"
  consumable
  measured in g

game grocer "The careful grocer"
  players 2 to 4
`,
    'weigh.lesson': `lesson weigh-1 "Two bags"
  objectives
    introduces compare-mass
  activity two-bags "Two mystery bags" 15 min
    materials
      bean 50 g per learner
    do: Fill a bag with {bean}s.
  game grocer 10 min

lesson weigh-2 "Three bags"
  objectives
    practises compare-mass
  activity three-bags 20 min
    do: Lift three bags.

lesson weigh-3 "The balance"
  objectives
    checks compare-mass
  activity weigh 15 min
    do: Weigh.

lesson visit "Market visit"
  draft
  activity walk 30 min
    do: Walk.
`,
    'weighing.course': `objective compare-mass "Compare two masses"

course weighing "Weighing" edition 2
  unit bags "Bags"
    weigh-1
    weigh-2
    weigh-3

class harbour "Harbour co-op"
  teaches weighing
  learners 4
  starts 2026-09-14
  meets mon

class millpond "Millpond co-op"
  teaches weighing
  learners 2
  starts 2026-09-15
  meets tue
`,
    'adapted.course': `adaptation shorter of weighing edition 2 for harbour
  move weigh-3 before weigh-2 because: The balance is there only once.
  add to weigh-3
    objectives
      introduces compare-mass
`
};

let client: Client;
beforeEach(async () => { client = await Client.start({ programme, today: '2026-09-01', commands: ['haversack.showChanges'] }); });
afterEach(() => client.stop());

const range = (file: string, marked: string): { start: ReturnType<Client['at']>; end: ReturnType<Client['at']> } => ({ start: client.at(file, marked), end: client.at(file, marked) });
const actions = (file: string, marked: string, only?: string[]): Promise<CodeAction[]> =>
    client.connection.sendRequest('textDocument/codeAction', { textDocument: { uri: client.uri(file) }, range: range(file, marked), context: { diagnostics: [], only } });
const skips = async (file: string, marked: string): Promise<string[]> => (await actions(file, marked)).filter(({ kind }) => kind === 'refactor.rewrite').map(({ title }) => title);

/** Takes an action as an editor does: all its changes at once. */
async function take(file: string, marked: string, title: string): Promise<void> {
    const action = (await actions(file, marked)).find(one => one.title === title);
    if (!action) throw new Error(`'${title}' is not offered.`);
    await client.apply(action.edit!);
}

describe('leaving out a lesson for a class', () => {
    test('is announced, and offered where the lesson or the part begins, for each class', async () => {
        expect(client.initialized.capabilities.codeActionProvider).toEqual({ codeActionKinds: ['quickfix', 'refactor.rewrite'] });
        expect(await skips('weigh.lesson', 'lesson weigh-1| ')).toEqual(['Skip ‘Two bags’ for Harbour co-op', 'Skip ‘Two bags’ for Millpond co-op']);
        expect(await skips('weighing.course', '    weigh-1|')).toEqual(['Skip ‘Two bags’ for Harbour co-op', 'Skip ‘Two bags’ for Millpond co-op']);
        expect(await skips('weigh.lesson', '  activity two-bags|')).toEqual(['Skip ‘Two mystery bags’ for Harbour co-op', 'Skip ‘Two mystery bags’ for Millpond co-op']);
        expect(await skips('weigh.lesson', '  game grocer|')).toEqual(['Skip ‘The careful grocer’ for Harbour co-op', 'Skip ‘The careful grocer’ for Millpond co-op']);
        expect(await skips('weigh.lesson', '    do: Lift|')).toEqual([]);
        // No class is taught it.
        expect(await skips('weigh.lesson', 'lesson visit| ')).toEqual([]);
    });

    test('only where such actions are asked for', async () => {
        const kinds = async (only: string[]): Promise<(string | undefined)[]> => [...new Set((await actions('weigh.lesson', 'lesson weigh-1| ', only)).map(({ kind }) => kind))];
        expect(await kinds(['quickfix'])).toEqual([]);
        expect(await kinds(['refactor'])).toEqual(['refactor.rewrite']);
        expect(await kinds(['refactor.rewrite'])).toEqual(['refactor.rewrite']);
        expect(await kinds(['refactor.extract'])).toEqual([]);
    });

    test('writes a line into the last adaptation of the class, and is not offered again', async () => {
        await client.open('adapted.course');
        await take('weigh.lesson', 'lesson weigh-2| ', 'Skip ‘Three bags’ for Harbour co-op');
        expect(client.text('adapted.course')).toBe(`${programme['adapted.course']}  skip lesson weigh-2\n`);
        expect(await skips('weigh.lesson', 'lesson weigh-2| ')).toEqual(['Skip ‘Three bags’ for Millpond co-op']);
        expect(await skips('weigh.lesson', '  activity three-bags|')).toEqual(['Skip ‘Three bags’ for Millpond co-op']);
        await take('weigh.lesson', '  game grocer|', 'Skip ‘The careful grocer’ for Harbour co-op');
        expect(client.text('adapted.course')).toContain('  skip lesson weigh-2\n  skip activity weigh-1.grocer\n');
        expect(await skips('weigh.lesson', '  game grocer|')).toEqual(['Skip ‘The careful grocer’ for Millpond co-op']);
    });

    test('begins an adaptation behind the class where there is none, in one edit that can be undone', async () => {
        await client.open('weighing.course');
        const [, action] = (await actions('weigh.lesson', 'lesson weigh-3| ')).filter(({ kind }) => kind === 'refactor.rewrite');
        expect(action!.title).toBe('Skip ‘The balance’ for Millpond co-op');
        expect(Object.keys(action!.edit!.changes!)).toEqual([client.uri('weighing.course')]);
        expect(Object.values(action!.edit!.changes!)[0]).toHaveLength(1);
        await client.apply(action!.edit!);
        expect(client.text('weighing.course')).toBe(`${programme['weighing.course']}\nadaptation millpond-changes of weighing edition 2 for millpond\n  skip lesson weigh-3\n`);
        await take('weigh.lesson', 'lesson weigh-1| ', 'Skip ‘Two bags’ for Millpond co-op');
        expect(client.text('weighing.course')).toContain('  skip lesson weigh-3\n  skip lesson weigh-1\n');
        await client.until('no error', () => client.problems('weighing.course').every(({ severity }) => severity !== 1));
    });
});

test('a loss is told at the line of the change, and one fix mends it', async () => {
    await client.open('adapted.course');
    await client.edit('adapted.course', '  add to weigh-3\n    objectives\n      introduces compare-mass\n', '  skip lesson weigh-1 because: They know it.\n');
    await client.until('the loss', () => client.codes('adapted.course').includes('adapted-not-introduced'));
    const problem = client.problems('adapted.course').find(({ code }) => code === 'adapted-not-introduced')!;
    expect(client.inRange('adapted.course', problem.range)).toBe('skip lesson weigh-1');
    expect(problem.message).toBe('No lesson introduces “Compare two masses” any more, but “The balance” and “Three bags” ask for it.');
    await take('adapted.course', '  skip lesson| weigh-1', "Introduce 'compare-mass' in 'weigh-3' for this class");
    await client.until('the loss to go', () => !client.codes('adapted.course').includes('adapted-not-introduced'));
    expect(client.text('adapted.course')).toContain('  skip lesson weigh-1 because: They know it.\n  add to weigh-3\n    objectives\n      introduces compare-mass\n');
});

test('a mend of several losses is offered once, with all of them', async () => {
    await client.open('adapted.course');
    await client.edit('adapted.course', '  add to weigh-3\n    objectives\n      introduces compare-mass\n', '  skip lesson weigh-1\n');
    await client.open('weigh.lesson');
    await client.edit('weigh.lesson', 'lesson weigh-2 "Three bags"\n', 'lesson weigh-2 "Three bags"\n  follows weigh-1\n');
    await client.until('both losses', () => ['adapted-not-introduced', 'adapted-follows-left-out'].every(code => client.codes('adapted.course').includes(code)));
    const offered = (await actions('adapted.course', '  skip lesson| weigh-1')).filter(({ kind }) => kind === 'quickfix');
    expect(offered.map(({ title }) => title)).toEqual([...new Set(offered.map(({ title }) => title))]);
    const removes = offered.find(({ title }) => title === 'Remove this change');
    expect(removes?.diagnostics?.map(({ code }) => code)).toEqual(expect.arrayContaining(['adapted-not-introduced', 'adapted-follows-left-out']));
});

describe('completion in an adaptation', () => {
    const file = 'adapted.course';

    /** Offers at `|` in a line that is written below the others. */
    async function offers(marked: string): Promise<CompletionItem[]> {
        const text = `${programme[file]}  ${marked.replace('|', '')}\n`;
        await client.open(file, text);
        const line = text.split('\n').length - 2;
        const { items } = await client.connection.sendRequest<{ items: CompletionItem[] }>('textDocument/completion', {
            textDocument: { uri: client.uri(file) }, position: { line, character: 2 + marked.indexOf('|') }
        });
        await client.close(file);
        return items.sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
    }
    const labels = async (marked: string): Promise<string[]> => (await offers(marked)).map(({ label }) => label);

    test('is asked for behind a dot', () => {
        expect(client.initialized.capabilities.completionProvider?.triggerCharacters).toContain('.');
    });

    test('offers the lessons of the course that are not left out', async () => {
        expect(await labels('skip lesson |')).toEqual(['weigh-1', 'weigh-2', 'weigh-3']);
        // What stands in the line itself may be written over.
        expect(await labels('skip lesson weigh-1|')).toEqual(['weigh-1']);
        expect(await labels('move weigh-1 after |')).toEqual(['weigh-2', 'weigh-3']);
        expect(await labels('join weigh-1 with weigh-2, |')).toEqual(['weigh-3']);
        expect(await labels('insert |')).toEqual(['visit', 'activity']);
        expect(await labels('swap lesson weigh-1 for |')).toEqual(['visit']);
        await client.writeOutside('more.course', 'adaptation more of weighing\n  skip lesson weigh-2\n');
        expect(await labels('skip lesson |')).toEqual(['weigh-1', 'weigh-3']);
    });

    test('offers the parts of the lesson behind the dot, games by their own name', async () => {
        const items = await offers('skip activity weigh-1.|');
        expect(items.map(({ label, detail, documentation }) => [label, detail, documentation])).toEqual([
            ['two-bags', 'activity, 15 min', 'Two mystery bags'], ['grocer', 'game, 10 min', 'The careful grocer']
        ]);
        expect(await labels('move activity weigh-1.grocer after weigh-2.|')).toEqual(['three-bags']);
        expect(await labels('split weigh-1 after |')).toEqual(['two-bags', 'grocer']);
        expect(await labels('swap activity weigh-1.grocer for visit.|')).toEqual(['walk']);
    });

    test('offers what the lessons use, and its stand-ins first', async () => {
        expect((await labels('swap |')).slice(0, 1)).toEqual(['bean']);
        expect(await labels('swap bean for |')).toEqual(['lentil', 'aniseed']);
        expect((await labels('swap bean for lentil in |')).slice(0, 1)).toEqual(['weigh-1']);
    });

    test('offers a line of each change', async () => {
        expect(await labels('|')).toEqual(expect.arrayContaining(['skip lesson', 'skip activity', 'swap', 'move', 'split', 'join', 'insert', 'retime', 'add to']));
        expect((await offers('|')).find(({ label }) => label === 'skip lesson')).toMatchObject({ insertText: 'skip lesson ', insertTextFormat: 1 });
        await client.stop();
        client = await Client.start({ programme, snippets: true });
        const items = await offers('|');
        const text = (label: string): string | undefined => items.find(item => item.label === label && item.insertTextFormat === 2)?.insertText;
        expect(text('skip lesson')).toBe('skip lesson ${1|weigh-1,weigh-2,weigh-3|}');
        expect(text('move')).toBe('move ${1|weigh-1,weigh-2,weigh-3|} ${2|after,before|} ${3|weigh-1,weigh-2,weigh-3|}');
        expect(text('retime activity')).toBe('retime activity ${1|weigh-1,weigh-2,weigh-3|}.${2:part} to ${3:10} min');
        expect(text('swap')).toBe('swap ${1:thing} for ${2:other}');
    });
});

test('the hover over a change says what it does, breaks and saves', async () => {
    await client.open('adapted.course');
    await client.edit('adapted.course', '  add to weigh-3\n    objectives\n      introduces compare-mass\n', '  skip lesson weigh-1\n');
    await client.settled();
    const hover = await client.ask<Hover>('textDocument/hover', 'adapted.course', '  sk|ip lesson weigh-1');
    const { value } = hover.contents as { value: string };
    expect(value.split('\n').filter(line => line !== '')).toEqual([
        '**“Two bags” is left out** (for Harbour co-op)',
        '- No lesson introduces “Compare two masses” any more, but “The balance” and “Three bags” ask for it.',
        '- 25 min less of lessons', '- 1 meeting fewer', '- no longer needed: dried beans', '- to buy: 2.00 EUR less',
        'Leaves a lesson out.', '`skip lesson weigh-4 because: Covered at the market visit.`'
    ]);
});

test('the lens over an adaptation sums it up and leads to the page of changes', async () => {
    await client.open('adapted.course');
    await client.edit('adapted.course', '  add to weigh-3\n    objectives\n', '  skip lesson weigh-1\n  add to weigh-3\n    objectives\n');
    await client.settled();
    const lenses = await client.connection.sendRequest<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: client.uri('adapted.course') } });
    expect(lenses.map(({ range: at, command }) => [at.start.line, command])).toEqual([
        [0, { title: '3 changes · 25 min less · 1 thing no longer needed', command: 'haversack.showChanges', arguments: [{ class: 'harbour' }] }]
    ]);
});
