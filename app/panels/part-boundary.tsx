/** What stands in place of a part of the page that broke off, so that the rest of the page goes on. */
import { Component, type ReactNode } from "react";

interface BoundaryProps {
  readonly children: ReactNode;
  /** What to show instead; `again` tries the part once more. */
  instead(failure: Error, again: () => void): ReactNode;
}

export class PartBoundary extends Component<BoundaryProps, { readonly failure: Error | null }> {
  override state: { readonly failure: Error | null } = { failure: null };

  static getDerivedStateFromError(failure: Error) {
    return { failure };
  }

  override render(): ReactNode {
    const { failure } = this.state;
    if (!failure) return this.props.children;
    return this.props.instead(failure, () => this.setState({ failure: null }));
  }
}
