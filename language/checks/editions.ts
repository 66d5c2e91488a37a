import type { Check } from './check.js';
import { replace } from './fixes.js';

export const wrongEdition: Check = {
    code: 'wrong-edition', severity: 'warning', title: 'An edition that is not on the shelf',
    explains: 'A game names its rules by an edition of a book, and the book in the inventory is another edition: chapters and numbers may differ. Look the game up in the book you have, and name that edition.',
    wrong: 'book table-games edition 3\n\ngame grocer\n  found in table-games edition 2, number 12\n\nlesson weigh-1\n  game grocer 10 min',
    right: 'book table-games edition 3\n\ngame grocer\n  found in table-games edition 3, number 12\n\nlesson weigh-1\n  game grocer 10 min',
    *find(file, view) {
        for (const { found, name } of file.games) {
            const book = found && view.programme.books.get(found.book.name);
            if (!book?.edition || !found?.edition || !found.editionAt || book.edition === found.edition) continue;
            yield {
                message: `The game '${name}' is found in edition ${found.edition} of '${book.name}', but edition ${book.edition} is on the shelf. Look it up there: chapter and number may differ.`,
                at: found.editionAt, related: [{ message: `The book '${book.name}'`, place: { uri: book.uri, range: book.at } }],
                fixes: [{ title: `Change to edition ${book.edition}`, edits: [replace(file.uri, found.editionAt, book.edition)], preferred: true }]
            };
        }
    }
};
