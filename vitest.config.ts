import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

// Tests run on the sources: the "source" export condition skips dist, so no build is needed first.
export default defineConfig({
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source"] } },
  test: {
    include: ["{packages,apps,checks,tools}/**/*.test.{ts,tsx}"],
    exclude: ["**/node_modules/**", "**/dist/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    // Left to itself the runner keeps one core free, which of two is half: browser tests wait more than they work.
    maxWorkers: Math.max(2, availableParallelism() - 1),
    // On a machine that others share a page may miss its moment once; what is broken fails twice.
    retry: process.env.CI === undefined ? 0 : 1,
  },
});
