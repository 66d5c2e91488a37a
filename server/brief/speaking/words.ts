/** Every fixed phrase of the written speaking notes. */
import type { Figure } from '../../planning/figure.js';
import type { CueDoes, SpeakingNotes } from '../../planning/speaking-figures.js';

export const cueLabels: Record<Exclude<CueDoes, 'say'>, string> = { begin: 'Show how it begins', play: 'Show one turn of', picture: 'Hold up' };

export const notesTitle = ({ week, weeks }: SpeakingNotes): string => `Speaking notes: week ${week}${week <= weeks ? ` of ${weeks}` : ''}`;

export const courseAndClass = (notes: SpeakingNotes): string => [notes.course, notes.class].filter(Boolean).join(', ');

/** "Counted so: 412 words at 170 a minute: 2.4 min; 3 activities begun at 1 min each: 3 min." */
export const countedSo = ({ trail }: Figure): string => `Counted so: ${trail.map(({ words }) => words).join('; ')}.`;

/** "About 14 min. Counted so: …". */
export const wholeTime = ({ time }: SpeakingNotes): string => `${time.text.startsWith('less') ? 'Less than 1 min' : `About ${time.text}`}. ${countedSo(time)}`;

export const howToUse = 'Cues in plain sentences: say them in your own words. What is to be shown has a time of its own; its words are not counted.';
