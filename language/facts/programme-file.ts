/** What the files end in that a programme is made of. */
export const programmeFile = /\.(?:lesson|kit|course)$/;
