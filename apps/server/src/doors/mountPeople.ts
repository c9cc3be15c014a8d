import { routes } from "@tidewright/protocol";
import type { App } from "../app.ts";
import { type Asked, mount } from "../http/mount.ts";
import { nobody } from "./asker.ts";
import { changeAccount, createAccount } from "./people.ts";
import { setCookie } from "./sessionCookie.ts";
import { changePassword, type LetIn, makeFirstOwner, sessionOf, signIn, signOut } from "./signIn.ts";
import { senderKey } from "./whoAsks.ts";

/** Signing in and out, the first owner, and who else may sign in. */
export function mountPeople(app: App): void {
  const { doors, store } = app;
  const letIn = ({ headers }: { readonly headers: Headers }, { session, token }: LetIn) => {
    headers.set("Set-Cookie", setCookie(token, doors.behindTls));
    return session;
  };
  const sender = ({ bearings }: Pick<Asked<typeof routes.session>, "bearings">) => senderKey(doors, bearings);
  mount(app, routes.session, ({ asker }) => sessionOf(doors, asker));
  mount(app, routes.signIn, async (asked) => {
    const before = asked.asker.who === "account" ? asked.asker.token : undefined;
    return letIn(asked, await signIn(doors, asked.body, sender(asked), before));
  });
  mount(app, routes.signOut, async ({ asker, headers }) => {
    await signOut(doors, asker);
    headers.set("Set-Cookie", setCookie(undefined, doors.behindTls));
    return sessionOf(doors, asker.who === "account" ? nobody : asker);
  });
  mount(app, routes.changePassword, async (asked) =>
    letIn(asked, await changePassword(doors, asked.asker, asked.body, sender(asked))),
  );
  mount(app, routes.firstOwner, async (asked) => letIn(asked, await makeFirstOwner(doors, asked.body, sender(asked))));
  mount(app, routes.accounts, async () => ({ items: await store.accounts.list() }));
  mount(app, routes.createAccount, ({ body, by }) => createAccount(doors, body, by.author));
  mount(app, routes.changeAccount, ({ params, expected, body, by }) =>
    changeAccount(doors, params.accountId, expected, body, by.author),
  );
}
