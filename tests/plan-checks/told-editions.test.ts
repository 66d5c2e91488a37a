/** What is said of an adaptation that was written against a former edition of its course, where it leads and how it can be mended. */
import { expect, test } from 'vitest';
import { toldOf as told } from '../language/telling.js';
import { problemsOn } from './fixture.js';

const toldOf = (code: string, text: string, former?: string): Promise<string> => told(code, text, files => problemsOn(files, '2026-09-01', former));
const lesson = (name: string, minutes: number): string => `lesson ${name}\n  activity ${name}-talk ${minutes} min\n    do: Talk of ${name}.\n`;
const programme = (edition: string, minutes: number, changes: string[], against = 'edition 1', course = ''): string => `${lesson('bags', minutes)}${lesson('loaves', 10)}${lesson('market', 10)}course c "Measuring"${edition && ` edition ${edition}`}\n  unit u\n    bags\n    loaves\n${course}adaptation a of c ${against}\n${changes.map(line => `  ${line}\n`).join('')}`;
const retime = 'retime activity bags.bags-talk to 8 min';
const insert = 'insert market after bags';

test.each<[string, string, string | undefined, string]>([
    ['without the former edition at hand', programme('2', 10, [retime]), undefined, `'1' (14): The course “Measuring” is now edition 2, and these changes were written against edition 1. Look at them again: \`haversack compare\` with a copy of edition 1 tells what changed.
  see 'c' (10): The course 'c'
  mend*: Written against edition 2 now
    |     loaves
    - adaptation a of c edition 1
    + adaptation a of c edition 2`],
    ['with it, where every line still applies', programme('2', 10, [retime, insert]), programme('1', 10, [retime, insert]), `'1' (14): The course “Measuring” is now edition 2, and these changes were written against edition 1. All of them still apply, or somebody has looked at them again.
  see 'c' (10): The course 'c'
  mend*: Written against edition 2 now
    |     loaves
    - adaptation a of c edition 1
    + adaptation a of c edition 2`],
    ['where one of two lines meets something new that one is told of', programme('2', 15, [retime, insert]), programme('1', 10, [retime, insert]), ''],
    ['the same edition', programme('1', 10, [retime]), undefined, ''],
    ['an adaptation that names no edition', programme('2', 10, [retime], ''), undefined, ''],
    ['a course that names none', programme('', 10, [retime]), undefined, ''],
    ['a course that is not there', programme('2', 10, [retime]).replace('adaptation a of c', 'adaptation a of gone'), undefined, ''],
    ['an adaptation without a change', programme('2', 10, []), undefined, ''],
    ['a course with a line that cannot be read', programme('2', 10, [retime], 'edition 1', '  untis v\n'), undefined, ''],
    ['an adaptation with a line that cannot be read', programme('2', 10, [retime, 'skpi lesson bags']), undefined, '']
])('a new edition: %s', async (_, text, former, says) => expect(await toldOf('course-edition-changed', text, former)).toBe(says));

test.each<[string, string, string[], string, string[], string[]?]>([
    ['change-in-conflict', 'another length: keep the line, or let it go', [retime], '15', [`'retime activity bags.bags-talk to 8 min' (15): This was written against edition 1. The adaptation: “Bags talk” of “Bags” takes 8 min. Edition 2: “Bags talk”: 15 min instead of 10 min. Keep the change, or take the new edition’s way?
  see 'bags-talk' (2): In edition 2
  mend: Keep this change
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min
    +   retime activity bags.bags-talk to 8 min as of edition 2
  mend: Take the new edition’s
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min`]],
    ['change-in-conflict', 'looked at for an edition in between: that is written over', [`${retime} as of edition 1`], '15', [`'retime activity bags.bags-talk to 8 min as of edition 1' (15): This was written against edition 1. The adaptation: “Bags talk” of “Bags” takes 8 min. Edition 2: “Bags talk”: 15 min instead of 10 min. Keep the change, or take the new edition’s way?
  see 'bags-talk' (2): In edition 2
  mend: Keep this change
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min as of edition 1
    +   retime activity bags.bags-talk to 8 min as of edition 2
  mend: Take the new edition’s
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min as of edition 1`]],
    ['change-in-conflict', 'with a reason behind it', [`${retime} because: We talk fast.`], '15', [`'retime activity bags.bags-talk to 8 min because: We talk fast.' (15): This was written against edition 1. The adaptation: “Bags talk” of “Bags” takes 8 min. Edition 2: “Bags talk”: 15 min instead of 10 min. Keep the change, or take the new edition’s way?
  see 'bags-talk' (2): In edition 2
  mend: Keep this change
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min because: We talk fast.
    +   retime activity bags.bags-talk to 8 min as of edition 2 because: We talk fast.
  mend: Take the new edition’s
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min because: We talk fast.`]],
    ['change-in-conflict', 'what nothing new meets is not told of', [insert], '15', ['']],
    ['change-not-needed', 'that length already', [retime, insert], '8', [`'retime activity bags.bags-talk to 8 min' (15): Edition 2 of the course does this itself: “Bags talk” takes 8 min in it. This line is no longer needed.
  see 'bags-talk' (2): In edition 2
  mend*: Remove this change
    | adaptation a of c edition 1
    -   retime activity bags.bags-talk to 8 min`]],
    ['change-not-needed', 'another length', [retime, insert], '15', ['']]
])('%s: %s', async (code, _, changes, minutes, [says]) => {
    expect(await toldOf(code, programme('2', Number(minutes), changes), programme('1', 10, changes))).toBe(says);
});
