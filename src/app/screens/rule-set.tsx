import { rules } from '../../words/en/sheets.ts';
import { Screen } from '../parts/screen.tsx';

export function RuleSetScreen() {
  return <Screen title={rules.title}>{null}</Screen>;
}
