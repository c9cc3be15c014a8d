import { useRef, useState } from "react";
import { useWords } from "../words/useWords.ts";

interface Props {
  readonly address: string;
  readonly expires: string;
}

/** A link that is told this once, to be copied. */
export function LinkOnce({ address, expires }: Props) {
  const words = useWords();
  const { say } = words;
  const field = useRef<HTMLInputElement>(null);
  const [copied, setCopied] = useState<"yes" | "byHand">();
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(address);
      setCopied("yes");
    } catch {
      // No clipboard without a secure address: the text is marked to be copied by hand.
      field.current?.focus();
      field.current?.select();
      setCopied("byHand");
    }
  };
  return (
    <div className="link-once">
      <label className="field">
        <span className="field-label">{say("desk.linkOnce")}</span>
        <input
          ref={field}
          className="text-input link-text"
          readOnly
          value={address}
          onFocus={(event) => event.target.select()}
        />
      </label>
      <p className="link-hands">
        <button type="button" className="action action-strong" onClick={() => void copy()}>
          {say("desk.copy")}
        </button>
        <span role="status" className="quiet">
          {copied === undefined ? "" : say(copied === "yes" ? "desk.copied" : "desk.copyByHand")}
        </span>
      </p>
      <p className="quiet">
        {say("desk.linkUntil", { when: words.instant(expires, { dateStyle: "long" }) })} {say("desk.linkOnlyNow")}
      </p>
      {isLoopback(location.hostname) ? <p className="caution">{say("desk.linkLoopback")}</p> : null}
    </div>
  );
}

/** Returns the whole address of a customer's page with its secret.
 *  Example: linkAddress("share", "abc", "https://shop.test/x/?design=1#/jobs")  ->  "https://shop.test/x/share.html#abc" */
export function linkAddress(page: "share" | "intake", token: string, here: string): string {
  const address = new URL(`${page}.html`, here);
  address.hash = token;
  return address.href;
}

const isLoopback = (host: string) => host === "localhost" || host === "[::1]" || /^127\./.test(host);
