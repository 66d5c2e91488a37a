import type { Step } from '@haversack/language/sheets/sheet';
import type { Difference } from '../edition-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import { alikeTexts } from './alike.js';
import type { Matched } from './matched.js';
import { commonRun } from './order.js';
import { flatSteps, placeIn, proseForPeople, stepText } from './plain.js';
import { difference } from './words.js';

/** Two texts count as one worded anew when so many of their words are the same, or when one takes the place of the other. */
const stillTheSame = 0.5;

/** A part in which more steps than these changed at once is a new text: no step is looked for in the other one. */
const mostPairs = 20_000;

interface Said {
    step: Step;
    /** Equal for equal steps, names as the new edition calls them. */
    key: string;
    text: string;
}

/** Steps, questions and answers that came, went, stand in another order or are worded anew. */
export function stepDifferences(matched: Matched, steps: { old: readonly Step[]; new: readonly Step[] }, uris: { old: string; new: string }, part: string): Difference[] {
    const old = saidIn(matched, steps.old, 'old');
    const now = saidIn(matched, steps.new, 'new');
    const run = commonRun(old.map(({ key }) => key), now.map(({ key }) => key));
    const stayed = { old: new Set(run.map(([i]) => i)), new: new Set(run.map(([, j]) => j)) };
    const gone = old.filter((_, index) => !stayed.old.has(index));
    const added = now.filter((_, index) => !stayed.new.has(index));
    const say = (words: string): string => (part === '' ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : `${quoted(part)}: ${words}`);
    const at = { old: (one: Said) => placeIn(uris.old, one.step.at), new: (one: Said) => placeIn(uris.new, one.step.at) };
    const differences: Difference[] = [];
    let moved: { old: Said; new: Said } | undefined;
    for (const one of gone.length * added.length > mostPairs ? [] : [...added]) {
        const former = partnerOf(one, gone, added);
        if (!former) continue;
        gone.splice(gone.indexOf(former), 1);
        added.splice(added.indexOf(one), 1);
        const sides = { old: at.old(former), new: at.new(one) };
        if (former.key === one.key) moved ??= { old: former, new: one };
        else if (former.step.word === one.step.word) differences.push(difference('reworded', say(`${wordFor(one.step)} worded anew`), { ...sides, before: former.text, after: one.text }));
        else differences.push(difference('reworded', say(`what stood under ‘${former.step.word}’ now stands under ‘${one.step.word}’`), { ...sides, before: former.text, after: one.text }));
    }
    if (moved) differences.unshift(difference('steps-order', say('steps stand in another order'), { old: at.old(moved.old), new: at.new(moved.new) }));
    return [
        ...differences,
        ...added.map(one => difference('step-added', say(`${wordFor(one.step)} added`), { new: at.new(one), after: one.text })),
        ...gone.map(one => difference('step-removed', say(`${wordFor(one.step)} left out`), { old: at.old(one), before: one.text }))
    ];
}

/** The same text elsewhere; else the most alike; else, where there is one of its word on either side, that one. */
function partnerOf(one: Said, gone: readonly Said[], added: readonly Said[]): Said | undefined {
    const same = gone.find(({ key }) => key === one.key);
    if (same) return same;
    const free = gone.filter(former => !added.some(other => other.key === former.key));
    const ranked = free.map(former => ({ former, alike: alikeTexts(former.text, one.text) + (former.step.word === one.step.word ? 0.1 : -0.2) })).sort((a, b) => b.alike - a.alike);
    if (ranked[0] && ranked[0].alike >= stillTheSame) return ranked[0].former;
    const [only, ...others] = free.filter(({ step }) => step.word === one.step.word);
    const rivals = added.filter(({ step }) => step.word === one.step.word);
    return only && others.length === 0 && rivals.length === 1 ? only : undefined;
}

function saidIn(matched: Matched, steps: readonly Step[], side: 'old' | 'new'): Said[] {
    return flatSteps(steps).map(step => ({
        step, key: `${step.word} ${stepText(step, side === 'old' ? matched.newName : undefined)}`,
        text: step.show ? stepText(step) : proseForPeople(step.prose, matched.titleIn(side))
    }));
}

const words: Readonly<Partial<Record<Step['word'], string>>> = { ask: 'a question', expect: 'an answer', watch: 'what to watch for', help: 'what helps', show: 'a picture', about: 'the aim', 'ready when': 'when a child is ready', instead: 'the gentler choice', more: 'what more to do', note: 'a note', why: 'the reason' };

function wordFor({ word }: Step): string {
    return words[word] ?? `a step (‘${word}’)`;
}
