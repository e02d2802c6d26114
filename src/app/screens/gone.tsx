import { common } from '../../words/en/common.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';

/** An address that names nothing, or something that is no longer here. */
export function Gone() {
  return (
    <Screen
      title={common.notFound}
      bar={
        <ButtonLink look="main" href="/">
          {common.toHome}
        </ButtonLink>
      }
    >
      <p>{common.gone}</p>
    </Screen>
  );
}
