import type { Check } from './check.js';
import { removeFromList } from './fixes.js';

const example = (others: string): string => `course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon\n  shares cupboard with ${others}\n\nclass hill\n  teaches measuring\n  learners 5\n  starts 2026-09-07\n  meets tue`;

export const ownCupboard: Check = {
    code: 'own-cupboard', severity: 'warning', title: 'A class that shares the cupboard with itself',
    explains: 'Under `shares cupboard with` stand the other classes that use the same things. The class itself is always one of them and need not be named.',
    wrong: example('harbour, hill'), right: example('hill'),
    *find(file) {
        for (const { name, sharesWith } of file.classes) {
            for (const other of sharesWith) {
                if (other.name !== name) continue;
                yield { message: `Class '${name}' need not be told that it shares its own cupboard. Name the other classes only.`, at: other.at, fixes: [{ title: `Take '${name}' away`, edits: [removeFromList(file.uri, sharesWith, other)], preferred: true }] };
            }
        }
    }
};
