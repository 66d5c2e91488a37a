import type { JSX } from 'preact';
import type { RecordWeek, ThingRecord } from '../../../planning/supply-figures.js';
import { dayAndMonth } from '../../days.js';
import { InWords } from '../../drawing/in-words.js';
import { Key, KeyMark, KeySwatch } from '../../drawing/marks.js';
import { Trail } from '../../pieces/figure.js';
import { placed, Title } from '../../pieces/lead.js';
import { Section } from '../../pieces/section.js';
import { sentence } from '../../sentences.js';
import { asId, type View } from '../../view.js';
import type { TermFigures } from '../../../planning/term-figures.js';
import { openingWords } from '../sentences.js';
import { heads, stockHeads, stockWords, termWords } from '../words.js';
import { changingWeeks, comes, unlessNone } from './line.js';
import { StockPlot } from './plot.js';
import { usedUp } from './used-up.js';

export function Stock({ term, view }: { term: TermFigures; view: View }): JSX.Element | null {
    const { runOut, asNeeded, last, uncounted } = usedUp(term.supplies);
    const all = [...runOut, ...asNeeded, ...last];
    if (all.length + uncounted.length === 0) return null;
    const weeks = all.flatMap(record => record.weeks.map(comes));
    return (
        <Section id="term-stock" title={termWords.stock}>
            {all.length > 0 && <p>{termWords.stockReading}</p>}
            {all.length > 0 && <Key>
                {[
                    <KeySwatch draw={<path class="level" d="M1 4H8V11H21" />}>{stockWords.line}</KeySwatch>,
                    ...(weeks.some(week => week.arrives) ? [<KeyMark mark="arrives">{stockWords.arrives}</KeyMark>] : []),
                    ...(weeks.some(week => week.bought) ? [<KeyMark mark="bought">{stockWords.bought}</KeyMark>] : []),
                    ...(runOut.length > 0 ? [<KeyMark mark="runs-out">{stockWords.runsOut}</KeyMark>] : []),
                    ...(all.some(record => record.safety) ? [<KeySwatch draw={<path class="dashes" d="M1 8H21" />}>{stockWords.safety}</KeySwatch>] : [])
                ]}
            </Key>}
            <Group title={termWords.runsOut} records={runOut} term={term} view={view} />
            <Group title={termWords.asNeeded} records={asNeeded} term={term} view={view} />
            <Group title={termWords.lasts} records={last} term={term} view={view} />
            {uncounted.length > 0 && <h3>{termWords.uncounted}</h3>}
            {uncounted.length > 0 && <ul class="plain">{uncounted.map(record => <Uncounted record={record} view={view} />)}</ul>}
        </Section>
    );
}

function Group({ title, records, term, view }: { title: string; records: ThingRecord[]; term: TermFigures; view: View }): JSX.Element | null {
    if (records.length === 0) return null;
    return (
        <>
            <h3>{title}</h3>
            <ul class="multiples">{records.map(record => <Thing record={record} term={term} view={view} />)}</ul>
        </>
    );
}

function Uncounted({ record, view }: { record: ThingRecord; view: View }): JSX.Element {
    return (
        <li {...placed(record.place, view)}>
            <Title place={record.place} view={view} text={record.title} /> <Trail steps={record.need.trail} view={view}>{`${termWords.needed} ${record.need.text}`}</Trail>
            {record.remarks.map(remark => <p class="quiet"><bdi>{remark}</bdi></p>)}
        </li>
    );
}

function Thing({ record, term, view }: { record: ThingRecord; term: TermFigures; view: View }): JSX.Element {
    const opening = openingWords(record);
    return (
        <li class="multiple" {...placed(record.place, view)}>
            <h4><Title place={record.place} view={view} text={record.title} /></h4>
            {record.runsOut && <p {...placed(record.runsOut.place, view)}><Title place={record.runsOut.place} view={view} text={sentence(record.runsOut.text)} /></p>}
            <StockPlot record={record} id={`stock-${asId(record.name)}`} view={view} />
            <div class="quiet">
                <Trail steps={[...record.need.trail, ...(record.opening?.trail ?? [])]} view={view}>{opening}</Trail>
            </div>
            {record.remarks.map(remark => <p class="quiet"><bdi>{remark}</bdi></p>)}
            <WeeksInWords record={record} weeks={term.supplies.weeks} />
        </li>
    );
}

/** Columns in which nothing stands are left out. */
function WeeksInWords({ record, weeks }: { record: ThingRecord; weeks: TermFigures['supplies']['weeks'] }): JSX.Element {
    const rows = changingWeeks(record);
    const columns: [head: string, amount: (week: RecordWeek) => string][] = [
        [stockHeads.gross, week => unlessNone(week.gross)],
        [stockHeads.scheduled, week => unlessNone(week.scheduled)],
        [stockHeads.receipts, week => unlessNone(week.receipts)],
        [stockHeads.onHand, week => week.onHand.text]
    ];
    const shown = columns.filter(([, amount]) => rows.some(week => amount(week) !== ''));
    return (
        <InWords of={record.title} heads={[heads.week, ...shown.map(([head]) => head)]}>
            {rows.map(week => {
                const from = weeks.find(one => one.number === week.week)?.from;
                return <tr><th scope="row">{week.week}{from !== undefined && <span class="quiet">, {dayAndMonth(from)}</span>}</th>{shown.map(([, amount]) => <td>{amount(week)}</td>)}</tr>;
            })}
        </InWords>
    );
}
