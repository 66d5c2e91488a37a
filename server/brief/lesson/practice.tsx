import type { JSX } from 'preact';
import type { PartFigures } from '../../planning/figures.js';
import { Labelled } from '../pieces/labelled.js';
import { practiceWords } from '../sentences.js';
import { words } from '../words.js';

/** The practice's items with their answers folded away; until items are known, what will be practised in words. */
export function Practice({ part }: { part: PartFigures }): JSX.Element | null {
    const told = practiceWords(part);
    const items = part.practiceItems ?? [];
    if (!told && items.length === 0) return null;
    return (
        <Labelled label={words.practise}>
            {told && <p><bdi>{told}</bdi></p>}
            {items.length > 0 && (
                <>
                    <ol class="items">{items.map(item => <li dir="auto">{item.ask}</li>)}</ol>
                    <details class="key">
                        <summary>{words.answers}</summary>
                        <ol class="items">{items.map(item => <li dir="auto">{item.answer}</li>)}</ol>
                    </details>
                </>
            )}
        </Labelled>
    );
}
