/** Something that keeps a command from doing its work at all: told in one sentence, exit code 2. */
export class CouldNotRun extends Error {}

export const exitCodes = { fine: 0, problems: 1, couldNotRun: 2 } as const;
