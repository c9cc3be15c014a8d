/** The colours of a picture: paper, inks, one water colour, one warning colour. */
export interface Palette {
  readonly paper: string;
  /** Ink of lines and names, of what stands beside them, of what stands behind. */
  readonly ink: string;
  readonly ink2: string;
  readonly ink3: string;
  readonly rule: string;
  /** Water as a surface, and deep enough for strokes and text. */
  readonly water: string;
  readonly water2: string;
  readonly warn: string;
}

/** Returns the palette of pictures and papers, light or dark: the same colours as the bench on the screen.
 *  dark true for dark paper   -> Palette of CSS colours; text reaches a contrast of 4.5 on the paper
 *  Source: own choice; contrast by WCAG 2.2, 1.4.3.
 *  Example: inkAndPaper().paper  ->  "#f7f4ec" */
export function inkAndPaper(dark = false): Palette {
  return dark
    ? {
        paper: "#1b1d1f",
        ink: "#ebe6d9",
        ink2: "#c0bbae",
        ink3: "#9d978a",
        rule: "#3d4042",
        water: "#4a9dbd",
        water2: "#84c5de",
        warn: "#f19468",
      }
    : {
        paper: "#f7f4ec",
        ink: "#23262a",
        ink2: "#4b4f53",
        ink3: "#66645c",
        rule: "#cfc8b8",
        water: "#3f8fae",
        water2: "#175a79",
        warn: "#a3330c",
      };
}

/** Faces of all text, the first that the reader's machine has; nothing is fetched.
 *  -> CSS font list
 *  Source: own choice.
 *  Example: fontFaces.includes("sans-serif")  ->  true */
export const fontFaces = "'IBM Plex Sans Condensed', 'Arial Narrow', 'Liberation Sans Narrow', system-ui, sans-serif";
