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
  },
});
