import type { FrameworkItem } from '../attachments/attachment.js';
import { everyItem, itemsOfCodes } from '../attachments/items-of-codes.js';
import { nearest } from '../lexer/nearest.js';
import { attachmentKey } from '../sheets/programme.js';
import type { Check } from './check.js';
import { replace } from './fixes.js';

const state = JSON.stringify({
    CFDocument: { identifier: 'state', title: 'State framework' },
    CFItems: [{ identifier: 'one', humanCodingScheme: 'M.1.1', fullStatement: 'Compares two masses.' }, { identifier: 'two', humanCodingScheme: 'M.1.2', fullStatement: 'Orders three masses.' }],
    CFAssociations: ['one', 'two'].map(item => ({ associationType: 'isChildOf', originNodeURI: { identifier: item }, destinationNodeURI: { identifier: 'state' } }))
});
const example = (code: string): string => `framework state-frame from "frameworks/state.json"\n\nobjective compare-mass\n  aligns to state-frame ${code}\n\nlesson weigh-1\n  objectives\n    introduces compare-mass\n    checks compare-mass\n\ncourse measuring\n  unit weighing\n    weigh-1`;

export const unknownFrameworkCode: Check = {
    code: 'unknown-framework-code', severity: 'warning', title: 'A code that the framework does not have',
    explains: 'The objective is aligned to an item of a framework, and the framework\'s file has no item with that code. What is taught then counts for nothing there. Compare the code with the file; an edition of another year may have other codes.',
    wrong: example('M.1.3'), right: example('M.1.2'), beside: { 'frameworks/state.json': state },
    *find(file, { programme }) {
        const aligned = file.objectives.flatMap(({ alignsTo }) => alignsTo);
        for (const name of new Set(aligned.map(({ framework }) => framework.name))) {
            const framework = programme.frameworks.get(name);
            const attachment = framework?.from && programme.attachments.get(attachmentKey(framework.uri, framework.from.path));
            if (!framework || attachment?.state !== 'framework') continue;
            const lines = aligned.filter(line => line.framework.name === name);
            const items = everyItem(attachment.framework.items).map(item => ({ item }));
            const found = itemsOfCodes(items, new Set(lines.map(({ code }) => code)));
            for (const { code, at } of lines) {
                if (found.has(code)) continue;
                const meant = meantBy(code, items);
                yield {
                    message: `'${framework.title}' has no item '${code}'${meant === undefined ? '. Compare the code with the framework\'s file.' : `; did you mean '${meant}'?`}`, at,
                    fixes: meant === undefined ? [] : [{ title: `Change to '${meant}'`, edits: [replace(file.uri, at, `aligns to ${name} ${meant}`)], preferred: true }]
                };
            }
        }
    }
};

/** The nearest code that can be written and is found: spaces in it are left out. */
function meantBy(code: string, items: readonly { item: FrameworkItem }[]): string | undefined {
    const writable = new Set(items.flatMap(({ item }) => item.code?.replace(/\s+/g, '') ?? []).filter(known => /^[^,()"]+$/.test(known)));
    return nearest(code, [...itemsOfCodes(items, writable).keys()]);
}
