import type { JSX } from 'preact';
import type { ChangeFigures } from '../../planning/figures.js';
import { isAdded, type ToldChange } from '../change-places.js';
import { changeSentence, changesInWords, leftOutWords } from '../change-words.js';
import { MarkBeside, type Mark } from '../drawing/marks.js';
import type { LeftOutLesson } from '../left-out.js';
import { asId, type View } from '../view.js';
import { Lead, placed } from './lead.js';
import { ProseGoingOn } from './prose.js';

/** What an adaptation changed here, a line each; every line leads to the adaptation's. */
export function Changes({ told = [], view }: { told: ToldChange[] | undefined; view: View }): JSX.Element {
    const texts = changesInWords(told.map(({ change }) => change), view);
    return <>{told.map(({ change, again }, index) => <ChangeLine change={change} mark={markFor(change)} text={texts[index] ?? ''} again={again} view={view} />)}</>;
}

/** Under the title of what they changed, where it is told for whom. */
export function OwnChanges({ changes, view }: { changes: readonly ChangeFigures[]; view: View }): JSX.Element {
    return <>{changes.map(change => <ChangeLine change={change} mark={markFor(change)} text={changeSentence(change)} view={view} />)}</>;
}

function markFor(change: ChangeFigures): Mark {
    return isAdded(change) ? 'added' : 'changed';
}

/** A lesson of the course that this class is not taught, where it stood. */
export function LeftOutLine({ lesson, view }: { lesson: LeftOutLesson; view: View }): JSX.Element {
    return <div id={leftOutId(lesson)} class="left-out"><ChangeLine change={lesson.change} mark="left-out" text={leftOutWords(lesson, view)} view={view} /></div>;
}

export function leftOutId({ name }: LeftOutLesson): string {
    return `left-out-${asId(name)}`;
}

interface ChangeLineProps {
    change: ChangeFigures;
    mark: Mark;
    text: string;
    again?: boolean;
    view: View;
}

function ChangeLine({ change, mark, text, again = false, view }: ChangeLineProps): JSX.Element {
    return (
        <div class="change" {...placed(change.place, view)}>
            <MarkBeside mark={mark} />
            <div>
                <Lead place={change.place} view={view}><bdi>{text}</bdi></Lead>
                {change.because && !again && <> <ProseGoingOn prose={change.because} view={view} /></>}
            </div>
        </div>
    );
}
