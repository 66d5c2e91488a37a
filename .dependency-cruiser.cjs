/** Imports run one way, as DEVELOPERS.md says. */
const never = (name, from, to, comment) => ({ name, severity: 'error', comment, from, to });

module.exports = {
    forbidden: [
        never('language-is-the-core', { path: '^language/' }, { path: '^(server|extension)/' }, 'The language knows nothing of what shows it.'),
        never('server-below-extension', { path: '^server/', pathNot: '\\.mjs$' }, { path: '^extension/' }, 'The server serves any editor.'),
        never('extension-shows-only', { path: '^extension/' }, { path: '^language/' }, 'The extension never parses: it asks the server.'),
        never('extension-knows-the-protocol', { path: '^extension/' }, { path: '^server/', pathNot: '^server/protocol/' }, 'The extension knows the protocol and nothing else of the server.'),
        never('planning-is-pure', { path: '^server/planning/' }, { path: '^server/(?!planning/)' }, 'The engine knows nothing of the rest of the server.'),
        never('planning-sees-sheets', { path: '^server/planning/' }, { path: '^language/(?!sheets/(sheet|programme|titles|adaptation-sheet|adaptation-names)\\.ts|facts/|attachments/|adapting/|practice/|pictures/)' }, 'The engine never sees a syntax node.'),
        never('brief-shows-figures', { path: '^server/brief/' }, { path: '^server/(?!brief/|markdown/|planning/(figure|figures|schedule-figures|supply-figures|coverage-figures|term-figures|ledger-figures|edition-figures|speaking-figures)\\.ts)' }, 'The brief computes no quantity: it reads figures.'),
        never('markdown-is-text', { path: '^server/markdown/' }, { path: '^(server/(?!markdown/)|language/)' }, 'Markdown is made from text, whatever it tells.'),
        never('exports-write-figures', { path: '^server/exports/' }, { path: '^server/(?!exports/|markdown/|planning/(figure|figures|schedule-figures|supply-figures|coverage-figures|term-figures|ledger-figures|edition-figures|speaking-figures)\\.ts)' }, 'An export writes figures down; it computes none.'),
        never('imports-read-sheets', { path: '^server/importing/' }, { path: '^server/(?!importing/)' }, 'What reads a spreadsheet knows sheets and edits, not the server.'),
        never('formatting-reads-lines', { path: '^server/formatting/' }, { path: '^(server/(?!formatting/)|language/(?!lexer/))' }, 'The layout of a file hangs on its lines alone.'),
        never('plan-checks-read-figures', { path: '^server/plan-checks/' }, { path: '^server/(?!plan-checks/|planning/)' }, 'Checks of the plan read the plan.'),
        never('library-runs-anywhere', { path: '^server/library[/.]' }, { path: '^server/(?!library/|planning/|brief/|markdown/|exports/|plan-checks/)' }, 'The library reads texts in memory, and knows neither editor nor disk.'),
        never('brief-sees-no-syntax', { path: '^server/brief/' }, { path: '^language/(?!sheets/(sheet|titles)\\.ts|facts/|pictures/)' }, 'The brief reads figures and facts.'),
        never('checks-read-sheets', { path: '^language/(facts|lexer)/' }, { path: '^language/(checks|sheets|linking)/' }, 'Facts and the lexer come first.'),
        never('attachments-are-data', { path: '^language/attachments/' }, { path: '^language/(?!attachments/|sheets/(sheet|programme)\\.ts|facts/)' }, 'A calendar or framework is read without knowing who asks.'),
        never('adapting-is-pure', { path: '^language/adapting/' }, { path: '^language/(?!adapting/|sheets/(sheet|programme|titles|adaptation-sheet|adaptation-names)\\.ts|facts/)' }, 'An adaptation makes sheets of sheets.'),
        never('practice-is-pure', { path: '^language/practice/' }, { path: '^language/(?!practice/|sheets/(sheet|titles)\\.ts|facts/|pictures/)' }, 'Items are made from a line and a seed.'),
        never('pictures-are-data', { path: '^language/pictures/' }, { path: '^language/(?!pictures/|sheets/sheet\\.ts|facts/)' }, 'A picture is read without knowing where it is shown.'),
        never('sheets-before-checks', { path: '^language/sheets/' }, { path: '^language/(checks|linking|adapting|practice|pictures)/' }, 'Sheets say what files say; the checks judge it.'),
        never('facts-stand-alone', { path: '^language/facts/' }, { path: '^language/(?!facts/)' }, 'Facts are data.'),
        never('no-circles', {}, { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } }, 'A circle of imports has no inside.'),
        never('core-runs-anywhere', { path: '^(language/|server/(planning|brief|markdown|exports|importing|plan-checks|library)[/.])', pathNot: '\\.mjs$' }, { dependencyTypes: ['core'] }, 'No Node in the core.'),
        never('nothing-unresolved', { pathNot: '\\.mjs$' }, { couldNotResolve: true, pathNot: '^vscode$' }, 'Every import leads somewhere.')
    ],
    options: {
        doNotFollow: { path: 'node_modules' },
        exclude: { path: '(^|/)(node_modules|\\.build|generated)/' },
        tsPreCompilationDeps: true,
        tsConfig: { fileName: 'tsconfig.base.json' },
        enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'], extensions: ['.ts', '.tsx', '.js', '.mjs'] }
    }
};
