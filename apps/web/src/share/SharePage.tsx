import "./share.css";
import { routes, type SharedDesign } from "@tidewright/protocol";
import { languages } from "@tidewright/words";
import { lazy, Suspense, useEffect, useState } from "react";
import { ask } from "../api/ask.ts";
import { FaultScreen } from "../bench/FaultScreen.tsx";
import { takeRows } from "../catalogue/shopRows.ts";
import { changeSettings, type UnitSystem, useSettings } from "../state/settings.ts";
import { useWords } from "../words/useWords.ts";
import { sharedPumpRows } from "./sharedPumpRows.ts";
import { tokenOf } from "./tokenOf.ts";

// Who asks and until when is told at once; the drawing and the engine come after.
const SharedSystem = lazy(async () => ({ default: (await import("./SharedSystem.tsx")).SharedSystem }));

type Opened =
  | { readonly state: "loading" }
  | { readonly state: "closed" }
  | { readonly state: "unreachable" }
  | { readonly state: "open"; readonly shared: SharedDesign; readonly token: string };

/** What a customer sees through a share link. */
export function SharePage() {
  const { say } = useWords();
  const [opened, setOpened] = useState<Opened>({ state: "loading" });
  const load = async () => {
    const token = tokenOf(location.hash);
    setOpened({ state: "loading" });
    if (token === "") return setOpened({ state: "closed" });
    const answer = await ask(routes.shared, { link: token });
    if (answer.ok) {
      // What comes with the design is all of the shop's catalogue that a link shows.
      takeRows(sharedPumpRows(answer.value.pumps));
      setOpened({ state: "open", shared: answer.value, token });
    } else
      setOpened({ state: answer.reason === "unreachable" || answer.problem.status >= 429 ? "unreachable" : "closed" });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, and when another link is put into the same page
  useEffect(() => {
    void load();
    const changed = () => void load();
    addEventListener("hashchange", changed);
    return () => removeEventListener("hashchange", changed);
  }, []);
  if (opened.state === "open") return <Shared shared={opened.shared} token={opened.token} />;
  return (
    <main className="share-page share-shut">
      <p className="wordmark">Tidewright</p>
      {opened.state === "loading" ? (
        <p role="status">{say("doors.opening")}</p>
      ) : (
        <>
          <h1>{say(opened.state === "closed" ? "doors.linkClosed" : "doors.linkUnreachable")}</h1>
          {opened.state === "closed" ? null : (
            <p>
              <button type="button" className="action" onClick={() => void load()}>
                {say("doors.again")}
              </button>
            </p>
          )}
        </>
      )}
    </main>
  );
}

function Shared({ shared, token }: { readonly shared: SharedDesign; readonly token: string }) {
  const words = useWords();
  const { say } = words;
  const logo = useLogo(shared, token);
  const { shop, jobName, designName, document: design } = shared;
  useEffect(() => {
    document.title = jobName;
  }, [jobName]);
  return (
    <div className="share-page">
      <header className="share-head">
        {logo === undefined ? null : (
          <img className="share-logo" src={logo} alt={say("doors.logoOf", { shop: shop.name })} />
        )}
        <div>
          <p className="share-shop">{shop.name === "" ? "Tidewright" : shop.name}</p>
          <p className="share-address">{shop.address}</p>
        </div>
      </header>
      <main>
        <div className="share-title">
          <h1>{jobName}</h1>
          <p className="quiet">
            {designName === jobName ? "" : `${designName} · `}
            {say("doors.asOf", { when: words.instant(shared.at, { dateStyle: "long" }) })}
          </p>
        </div>
        <FaultScreen what={say("doors.theDrawing")} again={design}>
          <Suspense
            fallback={
              <p className="share-wait" role="status">
                {say("doors.drawing")}
              </p>
            }
          >
            <SharedSystem document={design} />
          </Suspense>
        </FaultScreen>
      </main>
      <footer className="share-foot">
        <Choices />
        <p className="quiet">
          {say("doors.validUntil", { when: words.instant(shared.expiresAt, { dateStyle: "long" }) })}
        </p>
        <p className="quiet">{say("doors.caution")}</p>
      </footer>
    </div>
  );
}

const systems: readonly UnitSystem[] = ["metric", "us", "imperial"];

/** Units and language, for whoever reads. */
function Choices() {
  const { say } = useWords();
  const system = useSettings((settings) => settings.system);
  const language = useSettings((settings) => settings.language);
  return (
    <div className="share-choices">
      <fieldset>
        <legend>{say("fields.numbersIn")}</legend>
        {systems.map((each) => (
          <button
            key={each}
            type="button"
            data-system={each}
            aria-pressed={system === each}
            onClick={() => changeSettings({ system: each, own: {} })}
          >
            {say(`fields.system.${each}`)}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend>{say("fields.language")}</legend>
        {languages.map((each) => (
          <button
            key={each}
            type="button"
            lang={each}
            aria-pressed={language === each}
            onClick={() => changeSettings({ language: each })}
          >
            {say(`fields.language.${each}`)}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

function useLogo({ shop }: SharedDesign, token: string): string | undefined {
  const [logo, setLogo] = useState<string>();
  useEffect(() => {
    if (!shop.hasLogo) return;
    let made: string | undefined;
    let gone = false;
    void ask(routes.sharedLogo, { link: token }).then((answer) => {
      if (!answer.ok || gone) return;
      made = URL.createObjectURL(answer.value);
      setLogo(made);
    });
    return () => {
      gone = true;
      if (made !== undefined) URL.revokeObjectURL(made);
    };
  }, [shop.hasLogo, token]);
  return logo;
}
