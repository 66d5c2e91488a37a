import type { JSX } from 'preact';
import type { WeekBrief } from '../../planning/figures.js';
import { dayInWords } from '../days.js';
import { leftOut } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';
import { BuyLines } from './buy.js';
import { AmountLine } from './figure.js';
import { placed, Title } from './lead.js';
import { Section } from './section.js';

export function LookAhead({ brief, view }: { brief: WeekBrief; view: View }): JSX.Element | null {
    const { next } = brief;
    const over = leftOut(brief);
    if (!next) return brief.week === brief.weeks ? <Section id="ahead" title={words.ahead}><p>{words.lastWeek}</p>{over && <p class="quiet"><bdi>{over}</bdi></p>}</Section> : null;
    return (
        <Section id="ahead" title={words.ahead}>
            <p>Week {next.week}{next.from !== undefined && `, from ${dayInWords(next.from)}`}</p>
            {next.lessons.length > 0 && (
                <ul class="plain">
                    {next.lessons.map(lesson => (
                        <li {...placed(lesson.place, view)}><Title place={lesson.place} view={view} text={lesson.title} /></li>
                    ))}
                </ul>
            )}
            {next.newThings.length > 0 && (
                <>
                    <h3>{words.aheadNew}</h3>
                    <ul class="things">
                        {next.newThings.map(thing => <AmountLine amount={thing.amount} view={view} head={<Title view={view} text={thing.title} />} />)}
                    </ul>
                </>
            )}
            {next.order.length > 0 && (
                <>
                    <h3>{words.aheadOrder}</h3>
                    <BuyLines lines={next.order} brief={brief} view={view} />
                </>
            )}
            {over && <p class="over quiet"><bdi>{over}</bdi></p>}
        </Section>
    );
}
