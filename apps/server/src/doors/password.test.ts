import { loadWords, sayAgain } from "@tidewright/words";
import { describe, expect, it } from "vitest";
import { isCheaper, leastCost, passwordProblems, passwordsAt, TooBusy, usualCost } from "./password.ts";

describe("a password", () => {
  it("is kept as argon2id at no less than what OWASP asks, and never twice alike", async () => {
    const passwords = passwordsAt();
    const [one, other] = await Promise.all([
      passwords.hash("seven brass valves"),
      passwords.hash("seven brass valves"),
    ]);
    // RFC 9106, section 4, second recommended option: t=3, p=4, m=2^16 KiB.
    expect(one).toMatch(/^\$argon2id\$v=19\$m=65536,t=3,p=4\$[\w+/]{22}\$[\w+/]{43}$/);
    expect(one).not.toBe(other);
    expect(isCheaper(one, leastCost)).toBe(false);
  });

  it("is right for its own hash alone, however the same letters were typed", async () => {
    const passwords = passwordsAt(leastCost);
    const kept = await passwords.hash("Überlauf im Keller");
    expect(await passwords.check("U\u0308berlauf im Keller", kept)).toEqual({ right: true, outdated: false });
    expect(await passwords.check("überlauf im Keller", kept)).toEqual({ right: false, outdated: false });
    expect(await passwords.check("Überlauf im Keller", undefined)).toEqual({ right: false, outdated: false });
  });

  it("is hashed anew when hashes cost more than they did", async () => {
    const kept = await passwordsAt(leastCost).hash("seven brass valves");
    expect(await passwordsAt(usualCost).check("seven brass valves", kept)).toEqual({ right: true, outdated: true });
    expect(await passwordsAt(usualCost).check("eight brass valves", kept)).toEqual({ right: false, outdated: false });
  });

  it("takes as long to refuse for a name that is not there as for one that is", async () => {
    const passwords = passwordsAt(leastCost);
    const kept = await passwords.hash("seven brass valves");
    const times: Record<"there" | "notThere", number[]> = { there: [], notThere: [] };
    await passwords.check("eight brass valves", undefined);
    // By turns, so that a busy minute of the machine slows both.
    for (let turn = 0; turn < 15; turn++) {
      for (const who of ["there", "notThere"] as const) {
        const start = performance.now();
        await passwords.check("eight brass valves", who === "there" ? kept : undefined);
        times[who].push(performance.now() - start);
      }
    }
    const middle = (all: number[]): number => all.sort((a, b) => a - b)[7]!;
    const [there, notThere] = [middle(times.there), middle(times.notThere)];
    // A look-up that skipped the hash would be a thousand times faster; the rest is a busy machine's noise.
    expect(notThere / there).toBeGreaterThan(0.1);
    expect(notThere / there).toBeLessThan(10);
  });

  it("is not checked beside forty others that wait", async () => {
    const passwords = passwordsAt(leastCost);
    // The first check ends after the hash that nobody has.
    await passwords.check("seven brass valves", undefined);
    const all = await Promise.allSettled(Array.from({ length: 60 }, () => passwords.hash("seven brass valves")));
    const refused = all.filter((each) => each.status === "rejected");
    expect(refused).toHaveLength(60 - 42);
    for (const each of refused) expect(each.reason).toBeInstanceOf(TooBusy);
    expect(await passwords.hash("seven brass valves")).toMatch(/^\$argon2id/);
  });

  it("that others guess first is refused, without being repeated, in words that are there in German too", async () => {
    const german = await loadWords("de");
    for (const weak of [
      "mara.lindt",
      "MaraLindt!",
      "maralindt2024",
      "maralindtmaralindt",
      "password123",
      "Passw0rd1234",
      "qwertyuiop",
      "aaaaaaaaaaaa",
      "abababababab",
      "1234567890",
      "correct horse battery staple",
    ]) {
      const problems = passwordProblems("/password", weak, "Mara Lindt");
      expect({ weak, count: problems.length }).toEqual({ weak, count: 1 });
      expect(JSON.stringify(problems)).not.toContain(weak);
      for (const text of problems.flatMap(({ message, fix }) => [message, fix])) {
        expect(sayAgain(text, german, "serverProblems")).not.toBe(text);
      }
    }
    for (const fine of ["seven brass valves", "Überlauf im Keller", "mara likes eleven gobies", "uk9$Lq!vv0zR"]) {
      expect({ fine, problems: passwordProblems("/password", fine, "Mara") }).toEqual({ fine, problems: [] });
    }
  });
});
