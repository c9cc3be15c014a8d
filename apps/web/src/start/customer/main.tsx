import "../../quietZod.ts";
import "../../pageStyles.ts";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { applyLanguage, applyTheme } from "../../state/settings.ts";
import { enter } from "../../words/useWords.ts";
import { CustomerPage } from "./CustomerPage.tsx";

applyTheme();
await Promise.all([applyLanguage(), enter("start", "elevation", "problems", "serverProblems")]);
createRoot(document.getElementById("intake")!).render(
  <StrictMode>
    <CustomerPage />
  </StrictMode>,
);
