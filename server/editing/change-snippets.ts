/** A line for each change of an adaptation as a snippet of the protocol; `lessons` are those to choose from. */

/** More names than these are not offered within a line. */
const mostChoices = 30;

const lines: Readonly<Record<string, string>> = {
    'skip lesson': 'skip lesson LESSON',
    'skip activity': 'skip activity LESSON.PART',
    'swap': 'swap THING for OTHER',
    'swap lesson': 'swap lesson LESSON for OTHER',
    'swap activity': 'swap activity LESSON.PART for OTHER.PART',
    'move': 'move LESSON SIDE ANCHOR',
    'move activity': 'move activity LESSON.PART SIDE ANCHOR.PART',
    'split': 'split LESSON after PART',
    'split activity': 'split activity LESSON.PART after 10 min',
    'join': 'join LESSON with ANCHOR',
    'join activity': 'join activity LESSON.PART with ANCHOR.PART',
    'insert': 'insert OTHER SIDE ANCHOR',
    'insert activity': 'insert activity OTHER.PART SIDE LESSON.PART',
    'retime': 'retime LESSON to 40 min',
    'retime activity': 'retime activity LESSON.PART to 10 min',
    'add to': 'add to LESSON',
    'add to activity': 'add to activity LESSON.PART'
};

const placeholders: Readonly<Record<string, string>> = { PART: 'part', THING: 'thing', OTHER: 'other' };

/** Undefined where a statement is no change. */
export function changeSnippet(head: string, lessons: readonly string[]): string | undefined {
    const line = Object.hasOwn(lines, head) ? lines[head] : undefined;
    let stop = 0;
    return line?.replace(/[A-Z]{2,}|\d+/g, word => {
        stop++;
        if (word === 'SIDE') return `\${${stop}|after,before|}`;
        if (word === 'LESSON' || word === 'ANCHOR') return lessons.length > 0 && lessons.length <= mostChoices ? `\${${stop}|${lessons.join(',')}|}` : `\${${stop}:lesson}`;
        return `\${${stop}:${placeholders[word] ?? word}}`;
    });
}
