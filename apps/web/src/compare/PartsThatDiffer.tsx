import { useWords } from "../words/useWords.ts";
import type { DifferenceRow, PartDifference } from "./compareParts.ts";

interface Props {
  readonly parts: readonly PartDifference[];
  readonly names: { readonly left: string; readonly right: string };
  readonly shown: string | undefined;
  readonly onShow: (letter: string | undefined) => void;
}

/** The parts that differ in a table, each with the letter that marks it on the drawings. */
export function PartsThatDiffer({ parts, names, shown, onShow }: Props) {
  const { say } = useWords();
  return (
    <section className="compare-block compare-parts" aria-labelledby="compare-parts">
      <h2 id="compare-parts">{say("keeping.compareParts")}</h2>
      {parts.length === 0 ? (
        <p className="quiet">{say("keeping.compareNoParts")}</p>
      ) : (
        <table className="compare-table">
          <thead>
            <tr>
              <th scope="col">{say("keeping.compareMark")}</th>
              <th scope="col">{say("keeping.comparePart")}</th>
              <th scope="col">{say("keeping.compareField")}</th>
              <th scope="col">{names.left}</th>
              <th scope="col">{names.right}</th>
            </tr>
          </thead>
          {parts.map(({ letter, title, rows }) => (
            <tbody key={letter} data-letter={letter} data-shown={shown === letter ? "" : undefined}>
              {rows.map((row, place) => (
                <tr key={`${row.kind} ${row.path}`} data-difference={row.path}>
                  {place === 0 ? (
                    <>
                      <td rowSpan={rows.length}>
                        <button
                          type="button"
                          className="compare-letter"
                          aria-pressed={shown === letter}
                          aria-label={`${say("keeping.compareMark")} ${letter}: ${title}`}
                          onClick={() => onShow(shown === letter ? undefined : letter)}
                        >
                          {letter}
                        </button>
                      </td>
                      <th scope="rowgroup" rowSpan={rows.length}>
                        {title}
                      </th>
                    </>
                  ) : null}
                  <td>{what(row, say)}</td>
                  <td data-side={names.left}>{row.kind === "added" && row.field === "" ? "–" : row.left}</td>
                  <td data-side={names.right}>{row.kind === "removed" && row.field === "" ? "–" : row.right}</td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      )}
    </section>
  );
}

const kinds = {
  added: "keeping.compareAdded",
  removed: "keeping.compareRemoved",
  moved: "keeping.compareMoved",
  changed: "keeping.compareChanged",
} as const;

function what({ kind, field }: DifferenceRow, say: ReturnType<typeof useWords>["say"]): string {
  if (field === "") return say(kinds[kind]);
  return kind === "changed" ? field : `${field}, ${say(kinds[kind])}`;
}
