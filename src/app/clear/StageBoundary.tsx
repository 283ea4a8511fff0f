import { Component, type ReactNode } from "react";

export type StageBoundaryProps = {
  children: ReactNode;
};

/** Keeps a picture that fails (a chunk that does not load, a driver that gives up) from taking the answers with it. */
export class StageBoundary extends Component<StageBoundaryProps, { readonly message: string | null }> {
  override state = { message: null };

  static getDerivedStateFromError(error: unknown) {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { message } = this.state;
    if (message === null) return this.props.children;
    return (
      <p className="stage-message" role="alert">
        The picture could not be drawn ({message}). The answers, gaps and numbers do not need it and are
        complete.
      </p>
    );
  }
}
