/** How a command ends: done, its input was bad, or the fault is ours. */
export const exitCodes = { done: 0, badInput: 2, ourFault: 3 } as const;
/** One of `exitCodes`. */
export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
