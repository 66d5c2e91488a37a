import type { JSX } from 'preact';
import { htmlPage, type PageOptions } from '../html-page.js';
import { renderSections } from '../rendered-section.js';
import { PictureSvg } from '../picture/picture-svg.js';
import { ItemPicture } from '../pieces/item-picture.js';
import { ItemWords } from '../pieces/item-words.js';
import { keyNote } from '../pieces/key-note.js';
import { asId } from '../view.js';
import type { PracticeItemFigures, PracticeSheetFigures } from '../../planning/figures.js';
import { sheetStyles } from './sheet.css.js';
import { aroundGap, itemsLine, lessonLine, practiceTitle, sheetWords, type SheetPractice } from './words.js';

/** The practices of a lesson as one HTML file to print: the sheet with room to write, or with `key` the answers alone. Each practice begins a page. */
export function practiceSheetPage(sheet: PracticeSheetFigures, { key = false, ...options }: PageOptions & { key?: boolean } = {}): string {
    const sections = renderSections(sheet.practices.map((practice): [string, JSX.Element] => {
        const id = `practice-${asId(practice.name)}`;
        return [id, <Practice practice={practice} sheet={sheet} id={id} answers={key} />];
    }));
    const title = `${key ? sheetWords.key : sheetWords.practice}: ${sheet.lesson.title}`;
    return htmlPage(title, sections, { ...options, styles: sheetStyles });
}

function Practice({ practice, sheet, id, answers }: { practice: SheetPractice; sheet: PracticeSheetFigures; id: string; answers: boolean }): JSX.Element {
    const short = practice.items.every(({ room, picture }) => room !== 'line' || picture);
    const note = answers ? keyNote(practice.items) : undefined;
    return (
        <section id={id} class="practice-sheet" aria-labelledby={`${id}-title`}>
            <h1 id={`${id}-title`}><bdi>{practiceTitle(practice, answers)}</bdi></h1>
            <p class="quiet"><bdi>{lessonLine(sheet)}</bdi></p>
            {answers ? <p class="quiet"><bdi>{itemsLine(practice)}</bdi></p> : <NameLine />}
            {!answers && practice.pictures.length > 0 && (
                <div class="pictures-shown">
                    {practice.pictures.map(({ picture, title }) => picture && (
                        <figure><PictureSvg picture={picture} />{title && <figcaption><bdi>{title}</bdi></figcaption>}</figure>
                    ))}
                </div>
            )}
            <ol class={`asked${short || answers ? ' short' : ''}${answers ? ' answers' : ''}`} start={practice.first}>
                {practice.items.map(item => <li dir="auto">{answers ? <Answer item={item} /> : <Ask item={item} />}</li>)}
            </ol>
            {note && <p class="quiet">{note}</p>}
        </section>
    );
}

function NameLine(): JSX.Element {
    return (
        <p class="name-line">
            <span class="fill">{sheetWords.name}</span>
            <span class="fill day">{sheetWords.date}</span>
        </p>
    );
}

function Ask({ item }: { item: PracticeItemFigures }): JSX.Element {
    const around = aroundGap(item);
    return (
        <>
            {around ? <span class="sum">{around[0]}<Gap />{around[1]}</span> : <span><ItemWords text={item.ask} /></span>}
            {item.room === 'number' && <> <Gap /></>}
            <ItemPicture picture={item.picture} />
            {!around && item.room !== 'number' && <span class="rule-to-write" />}
        </>
    );
}

function Gap(): JSX.Element {
    return <span class="gap"><span class="unseen">{sheetWords.answer}</span></span>;
}

function Answer({ item }: { item: PracticeItemFigures }): JSX.Element {
    const around = aroundGap(item);
    return around
        ? <span class="sum">{around[0]}<strong>{item.answer}</strong>{around[1]}</span>
        : <><ItemWords text={item.ask} /> <strong class="behind"><ItemWords text={item.answer} /></strong>{item.picture && <span class="quiet"> {item.picture.text}</span>}</>;
}
