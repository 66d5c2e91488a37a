/** Imports run one way: extension -> server -> language; inside the server editing, cli and brief -> planning -> language/sheets. */
const never = (name, from, to, comment) => ({ name, severity: 'error', comment, from, to });

module.exports = {
    forbidden: [
        never('language-is-the-core', { path: '^language/' }, { path: '^(server|extension)/' }, 'The language knows nothing of what shows it.'),
        never('server-below-extension', { path: '^server/' }, { path: '^extension/' }, 'The server serves any editor.'),
        never('extension-shows-only', { path: '^extension/' }, { path: '^language/' }, 'The extension never parses: it asks the server.'),
        never('extension-knows-the-protocol', { path: '^extension/' }, { path: '^server/', pathNot: '^server/protocol\\.ts$' }, 'The extension knows the protocol and nothing else of the server.'),
        never('planning-is-pure', { path: '^server/planning/' }, { path: '^server/(?!planning/)' }, 'The engine knows nothing of the rest of the server.'),
        never('planning-sees-sheets', { path: '^server/planning/' }, { path: '^language/(?!sheets/(sheet|programme|titles)\\.ts|facts/)' }, 'The engine never sees a syntax node.'),
        never('brief-shows-figures', { path: '^server/brief/' }, { path: '^server/(?!brief/|planning/figures\\.ts)' }, 'The brief computes no quantity: it reads figures.'),
        never('brief-sees-no-syntax', { path: '^server/brief/' }, { path: '^language/(?!sheets/sheet\\.ts|facts/)' }, 'The brief reads figures and facts.'),
        never('checks-read-sheets', { path: '^language/(facts|lexer)/' }, { path: '^language/(checks|sheets|linking)/' }, 'Facts and the lexer come first.'),
        never('sheets-before-checks', { path: '^language/sheets/' }, { path: '^language/(checks|linking)/' }, 'Sheets say what files say; the checks judge it.'),
        never('facts-stand-alone', { path: '^language/facts/' }, { path: '^language/(?!facts/)' }, 'Facts are data.'),
        never('no-circles', {}, { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } }, 'A circle of imports has no inside.'),
        never('core-runs-anywhere', { path: '^(language|server/planning|server/brief)/', pathNot: '\\.mjs$' }, { dependencyTypes: ['core'] }, 'No Node in the core.'),
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
