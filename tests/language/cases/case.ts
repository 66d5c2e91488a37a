/** Texts for one code, as tests/language/fixture.ts reads them: every problem in them is marked. */
export interface Case {
    code: string;
    /** Each has this code among its marks. */
    fires: string[];
    /** Close to it, and without it. */
    silent: string[];
}
