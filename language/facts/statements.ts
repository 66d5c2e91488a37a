import { changes, classLines, courseLines, declarations, held, inventory, lessonLines, named, need, ordered, practiceLines, timed, type LinePart } from './line-parts.js';

/**
 * Every statement of the language: where it stands, an example of how it reads and what it says. Messages, completion,
 * hover and the reference read this table; the grammar alone says what is allowed, and a test holds the two together.
 */
export interface Statement {
    /** The word or words that begin the line; empty where the line begins with a name. */
    head: string;
    /** Heads of the blocks it stands in; 'file' is the top. */
    within: readonly string[];
    /** A line as a writer would type it. */
    example: string;
    /** One or two sentences for a teacher. */
    says: string;
    /** What stands behind the head, in its order, where the order is fixed and there is more than a word. */
    parts?: readonly LinePart[];
}

const steps = ['warm-up', 'activity', 'game in a lesson', 'practice', 'checkpoint'] as const;
const things = ['material', 'print', 'book', 'kit', 'class', 'adaptation'] as const;

export const statements: readonly Statement[] = [
    { head: 'material', within: ['file'], example: 'material gram-cube "Gram cubes"', says: 'A thing that lessons use. Under it stand its facts: reusable or consumable, size, packs, where it comes from.', parts: named },
    { head: 'print', within: ['file'], example: 'print record-sheet "Weighing record sheet"', says: 'A page or pages to print for the lessons.', parts: named },
    { head: 'book', within: ['file'], example: 'book table-games "Table games for measuring" edition 3', says: 'A book on the shelf, with its edition.', parts: declarations.book },
    { head: 'game', within: ['file'], example: 'game grocer "The careful grocer"', says: 'A game: where its rules stand, how many play, what it needs.', parts: named },
    { head: 'kit', within: ['file'], example: 'kit field-kit "Field kit"', says: 'A box of things that are kept together. Its `holds` block lists them with amounts.', parts: named },
    { head: 'lesson', within: ['file'], example: 'lesson weigh-1 "Which is heavier?"', says: 'One lesson: its aim, objectives, materials and parts.', parts: named },
    { head: 'objective', within: ['file'], example: 'objective compare-mass "Compare the masses of two objects"', says: 'Something that children learn. Lessons introduce, practise and check it.', parts: named },
    { head: 'framework', within: ['file'], example: 'framework state-frame "State framework" from "frameworks/state.json"', says: 'A published list of standards that objectives can be aligned to.', parts: declarations.framework },
    { head: 'course', within: ['file'], example: 'course measure-and-make "Measure and Make"', says: 'Lessons in the order they are taught, in units, with the kits they use.', parts: declarations.course },
    { head: 'class', within: ['file'], example: 'class harbour "Harbour co-op, autumn"', says: 'The children who will be taught: how many, on which days, with what at hand.', parts: named },
    { head: 'adaptation', within: ['file'], example: 'adaptation shorter-autumn of measure-and-make for harbour', says: 'Changes to a course for one class that leave the course itself untouched.', parts: declarations.adaptation },

    { head: 'reusable', within: ['material'], example: 'reusable', says: 'It comes back after the lesson: a class needs the most it ever uses at once.' },
    { head: 'consumable', within: ['material'], example: 'consumable', says: 'It is used up: uses add up over the weeks.' },
    { head: 'counted in', within: ['material'], example: 'counted in set / sets', says: 'The word for one and for several of it.', parts: inventory.countedIn },
    { head: 'measured in', within: ['material'], example: 'measured in g', says: 'The unit it is measured in.' },
    { head: 'parts', within: ['material'], example: 'parts ones, tens, hundreds', says: 'Named parts that a lesson may ask for, as in `place-card (ones, tens)`.' },
    { head: 'size', within: ['material'], example: 'size 10 x 10 x 10 mm', says: 'How big one of it is; small things raise cautions for young children.', parts: inventory.size },
    { head: 'pack of', within: ['material'], example: 'pack of 100 costs 14.50 USD', says: 'A pack that it is sold in, and what the pack costs.', parts: inventory.pack },
    { head: 'arrives in', within: ['material'], example: 'arrives in 6 days', says: 'How long an order takes: days, working days or weeks.', parts: inventory.arrives },
    { head: 'keeps', within: ['material'], example: 'keeps 3 weeks', says: 'How long it stays good.', parts: inventory.keeps },
    { head: 'spare', within: ['material'], example: 'spare 10%', says: 'Extra to have ready, on top of the need.' },
    { head: 'loss', within: ['material'], example: 'loss 10%', says: 'The share that is usually spoilt, so that what is left still covers the need.' },
    { head: 'safety stock', within: ['material'], example: 'safety stock 20', says: 'What should always be left in the cupboard.' },
    { head: 'delivery costs', within: ['material'], example: 'delivery costs 4.50 USD', says: 'What one order costs to deliver.' },
    { head: 'from', within: ['material'], example: 'from shop', says: 'Where it comes from: kit, home, shop or library.' },
    { head: 'printed', within: ['material'], example: 'printed', says: 'It is printed rather than bought.' },
    { head: 'stand-in', within: ['material'], example: 'stand-in lentil 1 for 1', says: 'What can be used in its place, and how much of it for how much.', parts: inventory.standIn },
    { head: 'ages', within: ['material'], example: 'ages 3 and up', says: 'The ages it is suitable for.' },
    { head: 'caution', within: ['material', 'print', 'game', 'lesson', ...steps, 'add to activity', 'add to'], example: 'caution small-parts', says: 'Something that can hurt: small-parts, small-ball, magnet, button-cell, balloon, sharp, hot, glass, allergen or chemical; after a colon, what to mind.' },
    { head: 'kept in', within: ['material', 'print', 'book', 'game'], example: 'kept in: hall cupboard, blue box', says: 'Where it is kept, so that whoever fetches it finds it: the brief says so beside it.' },
    { head: 'note', within: things, example: 'note: The beam must swing freely.', says: 'A remark for the adult.' },

    { head: 'pages', within: ['print'], example: 'pages 2', says: 'How many pages one copy has.' },
    { head: 'two-sided', within: ['print'], example: 'two-sided', says: 'It is printed on both sides of the sheet.' },
    { head: 'from', within: ['book'], example: 'from library', says: 'Where it comes from: kit, home, shop or library.' },
    { head: 'costs', within: ['book'], example: 'costs 12.00 USD', says: 'What it costs.' },

    { head: 'found in', within: ['game'], example: 'found in table-games edition 3, chapter "Weighing", number 12', says: 'The book, edition, chapter, number and page where the rules stand.', parts: inventory.found },
    { head: 'players', within: ['game'], example: 'players 2 to 4', says: 'How many play together.', parts: inventory.players },
    { head: 'materials', within: ['game', 'lesson', ...steps, 'add to activity', 'add to'], example: 'materials', says: 'What is needed, a line for each thing.' },
    { head: 'holds', within: ['kit'], example: 'holds', says: 'What the kit contains, a line for each thing.' },
    { head: '', within: ['holds', 'on hand'], example: 'gram-cube 60', says: 'A thing and how many or how much of it there is.', parts: held },
    { head: '', within: ['on order'], example: 'gram-cube 100 arriving 2026-09-14', says: 'A thing, how much was ordered and when it comes.', parts: ordered },
    { head: '', within: ['materials'], example: 'gram-cube 20 per pair in kit', says: 'A thing, how much of it, for whom (learner, pair, group, group of 3, class, adult), and whether it is in the kit.', parts: need },

    { head: 'draft', within: ['lesson'], example: 'draft', says: 'The lesson is not finished: what is still missing is a hint, not a warning.' },
    { head: 'about', within: ['lesson', 'game', 'course', 'unit', 'objective', ...steps, 'add to activity', 'add to'], example: 'about: Children compare two masses by feel.', says: 'What it is about, in a sentence or two.' },
    { head: 'follows', within: ['lesson'], example: 'follows measure-2', says: 'Lessons that must come before this one.' },
    { head: 'objectives', within: ['lesson', 'add to'], example: 'objectives', says: 'What the lesson introduces, practices and checks.' },
    { head: 'introduces', within: ['objectives'], example: 'introduces compare-mass', says: 'Objectives that children meet here for the first time.' },
    { head: 'practices', within: ['objectives'], example: 'practices estimate-length', says: 'Objectives that are practised again.' },
    { head: 'practises', within: ['objectives'], example: 'practises estimate-length', says: 'Objectives that are practised again.' },
    { head: 'checks', within: ['objectives'], example: 'checks compare-mass', says: 'Objectives that the lesson finds out about: has the child got it?' },
    { head: 'not needed', within: ['lesson'], example: 'not needed table-workbook', says: 'Things that families may ask about and that stay on the shelf.' },
    { head: 'words', within: ['lesson', 'add to'], example: 'words heavier, lighter', says: 'Words that the lesson teaches.' },
    { head: 'more', within: ['lesson', 'game', ...steps, 'add to activity', 'add to'], example: 'more: Play it again at home with spoons.', says: 'Where more practice comes from.' },
    { head: 'note', within: ['lesson', 'game', ...steps, 'add to activity', 'add to'], example: 'note: Set the room up before.', says: 'A remark for the adult.' },
    { head: 'warm-up', within: ['lesson', 'add to'], example: 'warm-up hands-as-scales "Hands as scales" 5 min', says: 'A short beginning. `instead` gives a gentler choice.', parts: timed },
    { head: 'activity', within: ['lesson', 'add to'], example: 'activity two-bags "Two mystery bags" 15 min', says: 'A piece of the lesson with its steps.', parts: timed },
    { head: 'game', within: ['lesson', 'add to'], example: 'game grocer 10 min', says: 'Plays a game that the inventory describes.', parts: lessonLines.game },
    { head: 'practice', within: ['lesson', 'add to'], example: 'practice say-it "Say the mass two ways" 8 items', says: 'Practice items that are computed, with an answer key.', parts: lessonLines.practice },
    { head: 'name numbers', within: ['practice'], example: 'name numbers 11 to 99', says: 'Numbers to name in words and in place-value form; `in words` or `in places` only one of the two.', parts: practiceLines.named },
    { head: 'write numbers', within: ['practice'], example: 'write numbers 11 to 99', says: 'The other way round: named numbers to write in digits; `from words` or `from places` only one of the two.', parts: practiceLines.written },
    { head: 'digits and words', within: ['practice'], example: 'digits and words 20 to 999', says: 'How many digits a number needs, and how many words are said.', parts: practiceLines.range },
    { head: 'arrange digits of', within: ['practice'], example: 'arrange digits of 481', says: 'Every number made of the same digits, none beginning with zero.', parts: practiceLines.number },
    { head: 'fives and tens', within: ['practice'], example: 'fives and tens 6 to 20', says: 'Quantities as fives and tens: 8 as 5 and 3.', parts: practiceLines.range },
    { head: 'sums', within: ['practice'], example: 'sums 2 to 20', says: 'Additions whose result lies in this range.', parts: practiceLines.range },
    { head: 'differences', within: ['practice'], example: 'differences 0 to 20', says: 'Subtractions within this range.', parts: practiceLines.range },
    { head: 'doubles', within: ['practice'], example: 'doubles 1 to 10', says: 'Numbers of this range to be doubled: double 7 is 14.', parts: practiceLines.range },
    { head: 'halves', within: ['practice'], example: 'halves 2 to 20', says: 'Even numbers of this range to be halved: half of 14 is 7.', parts: practiceLines.range },
    { head: 'missing parts', within: ['practice'], example: 'missing parts 5 to 20', says: 'The missing part of a sum in this range.', parts: practiceLines.range },
    { head: 'bonds of', within: ['practice'], example: 'bonds of 10', says: 'Two parts that make a number, or `bonds of 6 to 10`.', parts: practiceLines.bonds },
    { head: 'compare numbers', within: ['practice'], example: 'compare numbers 10 to 99', says: 'Which of two numbers is more.', parts: practiceLines.range },
    { head: 'return to', within: ['practice'], example: 'return to 67', says: 'A hard item that comes back between the others, never twice running: a number, or `return to 7 and 8` for a sum.', parts: practiceLines.again },
    { head: 'checkpoint', within: ['lesson', 'add to'], example: 'checkpoint wrap-up "Before you put things away" 5 min', says: 'Closing questions, and what to do when a child is unsure.', parts: timed },
    { head: 'if unsure', within: ['checkpoint'], example: 'if unsure: repeat two-bags tomorrow', says: 'What to do when a child is unsure: repeat a part or the lesson today or tomorrow, or go on and revisit in some lessons.', parts: lessonLines.unsure },

    { head: 'why', within: ['game', ...steps, 'add to activity'], example: 'why: Children who press on the pan are weighing their own hand.', says: 'Why this is done.' },
    { head: 'do', within: ['game', ...steps, 'add to activity'], example: 'do: Put one bag in each pan.', says: 'What to do.' },
    { head: 'say', within: ['game', ...steps, 'add to activity'], example: 'say: The heavier side goes down.', says: 'What to say to the children.' },
    { head: 'ask', within: ['game', ...steps, 'add to activity'], example: 'ask: Which bag is heavier? How do you know?', says: 'What to ask. Deeper, `expect` gives the answer to expect.' },
    { head: 'expect', within: ['ask'], example: 'expect: The one whose pan went down.', says: 'The answer to expect.' },
    { head: 'watch', within: ['game', ...steps, 'add to activity'], example: 'watch: A child presses the pan with a finger.', says: 'Where children slip. Deeper, `help` says what helps.' },
    { head: 'help', within: ['watch'], example: 'help: Hands on laps until the beam stops.', says: 'What helps.' },
    { head: 'instead', within: ['game', ...steps, 'add to activity'], example: 'instead: Short of room? Tip two pencils on the table.', says: 'A gentler or simpler choice.' },
    { head: 'show', within: ['game', ...steps, 'add to activity'], example: 'show ten-frame 8', says: 'A picture: ten-frame, number-line, bead-string, place-cards, base-ten, tally, balance, fraction-bar, clock or array.', parts: lessonLines.show },
    { head: 'ready when', within: ['game', ...steps, 'add to activity'], example: 'ready when: Four comparisons out of five are right.', says: 'How to tell that a child is ready to go on.' },

    { head: 'in', within: ['objective'], example: 'in measuring', says: 'The strand it belongs to.' },
    { head: 'builds on', within: ['objective'], example: 'builds on compare-length', says: 'Objectives that come before it.' },
    { head: 'aligns to', within: ['objective'], example: 'aligns to state-frame M.2.4', says: 'The framework and the code of its item that this objective meets.', parts: courseLines.aligns },

    { head: 'ages', within: ['course', 'class'], example: 'ages 6 to 8', says: 'The ages of the learners.' },
    { head: 'uses', within: ['course'], example: 'uses field-kit 1 per family', says: 'A kit that the course uses: `1 per family`, `1 per 4 learners` or `3 in all`.', parts: courseLines.uses },
    { head: 'unit', within: ['course'], example: 'unit weighing "Weighing"', says: 'Lessons that belong together, in teaching order.', parts: named },
    { head: '', within: ['unit'], example: 'weigh-1', says: 'The name of a lesson.' },

    { head: 'teaches', within: ['class'], example: 'teaches measure-and-make', says: 'The course that the class is taught.' },
    { head: 'learners', within: ['class', 'section'], example: 'learners 7', says: 'How many children.' },
    { head: 'adults', within: ['class', 'section'], example: 'adults 2', says: 'How many teaching adults.' },
    { head: 'groups of', within: ['class', 'section'], example: 'groups of 3', says: 'How many children work in a group.' },
    { head: 'section', within: ['class'], example: 'section mornings "Morning table"', says: 'Children who are taught together. Sections at the same hour share the cupboard, so their needs add up.', parts: named },
    { head: 'at', within: ['section'], example: 'at 9:30', says: 'The hour at which the section meets.' },
    { head: 'kits', within: ['class'], example: 'kits field-kit 3', says: 'How many of each kit the class has.', parts: classLines.kits },
    { head: 'on hand', within: ['class'], example: 'on hand', says: 'What is in the cupboard, a line for each thing.' },
    { head: 'on order', within: ['class'], example: 'on order', says: 'What has been ordered and when it comes, a line for each thing.' },
    { head: 'starts', within: ['class'], example: 'starts 2026-09-07', says: 'The first day, as year-month-day.' },
    { head: 'ends', within: ['class'], example: 'ends 2026-12-18', says: 'The last day that may be a meeting. Lessons that no longer fit are reported.' },
    { head: 'meets', within: ['class'], example: 'meets mon, tue, thu', says: 'The days of the week.' },
    { head: 'session', within: ['class'], example: 'session 50 min', says: 'How long a meeting lasts. Short lessons share a day, long ones are split between their parts.' },
    { head: 'lessons', within: ['class'], example: 'lessons 1 per meeting', says: 'The most lessons at one meeting.', parts: classLines.lessons },
    { head: 'fixed', within: ['class'], example: 'fixed weigh-6 on 2026-10-15 "Market visit"', says: 'A lesson that is taught on this very day.', parts: classLines.fixed },
    { head: 'shares cupboard with', within: ['class'], example: 'shares cupboard with hillside', says: 'Classes that use the same kits and the same cupboard: what they hold is counted once, for all of them.' },
    { head: 'off', within: ['class'], example: 'off 2026-11-23 to 2026-11-27 "Harvest week"', says: 'Days without lessons: a day, a span, or `off from "calendars/town.ics"`, there with `named "Holiday"` only the events so called.', parts: classLines.off },
    { head: 'catch-up', within: ['class'], example: 'catch-up 1 day every 8 lessons', says: 'Days kept free to catch up.', parts: classLines.catchUp },
    { head: 'present', within: ['class'], example: 'present under-threes', says: 'Who else is in the room, such as younger siblings.' },
    { head: 'log', within: ['class'], example: 'log', says: 'What happened: a line for each lesson that children were unsure of.' },
    { head: 'unsure', within: ['log'], example: 'unsure weigh-1 on 2026-09-10', says: 'The children were unsure at the end of this lesson.', parts: classLines.unsure },

    { head: 'skip lesson', within: ['adaptation'], example: 'skip lesson weigh-4 because: Covered at the market visit.', says: 'Leaves a lesson out.', parts: changes.skipLesson },
    { head: 'skip activity', within: ['adaptation'], example: 'skip activity weigh-2.long-walk', says: 'Leaves one part of a lesson out.', parts: changes.skipActivity },
    { head: 'swap', within: ['adaptation'], example: 'swap dried-bean for lentil', says: 'Uses another thing instead, everywhere or `in weigh-2` or `in weigh-2.long-walk`; `2 for 1` says how much of it for how much, which it must where one is measured and the other counted.', parts: changes.swap },
    { head: 'swap lesson', within: ['adaptation'], example: 'swap lesson weigh-4 for market-visit', says: 'Teaches another lesson in its place.', parts: changes.swapLesson },
    { head: 'swap activity', within: ['adaptation'], example: 'swap activity weigh-2.long-walk for weigh-9.short-walk', says: 'Puts a part of another lesson in the place of this one.', parts: changes.swapActivity },
    { head: 'move', within: ['adaptation'], example: 'move weigh-6 after weigh-2', says: 'Teaches a lesson at another place.', parts: changes.moveLesson },
    { head: 'move activity', within: ['adaptation'], example: 'move activity weigh-2.long-walk after weigh-3.two-bags', says: 'Moves a part within its lesson or to another.', parts: changes.moveActivity },
    { head: 'split', within: ['adaptation'], example: 'split weigh-5 after two-bags', says: 'Makes two lessons of one, which never share a meeting. What is used up is counted once.', parts: changes.split },
    { head: 'split activity', within: ['adaptation'], example: 'split activity weigh-2.long-walk after 10 min', says: 'Makes two parts of one, so that they can stand on two days.', parts: changes.splitActivity },
    { head: 'join', within: ['adaptation'], example: 'join weigh-2 with weigh-3', says: 'Makes one lesson of two or more.', parts: changes.join },
    { head: 'join activity', within: ['adaptation'], example: 'join activity weigh-2.two-bags with weigh-2.long-walk', says: 'Makes one part of two or more.', parts: changes.joinActivity },
    { head: 'insert', within: ['adaptation'], example: 'insert market-visit after weigh-2', says: 'Teaches one more lesson, which the course does not have.', parts: changes.moveLesson },
    { head: 'insert activity', within: ['adaptation'], example: 'insert activity weigh-9.short-walk after weigh-2.two-bags', says: 'Takes a part of another lesson into this one as well.', parts: changes.moveActivity },
    { head: 'retime', within: ['adaptation'], example: 'retime weigh-2 to 40 min', says: 'Gives a lesson another length: its parts grow or shrink alike.', parts: changes.retime },
    { head: 'retime activity', within: ['adaptation'], example: 'retime activity weigh-2.long-walk to 10 min', says: 'Gives a part another length.', parts: changes.retimeActivity },
    { head: 'add to', within: ['adaptation'], example: 'add to weigh-2 after two-bags', says: 'Adds to a lesson what stands under it: remarks, objectives, materials, cautions, parts.', parts: changes.addTo },
    { head: 'add to activity', within: ['adaptation'], example: 'add to activity weigh-2.long-walk', says: 'Adds to a part what stands under it: steps, materials, cautions.', parts: changes.addToActivity }
];

const byBlock: ReadonlyMap<string, readonly Statement[]> = new Map(
    [...new Set(statements.flatMap(statement => statement.within))].map(block => [block, statements.filter(statement => statement.within.includes(block))])
);

const firstWordOf = (words: string): string => words.split(' ', 1)[0]!;

/** The statements of each block by the first word of their heads, the longest head first. */
const byFirstWord: ReadonlyMap<string, ReadonlyMap<string, readonly Statement[]>> = new Map([...byBlock].map(([block, all]) => [block, new Map(
    [...new Set(all.map(({ head }) => firstWordOf(head)))].map(word => [word, all.filter(({ head }) => firstWordOf(head) === word).sort((a, b) => b.head.length - a.head.length)])
)]));

/** Statements that may stand in a block. */
export function statementsIn(block: string): readonly Statement[] {
    return byBlock.get(block) ?? [];
}

/** The statement that begins with these words in this block, or with a name where none does; the longest head wins. */
export function statementAt(block: string, firstWords: string): Statement | undefined {
    const inBlock = byFirstWord.get(block);
    const sameWord = inBlock?.get(firstWordOf(firstWords));
    const found = sameWord?.find(({ head }) => firstWords === head || firstWords.startsWith(`${head} `)) ?? sameWord?.find(({ head }) => head.startsWith(`${firstWords} `));
    return found ?? inBlock?.get('')?.[0];
}
