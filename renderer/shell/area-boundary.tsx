import { Component, type ReactNode } from "react";
import { words } from "../words/words.ts";

const prose = words.screens.frame;

interface AreaBoundaryProps {
  /** Another area or a changed workspace is worth another try. */
  readonly area: string;
  readonly workspace: object;
  readonly children: ReactNode;
}

/** Keeps a mistake of one area from blanking the window: the others and what was decided stay within reach. */
export class AreaBoundary extends Component<AreaBoundaryProps, { readonly broken: boolean }> {
  override readonly state = { broken: false };

  static getDerivedStateFromError(): { readonly broken: boolean } {
    return { broken: true };
  }

  override componentDidUpdate(before: AreaBoundaryProps): void {
    const changed = before.area !== this.props.area || before.workspace !== this.props.workspace;
    if (this.state.broken && changed) this.setState({ broken: false });
  }

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    return (
      <section className="panel panel-padded">
        <h1 className="area-title">{prose.areaNotDrawn}</h1>
        <p>{prose.areaNotDrawnWhatNow}</p>
      </section>
    );
  }
}
