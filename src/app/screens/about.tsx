import { settings } from '../../words/en/settings.ts';
import { Screen } from '../parts/screen.tsx';

export function About() {
  return <Screen title={settings.about}>{null}</Screen>;
}
