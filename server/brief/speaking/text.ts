import type { SpeakingNotes } from '../../planning/speaking-figures.js';
import { countedSo, courseAndClass, cueLabels, howToUse, notesTitle, wholeTime } from './words.js';

const columns = 78;

/** The notes for a terminal, in lines that can be read from a lectern. */
export function notesText(notes: SpeakingNotes): string {
    const head = [notesTitle(notes), courseAndClass(notes), wholeTime(notes), howToUse, ...notes.assumptions];
    const sections = notes.sections.map(({ title, time, cues }) => [
        '', ...wrapped(`${title} (${time.text})`, ''),
        ...cues.flatMap(({ does, text }) => wrapped(does === 'say' ? text : `[${cueLabels[does]}: ${text}]`, '  ')),
        ...wrapped(countedSo(time), '  ')
    ]);
    return `${[...head.flatMap(line => wrapped(line, '')), ...sections.flat()].join('\n')}\n`;
}

function wrapped(text: string, indent: string): string[] {
    const lines: string[] = [];
    let line = '';
    // Control characters would steer a terminal.
    for (const word of text.replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, ' ').split(' ').filter(Boolean)) {
        if (line && line.length + word.length + indent.length >= columns) {
            lines.push(line);
            line = '';
        }
        line = line ? `${line} ${word}` : word;
    }
    if (line) lines.push(line);
    return lines.map((part, index) => `${index === 0 ? indent : `${indent}  `}${part}`);
}
