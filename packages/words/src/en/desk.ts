/** The desk: jobs, customers, what is kept. */
export const desk = {
  "desk.title": "Jobs",
} as const;
