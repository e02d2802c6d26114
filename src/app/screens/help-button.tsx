import { useState } from 'preact/hooks';
import { common } from '../../words/en/common.ts';
import { Button } from '../parts/button.tsx';
import { HelpPage } from './help-page.tsx';

/** Opens the help of an item or sag method on the same screen; text and drawing are loaded then. */
export function HelpButton({ topic }: { topic: string }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <Button look="plain" pressed={open} onTap={() => setOpen(!open)}>
        {common.help}
      </Button>
      {open && <HelpPage topic={topic} />}
    </>
  );
}
