import { rules } from '../../words/en/sheets.ts';
import { Screen } from '../parts/screen.tsx';

export function RuleSets() {
  return <Screen title={rules.title}>{null}</Screen>;
}
