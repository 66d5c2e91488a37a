/**
 * The parts of lines whose words stand in a fixed order, as a person who writes one would name them. The table of statements names
 * them; a test holds them against the grammar.
 */

/** One part of a line. */
export interface LinePart {
    /** How the line shows it: "amount", "per whom". */
    shows: string;
    /** One sentence for a teacher: what stands here. */
    says: string;
    /** What of the grammar belongs to it: words, names of properties, and names of rules for all that stands in them. */
    takes: readonly string[];
}

const part = (shows: string, says: string, ...takes: string[]): LinePart => ({ shows, says, takes });

const name = part('name', 'A name of its own: lower-case words joined by hyphens. Other lines call it by this name.', 'name');
const title = part('"title"', 'What people read, in quotation marks. Without it the title is made from the name.', 'title');
const reason = part('because: reason', 'Why it is changed: it stands in the brief beside the change. Before it, `as of edition 2` says that somebody has looked at this line again.', 'as', 'of', 'edition', 'asOf', 'because', 'hasProse', 'texts', 'names', '{', '}');
const minutes = part('minutes', 'How long it takes, as in `15 min`.', 'minutes', 'min');
const lesson = part('lesson', 'The name of a lesson.', 'lesson');
const partOfLesson = part('lesson.part', 'The lesson and, after a full stop, the name of the part: `weigh-2.long-walk`.', 'PartOfLesson');
const onDay = part('on day', 'The day as year-month-day: `on 2026-09-14`.', 'on', 'Day');
const besideLesson = part('after / before lesson', 'The lesson of the course that it then stands beside.', 'side', 'anchor');
const besidePart = part('after / before lesson.part', 'The part that it then stands beside.', 'side', 'PartOfLesson');
const thing = part('thing', 'A material, a print or a book of the inventory.', 'thing');
const amount = part('amount', 'How many, or how much with its unit: `20`, `150 g`, `1 1/2 cups`, `1 set`.', 'Amount');
const edition = (says: string): LinePart => part('edition', says, 'edition');

export const named: readonly LinePart[] = [name, title];
export const timed: readonly LinePart[] = [name, title, minutes];

export const declarations = {
    book: [...named, edition('The edition on the shelf: `edition 3`. Who names another one is told.')],
    framework: [...named, part('from "file"', 'The file that lists its items, seen from this file: `from "frameworks/state.json"`.', 'from', 'path')],
    course: [...named, edition('Goes up when what is taught changes: adaptations name the edition for which they were written.')],
    adaptation: [
        ...named, part('of course', 'The course that it changes.', 'of'), edition('The edition of the course for which it was written.'), part('for class', 'The class for which it holds; without it, for every class that is taught the course.', 'for', 'forClass')
    ]
} as const satisfies Record<string, readonly LinePart[]>;

const howMany = part('count', 'How many.', 'count');

export const inventory = {
    pack: [part('pack of amount', 'How much one pack holds: `pack of 100`, `pack of 500 g`.', 'Amount'), part('costs price', 'What one pack costs, with its currency: `costs 14.50 USD`.', 'costs', 'Money')],
    countedIn: [part('one', 'The word for one of it.', 'one'), part('/ several', 'The word for several of it.', '/', 'many')],
    size: [part('length x width x height', 'One measure or up to three, with `x` between them.', 'sides', 'x'), part('unit', 'The unit of the measures: mm, cm or in.', 'unit')],
    keeps: [howMany, part('days / weeks', 'What is counted.', 'unit')],
    arrives: [howMany, part('days / working days / weeks', 'What is counted. Working days are Monday to Friday.', 'working', 'unit')],
    standIn: [
        part('stand-in', 'The material that can be used in its place.', 'thing'),
        part('how much for how much', '`1 for 1`: so much of the stand-in does for so much of the material.', 'give', 'for', 'replaces')
    ],
    found: [
        part('book', 'The book that has the rules.', 'book'), edition('The edition in which they stand where the rest of the line says.'), part('chapter "…"', 'The chapter, in quotation marks.', ',', 'chapter'),
        part('number', 'Its number in the book.', ',', 'number'), part('page', 'The page.', ',', 'page')
    ],
    players: [part('fewest', 'How many children it takes.', 'from'), part('to most', 'How many it is good for.', 'to')]
} as const satisfies Record<string, readonly LinePart[]>;

export const need: readonly LinePart[] = [
    part('material (parts)', 'The thing that is needed; in brackets those of its parts that are. `or` offers a choice: what is at hand first.', 'NeedOption', 'or'),
    amount,
    part('per whom', 'For whom that amount is: `per learner`, `pair`, `group`, `group of 3`, `adult` or `class`. Without it, for the whole class.', 'per', 'Per'),
    part('in kit / not in kit', 'Whether the kit of the course holds it. It is checked.', 'inKit', 'notInKit', 'in', 'kit'),
    part('optional', 'It can be done without.', 'optional')
];
export const held: readonly LinePart[] = [thing, amount];
export const ordered: readonly LinePart[] = [thing, amount, part('arriving day', 'When it comes, as year-month-day: `arriving 2026-09-14`.', 'arriving', 'Day')];

export const lessonLines = {
    game: [part('game', 'The name of a game of the inventory.', 'game'), minutes],
    practice: [name, title, part('items', 'How many items there are to be: `8 items`.', 'items'), minutes],
    show: [
        part('picture', 'The kind of picture.', 'picture'), part('settings', 'What is in the picture.', 'settings'), part('"caption"', 'What stands below it, in quotation marks.', 'title')
    ],
    unsure: [
        part('repeat what / go on', '`repeat` with the name of a part of this lesson, or `repeat lesson`; or `go on and revisit`.', 'repeat', 'activity', 'lesson', 'go', 'on', 'and', 'revisit'),
        part('when', '`today` or `tomorrow`; after `revisit`, `in` how many lessons.', 'when', 'in', 'lessons')
    ]
} as const satisfies Record<string, readonly LinePart[]>;

const inRange = part('smallest to largest', 'The smallest and the largest number: `11 to 99`.', 'numbers', 'to');
export const practiceLines = {
    named: [inRange, part('in words / in places', 'Only the words, or only tens and ones. Without it, both.', 'words')],
    written: [inRange, part('from words / from places', 'Only from words, or only from tens and ones. Without it, both.', 'words')],
    range: [inRange],
    number: [part('number', 'The number whose digits are used.', 'numbers')],
    bonds: [part('number to number', 'A number, or a range of numbers: `6 to 10`.', 'numbers', 'to')],
    again: [part('number and number', 'The number that comes back, or `7 and 8` for their sum.', 'numbers', 'and')]
} as const satisfies Record<string, readonly LinePart[]>;

export const courseLines = {
    aligns: [part('framework', 'The framework.', 'framework'), part('code', 'The code of the item, as the framework writes it.', 'code')],
    uses: [part('kit', 'The kit.', 'kit'), part('count', 'How many of it.', 'count'), part('per family / per N learners / in all', 'For whom that many are there.', 'per', 'family', 'learners', 'learner', 'inAll', 'all')]
} as const satisfies Record<string, readonly LinePart[]>;

export const classLines = {
    kits: [part('kit and count', 'A kit and how many of it the class has; more after a comma.', 'ClassKit', ',')],
    lessons: [part('most at a meeting', 'The most lessons that one meeting may hold.', 'lessonsPerMeeting', 'per', 'meeting')],
    fixed: [lesson, onDay, title],
    off: [
        part('from day', 'The first day without lessons, or `from` with a calendar file.', 'from', 'Day', 'path'),
        part('to day', 'The last day without lessons.', 'to', 'Day'),
        part('"title" / named "event"', 'What these days are called; behind a calendar, `named` with the titles of those events that count.', 'title', 'named', ',')
    ],
    catchUp: [part('days', 'How many days are kept free.', 'days', 'day'), part('every lessons', 'After how many lessons.', 'every', 'everyLessons', 'lesson', 'lessons')],
    unsure: [lesson, onDay]
} as const satisfies Record<string, readonly LinePart[]>;

export const changes = {
    skipLesson: [lesson, reason],
    skipActivity: [partOfLesson, reason],
    swap: [
        part('thing', 'What the lessons ask for.', 'thing'), part('for other', 'What is used instead.', 'for', 'forThing'), part('how much for how much', '`2 for 1`: so much of the other does for so much of the thing.', 'give', 'for', 'replaces'),
        part('in lesson', 'Only in this lesson, or in this part of it: `in weigh-2.long-walk`.', 'in', 'PartOfLesson', 'lesson'), reason
    ],
    swapLesson: [lesson, part('for other', 'The lesson that is taught instead.', 'for', 'forLesson'), reason],
    swapActivity: [partOfLesson, part('for lesson.part', 'The part that stands there instead.', 'for', 'PartOfLesson'), reason],
    moveLesson: [lesson, besideLesson, reason],
    moveActivity: [partOfLesson, besidePart, reason],
    split: [lesson, part('after part', 'The last part of the first of the two lessons.', 'after', 'part'), reason],
    splitActivity: [partOfLesson, part('after minutes', 'How long the first of the two takes: `after 10 min`.', 'after', 'minutes', 'min'), reason],
    join: [lesson, part('with others', 'The lessons that become one with it.', 'with', 'others', ','), reason],
    joinActivity: [partOfLesson, part('with others', 'The parts that become one with it.', 'with', 'PartOfLesson', ','), reason],
    retime: [lesson, part('to minutes', 'Its new length: `to 40 min`.', 'to', 'minutes', 'min'), reason],
    retimeActivity: [partOfLesson, part('to minutes', 'Its new length: `to 10 min`.', 'to', 'minutes', 'min'), reason],
    addTo: [lesson, part('after / before part', 'Where new parts of the lesson stand; without it, before the closing checkpoint.', 'side', 'part'), reason],
    addToActivity: [partOfLesson, reason]
} as const satisfies Record<string, readonly LinePart[]>;
