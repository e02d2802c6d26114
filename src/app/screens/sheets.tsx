import { sheets } from '../../words/en/sheets.ts';
import { Screen } from '../parts/screen.tsx';

export function Sheets() {
  return <Screen title={sheets.title}>{null}</Screen>;
}
