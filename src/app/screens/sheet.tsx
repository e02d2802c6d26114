import { sheets } from '../../words/en/sheets.ts';
import { Screen } from '../parts/screen.tsx';

export function SheetScreen() {
  return <Screen title={sheets.title}>{null}</Screen>;
}
