import { round6 } from '../../core/quantity.ts';
import { parseTrackSize } from '../../core/track-size.ts';
import { massUnitWords, unitShort } from '../../words/en/choices.ts';
import { optionForm as words } from '../../words/en/option-form.ts';
import { formatter } from '../data/format.ts';
import { Button } from '../parts/button.tsx';
import { Choices } from '../parts/choices.tsx';
import { Fold } from '../parts/fold.tsx';
import { Select } from '../parts/select.tsx';
import { optionsOf } from '../screens/machine-shape.tsx';
import { at, Numbered, Written, type OptionFieldsProps } from './option-field.tsx';
import {
  massUnitOf,
  parseOffset,
  parsePieces,
  parseSideMass,
  parseSize,
  unitOf,
  type CountField,
  type LengthField,
} from './option-texts.ts';

/** How a figure that has to match came about; asked once there is one. */
function How({ texts, change, field }: OptionFieldsProps & { field: string }) {
  if (at(texts, field).trim() === '') return null;
  const label = words.fields[field as keyof typeof words.fields];
  return (
    <Select
      label={words.how(label)}
      options={(['assumed', 'read', 'measured'] as const).map((value) => ({
        value,
        label: words.hows[value],
      }))}
      chosen={at(texts, `${field}How`)}
      onChoose={(how) => change({ [`${field}How`]: how })}
    />
  );
}

function Size({ field, ...props }: OptionFieldsProps & { field: LengthField }) {
  const unit = unitOf(props.texts);
  return (
    <>
      <Numbered
        {...props}
        field={field}
        label={words.inUnit(words.fields[field], unitShort[unit])}
        parse={(text) => (field === 'offsetMm' ? parseOffset(text, unit) : parseSize(text, unit))}
        spell={({ mm }) => formatter.value.field(mm, unit)}
      />
      <How {...props} field={field} />
    </>
  );
}

function Count({ field, ...props }: OptionFieldsProps & { field: CountField }) {
  return (
    <>
      <Numbered
        {...props}
        field={field}
        whole
        label={words.fields[field]}
        parse={parsePieces}
        spell={String}
      />
      <How {...props} field={field} />
    </>
  );
}

function Chosen({ field, words: named, ...props }: OptionFieldsProps & ChosenProps) {
  const { texts, change } = props;
  return (
    <>
      <Choices
        title={words.fields[field]}
        narrow
        options={optionsOf(named)}
        chosen={at(texts, field)}
        onChoose={(value) => change({ [field]: value === at(texts, field) ? '' : value })}
      />
      <How {...props} field={field} />
    </>
  );
}

interface ChosenProps {
  readonly field: 'guide' | 'rollersOn';
  readonly words: Readonly<Record<string, string>>;
}

const isRubber = (track: string): boolean =>
  track === 'rubber-cored' || track === 'rubber-coreless' || track === '';

/** What has to match between the track and the machine, each with how it is known. */
export function Fit(props: OptionFieldsProps) {
  const { texts, faults } = props;
  const massUnit = massUnitOf(texts);
  const rubber = isRubber(at(texts, 'track'));
  return (
    <Fold title={words.fits} line={words.fitsLine} open={faults.some((each) => each in words.fields)}>
      <Written {...props} field="moulding" label={words.moulding} hint={words.mouldingHint} />
      <How {...props} field="moulding" />
      <TakeSize {...props} />
      <Size {...props} field="widthMm" />
      <Size {...props} field="pitchMm" />
      <Count {...props} field="links" />
      <Written {...props} field="tread" label={words.tread} hint={words.treadHint} />
      {rubber && (
        <>
          <Chosen {...props} field="guide" words={words.guides} />
          <Size {...props} field="hornWidthMm" />
          <Size {...props} field="hornHeightMm" />
          <Chosen {...props} field="rollersOn" words={words.rollersOn} />
        </>
      )}
      <Fold title={words.sprocket} line={words.sprocketLine}>
        <Count {...props} field="sprocketTeeth" />
        <Count {...props} field="sprocketBolts" />
        <Size {...props} field="boltCircleMm" />
        <Size {...props} field="boreMm" />
        <Size {...props} field="offsetMm" />
      </Fold>
      <Numbered
        {...props}
        field="mass"
        label={words.inUnit(words.mass, massUnitWords[massUnit])}
        parse={(text) => parseSideMass(text, massUnit)}
        spell={({ value }) => String(round6(value))}
      />
      <How {...props} field="mass" />
    </Fold>
  );
}

/** Width, pitch and links stand in the moulding: one tap takes them from there. */
function TakeSize({ texts, change }: OptionFieldsProps) {
  const size = parseTrackSize(at(texts, 'moulding'));
  if (!size) return null;
  const { widthMm, pitchMm, links } = size;
  const format = formatter.value;
  const unit = unitOf(texts);
  const taken = {
    widthMm: format.field(widthMm, unit),
    pitchMm: format.field(pitchMm, unit),
    links: String(links),
    widthMmHow: 'read',
    pitchMmHow: 'read',
    linksHow: 'read',
  };
  if (Object.entries(taken).every(([name, text]) => at(texts, name) === text)) return null;
  return (
    <Button onTap={() => change(taken)}>
      {words.take(format.inUnit(widthMm, 'mm'), format.inUnit(pitchMm, 'mm'), String(links))}
    </Button>
  );
}
