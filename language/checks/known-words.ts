import { underThrees } from '../facts/caution-ages.js';
import { cautionKind, cautionKinds } from '../facts/cautions.js';
import { nearest } from '../lexer/nearest.js';
import type { Caution, FileSheet } from '../sheets/sheet.js';
import type { Check } from './check.js';
import { changeTo } from './fixes.js';

export const unknownCaution: Check = {
    code: 'unknown-caution', severity: 'warning', title: 'A kind of caution that is not known',
    explains: `The language knows these kinds: ${cautionKinds.map(({ kind }) => kind).join(', ')}. For each of them the brief shows the usual caution. For anything else write a \`note:\`.`,
    wrong: 'material gram-cube\n  reusable\n  caution small-part', right: 'material gram-cube\n  reusable\n  caution small-parts',
    *find(file) {
        for (const { kind, kindAt, at } of cautionsIn(file)) {
            if (cautionKind(kind)) continue;
            const guess = nearest(kind, cautionKinds.map(known => known.kind));
            yield {
                message: `'${kind}' is no kind of caution${guess ? `; did you mean '${guess}'?` : `. Write one of ${cautionKinds.map(known => known.kind).join(', ')}, or a note.`}`,
                at: kindAt ?? at, fixes: guess && kindAt ? [changeTo(file.uri, kindAt, guess)] : []
            };
        }
    }
};

export const unknownPresent: Check = {
    code: 'unknown-present', severity: 'warning', title: 'Somebody in the room who changes nothing',
    explains: 'After `present` stands who else is in the room. Only `under-threes` changes anything: things that are a danger to children under three are then told of. Another word is read and has no effect; write it in a note.',
    wrong: 'course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon\n  present under-three',
    right: 'course measuring\n\nclass harbour\n  teaches measuring\n  learners 7\n  starts 2026-09-07\n  meets mon\n  present under-threes',
    *find(file) {
        for (const { who, at } of file.classes.flatMap(({ present }) => present)) {
            if (who === underThrees) continue;
            const guess = nearest(who, [underThrees, 'toddlers', 'babies', 'younger-siblings', 'siblings']);
            yield {
                message: guess ? `'${who}' changes nothing; write '${underThrees}' when children under three are in the room.` : `'${who}' changes nothing: only '${underThrees}' is known here.`,
                at, fixes: [changeTo(file.uri, at, underThrees, guess !== undefined)]
            };
        }
    }
};

function cautionsIn(file: FileSheet): Caution[] {
    return [...file.materials, ...file.prints, ...file.games, ...file.lessons, ...file.lessons.flatMap(({ parts }) => parts)].flatMap(({ cautions }) => cautions);
}
