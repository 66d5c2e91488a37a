import type { Exact, FileSheet, Range } from '../sheets/sheet.js';
import { amountsIn } from './amounts-in.js';
import type { Check, Finding, Fix } from './check.js';
import { sizeOf } from './exact-numbers.js';
import { replace } from './fixes.js';
import type { ProgrammeView } from './programme-view.js';

export const impossibleNumber: Check = {
    code: 'impossible-number', severity: 'error', title: 'A number that cannot be',
    explains: 'Some numbers cannot be zero, because nothing can be worked out from them: the amount of a need, the size of a pack, the learners of a class, the length of a session. Others have to be whole, such as a number of children, and a loss of 100% or more would leave nothing. Write the number that is meant; for a thing that is not needed, remove the line.',
    wrong: 'material gram-cube\n  reusable\n  pack of 0 costs 14.50 USD', right: 'material gram-cube\n  reusable\n  pack of 100 costs 14.50 USD',
    *find(file, view) {
        yield* amountsThatAreNone(file, view);
        for (const material of file.materials) {
            if (material.loss && sizeOf(material.loss.percent) >= 100) {
                yield { message: `A loss of ${material.loss.percent}% leaves nothing of '${material.name}'. Write how much of it is usually spoilt, below 100%.`, at: material.loss.at };
            }
            for (const { thing, give, replaces, at } of material.standIns) {
                if (!(sizeOf(give) > 0) || !(sizeOf(replaces) > 0)) {
                    yield {
                        message: `How much '${thing.name}' does for how much '${material.name}'? Neither number can be 0.`, at,
                        fixes: [{ title: "Change to '1 for 1'", edits: [replace(file.uri, at, `stand-in ${thing.name} 1 for 1`)] }]
                    };
                }
            }
        }
        for (const { name, pages, at } of file.prints) {
            if (!isCount(pages)) yield { message: `A copy of '${name}' has at least one page: write a whole number from 1 up after 'pages'.`, at };
        }
        for (const game of file.games) {
            if (game.players && !isCount(game.players.from)) yield { message: `The game '${game.name}' needs at least one player.`, at: game.players.at };
        }
        for (const course of file.courses) {
            for (const { kit, count, per, at } of course.uses) {
                if (!isCount(count) || (per.who === 'learners' && !isCount(per.of))) yield { message: `How many of '${kit.name}' does the course use? Write whole numbers from 1 up.`, at };
            }
        }
        yield* classNumbers(file);
        yield* minutes(file);
    }
};

const isCount = (number: number): boolean => Number.isInteger(number) && number > 0;
const isCountOrNone = (number: number | undefined): boolean => number === undefined || (Number.isInteger(number) && number >= 0);

/** From 0:00 to 23:59. */
function isHour(clock: string): boolean {
    const [hour, minute] = clock.split(':').map(Number) as [number, number];
    return hour < 24 && minute < 60;
}

function* amountsThatAreNone(file: FileSheet, view: ProgrammeView): Iterable<Finding> {
    for (const { thing, amount, where } of amountsIn(file, view)) {
        const size = sizeOf(amount.value);
        const none = size === 0 && where !== 'on hand' && where !== 'safety stock';
        if (!none && Number.isFinite(size)) continue;
        yield {
            message: none ? `${amount.value} of '${thing.name}' is nothing. Write how much it is${where === 'need' ? ', or remove the line' : ''}.`
                : `'${amount.value}' is no number: nothing can be divided by 0.`,
            at: amount.at, fixes: [changeNumber(file.uri, amount.at, amount.value, amount.unit)]
        };
    }
    for (const lesson of file.lessons) {
        for (const { per, at } of view.factsOf(lesson).needs) {
            if (per?.who === 'group' && per.size !== undefined && !isCount(per.size)) yield { message: 'A group has at least one child: write a whole number from 1 up.', at };
        }
    }
}

function changeNumber(uri: string, at: Range, value: Exact, unit: string | undefined): Fix {
    const one = unit ? `1 ${unit}` : '1';
    return { title: `Change '${value}' to '1'`, edits: [replace(uri, at, one)] };
}

function* classNumbers(file: FileSheet): Iterable<Finding> {
    for (const group of file.classes) {
        const { learners, session, catchUp, lessonsPerMeeting } = group;
        if (learners && !isCount(learners.count)) {
            const whole = String(Math.max(1, Math.ceil(learners.count)));
            yield {
                message: `A class has at least one learner, and no part of one: write a whole number from 1 up.`, at: learners.at,
                fixes: [{ title: `Change to '${whole}'`, edits: [replace(file.uri, learners.at, whole)] }]
            };
        }
        if (!learners && group.sections.length > 0 && group.sections.every(section => section.learners === 0)) {
            yield { message: `A class has at least one learner, and no section of '${group.name}' has any: write how many they are.`, at: group.at };
        }
        for (const { name, clock, at } of group.sections) {
            if (clock !== undefined && !isHour(clock)) yield { message: `'${name}' meets at ${clock}, an hour that no clock shows. Write hours and minutes, as in: at 9:30`, at };
        }
        if (session && session.minutes <= 0) yield { message: 'A session takes at least a minute.', at: session.at };
        if (catchUp && (!isCount(catchUp.everyLessons) || !isCountOrNone(catchUp.days))) {
            yield { message: 'Catch-up days come after a whole number of lessons from 1 up, as in: catch-up 1 day every 8 lessons', at: catchUp.at };
        }
        if (lessonsPerMeeting && !isCount(lessonsPerMeeting.count)) {
            yield { message: 'At least one lesson fits in a meeting: write a whole number from 1 up.', at: lessonsPerMeeting.at };
        }
        for (const { kit, count, at } of group.kits) {
            if (!isCountOrNone(count)) yield { message: `How many of '${kit.name}' are there? Write a whole number.`, at };
        }
        for (const { name, at, learners: count, adults, groupsOf } of [...group.sections, { ...group, learners: undefined }]) {
            const odd = !isCountOrNone(count) ? 'learners' : !isCountOrNone(adults) ? 'adults' : groupsOf !== undefined && !isCount(groupsOf) ? 'groups' : undefined;
            if (odd) yield { message: `The number of ${odd === 'groups' ? 'children in a group' : odd} of '${name}' has to be a whole number${odd === 'groups' ? ' from 1 up' : ''}.`, at };
        }
    }
}

function* minutes(file: FileSheet): Iterable<Finding> {
    for (const lesson of file.lessons) {
        for (const { minutes: time, items, name, at } of lesson.parts) {
            if (time === 0) yield { message: `'${name}' takes no time at all. Write how long it is, or leave the time out.`, at };
            if (items !== undefined && !isCount(items)) yield { message: `'${name}' has ${items > 0 ? 'a part of an item' : 'no items'}: write a whole number from 1 up.`, at };
        }
    }
}
