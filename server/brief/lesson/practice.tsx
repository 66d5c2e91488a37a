import type { JSX } from 'preact';
import type { PartFigures } from '../../planning/figures.js';
import { ItemPicture } from '../pieces/item-picture.js';
import { ItemWords } from '../pieces/item-words.js';
import { keyNote } from '../pieces/key-note.js';
import { Labelled } from '../pieces/labelled.js';
import { practiceWords } from '../sentences.js';
import type { View } from '../view.js';
import { words } from '../words.js';

/** The practice's items with their answers folded away; until items are known, what will be practised in words. Only the preview can save them as a sheet. */
export function Practice({ part, lesson, view }: { part: PartFigures; lesson: string; view: View }): JSX.Element | null {
    const told = practiceWords(part);
    const items = part.practiceItems ?? [];
    const note = keyNote(items);
    if (!told && items.length === 0) return null;
    return (
        <Labelled label={words.practise}>
            {told && <p><bdi>{told}</bdi></p>}
            {items.length > 0 && (
                <>
                    <ol class={items.every(({ picture }) => picture?.picture) ? 'items pictured' : 'items'}>{items.map(({ ask, picture }) => (
                        <li dir="auto"><ItemWords text={ask} /><ItemPicture picture={picture} /></li>
                    ))}</ol>
                    <details class="key">
                        <summary>{words.answers}</summary>
                        <ol class="items">{items.map(item => <li dir="auto"><ItemWords text={item.answer} />{item.picture && <span class="quiet"> ({item.picture.text})</span>}</li>)}</ol>
                        {note && <p class="quiet">{note}</p>}
                    </details>
                    {view.preview && <button type="button" class="save-practice" data-practice={lesson}>{words.savePractice}</button>}
                </>
            )}
        </Labelled>
    );
}
