import { useState } from 'preact/hooks';
import { parsePlace, type Place } from '../../core/keys.ts';
import { placeName, itemName } from '../../words/en/items.ts';
import { photos as words } from '../../words/en/photos.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { Button } from '../parts/button.tsx';
import { Toggle } from '../parts/choices.tsx';
import { Section } from '../parts/screen.tsx';
import { Select } from '../parts/select.tsx';
import type { Shown } from '../../core/photo.ts';
import { toggled } from './photo-groups.ts';
import { shownText } from './photo-text.ts';
import { changePhoto, type WalkPhoto } from './walk-photos.ts';
import parts from '../parts/parts.module.css';

/** What a picture shows: the places and items of the walk, put there or taken away one by one. */
export function EditTies({ model, each }: { model: WalkModel; each: WalkPhoto }) {
  const { shows } = each.photo;
  const [open, setOpen] = useState(false);
  const [chosen, setChosen] = useState<Place>();
  const places = [...new Set([...model.steps.map((step) => step.place), ...shows.map(({ place }) => place)])];
  const place = chosen ?? shows[0]?.place ?? places[0];
  const items = [
    ...new Set(
      model.steps.filter((step) => step.place === place).flatMap((step) => step.items.map(({ id }) => id)),
    ),
  ];
  const tap = (tie: Shown): void =>
    void changePhoto(each, (now) => ({ ...now, shows: toggled(now.shows, tie) }));
  const isOn = (item?: string): boolean => shows.some((tie) => tie.place === place && tie.item === item);
  return (
    <Section title={words.showsTitle}>
      <ul class={parts.list}>
        {shows.length === 0 && <li>{words.nothingNamed}</li>}
        {shows.map((tie) => (
          <li key={shownText(tie)}>{shownText(tie)}</li>
        ))}
      </ul>
      <Button look="plain" pressed={open} onTap={() => setOpen(!open)}>
        {words.editTies}
      </Button>
      {open && place !== undefined && (
        <>
          <Select
            label={words.part}
            chosen={place}
            options={places.map((value) => ({ value, label: placeName(parsePlace(value)) }))}
            onChoose={(value) => setChosen(places.find((each) => each === value))}
          />
          <Toggle label={words.wholePart} on={isOn()} onTap={() => tap({ place })} />
          {items.map((item) => (
            <Toggle key={item} label={itemName(item)} on={isOn(item)} onTap={() => tap({ place, item })} />
          ))}
        </>
      )}
    </Section>
  );
}
