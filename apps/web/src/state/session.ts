import { routes, type Session } from "@tidewright/protocol";
import { ask } from "../api/ask.ts";
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

/** Takes over what the server said, such as after signing in. */
export function knowSession(session: Session): void {
  store.patch({ session, unreachable: false });
}

/** Says that the server wants somebody to sign in, as a refused request told. */
export function signedOut(): void {
  const { session } = store.get();
  store.patch({
    session: { who: "nobody", name: null, role: null, firstOwnerWanted: session?.firstOwnerWanted ?? false },
  });
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
