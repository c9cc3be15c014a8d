import "../../quietZod.ts";
import "../../pageStyles.ts";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { applyLanguage, applyTheme } from "../../state/settings.ts";

applyTheme();
await applyLanguage();
createRoot(document.getElementById("intake")!).render(<StrictMode>{null}</StrictMode>);
