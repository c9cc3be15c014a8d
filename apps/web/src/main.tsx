import "./quietZod.ts";
import "@fontsource/ibm-plex-sans-condensed/latin-400.css";
import "@fontsource/ibm-plex-sans-condensed/latin-500.css";
import "@fontsource/ibm-plex-sans-condensed/latin-600.css";
import "./tokens.css";
import "./styles/base.css";
import "./styles/answer.css";
import "./styles/findings.css";
import "./styles/sheets.css";
import "./styles/fields.css";
import "./styles/tables.css";
import "./styles/layout.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { Bench } from "./bench/Bench.tsx";
import { startBench } from "./state/bench.ts";
import { applyLanguage, applyTheme } from "./state/settings.ts";

applyTheme();
startBench();
await applyLanguage();
createRoot(document.getElementById("bench")!).render(
  <StrictMode>
    <Bench />
  </StrictMode>,
);
