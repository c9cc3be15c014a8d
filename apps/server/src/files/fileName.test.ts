import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contentDisposition, displayName, downloadName } from "./fileName.ts";

describe("a file's name", () => {
  it("keeps its last part and loses what steers a path or a screen", () => {
    expect(displayName("..\\..\\boot.ini")).toBe("boot.ini");
    expect(displayName("/etc/passwd\0.png")).toBe("passwd.png");
    expect(displayName("sump\u202egpj.exe")).toBe("sumpgpj.exe");
    expect(displayName("a\r\nSet-Cookie: x=1.png")).toBe("aSet-Cookie: x=1.png");
    expect(displayName("<img src=x onerror=alert(1)>.png")).toBe("<img src=x onerror=alert(1)>.png");
    expect(displayName("Becken groß 🐠.jpg")).toBe("Becken groß 🐠.jpg");
  });

  it("is never empty, a path, longer than is kept or broken text, whatever was sent", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 400 }), (given) => {
        const name = displayName(given);
        expect(name).not.toMatch(/[/\\\p{Cc}]|^\.{1,2}$/u);
        expect(name.length).toBeGreaterThan(0);
        expect(name.length).toBeLessThanOrEqual(200);
        expect(name).not.toMatch(/\p{Surrogate}/u);
      }),
    );
  });

  it("comes with an ending that fits what the file is", () => {
    expect(downloadName("invoice.exe", "application/pdf")).toBe("invoice.exe.pdf");
    expect(downloadName("tank", "image/heic")).toBe("tank.heic");
    expect(downloadName("pump.xlsx", "application/x-unknown")).toBe("pump.xlsx.bin");
  });

  it("becomes one header of visible ASCII that says it whole, whatever it is", () => {
    // RFC 8187, 3.2.3, examples: pound and euro rates, percent-encoded as UTF-8.
    expect(contentDisposition("attachment", "£ and € rates")).toBe(
      `attachment; filename="_ and _ rates"; filename*=UTF-8''%C2%A3%20and%20%E2%82%AC%20rates`,
    );
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 100 }), (given) => {
        const name = displayName(given);
        const header = contentDisposition("inline", name);
        const parts = /^inline; filename="([^"\\]*)"; filename\*=UTF-8''([A-Za-z0-9!#$&+.^_`|~%-]+)$/.exec(header);
        expect(parts).not.toBeNull();
        expect(header).toMatch(/^[\x20-\x7e]+$/);
        expect(decodeURIComponent(parts![2]!)).toBe(name);
      }),
    );
  });
});
