import { lazy, Suspense, useEffect, useState } from "react";
import { dropFirstPicture } from "../firstPicture/dropFirstPicture.ts";
import { tellKeeping, useKeeping } from "../keeping/keepingState.ts";
import { closeKept, type NotOpened, openKept } from "../keeping/openKept.ts";
import { lookOnly } from "../state/bench.ts";
import { askSession, knowSession, mayWork, useSession } from "../state/session.ts";
import { enter, useWords } from "../words/useWords.ts";
import { Bench } from "./Bench.tsx";
import { NotOpenedPage } from "./NotOpenedPage.tsx";

const SignIn = lazy(async () => {
  const [{ SignIn }] = await Promise.all([import("../doors/SignIn.tsx"), enter("doors")]);
  return { default: SignIn };
});

type Opening = "opening" | "open" | NotOpened;

/** The bench on a design of the shop; a door stands before it where the server wants one. */
export function KeptBench({ designId }: { readonly designId: string }) {
  const [opening, setOpening] = useState<Opening>("opening");
  const [tries, setTries] = useState(0);
  const { say } = useWords();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another try is a new opening
  useEffect(() => {
    let here = true;
    setOpening("opening");
    void openKept(designId).then((not) => {
      if (here) setOpening(not ?? "open");
      else closeKept();
    });
    return () => {
      here = false;
      closeKept();
    };
  }, [designId, tries]);
  useRights();
  // A bench that is open takes the first picture away itself, once its own drawing stands.
  useEffect(() => {
    if (opening !== "opening" && opening !== "open") dropFirstPicture();
  }, [opening]);
  const again = () => setTries(tries + 1);
  if (opening === "opening") return <p className="page-wait">{say("keeping.opening")}</p>;
  if (opening === "open") return <OpenBench />;
  if (opening.why === "signIn") return <DoorTo onOpen={again} />;
  return <NotOpenedPage not={opening} onAgain={again} />;
}

/** The bench stays as it is while somebody signs in: work that waits is sent afterwards. */
function OpenBench() {
  const signingIn = useKeeping((state) => state.signingIn);
  const keeper = useKeeping((state) => state.keeper);
  if (!signingIn) return <Bench />;
  const open = () => {
    tellKeeping({ signingIn: false });
    keeper?.nudge();
  };
  return <DoorTo onOpen={open} />;
}

function DoorTo({ onOpen }: { readonly onOpen: () => void }) {
  const { session } = useSession();
  if (session === undefined) return null;
  return (
    <Suspense fallback={null}>
      <SignIn
        session={session}
        onSignedIn={(signedIn) => {
          knowSession(signedIn);
          onOpen();
        }}
      />
    </Suspense>
  );
}

/** An account that may only look finds the bench open and its edits refused. */
function useRights(): void {
  const { session } = useSession();
  const { say } = useWords();
  useEffect(() => {
    void askSession();
  }, []);
  useEffect(() => {
    lookOnly(mayWork(session) ? undefined : say("keeping.lookOnly"));
    return () => lookOnly(undefined);
  }, [session, say]);
}
