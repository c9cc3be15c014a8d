/** What the process says to the shell: done; done with findings of severity danger; bad input; our fault. */
export const exitCodes = { done: 0, danger: 1, badInput: 2, ourFault: 3 } as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
