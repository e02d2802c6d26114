import { settings } from '../../words/en/settings.ts';
import { Screen } from '../parts/screen.tsx';

export function Settings() {
  return <Screen title={settings.title}>{null}</Screen>;
}
