import { machineForm } from '../../words/en/machine.ts';
import { Screen } from '../parts/screen.tsx';

export function MachineEdit() {
  return <Screen title={machineForm.addTitle}>{null}</Screen>;
}
