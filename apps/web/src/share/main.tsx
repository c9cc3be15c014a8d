import "../quietZod.ts";
import "../pageStyles.ts";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { applyLanguage, applyTheme } from "../state/settings.ts";
import { enter } from "../words/useWords.ts";
import { SharePage } from "./SharePage.tsx";

applyTheme();
await Promise.all([applyLanguage(), enter("doors", "elevation", "problems", "serverProblems")]);
createRoot(document.getElementById("share")!).render(
  <StrictMode>
    <SharePage />
  </StrictMode>,
);
