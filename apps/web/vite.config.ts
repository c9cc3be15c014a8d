import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

// Relative addresses let the built page be served from any path, and the "source" condition takes the packages as they are.
export default defineConfig({
  base: "./",
  plugins: [react()],
  resolve: { conditions: ["source", "module", "browser", "development|production", "default"] },
  worker: { format: "es" },
  build: { outDir: "dist", emptyOutDir: true, assetsInlineLimit: 0, target: "es2022", chunkSizeWarningLimit: 1500 },
});
