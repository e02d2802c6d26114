import { Component, type ComponentChildren } from 'preact';
import { common } from '../../words/en/common.ts';
import { shell } from '../../words/en/settings.ts';
import { Button } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';

interface BrokenProps {
  readonly children: ComponentChildren;
}

/** Stands in for a screen that failed, with ways on; a page that stays white would have none. */
export class Broken extends Component<BrokenProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static override getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override componentDidCatch(error: unknown): void {
    // oxlint-disable-next-line no-console -- the only trace that a fault leaves on a phone
    console.error(error);
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <Screen
        title={shell.brokenTitle}
        bar={
          <>
            <Button onTap={() => location.assign('/')}>{common.toHome}</Button>
            <Button look="main" onTap={() => location.reload()}>
              {shell.reload}
            </Button>
          </>
        }
      >
        <p role="alert">{shell.brokenLine}</p>
      </Screen>
    );
  }
}
