import { createServer, request as httpRequest } from "node:http";
import type { AddressInfo } from "node:net";
import { getRequestListener } from "@hono/node-server";
import { afterEach, describe, expect, it } from "vitest";
import { type FreshApp, freshApp } from "../testing/freshApp.ts";
import { removeFresh } from "../testing/freshDoors.ts";
import { makeZip } from "../testing/makeZip.ts";
import { csv, jpeg, pdf, png, sheet, sheetParts, webp } from "../testing/sampleFiles.ts";

afterEach(removeFresh);

const put = (fresh: FreshApp, kind: string, name: string, bytes: Uint8Array, more: Record<string, string> = {}) =>
  fresh.ask(`/api/jobs/${fresh.sharedJob.id}/files?kind=${kind}&name=${encodeURIComponent(name)}`, {
    method: "POST",
    as: "staff",
    bytes,
    headers: more,
  });

const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
const xlsx = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

describe("an upload", () => {
  it("is kept as what it is, whatever its name and its header say", async () => {
    const fresh = await freshApp();
    const cases: readonly (readonly [string, string, Buffer, string, "inline" | "attachment", string])[] = [
      ["photo", "tank.html", jpeg(), "image/jpeg", "inline", "tank.html.jpg"],
      ["photo", "tank.png", webp(), "image/webp", "inline", "tank.png.webp"],
      ["chart", "pump.jpg", pdf(), "application/pdf", "attachment", "pump.jpg.pdf"],
      ["chart", "pump.htm", csv(), "text/csv", "attachment", "pump.htm.csv"],
      ["chart", "pump.xlsx", sheet(), xlsx, "attachment", "pump.xlsx"],
      ["intake", "answers", Buffer.from('{"a":1}'), "application/json", "attachment", "answers.json"],
    ];
    for (const [kind, name, bytes, type, disposition, handedOut] of cases) {
      const sent = await put(fresh, kind, name, bytes, { "Content-Type": "text/html" });
      expect({ name, status: sent.status }).toEqual({ name, status: 201 });
      const entry = (await sent.json()) as { id: string };
      expect(entry).toMatchObject({ kind, name, contentType: type, size: bytes.length });
      const file = await fresh.ask(`/api/files/${entry.id}`, { as: "readOnly" });
      expect(Buffer.from(await file.arrayBuffer()).equals(bytes)).toBe(true);
      expect(Object.fromEntries(file.headers)).toMatchObject({
        "content-type": type,
        "x-content-type-options": "nosniff",
        "content-security-policy": "sandbox; default-src 'none'",
        "cross-origin-resource-policy": "same-origin",
        "x-frame-options": "DENY",
      });
      expect(file.headers.get("Content-Disposition")).toMatch(new RegExp(`^${disposition}; filename="${handedOut}";`));
      const again = await fresh.ask(`/api/files/${entry.id}`, {
        as: "readOnly",
        headers: { "If-None-Match": file.headers.get("ETag")! },
      });
      expect(again.status).toBe(304);
      expect(again.headers.get("Content-Security-Policy")).toBe("sandbox; default-src 'none'");
    }
  });

  it("that runs, hides, grows or lies is refused with its name and a fix, and nothing of it is kept", async () => {
    const fresh = await freshApp();
    const zeros = Buffer.alloc(33 * 1024 * 1024);
    const cases: readonly (readonly [string, string, Buffer, number])[] = [
      ["photo", "drawing.svg", svg, 415],
      ["logo", "logo.png", svg, 415],
      ["photo", "page.png", Buffer.from("<!doctype html><script>alert(1)</script>"), 415],
      ["photo", "both.jpg", jpeg({ after: makeZip([{ name: "A.class", content: "x" }]).toString("latin1") }), 415],
      ["paper", "both.pdf", Buffer.from("%PDF-1.7\n<script>alert(1)</script>"), 415],
      ["photo", "chart.pdf", pdf(), 415],
      ["paper", "chart.csv", csv(), 415],
      ["chart", "bomb.xlsx", sheet({ name: "xl/a.xml", content: zeros }), 415],
      ["chart", "liar.xlsx", sheet({ name: "xl/a.xml", content: zeros, says: 10 }), 415],
      ["chart", "macros.xlsx", sheet({ name: "xl/vbaProject.bin", content: "x" }), 415],
      ["chart", "macros.xlsm", makeZip(sheetParts("application/vnd.ms-excel.sheet.macroEnabled.main+xml")), 415],
      ["chart", "escape.xlsx", sheet({ name: "../../../etc/passwd.xml", content: "x" }), 415],
      ["chart", "any.zip", makeZip([{ name: "a.txt", content: "x" }]), 415],
      ["photo", "program.jpg", Buffer.concat([Buffer.from("MZ"), Buffer.alloc(300)]), 415],
      ["photo", "empty.jpg", Buffer.alloc(0), 422],
      ["logo", "large.png", Buffer.alloc(1024 * 1024 + 1), 413],
      ["photo", "large.jpg", Buffer.alloc(20 * 1024 * 1024 + 1), 413],
    ];
    for (const [kind, name, bytes, status] of cases) {
      const response = await put(fresh, kind, name, bytes);
      expect({ name, status: response.status }).toEqual({ name, status });
      const details = (await response.json()) as { problems: { message: string; fix: string }[] };
      expect(details.problems[0]!.message).toContain(`"${name}"`);
      expect(details.problems[0]!.fix).not.toBe("");
    }
    expect(await fresh.store.files.list(fresh.sharedJob.id)).toEqual([]);
  });

  it("is not read further than the limit, though its length was not said or was understated", async () => {
    const fresh = await freshApp({ listensOn: "127.0.0.1" });
    const server = createServer(getRequestListener(fresh.app.hono.fetch));
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    const { port } = server.address() as AddressInfo;
    try {
      let written = 0;
      const status = await new Promise<number>((resolve, reject) => {
        const sending = httpRequest(
          {
            port,
            host: "127.0.0.1",
            method: "POST",
            path: "/api/files?kind=logo&name=endless.png",
            headers: { "X-Tidewright": "1", "Transfer-Encoding": "chunked" },
          },
          (response) => {
            response.resume();
            resolve(response.statusCode!);
            sending.destroy();
          },
        );
        sending.on("error", (error) => (written > 0 ? resolve(-1) : reject(error)));
        const part = Buffer.concat([png(), Buffer.alloc(64 * 1024)]);
        const more = (): void => {
          if (sending.destroyed || written > 200 * 1024 * 1024) return;
          written += part.length;
          sending.write(part, () => setImmediate(more));
        };
        more();
      });
      expect(status).toBe(413);
      expect(written).toBeLessThan(40 * 1024 * 1024);
    } finally {
      server.closeAllConnections();
      server.close();
    }
  });

  it("belongs to a job that is there, and names with paths in them lose the path", async () => {
    const fresh = await freshApp();
    const nowhere = await fresh.ask("/api/jobs/none/files?kind=photo&name=a.png", {
      method: "POST",
      as: "staff",
      bytes: png(),
    });
    expect(nowhere.status).toBe(404);
    for (const [name, kept] of [
      ["../../../../etc/passwd", "passwd"],
      ["..\\..\\windows\\win.ini", "win.ini"],
      ["/", "file"],
      ["..", "file"],
      ["a\0.png", "a.png"],
    ] as const) {
      const sent = await put(fresh, "photo", name, png());
      expect(await sent.json()).toMatchObject({ name: kept });
    }
    const unknown = await put(fresh, "executable", "a.png", png());
    expect(unknown.status).toBe(422);
  });
});
