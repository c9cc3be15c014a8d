import { lazy, type ReactNode, Suspense, useEffect } from "react";
import { followShopCatalogue } from "./catalogue/shopRows.ts";
import { followShopTerms } from "./catalogue/shopTerms.ts";
import { AnothersLine } from "./keeping/AnothersLine.tsx";
import { useAnothersWork } from "./keeping/anothersWork.ts";
import { useKeeping } from "./keeping/keepingState.ts";
import { UpdateLine } from "./keeping/UpdateLine.tsx";
import { type Address, useAddress } from "./state/address.ts";
import { askSession, knowSession, useSession } from "./state/session.ts";
import { enter } from "./words/useWords.ts";

// One screen's code is loaded when it is asked for: the desk opens without the engine, the bench without the desk.
const Desk = lazy(async () => {
  const [{ Desk }] = await Promise.all([import("./desk/Desk.tsx"), enter("desk", "doors", "pumps", "pumpProblems")]);
  return { default: Desk };
});
const SignIn = lazy(async () => {
  const [{ SignIn }] = await Promise.all([import("./doors/SignIn.tsx"), enter("doors")]);
  return { default: SignIn };
});
const StartPage = lazy(async () => {
  const [{ StartPage }] = await Promise.all([import("./start/StartPage.tsx"), enter("start")]);
  return { default: StartPage };
});
const ComparePage = lazy(async () => ({ default: (await import("./compare/ComparePage.tsx")).ComparePage }));
const TryBench = lazy(async () => ({ default: (await import("./bench/TryBench.tsx")).TryBench }));
const KeptBench = lazy(async () => ({ default: (await import("./bench/BenchPage.tsx")).KeptBench }));

const ApartSheet = lazy(async () => ({ default: (await import("./keeping/ApartSheet.tsx")).ApartSheet }));
const AnothersSheet = lazy(async () => ({ default: (await import("./keeping/AnothersSheet.tsx")).AnothersSheet }));

/** The screen that the address asks for, behind a door where the server wants one. */
export function App() {
  const address = useAddress();
  useShopCatalogue(address);
  return (
    <>
      <Suspense fallback={<p className="page-wait" aria-busy="true" />}>{screenOf(address)}</Suspense>
      <div className="page-lines">
        <UpdateLine />
        <AnothersLine />
      </div>
      <Apart />
      <Anothers />
    </>
  );
}

/** The shop's own pumps and terms are asked for while the screen's code is still under way; on trial there is no shop. */
function useShopCatalogue(address: Address): void {
  const { session } = useSession();
  const who = session?.who;
  const kept = address.page !== "try" && !(address.page === "start" && address.trial);
  useEffect(() => {
    if (!kept || who === "nobody") return;
    void followShopCatalogue();
    void followShopTerms();
  }, [kept, who]);
}

/** Work that was set apart is told wherever somebody is. */
function Apart() {
  const apart = useKeeping((state) => state.apart !== undefined);
  return apart ? (
    <Suspense fallback={null}>
      <ApartSheet />
    </Suspense>
  ) : null;
}

/** What becomes of another's work is asked wherever somebody is. */
function Anothers() {
  const asking = useAnothersWork((state) => state.asking);
  return asking ? (
    <Suspense fallback={null}>
      <AnothersSheet />
    </Suspense>
  ) : null;
}

function screenOf(address: ReturnType<typeof useAddress>): ReactNode {
  switch (address.page) {
    case "try":
      return <TryBench key={address.job} job={address.job} />;
    case "design":
      return <KeptBench key={address.designId} designId={address.designId} />;
    case "compare":
      return (
        <Door>
          <ComparePage left={address.left} right={address.right} />
        </Door>
      );
    case "start":
      // Where nothing is kept nobody need be known.
      return address.trial ? (
        <StartPage />
      ) : (
        <Door>
          <StartPage />
        </Door>
      );
    case "desk":
      return (
        <Door>
          <Desk />
        </Door>
      );
  }
}

/** What lies behind it is shown once the server has said who is there; where it cannot be asked, what is kept on this
 *  device is shown. */
function Door({ children }: { readonly children: ReactNode }) {
  const { session, unreachable } = useSession();
  useEffect(() => {
    if (session === undefined) void askSession();
  }, [session]);
  if (session?.who === "nobody") return <SignIn session={session} onSignedIn={knowSession} />;
  if (session === undefined && !unreachable) return <p className="page-wait" aria-busy="true" />;
  return children;
}
