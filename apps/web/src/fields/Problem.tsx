interface Props {
  /** Nothing is shown where nothing is wrong. */
  readonly text: string | undefined;
  readonly id?: string;
}

/** Why something cannot be, spoken as soon as it comes. */
export function Problem({ text, id }: Props) {
  if (text === undefined) return null;
  return (
    <p className="field-problem" id={id} role="alert">
      {text}
    </p>
  );
}
