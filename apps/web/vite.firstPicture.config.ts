import { join } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

// The picture that the server draws into a page before the page's program has arrived, as one file for Node. It lies in a
// hidden folder beside the pages, from which nothing is served.
export default defineConfig({
  publicDir: false,
  plugins: [react()],
  resolve: { conditions: ["source", "module", "node", "production", "default"] },
  ssr: { noExternal: true, resolve: { conditions: ["source", "module", "node", "production", "default"] } },
  build: {
    ssr: join(import.meta.dirname, "src/firstPicture/renderFirstPicture.tsx"),
    outDir: "dist/.server",
    emptyOutDir: true,
    target: "node20",
  },
});
