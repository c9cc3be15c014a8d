import { join } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

/** Whatever slips into a page of ours, it can ask nothing of anybody but the server it came from. */
const closed = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "style-src 'self' 'unsafe-inline'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

const contentSecurity: Plugin = {
  name: "content-security",
  // The development server needs inline scripts; what is shipped does not.
  apply: "build",
  transformIndexHtml: () => [
    { tag: "meta", attrs: { "http-equiv": "Content-Security-Policy", content: closed }, injectTo: "head-prepend" },
  ],
};

// Relative addresses let the built page be served from any path, and the "source" condition takes the packages as they are.
export default defineConfig({
  base: "./",
  plugins: [react(), contentSecurity],
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
