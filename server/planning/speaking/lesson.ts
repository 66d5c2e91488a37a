import type { LessonFigures, PartFigures, StepFigures } from '../figures.js';
import type { Cue } from '../speaking-figures.js';
import { listing, quoted } from '@haversack/language/facts/wording';
import { changeCues } from './changes.js';
import { say, sayIf, stepsOf, thingInWords, type Telling } from './cues.js';
import { spokenWords } from './spoken-time.js';

/** One lesson, from its aim to more practice. */
export function lessonCues(lesson: LessonFigures, telling: Telling): Cue[] {
    const { inWords } = telling;
    const { parts } = lesson;
    const of = (...kinds: PartFigures['kind'][]): PartFigures[] => parts.filter(({ kind }) => kinds.includes(kind));
    return [
        ...(lesson.piece ? [say(`This is part ${lesson.piece.number} of ${lesson.piece.of} of the lesson`)] : []),
        ...(lesson.remark === undefined ? [] : [say(lesson.remark)]),
        ...(lesson.draft ? [say('The lesson is still a draft')] : []),
        ...aimCues(lesson, telling),
        ...changeCues(lesson, telling),
        ...of('warm-up').flatMap(part => [
            say(`The warm-up is ${partInWords(part)}`, part.place),
            ...first(part).flatMap(step => sayIf('', inWords(step.prose), step.place)),
            ...tell('A gentler choice: ', stepsOf(part.steps, 'instead'), telling)
        ]),
        ...of('activity').flatMap((part, index, all) => activityCues(part, all.length === 1 ? 'The activity is' : index === 0 ? 'First comes' : 'Then comes', telling)),
        ...of('game').flatMap(part => gameCues(part, telling)),
        ...pictureCues(of('warm-up', 'practice', 'checkpoint').flatMap(({ steps }) => steps)),
        ...readyCues(lesson, telling),
        ...parts.flatMap(part => (part.unsure === undefined ? [] : [say(`And where a child is unsure: ${lower(part.unsure)}`, part.unsureAs ? { uri: part.place.uri, range: part.unsureAs.at } : part.place)])),
        ...of('practice').flatMap(practiceCues),
        ...parts.flatMap(part => tell('For those who want more: ', stepsOf([...(part.game?.steps ?? []), ...part.steps], 'more'), telling))
    ];
}

/** In the writer's words, else by the objectives. */
function aimCues({ aim, objectives, words }: LessonFigures, { inWords }: Telling): Cue[] {
    const isNew = objectives.filter(({ does }) => does === 'introduces').map(({ title }) => thingInWords(title));
    return [
        ...aim.flatMap(prose => sayIf('', inWords(prose))),
        ...(isNew.length > 0 ? [say(`New in this lesson: ${listing(isNew)}`)] : []),
        ...(words.length > 0 ? [say(`${words.length === 1 ? 'A word' : 'Words'} of this lesson: ${listing(words)}`)] : [])
    ];
}

function activityCues(part: PartFigures, lead: string, telling: Telling): Cue[] {
    const { inWords } = telling;
    return [
        say(`${lead} ${partInWords(part)}`, part.place),
        ...tell('', stepsOf(part.steps, 'why'), telling),
        ...first(part).map((step): Cue => ({ does: 'begin', text: opening(inWords(step.prose)), place: step.place })),
        ...pictureCues(part.steps),
        ...slipCues(part.steps, telling),
        ...tell('A gentler choice: ', stepsOf(part.steps, 'instead'), telling)
    ];
}

/** How it is played stands in its rules, so what is said is where they stand. */
function gameCues(part: PartFigures, telling: Telling): Cue[] {
    const { game } = part;
    const steps = [...(game?.steps ?? []), ...part.steps];
    return [
        say(`There is a game, ${partInWords(part)}${game?.players ? `, for ${game.players}` : ''}. ${game?.rules ? `Its rules stand in ${game.rules}` : 'How it goes stands in the brief'}`, game?.place ?? part.place),
        { does: 'play', text: quoted(part.title), place: part.place },
        ...pictureCues(steps),
        ...slipCues(steps, telling)
    ];
}

function slipCues(steps: readonly StepFigures[], telling: Telling): Cue[] {
    return stepsOf(steps, 'watch').flatMap(step => [
        ...tell('Where children slip: ', [step], telling),
        ...tell('What helps: ', stepsOf(step.under, 'help'), telling)
    ]);
}

/** Signs the writer gives; without any, the first closing question with its answer. */
function readyCues({ parts }: LessonFigures, telling: Telling): Cue[] {
    const signs = parts.flatMap(part => stepsOf([...(part.game?.steps ?? []), ...part.steps], 'ready when').map(step => ({ part, step })));
    if (signs.length > 0) {
        return signs.flatMap(({ part, step }) => sayIf(signs.length === 1 ? 'You can tell that a child is ready: ' : `Ready after ${quoted(part.title)}: `, telling.inWords(step.prose), step.place));
    }
    const [question] = parts.filter(({ kind }) => kind === 'checkpoint').flatMap(({ steps }) => stepsOf(steps, 'ask'));
    return question ? [...tell('To see whether a child is ready, ask: ', [question], telling), ...tell('You hope to hear: ', stepsOf(question.under, 'expect'), telling)] : [];
}

function practiceCues(part: PartFigures): Cue[] {
    const count = part.practiceItems?.length || part.items;
    const items = count === undefined ? '' : `${count} ${count === 1 ? 'item' : 'items'}`;
    const how = [items, (part.practice ?? []).join('; ')].filter(Boolean).join(': ');
    const key = part.practiceItems?.length ? '. The answers stand in the brief' : '';
    return [say(`For more practice: ${[quoted(part.title), how].filter(Boolean).join(', ')}${key}`, part.place)];
}

function pictureCues(steps: readonly StepFigures[]): Cue[] {
    return stepsOf(steps, 'show').flatMap(({ picture, place }): Cue[] => (picture?.picture ? [{ does: 'picture', text: [picture.title, picture.text].filter(Boolean).join(': '), place }] : []));
}

function tell(lead: string, steps: readonly StepFigures[], { inWords }: Telling): Cue[] {
    return steps.flatMap(step => sayIf(lead, inWords(step.prose), step.place));
}

/** What a part begins with. */
function first({ steps }: PartFigures): StepFigures[] {
    return steps.filter(({ word }) => word === 'do' || word === 'say' || word === 'ask').slice(0, 1);
}

/** The first sentences, as far as somebody needs them to begin: the brief has the rest. */
function opening(text: string): string {
    const sentences = text.split(/(?<=[.!?…]["”’)]*)\s+(?=[\p{Lu}\p{N}"“‘(])/u);
    let words = 0;
    const enough = sentences.findIndex(sentence => (words += spokenWords(sentence)) >= 12);
    return sentences.slice(0, enough < 0 ? undefined : enough + 1).join(' ');
}

/** "“Two mystery bags”, 15 minutes". */
function partInWords({ title, kind, minutes }: PartFigures): string {
    const name = title.trim() === '' ? `a part without a name (${kind})` : quoted(title);
    return minutes === undefined ? name : `${name}, ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`;
}

function lower(sentence: string): string {
    return sentence.replace(/^\p{Lu}(?=\p{Ll})/u, letter => letter.toLowerCase());
}
