import type * as ast from '../generated/ast.js';
import { adaptationSheet } from './adaptation-sheets.js';
import { classSheet, courseSheet, frameworkSheet, objectiveSheet } from './course-sheets.js';
import { bookSheet, gameSheet, kitSheet, materialSheet, printSheet } from './inventory-sheets.js';
import { lessonSheet } from './lesson-sheets.js';
import type { FileSheet } from './sheet.js';

/** From the syntax tree of one file to plain data. Declarations whose name is missing are left out. */
export function makeSheet(file: ast.ProgrammeFile, uri: string, unreadable: readonly string[], brokenLines: readonly number[] = []): FileSheet {
    const sheet: FileSheet = {
        uri, materials: [], prints: [], books: [], games: [], kits: [], lessons: [], objectives: [], frameworks: [],
        courses: [], classes: [], adaptations: [], unreadable: [...unreadable], brokenLines: [...brokenLines]
    };
    for (const node of file.declarations) {
        if (!node.name) continue;
        switch (node.$type) {
            case 'Material': sheet.materials.push(materialSheet(node, uri)); break;
            case 'Print': sheet.prints.push(printSheet(node, uri)); break;
            case 'Book': sheet.books.push(bookSheet(node, uri)); break;
            case 'Game': sheet.games.push(gameSheet(node, uri)); break;
            case 'Kit': sheet.kits.push(kitSheet(node, uri)); break;
            case 'Lesson': sheet.lessons.push(lessonSheet(node, uri)); break;
            case 'Objective': sheet.objectives.push(objectiveSheet(node, uri)); break;
            case 'Framework': sheet.frameworks.push(frameworkSheet(node, uri)); break;
            case 'Course': sheet.courses.push(courseSheet(node, uri)); break;
            case 'Class': sheet.classes.push(classSheet(node, uri)); break;
            case 'Adaptation': sheet.adaptations.push(adaptationSheet(node, uri)); break;
        }
    }
    return sheet;
}
