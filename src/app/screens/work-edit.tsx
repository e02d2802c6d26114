import { workForm } from '../../words/en/machine.ts';
import { Screen } from '../parts/screen.tsx';

export function WorkEdit() {
  return <Screen title={workForm.title}>{null}</Screen>;
}
