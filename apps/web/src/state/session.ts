import { routes, type Session } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
import { type Maker, makerKey, makerOf } from "./maker.ts";
import { createStore, useStore } from "./store.ts";

/** Who works at this page, as far as the server has said so. `unreachable` while it cannot be asked. */
export interface SessionState {
  readonly session: Session | undefined;
  readonly unreachable: boolean;
}

const store = createStore<SessionState>({ session: undefined, unreachable: false });

/** Returns what is known of who works here and renders again when it changes. */
export function useSession(): SessionState {
  return useStore(store, (state) => state);
}

/** What is known of who works here, for what is no component. */
export function presentSession(): SessionState {
  return store.get();
}

/** Tells of every change of who works here; returns how to stop it. */
export function watchSession(listener: () => void): () => void {
  watchOtherPages();
  return store.subscribe(listener);
}

/** Takes over what the server said, such as after signing in. */
export function knowSession(session: Session): void {
  const maker = makerOf(session);
  if (maker !== undefined) remember(maker);
  store.patch({ session, unreachable: false });
}

/** Says that the server wants somebody to sign in, as a refused request told. It may have been sent before somebody did, and
 *  be refused after: the server is asked. */
export function signedOut(): void {
  const { session } = store.get();
  store.patch({
    session: {
      who: "nobody",
      accountId: null,
      name: null,
      role: null,
      firstOwnerWanted: session?.firstOwnerWanted ?? false,
    },
  });
  void askSession();
}

/** Asks the server who works here. */
export async function askSession(): Promise<SessionState> {
  const answer = await ask(routes.session, {});
  if (answer.ok) knowSession(answer.value);
  else store.patch({ unreachable: true });
  return store.get();
}

/** Whether whoever works here may change things; what is not known yet is left to the server to refuse. */
export function mayWork(session: Session | undefined): boolean {
  return session?.role !== "readOnly";
}

/** Where it is written who worked on this device last: edits bear a name also while no server can be asked, and every page
 *  of the browser knows at once who has signed in on another. */
const place = "tidewright.worksHere";
let inMemory: Maker | undefined;

function remember(maker: Maker | undefined): void {
  inMemory = maker;
  try {
    if (maker === undefined) localStorage.removeItem(place);
    else if (localStorage.getItem(place) !== JSON.stringify(maker)) localStorage.setItem(place, JSON.stringify(maker));
  } catch {
    // Storage is closed to us: nothing waits on this device over a reload either.
  }
}

function remembered(): Maker | undefined {
  try {
    const text = localStorage.getItem(place);
    return text === null ? inMemory : (JSON.parse(text) as Maker);
  } catch {
    return inMemory;
  }
}

/** Who makes the edits of this moment. A session that has run out does not change that, signing out and signing in does. */
export function presentMaker(): Maker {
  return remembered() ?? { who: "nobody" };
}

/** Done once it is known who works here, as far as it can be; asks nobody on a device that knows. */
export async function makerKnown(): Promise<void> {
  if (remembered() === undefined && store.get().session === undefined) await askSession();
}

/** Whoever worked here has signed out: what is done from now on is not theirs. */
export function forgetMaker(): void {
  remember(undefined);
}

let watching = false;

/** Somebody signing in or out on another page of this browser does so on this one too: they share the cookie. */
function watchOtherPages(): void {
  if (watching) return;
  watching = true;
  window.addEventListener("storage", ({ key, newValue }) => {
    if (key !== place) return;
    if (newValue === null) inMemory = undefined;
    const here = makerOf(store.get().session);
    if (here === undefined || makerKey(here) !== makerKey(presentMaker())) void askSession();
  });
}
