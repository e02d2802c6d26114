import { useLocation } from 'preact-iso';
import { useMemo, useState } from 'preact/hooks';
import { isDemo, makeKey, type RecordKey } from '../../core/keys.ts';
import type { Option } from '../../core/option.ts';
import { common } from '../../words/en/common.ts';
import { forms } from '../../words/en/forms.ts';
import { optionForm as words, optionShelf } from '../../words/en/option-form.ts';
import { dropDraft } from '../actions/saved.ts';
import { valueOf } from '../data/live.ts';
import { newId } from '../data/moment.ts';
import { tell } from '../data/notice.ts';
import { preferences } from '../data/preferences.ts';
import { useRecord } from '../data/record.ts';
import { notSavedLine } from '../data/saving.ts';
import { showFirstFault } from '../data/show-fault.ts';
import { useDraft } from '../data/use-draft.ts';
import { Button, ButtonLink } from '../parts/button.tsx';
import { Screen } from '../parts/screen.tsx';
import { ClashNotice } from '../screens/clash-notice.tsx';
import { Gone } from '../screens/gone.tsx';
import { OptionFields } from './option-fields.tsx';
import { optionOf } from './option-form.ts';
import { optionTexts, type OptionFaults } from './option-texts.ts';
import { optionDraftKey, saveOption } from './save-option.ts';

export interface OptionPlace {
  /** The address of the comparison that one came from. */
  readonly base: string;
  /** The machine whose tracks are compared; none where the question is asked alone. */
  readonly machine: RecordKey<'machine'> | undefined;
  readonly currency: string;
}

const describe = ({ name, make, note }: Option): readonly string[] => [name, make ?? '', note ?? ''];

/** Changes an option that is kept on this phone. */
export function OptionChange({ place, known }: { place: OptionPlace; known: RecordKey<'option'> }) {
  const found = valueOf(useRecord<Option>(known));
  if (!found) return <Screen title={words.editTitle}>{null}</Screen>;
  if (found.newer) return <Screen title={words.editTitle}>{forms.newer}</Screen>;
  if (!found.value) return <Gone />;
  return (
    <OptionForm
      key={known}
      place={place}
      known={known}
      before={found.value}
      stamp={found.stamp}
      clash={<ClashNotice recordKey={known} clash={found.clash} describe={describe} />}
    />
  );
}

interface OptionFormProps {
  readonly place: OptionPlace;
  readonly known?: RecordKey<'option'>;
  readonly before?: Option;
  readonly stamp?: string | undefined;
  readonly clash?: preact.ComponentChildren;
}

/** Enters an option, or changes one. */
export function OptionForm({ place, known, before, stamp = '', clash }: OptionFormProps) {
  const { route } = useLocation();
  const { machine, currency } = place;
  const demo = machine !== undefined && isDemo(machine);
  // Made when the form opens, so that a second tap saves the same option again and not another.
  const [key] = useState(() => known ?? makeKey<'option'>({ kind: 'option', id: newId(), demo }));
  const back = known ? `${place.base}/own` : place.base;
  const bound = machine === undefined ? '' : 'yes';
  const units = preferences.value;
  const start = useMemo(
    () => optionTexts(before, units, { currency, bound, base: stamp }),
    [before, units, currency, bound, stamp],
  );
  const draftKey = optionDraftKey(known, demo);
  const [texts, setTexts] = useDraft(draftKey, start);
  const [faults, setFaults] = useState<OptionFaults>([]);
  const change = (part: Readonly<Record<string, string>>): void => {
    setTexts({ ...texts, ...part });
    setFaults(faults.filter((each) => !(each in part)));
  };
  const save = async (): Promise<void> => {
    if (texts['base'] !== stamp) {
      // Said once; whoever saves again has been told.
      setTexts({ ...texts, base: stamp });
      tell(forms.changedMeanwhile);
      return;
    }
    const made = optionOf(texts, before, machine);
    if (!made.ok) {
      setFaults(made.error);
      tell(forms.mend);
      showFirstFault();
      return;
    }
    const saved = await saveOption(key, made.value, draftKey);
    tell(saved.ok ? optionShelf.saved : notSavedLine(saved.error));
    if (saved.ok) route(back, true);
  };
  const drop = (): void => {
    const kept = texts;
    setTexts(start);
    void dropDraft(draftKey);
    tell(forms.dropped, () => setTexts({ ...kept, base: stamp }));
  };
  return (
    <Screen
      wide
      title={known ? words.editTitle : words.addTitle}
      bar={
        <>
          <ButtonLink href={back}>{common.back}</ButtonLink>
          <Button look="main" onTap={() => void save()}>
            {words.save}
          </Button>
        </>
      }
    >
      {clash}
      <OptionFields texts={texts} faults={faults} change={change} hasMachine={machine !== undefined} />
      {texts !== start && (
        <Button look="plain" onTap={drop}>
          {forms.drop}
        </Button>
      )}
    </Screen>
  );
}
