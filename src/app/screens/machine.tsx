import { machine } from '../../words/en/machine.ts';
import { Screen } from '../parts/screen.tsx';

export function MachineScreen() {
  return <Screen title={machine.walks}>{null}</Screen>;
}
