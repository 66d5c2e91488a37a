// A made-up programme of any size, as Haversack text and as YAML with the same content, for the benchmark only.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const materialCount = 200;
const name = (word, number) => `${word}-${number}`;

/** A lesson as plain content: both writers below read it. */
function lesson(number) {
    const material = offset => name('thing', (number * 7 + offset) % materialCount);
    const own = [0, 1, 2, 3, 4, 5].map(material);
    const activity = index => ({
        name: name('work', index), title: `Work ${index} of lesson ${number}`, minutes: 8,
        steps: [
            { word: 'why', text: `Children who hurry past step ${index} count the same thing twice, and then the sum of lesson ${number} is wrong.` },
            { word: 'do', text: `Lay the {${own[index % 6]}} out in a row and set the {${own[(index + 1) % 6]}} below it, one for one, until both rows end together.` },
            { word: 'say', text: `Look along both rows before you say how many there are.` },
            { word: 'ask', text: `How many are in the longer row, and how do you know?`, under: { word: 'expect', text: `${number % 20 + index}, for one of them has no partner.` } },
            { word: 'do', text: `Push the rows together and count on from the larger part with the {${own[(index + 2) % 6]}}.` },
            { word: 'ask', text: `Which part did you begin with?`, under: { word: 'expect', text: 'The larger one, because then there is less to count.' } },
            { word: 'watch', text: `A child begins again at one.`, under: { word: 'help', text: `Cover the larger part of the {${own[index % 6]}} with a hand and name its number first.` } },
            { word: 'more', text: `Try it with ${number % 9 + 11} things at home, such as spoons.` },
            { word: 'ready when', text: `Three sums out of four are right without touching every thing.` }
        ]
    });
    return {
        name: name('lesson', number), title: `Lesson ${number}`, about: `Children join two parts and count on from the larger one, with numbers up to ${number % 80 + 20}.`,
        follows: number > 1 ? [name('lesson', number - 1)] : [],
        introduces: [name('aim', number)], practises: number > 1 ? [name('aim', number - 1)] : [], checks: number > 2 ? [name('aim', number - 2)] : [],
        needs: own.map((thing, index) => ({ thing, amount: index * 3 + 2, per: ['learner', 'pair', 'group', 'class'][index % 4] })),
        warmUp: { name: 'greet', title: 'Count the room', minutes: 5, text: `Count everyone in the room in twos, clapping on each number, up to ${number % 30 + 10}.`, instead: 'Count quietly, with a finger on the table for each number.' },
        activities: [1, 2, 3, 4, 5, 6, 7].map(activity),
        check: { name: 'wrap-up', title: 'Before you put things away', minutes: 4, ask: `What is ${number % 9 + 3} and ${number % 7 + 2}?`, expect: `${number % 9 + 3 + number % 7 + 2}.`, repeat: 'work-2' }
    };
}

function haversackLesson(content) {
    const lines = [`lesson ${content.name} "${content.title}"`, `  about: ${content.about}`];
    if (content.follows.length > 0) lines.push(`  follows ${content.follows.join(', ')}`);
    lines.push('  objectives', `    introduces ${content.introduces.join(', ')}`);
    if (content.practises.length > 0) lines.push(`    practices ${content.practises.join(', ')}`);
    if (content.checks.length > 0) lines.push(`    checks ${content.checks.join(', ')}`);
    lines.push('  materials');
    for (const need of content.needs) lines.push(`    ${need.thing} ${need.amount} per ${need.per} in kit`);
    lines.push('', `  warm-up ${content.warmUp.name} "${content.warmUp.title}" ${content.warmUp.minutes} min`, `    do: ${content.warmUp.text}`, `    instead: ${content.warmUp.instead}`);
    for (const activity of content.activities) {
        lines.push('', `  activity ${activity.name} "${activity.title}" ${activity.minutes} min`);
        for (const step of activity.steps) {
            lines.push(`    ${step.word}: ${step.text}`);
            if (step.under) lines.push(`      ${step.under.word}: ${step.under.text}`);
        }
    }
    const { check } = content;
    lines.push('', `  checkpoint ${check.name} "${check.title}" ${check.minutes} min`, `    ask: ${check.ask}`, `      expect: ${check.expect}`, `    if unsure: repeat ${check.repeat} tomorrow`, '');
    return lines.join('\n');
}

const quoted = text => JSON.stringify(text);

function yamlLesson(content) {
    const lines = [`lesson: ${content.name}`, `title: ${quoted(content.title)}`, `about: ${quoted(content.about)}`, `follows: [${content.follows.join(', ')}]`,
        'objectives:', `  introduces: [${content.introduces.join(', ')}]`, `  practises: [${content.practises.join(', ')}]`, `  checks: [${content.checks.join(', ')}]`, 'materials:'];
    for (const need of content.needs) lines.push(`  - { thing: ${need.thing}, amount: ${need.amount}, per: ${need.per}, inKit: true }`);
    lines.push('warmUp:', `  name: ${content.warmUp.name}`, `  title: ${quoted(content.warmUp.title)}`, `  minutes: ${content.warmUp.minutes}`, `  do: ${quoted(content.warmUp.text)}`, `  instead: ${quoted(content.warmUp.instead)}`, 'activities:');
    for (const activity of content.activities) {
        lines.push(`  - name: ${activity.name}`, `    title: ${quoted(activity.title)}`, `    minutes: ${activity.minutes}`, '    steps:');
        for (const step of activity.steps) {
            lines.push(`      - ${step.word.replace(' when', '')}: ${quoted(step.text)}`);
            if (step.under) lines.push(`        ${step.under.word}: ${quoted(step.under.text)}`);
        }
    }
    const { check } = content;
    lines.push('checkpoint:', `  name: ${check.name}`, `  title: ${quoted(check.title)}`, `  minutes: ${check.minutes}`, `  ask: ${quoted(check.ask)}`, `  expect: ${quoted(check.expect)}`, `  ifUnsure: { repeat: ${check.repeat}, when: tomorrow }`, '');
    return lines.join('\n');
}

const things = () => Array.from({ length: materialCount }, (_, index) => name('thing', index));

function inventory() {
    const materials = things().map(thing => `material ${thing} "Thing ${thing.slice(6)}"\n  reusable\n  from kit\n  pack of 20 costs 4.50 USD\n`);
    return [...materials, 'kit big-kit "Big kit"\n  holds', ...things().map(thing => `    ${thing} 500`), ''].join('\n');
}

function course(count) {
    const numbers = Array.from({ length: count }, (_, index) => index + 1);
    return [
        ...numbers.map(number => `objective ${name('aim', number)} "Aim ${number}"\n  in counting\n${number > 1 ? `  builds on ${name('aim', number - 1)}\n` : ''}`),
        'course long "The long course"', '  ages 6 to 8', '  uses big-kit 1 in all', '  unit all "All lessons"', ...numbers.map(number => `    ${name('lesson', number)}`), '',
        'class autumn "Autumn class"', '  teaches long', '  learners 11', '  groups of 3', '  kits big-kit 1', '  starts 2026-09-07', '  meets mon, tue, wed, thu', '  session 90 min', ''
    ].join('\n');
}

/** The schema says what the grammar says, and names every material and objective, as YAML has no other way to check a name. */
function schema(count) {
    const names = (word, size, from = 1) => ({ enum: Array.from({ length: size }, (_, index) => name(word, index + from)) });
    const text = { type: 'string' };
    const minutes = { type: 'number', minimum: 1 };
    const list = items => ({ type: 'array', items });
    const closed = (properties, required) => ({ type: 'object', properties, required, additionalProperties: false });
    return {
        $schema: 'http://json-schema.org/draft-07/schema#',
        definitions: { aim: names('aim', count), thing: names('thing', materialCount, 0), lesson: names('lesson', count) },
        ...closed({
            lesson: { $ref: '#/definitions/lesson' }, title: text, about: text, follows: list({ $ref: '#/definitions/lesson' }),
            objectives: closed({ introduces: list({ $ref: '#/definitions/aim' }), practises: list({ $ref: '#/definitions/aim' }), checks: list({ $ref: '#/definitions/aim' }) }, []),
            materials: list(closed({ thing: { $ref: '#/definitions/thing' }, amount: { type: 'number' }, per: { enum: ['learner', 'pair', 'group', 'class', 'adult'] }, inKit: { type: 'boolean' } }, ['thing', 'amount'])),
            warmUp: closed({ name: text, title: text, minutes, do: text, instead: text }, ['name']),
            activities: list(closed({
                name: text, title: text, minutes,
                steps: list(closed({ why: text, do: text, say: text, ask: text, expect: text, watch: text, help: text, more: text, ready: text }, []))
            }, ['name'])),
            checkpoint: closed({ name: text, title: text, minutes, ask: text, expect: text, ifUnsure: closed({ repeat: text, when: { enum: ['today', 'tomorrow'] } }, ['repeat']) }, ['name'])
        }, ['lesson'])
    };
}

/** Writes both forms below a folder; returns where they are and how large. */
export function writeProgrammes(folder, count) {
    const own = join(folder, 'haversack');
    const yaml = join(folder, 'yaml');
    mkdirSync(own, { recursive: true });
    mkdirSync(yaml, { recursive: true });
    writeFileSync(join(own, 'inventory.kit'), inventory());
    writeFileSync(join(own, 'year.course'), course(count));
    writeFileSync(join(yaml, 'lesson.schema.json'), JSON.stringify(schema(count)));
    let lines = 0;
    let bytes = 0;
    for (let number = 1; number <= count; number++) {
        const content = lesson(number);
        const text = haversackLesson(content);
        lines += text.split('\n').length - 1;
        bytes += text.length;
        writeFileSync(join(own, `${content.name}.lesson`), text);
        writeFileSync(join(yaml, `${content.name}.yaml`), yamlLesson(content));
    }
    return { own, yaml, lines, bytes };
}
