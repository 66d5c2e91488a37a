import { CompletionItemKind, InsertTextFormat, InsertTextMode, MarkupKind, type CompletionItem } from 'vscode-languageserver-protocol';
import type { ProgrammeView } from '@haversack/language/checks/programme-view';
import type { LessonSheet } from '@haversack/language/sheets/sheet';

/** What a block is filled with until somebody writes over it: names that the programme has, so that nothing in it is unknown. */
export interface SnippetFacts {
    view: ProgrammeView;
    lesson: LessonSheet | undefined;
    /** ISO date. */
    today: string;
    /** How the lines of the file stand: what the line at the cursor steps in by, and what one level further in looks like. */
    indent: string;
    step: string;
    takesSnippets: boolean;
}

interface Block {
    head: string;
    detail: string;
    /** Lines, two blanks for a level. `⟨text⟩` is a place to write, `⟨a|b⟩` one to choose; the same text once more is written along with the first. */
    lines(facts: SnippetFacts): (string | false)[];
}

/** More names than these are not offered within a line. */
const mostChoices = 30;

const blocks: Readonly<Record<string, readonly Block[]>> = {
    file: [
        {
            head: 'lesson', detail: 'a whole lesson',
            lines: ({ view: { programme } }) => [
                `lesson ⟨${free('new-lesson', programme.lessons)}⟩ "⟨Title of the lesson⟩"`, '  about: ⟨What children do and find out.⟩',
                ...(programme.objectives.size > 0 ? ['  objectives', `    introduces ${choice(programme.objectives)}`] : []),
                ...(programme.materials.size > 0 ? ['  materials', `    ${choice(programme.materials)} ⟨1⟩ per ⟨pair|learner|group|class⟩`] : []),
                '  activity ⟨first-activity⟩ "⟨What is done⟩" ⟨15⟩ min', '    do: ⟨What to do.⟩', '    ask: ⟨What to ask?⟩', '      expect: ⟨The answer to expect.⟩',
                '  checkpoint ⟨at-the-end⟩ "⟨At the end⟩" ⟨5⟩ min', '    ask: ⟨What shows that a child has got it?⟩', '      expect: ⟨What a child says or does who has.⟩', '    if unsure: repeat ⟨first-activity⟩ ⟨tomorrow|today⟩'
            ]
        },
        {
            head: 'material', detail: 'a material with its facts',
            lines: ({ view: { programme } }) => [
                `material ⟨${free('new-thing', programme.materials)}⟩ "⟨What people read⟩"`, '  ⟨reusable|consumable⟩', '  from ⟨kit|home|shop|library⟩',
                `  pack of ⟨10⟩ costs ⟨5.00⟩ ⟨${[...programme.materials.values()].flatMap(({ packs }) => packs.flatMap(({ cost }) => cost?.currency ?? []))[0] ?? 'USD'}⟩`, '  note: ⟨What to mind.⟩'
            ]
        },
        {
            head: 'game', detail: 'a game with its rules',
            lines: ({ view: { programme } }) => [
                `game ⟨${free('new-game', programme.games)}⟩ "⟨What it is called⟩"`, '  players ⟨2⟩ to ⟨4⟩',
                ...(programme.materials.size > 0 ? ['  materials', `    ${choice(programme.materials)} ⟨1⟩ per ⟨group|pair|learner|class⟩`] : []), '  do: ⟨How it is played.⟩'
            ]
        },
        {
            head: 'kit', detail: 'a kit with what it holds',
            lines: ({ view: { programme } }) => [`kit ⟨${free('new-kit', programme.kits)}⟩ "⟨What people read⟩"`, ...(programme.materials.size > 0 ? ['  holds', `    ${choice(programme.materials)} ⟨1⟩`] : ['  note: ⟨Where it is kept.⟩'])]
        },
        {
            head: 'course', detail: 'a course with its first unit',
            lines: ({ view: { programme } }) => [
                `course ⟨${free('new-course', programme.courses)}⟩ "⟨Title of the course⟩" edition ⟨1⟩`, '  ages ⟨6⟩ to ⟨8⟩', programme.kits.size > 0 && `  uses ${choice(programme.kits)} ⟨1⟩ per family`,
                '  unit ⟨first-unit⟩ "⟨Title of the unit⟩"', programme.lessons.size > 0 ? `    ${choice(programme.lessons)}` : '    about: ⟨What its lessons have in common.⟩'
            ]
        },
        {
            head: 'class', detail: 'a class with its days',
            lines: ({ view: { programme }, today }) => [
                `class ⟨${free('new-class', programme.classes)}⟩ "⟨What the class is called⟩"`, programme.courses.size > 0 && `  teaches ${choice(programme.courses)}`, '  learners ⟨6⟩', '  adults ⟨1⟩', '  ages ⟨6⟩ to ⟨8⟩', '  groups of ⟨3⟩',
                programme.kits.size > 0 && `  kits ${choice(programme.kits)} ⟨1⟩`, `  starts ⟨${today}⟩`, '  meets ⟨mon⟩', '  session ⟨50⟩ min'
            ]
        },
        {
            head: 'adaptation', detail: 'an adaptation for a class',
            lines: ({ view: { programme } }) => {
                const [course] = programme.courses.values();
                const group = [...programme.classes.values()].find(({ teaches }) => teaches?.name === course?.name);
                return course ? [`adaptation ⟨${free('new-adaptation', programme.adaptations)}⟩ of ⟨${course.name}⟩${course.edition === undefined ? '' : ` edition ${/^[\w.-]+$/.test(course.edition) ? course.edition : `"${course.edition}"`}`}${group ? ` for ⟨${group.name}⟩` : ''}`, '  note: ⟨Why this class is taught otherwise.⟩'] : [];
            }
        }
    ],
    lesson: [
        {
            head: 'warm-up', detail: 'a warm-up with a gentler choice',
            lines: ({ lesson }) => [`warm-up ⟨${freePart('new-warm-up', lesson)}⟩ "⟨What is done⟩" ⟨5⟩ min`, '  do: ⟨What to do.⟩', '  instead: ⟨A gentler choice.⟩']
        },
        {
            head: 'activity', detail: 'an activity with its steps',
            lines: ({ lesson }) => [
                `activity ⟨${freePart('new-activity', lesson)}⟩ "⟨What is done⟩" ⟨15⟩ min`, '  why: ⟨Why it is done.⟩', '  do: ⟨What to do.⟩', '  ask: ⟨What to ask?⟩', '    expect: ⟨The answer to expect.⟩',
                '  watch: ⟨Where children slip.⟩', '    help: ⟨What helps.⟩', '  ready when: ⟨How to tell that a child can go on.⟩'
            ]
        },
        {
            head: 'checkpoint', detail: 'a checkpoint with what to do when a child is unsure',
            lines: ({ lesson }) => [
                `checkpoint ⟨${freePart('new-checkpoint', lesson)}⟩ "⟨At the end⟩" ⟨5⟩ min`, '  ask: ⟨What shows that a child has got it?⟩', '    expect: ⟨What a child says or does who has.⟩',
                `  if unsure: repeat ⟨${lesson?.parts.filter(({ kind, name }) => name !== '' && (kind === 'activity' || kind === 'warm-up' || kind === 'practice')).at(-1)?.name ?? 'lesson'}⟩ ⟨tomorrow|today⟩`
            ]
        }
    ]
};

/** Whole blocks that may begin in a block of this kind, where the grammar takes their first word. */
export function blockSnippets(block: string, accepts: (word: string) => boolean, facts: SnippetFacts): CompletionItem[] {
    return (blocks[block === 'add to' ? 'lesson' : block] ?? []).filter(({ head }) => accepts(head)).flatMap(({ head, detail, lines }, index): CompletionItem[] => {
        const written = lines(facts).filter(line => line !== false);
        if (written.length === 0) return [];
        const marked = written.map((line, number) => {
            const inner = line.trimStart();
            return (number === 0 ? '' : facts.indent + facts.step.repeat((line.length - inner.length) / 2)) + inner;
        }).join('\n');
        const plain = marked.replace(place, (_, text: string) => text.split('|')[0]!);
        return [{
            label: `${head} …`, kind: CompletionItemKind.Snippet, detail, documentation: { kind: MarkupKind.Markdown, value: `\`\`\`haversack\n${plain}\n\`\`\`` }, sortText: `4${String(index).padStart(3, '0')}`, filterText: head,
            insertText: facts.takesSnippets ? withStops(marked) : plain, insertTextFormat: facts.takesSnippets ? InsertTextFormat.Snippet : InsertTextFormat.PlainText, insertTextMode: InsertTextMode.asIs
        }];
    });
}

const place = /⟨([^⟩]*)⟩/g;

/** Places to write as the protocol's snippets have them (Language Server Protocol 3.17, "Snippet Syntax"): `\$` is a dollar, as an edition may have one. */
function withStops(marked: string): string {
    const stops = new Map<string, number>();
    let last = 0;
    return marked.replace(/[\\$]/g, '\\$&').replace(place, (_, text: string) => {
        // A name that stands twice is one name; other words may well be alike.
        const known = /^[a-z]+(?:-[a-z]+)+$/.test(text) ? stops.get(text) : undefined;
        if (known !== undefined) return `\${${known}:${text}}`;
        stops.set(text, ++last);
        const choices = text.split('|');
        return choices.length > 1 ? `\${${last}|${choices.join(',')}|}` : `\${${last}:${text}}`;
    });
}

/** Names that the programme has, the first of them to begin with. */
function choice(named: ReadonlyMap<string, unknown>): string {
    const names = [...named.keys()];
    return `⟨${(names.length > mostChoices ? names.slice(0, 1) : names).join('|')}⟩`;
}

function free(name: string, taken: { has(name: string): boolean }): string {
    if (!taken.has(name)) return name;
    let number = 2;
    while (taken.has(`${name}-${number}`)) number++;
    return `${name}-${number}`;
}

function freePart(name: string, lesson: LessonSheet | undefined): string {
    return free(name, new Set(lesson?.parts.map(part => part.name)));
}
