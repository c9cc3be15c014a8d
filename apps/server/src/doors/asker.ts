import type { Access, AccountRole, Link } from "@tidewright/protocol";

/** Who asks: somebody at this machine, an account, the bearer of a customer's link (undefined where it opens nothing), or
 *  nobody that is known. */
export type Asker =
  | { readonly who: "thisMachine"; readonly name: string; readonly role: "owner" }
  | {
      readonly who: "account";
      readonly accountId: string;
      readonly name: string;
      readonly role: AccountRole;
      /** Secret of the session, for closing it. */
      readonly token: string;
    }
  | {
      readonly who: "link";
      readonly name: string;
      readonly link: Link | undefined;
      /** Id of the draft of an answer, where its sender says it. */
      readonly draft?: string | undefined;
      /** Whether the link is closed because this draft came through it. */
      readonly answered?: boolean;
    }
  | { readonly who: "nobody"; readonly name: string };

/** Whoever sits at this machine, where nobody signs in. */
export const thisMachine: Asker = { who: "thisMachine", name: "this machine", role: "owner" };
/** Somebody who is not known. */
export const nobody: Asker = { who: "nobody", name: "nobody" };

const ranks: Readonly<Record<AccountRole, number>> = { readOnly: 1, staff: 2, owner: 3 };
const needed = { look: 1, work: 2, own: 3 } as const;

/** Returns whether somebody may ask what a route of an access answers, or why not.
 *  asker who asks; access of the route   -> "yes"; "signIn" when an account would help (401); "notAllowed" when the account
 *  may not (403); "gone" for a link that opens nothing, or not this (404, alike for all such links)
 *  Source: RFC 9110, 15.5.2, 15.5.4 and 15.5.5.
 *  Example: allowed({ who: "thisMachine", name: "this machine", role: "owner" }, "own")  ->  "yes"
 *  Example: allowed({ who: "nobody", name: "nobody" }, "look")  ->  "signIn" */
export function allowed(asker: Asker, access: Access): "yes" | "signIn" | "notAllowed" | "gone" {
  if (access === "open") return "yes";
  if (access === "share" || access === "intake") {
    const kind = access === "share" ? "view" : "intake";
    return asker.who === "link" && asker.link?.kind === kind ? "yes" : "gone";
  }
  // A customer's link opens its own door and no other, whoever else its bearer is.
  if (asker.who === "link") return asker.link === undefined ? "signIn" : "notAllowed";
  if (asker.who === "nobody") return "signIn";
  return ranks[asker.role] >= needed[access] ? "yes" : "notAllowed";
}
