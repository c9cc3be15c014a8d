import { Glyph } from "../bench/Glyph.tsx";
import { useFormat } from "../format/useFormat.ts";
import { useWords } from "../words/useWords.ts";
import { noteText } from "./noteText.ts";
import type { Made } from "./useFirstDesign.ts";

/** What could not be had as wished, worst first, and the usual cautions. */
export function StartNotes({ made }: { readonly made: Made }) {
  const words = useWords();
  const format = useFormat();
  const { say } = words;
  const notes = [...made.notes].sort((a, b) => rank(a.weight) - rank(b.weight));
  const { volumes, water } = made.assessment;
  // Glass, stand and sump weigh about a quarter of the water: common practice, no source.
  const mass = 1.25 * volumes.system * water.density;
  return (
    <>
      {notes.length === 0 ? null : (
        <section className="start-notes" aria-labelledby="start-notes">
          <h2 id="start-notes">{say("start.notes")}</h2>
          <ul>
            {notes.map((note, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two notes may be alike, and their order is theirs
              <li key={`${note.code}${i}`} className="start-note" data-weight={note.weight}>
                <Glyph severity={note.weight === "unmet" ? "danger" : "notice"} />
                <p>
                  <strong>{say(`start.note.${note.weight}`)}.</strong> {noteText(note, words, format)}
                </p>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section className="start-cautions cautions" aria-labelledby="start-cautions">
        <h3 id="start-cautions">{say("start.cautions")}</h3>
        <p>{say("start.caution.electricity")}</p>
        <p>{say("start.caution.drilling")}</p>
        <p>{say("start.caution.load", { mass: format(mass, "mass") })}</p>
        <p>{say("start.caution.flood")}</p>
      </section>
    </>
  );
}

const rank = (weight: "unmet" | "care") => (weight === "unmet" ? 0 : 1);
