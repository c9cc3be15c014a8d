import "./quietZod.ts";
import "./pageStyles.ts";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./App.tsx";
import { installPages } from "./keeping/installed.ts";
import { watchWaiting } from "./keeping/watchWaiting.ts";
import { applyLanguage, applyTheme } from "./state/settings.ts";
import { enter } from "./words/useWords.ts";

applyTheme();
await Promise.all([applyLanguage(), enter("elevation", "problems", "serverProblems")]);
createRoot(document.getElementById("bench")!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

// The pages of the next visit can wait until this one stands.
addEventListener("load", () => void installPages());
if (document.readyState === "complete") void installPages();
watchWaiting();
