import { Problem } from "./Problem.tsx";

interface Props {
  /** Of the control, which `describedBy` joins to this note. */
  readonly id: string;
  readonly hint: string | undefined;
  readonly problem: string | undefined;
}

/** Below a control: what is wrong with it, else what it means. */
export function FieldNote({ id, hint, problem }: Props) {
  if (problem !== undefined) return <Problem id={`${id}-problem`} text={problem} />;
  if (hint === undefined) return null;
  return (
    <p className="field-hint" id={`${id}-hint`}>
      {hint}
    </p>
  );
}

/** Which text describes the control, for those who hear it. */
export function describedBy(id: string, hint: string | undefined, problem: string | undefined): string | undefined {
  if (problem !== undefined) return `${id}-problem`;
  return hint === undefined ? undefined : `${id}-hint`;
}
