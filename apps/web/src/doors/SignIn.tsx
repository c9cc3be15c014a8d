import type { Session } from "@tidewright/protocol";

/** Asks who works here, or makes the first owner. */
export function SignIn(_: { readonly session: Session; readonly onSignedIn: (session: Session) => void }) {
  return <main className="sign-in" />;
}
