import { amountText } from '../amounts.js';
import { dayLabel, readDay } from '../calendar.js';
import type { ClashFigures, ShortageFigures, StandInFigures } from '../supply-figures.js';
import { quoted } from '@haversack/language/facts/wording';
import type { ClassTerm } from './class-term.js';
import { amountIn, largest, togetherOn } from './ledger.js';
import { Quantities } from './quantities.js';
import { fractionOf, type Ratio } from './ratio.js';
import { placeOf } from './record-figures.js';
import { standInsFor, withAllowance, type DayClash, type MeetingShortage } from './shortages.js';

export function shortageFigures(shortage: MeetingShortage, term: ClassTerm): ShortageFigures {
    const { ledger, uses, needed, atHand, order } = shortage;
    const { week, meeting } = uses[0]!.at;
    const { thing, measure, holding } = ledger;
    const words = new Quantities(ledger);
    const busiest = withAllowance(largest(uses, measure), ledger);
    const trail = uses.map(use => ({ words: `${quoted(use.at.lesson.title)}: ${amountText(fractionOf(amountIn(use, measure)), measure)}`, place: placeOf(use) }));
    const lessons = uses.map(use => ({ name: use.at.lesson.name, title: use.at.lesson.title, place: placeOf(use) }));
    return {
        name: thing.name, title: thing.title, place: { uri: thing.uri, range: thing.at }, week: week.number, date: meeting.date, meeting: meeting.label,
        needed: words.needed(busiest, trail),
        atHand: words.there(atHand, holding.steps),
        missing: words.needed(needed - atHand, [{ words: `${words.text(needed)} needed less ${words.text(atHand)} at hand` }]),
        lessons: [...new Map(lessons.map(lesson => [lesson.name, lesson])).values()],
        standIns: standInFigures(shortage, term),
        order: order?.id
    };
}

function standInFigures({ ledger, slot, needed, atHand }: MeetingShortage, term: ClassTerm): StandInFigures[] {
    const missing = needed - atHand;
    const replaced = new Quantities(ledger).text(missing);
    const found = standInsFor(ledger, slot, missing, term.programme, name => term.ledger(name), (name, measure) => term.holdings.of(name, measure).value);
    return found.map(({ name, title, measure, wanted, atHand: there, enough }): StandInFigures => {
        const text = (amount: Ratio): string => amountText(fractionOf(amount), measure);
        return { name, title, enough, text: `${text(wanted)} of ${quoted(title)} in place of ${replaced}: ${text(there)} at hand` };
    });
}

export function clashFigures({ ledger, date, uses, needed, atHand }: DayClash): ClashFigures {
    const { thing, measure, holding } = ledger;
    const words = new Quantities(ledger);
    const day = readDay(date);
    const plans = [...new Set(uses.map(({ at }) => at.plan))];
    const classes = plans.flatMap(plan => {
        const sheet = plan.audience.class;
        if (!sheet) return [];
        const own = uses.filter(({ at }) => at.plan === plan);
        return [{
            name: sheet.name, title: sheet.title, place: { uri: sheet.uri, range: sheet.at },
            needed: words.of(withAllowance(togetherOn(own, measure), ledger)),
            lessons: [...new Set(own.map(({ at }) => at.lesson.name))]
        }];
    });
    const trail = uses.map(use => ({
        words: `${quoted(use.at.plan.audience.class?.title ?? '')}, ${quoted(use.at.lesson.title)}: ${amountText(fractionOf(amountIn(use, measure)), measure)}`, place: placeOf(use)
    }));
    return {
        name: thing.name, title: thing.title, place: { uri: thing.uri, range: thing.at }, date, meeting: day ? dayLabel(day) : date, classes,
        together: words.needed(needed, trail),
        atHand: words.there(atHand, holding.steps),
        missing: words.needed(needed - atHand, [{ words: `${words.text(needed)} needed together less ${words.text(atHand)} at hand` }])
    };
}
