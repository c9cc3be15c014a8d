import { describeFinding, type Finding, type Severity } from "@tidewright/advice";
import type { Look } from "../../output/deliver.ts";
import type { Styles } from "../../output/styles.ts";
import { wrap } from "../../output/wrap.ts";

/** Returns findings as they come: code, place, sentence, fix, and what to be careful with. */
export function findingsText(findings: readonly Finding[], { format, styles, width }: Look): string {
  return findings
    .map((finding) => {
      const { title, sentence, fix, caution } = describeFinding(finding, format);
      const colour = colourOf(finding.severity, styles);
      const place = finding.at === "" ? "whole design" : finding.at;
      return [
        `  ${colour(finding.severity.toUpperCase())} ${styles.bold(title)}`,
        `    ${styles.dim(`${finding.code} at ${place}`)}`,
        `    ${wrap(sentence, width, "    ")}`,
        fix === "" ? "" : `    ${wrap(`Fix: ${fix}`, width, "    ")}`,
        caution === undefined ? "" : `    ${wrap(`Mind: ${caution}`, width, "    ")}`,
      ]
        .filter((line) => line !== "")
        .join("\n");
    })
    .join("\n\n");
}

function colourOf(severity: Severity, styles: Styles): (text: string) => string {
  if (severity === "danger") return styles.red;
  return severity === "warning" ? styles.yellow : styles.cyan;
}
