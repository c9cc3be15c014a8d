import pico from "picocolors";

/** The few colours of the terminal, or plain text. */
export interface Styles {
  readonly bold: (text: string) => string;
  readonly dim: (text: string) => string;
  readonly red: (text: string) => string;
  readonly yellow: (text: string) => string;
  readonly cyan: (text: string) => string;
}

/** Returns colours for a stream that a person looks at; plain text for pipes, files and where NO_COLOR is set. */
export function stylesFor(stream: { readonly isTTY?: boolean } | undefined, env = process.env): Styles {
  const noColor = (env["NO_COLOR"] ?? "") !== "";
  return pico.createColors(stream?.isTTY === true && !noColor && env["TERM"] !== "dumb");
}
