import { describe, expect, it } from "vitest";
import { isOwnWork, type Maker, makerOf, withMaker } from "./maker.ts";

const ina: Maker = { who: "account", id: "a1", name: "Ina" };
const jo: Maker = { who: "account", id: "a2", name: "Jo" };
const machine: Maker = { who: "thisMachine" };
const nobody: Maker = { who: "nobody" };

describe("who made what waits", () => {
  it("is an account, whatever it is called by now, or this machine, or nobody that is known", () => {
    const session = { who: "account", accountId: "a1", name: "Ina", role: "staff", firstOwnerWanted: false } as const;
    expect(makerOf(session)).toEqual(ina);
    expect(makerOf({ ...session, who: "thisMachine", accountId: null })).toEqual(machine);
    expect(makerOf({ ...session, who: "nobody", accountId: null, name: null, role: null })).toBeUndefined();
    expect(withMaker([ina], { ...ina, name: "Ina Berg" })).toHaveLength(1);
    expect(isOwnWork([ina], { ...ina, name: "Ina Berg" })).toBe(true);
  });

  it("is nobody else's to send, also where only a part of it is another's", () => {
    expect(isOwnWork([ina], jo)).toBe(false);
    expect(isOwnWork([jo, ina], jo)).toBe(false);
    expect(isOwnWork([machine], jo)).toBe(false);
    expect(isOwnWork([ina], machine)).toBe(false);
    expect(isOwnWork([], jo)).toBe(true);
  });

  it("of nobody that is known belongs to a machine where nobody signs in, and to no account", () => {
    expect(isOwnWork([nobody], machine)).toBe(true);
    expect(isOwnWork([nobody], jo)).toBe(false);
  });
});
