import type { JSX } from 'preact';
import type { PartFigures } from '../../planning/figures.js';
import { ItemWords } from '../pieces/item-words.js';
import { Labelled } from '../pieces/labelled.js';
import { PictureSvg } from '../picture/picture-svg.js';
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
                    <ol class={items.every(({ picture }) => picture?.picture) ? 'items pictured' : 'items'}>{items.map(({ ask, picture }) => (
                        <li dir="auto"><ItemWords text={ask} />{picture?.picture && <PictureSvg picture={picture.picture} label={picture.text} />}</li>
                    ))}</ol>
                    <details class="key">
                        <summary>{words.answers}</summary>
                        <ol class="items">{items.map(item => <li dir="auto"><ItemWords text={item.answer} /></li>)}</ol>
                    </details>
                </>
            )}
        </Labelled>
    );
}
