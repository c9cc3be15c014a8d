import { Component, type ErrorInfo, type ReactNode } from "react";
import { words } from "../words/useWords.ts";

interface Props {
  /** What could not be drawn: "the drawing". */
  readonly what: string;
  /** When this changes the drawing is tried again. */
  readonly again: unknown;
  readonly children: ReactNode;
}

interface State {
  readonly fault: string | undefined;
  readonly again: unknown;
}

/** Keeps a fault of ours in one place of the page: the rest, and above all the document, stays usable. */
export class FaultScreen extends Component<Props, State> {
  override state: State = { fault: undefined, again: this.props.again };

  static getDerivedStateFromError(error: unknown): Partial<State> {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  static getDerivedStateFromProps(props: Props, state: State): Partial<State> | null {
    return props.again === state.again ? null : { fault: undefined, again: props.again };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo): void {
    // The one place where a fault of the page reaches its log, with the component it came from.
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === undefined) return this.props.children;
    return (
      <p className="field-problem fault" role="alert">
        {words().say("bench.fault", { what: this.props.what, fault })}
      </p>
    );
  }
}
