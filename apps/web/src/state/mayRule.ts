import type { Session } from "@tidewright/protocol";

/** Whether whoever works here may do what is the owner's: at the server's own machine there is nobody else. */
export function mayRule(session: Session | undefined): boolean {
  return session?.role === "owner" || session?.who === "thisMachine";
}
