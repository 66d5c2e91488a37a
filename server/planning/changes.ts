import type { Programme } from '@haversack/language/sheets/programme';
import { chooseClass, type Wanted } from './audience.js';
import type { ChangesFigures, LedgerFigures } from './ledger-figures.js';
import { namesInProse } from './names.js';
import { titled } from './titled.js';

/** What the page of changes shows of a class; `ledger` is that of the same class and course. */
export function planChanges(programme: Programme, wanted: Wanted, ledger: LedgerFigures | undefined): ChangesFigures {
    const { class: group, course } = chooseClass(programme, wanted);
    const example = course?.units.flatMap(unit => unit.lessons).map(({ name }) => programme.lessons.get(name)).find(lesson => lesson !== undefined);
    return {
        course: course && titled(course), class: group && titled(group), ledger,
        example: example && { name: example.name, title: example.title },
        names: namesInProse(programme, [...ledger?.changes.map(change => change.because) ?? [], ...ledger?.adaptations.flatMap(({ notes }) => notes ?? []) ?? []])
    };
}
