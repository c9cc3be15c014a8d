import "./desk.css";
import type { MessageKey } from "@tidewright/words";
import { lazy, type ReactNode, Suspense, useEffect, useRef, useSyncExternalStore } from "react";
import { isOwnWork } from "../state/maker.ts";
import { presentMaker, useSession } from "../state/session.ts";
import { useWords } from "../words/useWords.ts";
import { CustomerList } from "./CustomerList.tsx";
import { CustomerPage } from "./CustomerPage.tsx";
import { type DeskScreen, readDeskAddress } from "./deskAddress.ts";
import { JobList } from "./JobList.tsx";
import { JobPage } from "./JobPage.tsx";
import { PeoplePage } from "./PeoplePage.tsx";
import { sourceOfDraft } from "./recordSources.ts";
import { ShopPage } from "./ShopPage.tsx";
import { sendLeft } from "./sendLeft.ts";
import { useJobs, watchShop } from "./shopLists.ts";
import { useShopName } from "./shopSettings.ts";
import { readDraftKey, typedDrafts } from "./typedDrafts.ts";
import { whenWords } from "./whenWords.ts";

// Jobs and customers open without the catalogue.
const PumpList = lazy(async () => ({ default: (await import("./pumps/PumpList.tsx")).PumpList }));
const PumpPage = lazy(async () => ({ default: (await import("./pumps/PumpPage.tsx")).PumpPage }));
const NewPumpPage = lazy(async () => ({ default: (await import("./pumps/PumpPage.tsx")).NewPumpPage }));
const PumpTable = lazy(async () => ({ default: (await import("./pumps/PumpTable.tsx")).PumpTable }));

const places: readonly (readonly [string, MessageKey, readonly DeskScreen["screen"][]])[] = [
  ["#/jobs", "desk.jobs", ["jobs", "job"]],
  ["#/customers", "desk.customers", ["customers", "customer"]],
  ["#/pumps", "pumps.title", ["pumps", "pump", "newPump", "pumpTable"]],
  ["#/shop", "desk.shop", ["shop"]],
  ["#/people", "desk.people", ["people"]],
];

/** The shop's desk: jobs, customers, the shop itself, and who works in it. */
export function Desk() {
  const { say } = useWords();
  const hash = useSyncExternalStore(watchHash, () => location.hash);
  const address = readDeskAddress(hash);
  useEffect(watchShop, []);
  useEffect(() => {
    const send = () => void sendTyped();
    send();
    addEventListener("online", send);
    return () => removeEventListener("online", send);
  }, []);
  const main = useRef<HTMLElement>(null);
  const first = useRef(true);
  const place = "id" in address ? `${address.screen} ${address.id}` : address.screen;
  // A new screen is read from its top, by eyes and by readers.
  // biome-ignore lint/correctness/useExhaustiveDependencies: each change of the place counts
  useEffect(() => {
    if (first.current) {
      first.current = false;
      return;
    }
    scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [place]);
  return (
    <div className="desk">
      <a className="skip" href={hash || "#/jobs"} onClick={(event) => skip(event, main.current)}>
        {say("desk.skip")}
      </a>
      <header className="desk-bar">
        <p className="wordmark">Tidewright</p>
        <nav className="desk-nav" aria-label={say("desk.nav")}>
          {places.map(([target, label, screens]) => (
            <a key={target} href={target} aria-current={screens.includes(address.screen) ? "page" : undefined}>
              {say(label)}
            </a>
          ))}
        </nav>
        <Whose />
      </header>
      <Reach />
      <main className="desk-main" ref={main} tabIndex={-1}>
        <Suspense fallback={<p className="page-wait" aria-busy="true" />}>{screenOf(address)}</Suspense>
      </main>
    </div>
  );
}

function screenOf(address: DeskScreen): ReactNode {
  switch (address.screen) {
    case "jobs":
      return <JobList />;
    case "job":
      return <JobPage key={address.id} jobId={address.id} />;
    case "customers":
      return <CustomerList />;
    case "customer":
      return <CustomerPage key={address.id} customerId={address.id} />;
    case "pumps":
      return <PumpList />;
    case "pump":
      return <PumpPage key={address.id} pumpId={address.id} />;
    case "newPump":
      return <NewPumpPage key={address.from ?? ""} from={address.from} />;
    case "pumpTable":
      return <PumpTable />;
    case "shop":
      return <ShopPage />;
    case "people":
      return <PeoplePage />;
  }
}

/** Whose desk it is, and who sits at it. */
function Whose() {
  const { session } = useSession();
  const shop = useShopName();
  const name = session?.who === "account" ? session.name : undefined;
  if (!shop && !name) return null;
  return (
    <p className="desk-whose">
      {shop ? <span className="desk-shop">{shop}</span> : null}
      {name ? <span className="quiet">{name}</span> : null}
    </p>
  );
}

/** What to know while the server is out of reach. */
function Reach() {
  const words = useWords();
  const { state, asOf } = useJobs();
  if (state !== "unreachable") return null;
  return (
    <p className="desk-reach" role="status">
      {asOf === undefined
        ? words.say("desk.unreachable")
        : words.say("desk.unreachableAsOf", { when: whenWords(asOf, new Date(), words) })}
    </p>
  );
}

/** What was typed on pages that are closed by now. */
async function sendTyped(): Promise<void> {
  try {
    const open = readDeskAddress(location.hash);
    const me = presentMaker();
    const mine = typedDrafts(localStorage).filter(({ maker }) => isOwnWork([maker], me));
    await sendLeft(
      mine.map(({ key }) => key),
      (key) => {
        const at = readDraftKey(key);
        if (at === undefined || ("id" in open && open.id === at.id)) return undefined;
        return sourceOfDraft(at);
      },
      localStorage,
      me,
    );
  } catch {
    // Storage that is closed to the page holds nothing to send.
  }
}

function skip(event: { preventDefault(): void }, main: HTMLElement | null): void {
  event.preventDefault();
  main?.focus();
}

function watchHash(changed: () => void): () => void {
  addEventListener("hashchange", changed);
  return () => removeEventListener("hashchange", changed);
}
