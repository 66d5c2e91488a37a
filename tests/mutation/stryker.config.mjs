// Run by tests/mutation/run.mjs, which says what is changed and which tests look at it.
export default {
    testRunner: 'one-process',
    plugins: ['./tests/mutation/test-runner.mjs'],
    mutate: (process.env.HAVERSACK_MUTATE ?? '').split(';').filter(Boolean),
    coverageAnalysis: 'perTest',
    // A constant of a module would be tried with every test of the area.
    ignoreStatic: true,
    mutator: { excludedMutations: ['StringLiteral'] },
    concurrency: Number(process.env.HAVERSACK_MUTATION_WORKERS ?? 2),
    inPlace: true,
    disableTypeChecks: false,
    // What loops for ever is mostly found by counting. A generous clock beside that: on a busy machine a short one would count slowness as noticing.
    timeoutMS: 20_000,
    timeoutFactor: 4,
    // Modules that were loaded stay in memory until the process ends.
    maxTestRunnerReuse: 100,
    reporters: ['clear-text', 'json', 'progress-append-only'],
    clearTextReporter: { allowColor: false, logTests: false, reportTests: false, reportScoreTable: false },
    jsonReporter: { fileName: process.env.HAVERSACK_MUTATION_REPORT },
    tempDirName: '.build/stryker'
};
