import { type JobStage, jobStages } from "@tidewright/protocol";

/** How far a job has come, as water in a vessel: empty at the intake, full when built, lidded when closed. */
export function StageMark({ stage }: { readonly stage: JobStage }) {
  const step = jobStages.indexOf(stage);
  const full = jobStages.indexOf("built");
  const share = Math.min(1, step / full);
  const top = 15.5 - share * 11;
  return (
    <svg className="stage-mark" data-stage={stage} viewBox="0 0 16 18" width="16" height="18" aria-hidden="true">
      {share > 0 ? <path className="stage-water" d={`M2.5 ${top}H13.5V15.5H2.5Z`} /> : null}
      {step === 0 ? <path className="stage-arrow" d="M8 1V10M5 7.2 8 10.4 11 7.2" /> : null}
      <path d="M2.5 3V15.5H13.5V3" />
      {stage === "closed" ? <path d="M.5 2.5H15.5" /> : null}
    </svg>
  );
}
