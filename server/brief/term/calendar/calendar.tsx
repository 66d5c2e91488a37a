import { Fragment, type JSX } from 'preact';
import type { ChangeFigures } from '../../../planning/figures.js';
import type { Meeting, TaughtFigures } from '../../../planning/schedule-figures.js';
import { groundFill, Grounds, type Ground } from '../../drawing/grounds.js';
import { InWords } from '../../drawing/in-words.js';
import { Key, KeyMark, KeySwatch } from '../../drawing/marks.js';
import { taughtRemark } from '../../meetings.js';
import { Lead, placed, Title } from '../../pieces/lead.js';
import { Section } from '../../pieces/section.js';
import type { View } from '../../view.js';
import { whyWords } from '../../words.js';
import type { TermFigures } from '../../../planning/term-figures.js';
import { changesOf, noMeetings } from '../sentences.js';
import { dayWords, heads, termWords } from '../words.js';
import { calendarBlocks, type Block, type Cell, type WeekRow } from './blocks.js';
import { offWords } from './entries.js';
import { Month } from './month.js';

export function Calendar({ term, view }: { term: TermFigures; view: View }): JSX.Element {
    const blocks = calendarBlocks(term.schedule, term.today);
    return (
        <Section id="term-calendar" title={termWords.calendar}>
            {blocks.length === 0 && <p><bdi>{noMeetings(term)}</bdi></p>}
            <CalendarKey blocks={blocks} />
            {blocks.map(block => (
                <div class="block">
                    <h3>{block.title}</h3>
                    <Month block={block} shape="wide" view={view} />
                    <Month block={block} shape="narrow" view={view} />
                    <MonthInWords block={block} term={term} view={view} />
                </div>
            ))}
        </Section>
    );
}

/** Only what occurs in this term. */
function CalendarKey({ blocks }: { blocks: Block[] }): JSX.Element | null {
    const cells = blocks.flatMap(block => block.rows.flatMap(row => (row.kind === 'week' ? row.cells : []))).filter(cell => cell !== undefined);
    const gaps = blocks.some(block => block.rows.some(row => row.kind === 'gap'));
    const has = (test: (cell: Cell) => unknown): boolean => cells.some(test);
    const swatch = (ground: Ground, text: string): JSX.Element => (
        <KeySwatch draw={<><Grounds id={`key-${ground}`} grounds={[ground]} /><rect class="cell" x="1" y="1" width="20" height="14" rx="2" fill={groundFill(`key-${ground}`, ground)} /></>}>{text}</KeySwatch>
    );
    return (
        <Key>
            {[
                ...(gaps || has(cell => cell.off) ? [swatch('slanted', dayWords.off)] : []),
                ...(has(cell => cell.meeting?.free?.why === 'catch-up') ? [swatch('dotted', dayWords.catchUp)] : []),
                ...(has(cell => cell.meeting?.free?.why === 'waiting') ? [swatch('level', dayWords.waiting)] : []),
                ...(['fixed', 'repeat', 'revisit'] as const).filter(why => has(cell => cell.meeting?.taught.some(taught => taught.why === why)))
                    .map(why => <KeyMark mark={why}>{whyWords[why]}</KeyMark>)
            ]}
        </Key>
    );
}

function MonthInWords({ block, term, view }: { block: Block; term: TermFigures; view: View }): JSX.Element {
    return (
        <InWords of={block.title} heads={heads.calendar}>
            {block.rows.map(row => (row.kind === 'week'
                ? row.cells.map(cell => cell && <DayRow cell={cell} row={row} term={term} view={view} />)
                : <tr {...placed(row.off[0]?.place, view)}><td colSpan={3}><Title place={row.off[0]?.place} view={view} text={row.text} />{row.now && ` (${termWords.thisWeek})`}</td></tr>))}
        </InWords>
    );
}

function DayRow({ cell, row, term, view }: { cell: Cell; row: WeekRow; term: TermFigures; view: View }): JSX.Element {
    const { meeting, off } = cell;
    return (
        <tr>
            <th scope="row">{cell.day}{cell.today && ` (${dayWords.today})`}</th>
            <td>{row.week.number}</td>
            <td>
                {off && <span {...placed(off.place, view)}><Title place={off.place} view={view} text={offWords(off)} /></span>}
                {meeting?.free && <FreeWords free={meeting.free} view={view} />}
                {meeting?.taught.map((taught, index) => <Fragment>{index > 0 && '; '}<TaughtWords taught={taught} changes={changesOf(term, taught.lesson)} view={view} /></Fragment>)}
            </td>
        </tr>
    );
}

export function FreeWords({ free, view }: { free: NonNullable<Meeting['free']>; view: View }): JSX.Element {
    return <span {...placed(free.place, view)}><Title place={free.place} view={view} text={free.words} /></span>;
}

function TaughtWords({ taught, changes, view }: { taught: TaughtFigures; changes: ChangeFigures[]; view: View }): JSX.Element {
    const remarks = taughtRemark(taught);
    return (
        <span {...placed(taught.place, view)}>
            <Title place={taught.place} view={view} text={taught.title} />
            {remarks && <>, <span class="quiet" {...placed(taught.because, view)}><Lead place={taught.because} view={view}><bdi>{remarks}</bdi></Lead></span></>}
            {changes.map(({ says, place }) => <>, <span class="quiet" {...placed(place, view)}><Title place={place} view={view} text={says} /></span></>)}
        </span>
    );
}
