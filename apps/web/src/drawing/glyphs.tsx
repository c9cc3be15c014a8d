import { choiceLooks, type PartChoice, symbolStrokes } from "@tidewright/editor";

/** A part of the palette as its drafting symbol on a piece of pipe. */
export function ChoiceGlyph({ choice }: { readonly choice: PartChoice }) {
  const { symbol } = choiceLooks[choice];
  return (
    <svg viewBox="-20 -13 40 26" width="40" height="26" className="tw-glyph" aria-hidden="true">
      {choice === "elbow" ? <path d="M-18,4H0a4,4 0 0 0 4,-4V-12" className="tw-glyphPipe" /> : null}
      {choice === "bend45" ? <path d="M-18,5H-2L12,-9" className="tw-glyphPipe" /> : null}
      {choice === "tee" ? <path d="M-18,4H18M0,4V-12" className="tw-glyphPipe" /> : null}
      {choice === "siphonBreak" ? <path d="M-18,0H18M0,0V-9" className="tw-glyphPipe" /> : null}
      {["elbow", "bend45", "tee", "siphonBreak"].includes(choice) ? null : (
        <path d="M-18,0H18" className="tw-glyphPipe" />
      )}
      {symbol === "box" ? <path d="M-12,-7H12V7H-12Z" className="tw-device" /> : null}
      {symbol === "siphonBreak" ? (
        <circle cx="0" cy="-9" r="3" className="tw-symbol tw-fill-paper tw-line-outline" />
      ) : null}
      {symbol === "box" ||
      symbol === "pipe" ||
      symbol === "elbow" ||
      symbol === "tee" ||
      symbol === "siphonBreak" ? null : (
        <g transform="scale(19 -19)">
          {symbolStrokes(symbol, 1).map((stroke) => (
            <path key={stroke.d} d={stroke.d} className={`tw-symbol tw-fill-${stroke.fill} tw-line-${stroke.weight}`} />
          ))}
        </g>
      )}
    </svg>
  );
}

const toolPaths = {
  insert: "M1,9H6M12,9H17M6,5V13M12,5V13M9,2V6M7,4H11",
  route: "M3,15V7H14V3M11.8,5.2L14,3L16.2,5.2M3,15m-1.6,0a1.6,1.6 0 1,0 3.2,0a1.6,1.6 0 1,0 -3.2,0",
  add: "M9,3V15M3,9H15",
  zoomIn: "M7.5,2.5a5,5 0 1,0 .01,0M11.2,11.2L16,16M7.5,5.2V9.8M5.2,7.5H9.8",
  zoomOut: "M7.5,2.5a5,5 0 1,0 .01,0M11.2,11.2L16,16M5.2,7.5H9.8",
  whole: "M2.5,4H15.5V14H2.5ZM2.5,7.5H5.5V4M12.5,14V10.5H15.5",
  flow: "M2,6.5H8M11,6.5H16M2,11.5H5M8,11.5H16",
} as const;

/** The mark on a tool. */
export function ToolGlyph({ name }: { readonly name: keyof typeof toolPaths }) {
  return (
    <svg viewBox="0 0 18 18" width="18" height="18" className="tw-toolGlyph" aria-hidden="true">
      <path d={toolPaths[name]} />
    </svg>
  );
}
