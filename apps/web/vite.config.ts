import { join } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { parsedTexts } from "./build/parsedTexts.ts";
import { pressed } from "./build/pressed.ts";
import { readTables } from "./build/readTables.ts";
import { sharedWorkers } from "./build/sharedWorkers.ts";

/** Whatever slips into a page of ours, it can ask nothing of anybody but the server it came from. */
const closed = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
].join("; ");

const contentSecurity: Plugin = {
  name: "content-security",
  // The development server needs inline scripts; what is shipped does not.
  apply: "build",
  transformIndexHtml: () => [
    { tag: "meta", attrs: { "http-equiv": "Content-Security-Policy", content: closed }, injectTo: "head-prepend" },
  ],
};

/** What the installed app keeps of itself on the device, so that it opens in a cellar: every screen of the shop's own page,
 *  and nothing that the server answers. A newer version waits until somebody lets it in. */
const offline = VitePWA({
  strategies: "generateSW",
  registerType: "prompt",
  injectRegister: null,
  // A file like any other in public/: the customers' pages are not to be installed.
  manifest: false,
  includeManifestIcons: false,
  workbox: {
    globPatterns: ["index.html", "assets/*.{js,css,woff2}", "icons/*", "manifest.webmanifest"],
    navigateFallback: "index.html",
    navigateFallbackDenylist: [/\/api\//, /\/(share|intake)\.html$/],
    clientsClaim: true,
    skipWaiting: false,
    inlineWorkboxRuntime: true,
    sourcemap: false,
    maximumFileSizeToCacheInBytes: 8_000_000,
  },
});

// Relative addresses let the built page be served from any path, and the "source" condition takes the packages as they are.
export default defineConfig({
  base: "./",
  plugins: [react(), readTables, parsedTexts, sharedWorkers, contentSecurity, offline, pressed],
  resolve: { conditions: ["source", "module", "browser", "development|production", "default"] },
  worker: { format: "es" },
  build: {
    outDir: "dist",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    target: "es2022",
    chunkSizeWarningLimit: 1500,
    // Three doors: the shop's own page, a customer's view, a customer's intake. Each loads what it shows and no more.
    rolldownOptions: {
      input: ["index.html", "share.html", "intake.html"].map((page) => join(import.meta.dirname, page)),
    },
  },
});
